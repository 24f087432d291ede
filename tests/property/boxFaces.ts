import type { BoxSpec } from "./boxes.js";

/** The three sizes of a box that something may stand across. */
export const sizeNames = ["width", "depth", "height"] as const;
export type Size = (typeof sizeNames)[number];

type Corner = { readonly at: readonly [number, number] };

/** How large a box is across its three sizes. */
export function sizesOf(box: BoxSpec): Readonly<Record<Size, number>> {
  const { width, depth, height, side, plan } = box["outside"] as {
    readonly [key in Size]: number;
  } & { readonly side?: readonly Corner[]; readonly plan?: readonly Corner[] };
  const reach = (corners: readonly Corner[], axis: 0 | 1) => {
    const places = corners.map(({ at }) => at[axis]);
    return Math.max(...places) - Math.min(...places);
  };
  if (side) return { width, depth: reach(side, 0), height: reach(side, 1) };
  if (plan) return { width: reach(plan, 0), depth: reach(plan, 1), height };
  return { width, depth, height };
}

/** The walls of a box by name, in the order of its section; profiles name theirs here. */
export function namedWalls(box: BoxSpec): { readonly box: BoxSpec; readonly walls: readonly string[] } {
  const outside = box["outside"] as Readonly<Record<string, unknown>>;
  const view = "side" in outside ? "side" : "plan" in outside ? "plan" : undefined;
  if (view === undefined) return { box, walls: ["rear", "right", "front", "left"] };
  const corners = outside[view] as readonly object[];
  const walls = corners.map((_, i) => `wall ${i + 1}`);
  const named = corners.map((corner, i) => ({ ...corner, side: walls[i] }));
  const panels = box["panels"] as Readonly<Record<string, unknown>> | undefined;
  const moved = panels && !Object.keys(panels).some((face) => ["left", "right", "top", "bottom"].includes(face));
  return { box: { ...box, ...(moved ? { panels: undefined } : {}), outside: { ...outside, [view]: named } }, walls };
}

/** The two ends of a box, which cap its walls. */
export const endsOf = (box: BoxSpec): readonly string[] =>
  "side" in (box["outside"] as object) ? ["left", "right"] : ["top", "bottom"];
