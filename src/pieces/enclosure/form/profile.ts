import type { Profile } from "../../../geometry/profile.js";
import { rectangle } from "../../../geometry/shapes.js";
import type { EnclosureSpec, SizeName } from "../schema.js";
import { atOrigin, type Extrusion, endNames, type View } from "./extrusion.js";

/** The sizes that are typed for each way to describe an outside. */
export const sizesFor: Readonly<Record<"square" | View, readonly SizeName[]>> = {
  square: ["width", "depth", "height"],
  side: ["width"],
  plan: ["height"],
};

/** Which way the job describes the outside. */
export function wayOf({ outside }: EnclosureSpec): "square" | View {
  return outside.side !== undefined ? "side" : outside.plan !== undefined ? "plan" : "square";
}

/** The outside as it is asked for, with its free size put in. */
export function extrusionOf(spec: EnclosureSpec, size: number): Extrusion {
  const of = (key: SizeName) => {
    const value = spec.outside[key];
    return typeof value === "string" ? size : (value ?? 0);
  };
  const way = wayOf(spec);
  if (way === "square") {
    const section = rectangle(0, 0, of("width"), of("depth"), ["rear", "right", "front", "left"]);
    return { view: "plan", section, length: of("height") };
  }
  const [key] = sizesFor[way];
  return { view: way, section: named(atOrigin(spec.outside[way] ?? []), way), length: of(key!) };
}

/** Walls that the job gives no name are called by where they look: "front", "top", a second one "top 2". */
function named(section: Profile, view: View): Profile {
  const taken = new Set<string>([...endNames[view], ...section.map(({ by }) => by).filter((by) => !isUnnamed(by))]);
  return section.map((corner, i) => {
    if (!isUnnamed(corner.by)) return corner;
    const base = looks(section, i, view);
    let by = base;
    for (let count = 2; taken.has(by); count++) by = `${base} ${count}`;
    taken.add(by);
    return { ...corner, by };
  });
}

const isUnnamed = (by: string) => /^side\.\d+$/.test(by);

function looks(section: Profile, i: number, view: View): string {
  const [a, b] = [section[i]!, section[(i + 1) % section.length]!];
  const [x, y] = [b.y - a.y, a.x - b.x];
  const [left, right, below, above] =
    view === "side" ? ["rear", "front", "bottom", "top"] : ["left", "right", "rear", "front"];
  if (Math.abs(x) > Math.abs(y)) return x > 0 ? right! : left!;
  return y > 0 ? above! : below!;
}
