import { extentsOf } from "./measure.js";
import type { Profile, Region } from "./profile.js";
import { rectangle } from "./shapes.js";
import type { Block } from "./solids.js";
import { sureIntersection } from "./sure.js";

/**
 * A straight body that stands square in its frame: a section extruded along z (upright; the section in x, y) or along x
 * (lying; the section in y, z). Counter-clockwise, mm.
 */
export type Prism = {
  readonly along: "x" | "z";
  readonly section: Profile;
  readonly from: number;
  readonly to: number;
};

/** The block round a prism, along the axes of its frame. */
export function blockOfPrism({ along, section, from, to }: Prism): Block {
  const { min, max } = extentsOf(section);
  return along === "z"
    ? { min: [min.x, min.y, from], max: [max.x, max.y, to] }
    : { min: [from, min.x, min.y], max: [to, max.x, max.y] };
}

/** What a prism covers as seen from above; a lying one covers a rectangle, whatever its section. */
export function shadowOf(prism: Prism): Profile {
  if (prism.along === "z") return prism.section;
  const { min, max } = blockOfPrism(prism);
  return rectangle(min[0], min[1], max[0], max[1], "");
}

/**
 * The blocks round everything that two prisms share, one for each piece of it: none where they are apart, and thin ones
 * where they only touch. In doubt about the geometry, the block that both blocks share.
 */
export function sharedBlocks(a: Prism, b: Prism): readonly Block[] {
  const both = common(blockOfPrism(a), blockOfPrism(b));
  if (both === undefined) return [];
  if (a.along === "x" && b.along === "z") return sharedBlocks(b, a);
  if (a.along === b.along) {
    const pieces = sureIntersection(whole(a.section), whole(b.section)).value;
    const [from, to] = [Math.max(a.from, b.from), Math.min(a.to, b.to)];
    return pieces?.map(({ outer }) => blockOfPrism({ along: a.along, section: outer, from, to })) ?? [both];
  }
  return crossed(a, b) ?? [both];
}

/** An upright prism and a lying one: every piece of the lying section between the heights covers a rectangle in plan. */
function crossed(upright: Prism, lying: Prism): readonly Block[] | undefined {
  const { min, max } = extentsOf(lying.section);
  const strip = rectangle(min.x - 1, upright.from, max.x + 1, upright.to, "");
  const slices =
    upright.from <= min.y && upright.to >= max.y
      ? [whole(lying.section)]
      : sureIntersection(whole(lying.section), whole(strip)).value;
  return slices?.flatMap((slice) => {
    const reach = extentsOf(slice);
    const seen = rectangle(lying.from, reach.min.x, lying.to, reach.max.x, "");
    const pieces = sureIntersection(whole(upright.section), whole(seen)).value ?? [whole(seen)];
    return pieces.map(({ outer }) => blockOfPrism({ along: "z", section: outer, from: reach.min.y, to: reach.max.y }));
  });
}

const whole = (outer: Profile): Region => ({ outer, holes: [] });

/** What two blocks along the same axes share; none where they are apart. */
function common(a: Block, b: Block): Block | undefined {
  const at = (pick: (x: number, y: number) => number, of: "min" | "max") =>
    [pick(a[of][0], b[of][0]), pick(a[of][1], b[of][1]), pick(a[of][2], b[of][2])] as const;
  const shared: Block = { min: at(Math.max, "min"), max: at(Math.min, "max") };
  return [0, 1, 2].every((i) => shared.min[i]! < shared.max[i]!) ? shared : undefined;
}
