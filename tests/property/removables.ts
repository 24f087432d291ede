import fc from "fast-check";
import type { BoxSpec } from "./boxes.js";
import { boxes } from "./boxes.js";

const whole = (min: number, max: number) => fc.integer({ min, max });

const fitted = fc.record({
  which: whole(0, 20),
  bolted: fc.record({
    with: fc.constantFrom("M6 button", "M5 cap"),
    every: whole(80, 300),
    gasket: fc.constantFrom(2, 3, { loose: 6, clamped: 2.5 }),
    wide: fc.option(whole(28, 45), { nil: undefined }),
  }),
  long: fc.boolean(),
  between: fc.constantFrom("over", "laps", "set in"),
  divider: fc.option(fc.record({ across: fc.constantFrom("width", "depth", "height"), share: share() })),
  brace: fc.option(fc.record({ across: fc.constantFrom("width", "depth", "height"), share: share() })),
  /** Corners by the places of their faces in the list: a wall and the next, or a wall and an end. */
  corners: fc.array(fc.record({ wall: whole(0, 20), end: fc.constantFrom(0, 1, 2), turned: fc.boolean() }), {
    maxLength: 4,
  }),
});

function share() {
  return fc.double({ min: 0.2, max: 0.8, noNaN: true });
}

type Corner = { readonly at: readonly [number, number] };
type Sizes = Readonly<Record<string, number>>;

/** How large a box is across its three sizes. */
function sizesOf(outside: Readonly<Record<string, unknown>>): Sizes {
  const reach = (corners: readonly Corner[], axis: 0 | 1) => {
    const places = corners.map(({ at }) => at[axis]);
    return Math.max(...places) - Math.min(...places);
  };
  const side = outside["side"] as readonly Corner[] | undefined;
  const plan = outside["plan"] as readonly Corner[] | undefined;
  if (side) return { width: outside["width"] as number, depth: reach(side, 0), height: reach(side, 1) };
  if (plan) return { width: reach(plan, 0), depth: reach(plan, 1), height: outside["height"] as number };
  return outside as Sizes;
}

/**
 * Boxes of all forms with one panel bolted on: any wall or end, over its neighbours or between them, with a divider or a
 * brace that may meet it, and battens in corners. What has no room is refused by the planner, and left out.
 */
export const removableBoxes: fc.Arbitrary<BoxSpec> = fc.tuple(boxes, fitted).map(([box, fit]) => {
  const form = box["outside"] as Readonly<Record<string, unknown>>;
  const view = "side" in form ? "side" : "plan" in form ? "plan" : undefined;
  const corners = view === undefined ? [] : (form[view] as readonly object[]);
  const walls = view === undefined ? ["rear", "right", "front", "left"] : corners.map((_, i) => `wall ${i + 1}`);
  const ends = view === "side" ? ["left", "right"] : ["bottom", "top"];
  const outside =
    view === undefined ? form : { ...form, [view]: corners.map((corner, i) => ({ ...corner, side: walls[i] })) };
  const faces = [...walls, ...ends];
  const name = faces[fit.which % faces.length]!;
  const { with: bolt, every, gasket, wide } = fit.bolted;
  const insert = fit.long ? (bolt.startsWith("M6") ? "M6 x 15" : "M5 x 12") : undefined;
  const bolted = { with: bolt, every, gasket, ...(wide ? { wide } : {}), ...(insert ? { insert } : {}) };
  const along = fit.corners.flatMap(({ wall, end, turned }) => {
    const one = walls[wall % walls.length]!;
    const other = end === 2 ? walls[(wall + 1) % walls.length]! : ends[end]!;
    return one === name || other === name ? [] : [turned ? `${other} + ${one}` : `${one} + ${other}`];
  });
  const last = [...faces.filter((face) => face !== name), name];
  const sizes = sizesOf(form);
  const stands = ({ across, share: part }: { across: string; share: number }) => ({
    across,
    at: Math.round(part * sizes[across]!),
  });
  return {
    ...box,
    outside,
    joints: undefined,
    ...(along.length > 0 && fit.between !== "laps" ? { battens: [{ along: [...new Set(along)], wide: 18 }] } : {}),
    panels: { [name]: { bolted, ...(fit.between === "set in" ? { "set in": 8 } : {}) } },
    ...(fit.between === "laps" ? { laps: last, ends: undefined } : {}),
    ...(fit.divider ? { dividers: [{ ...stands(fit.divider), between: ["a", "b"] }] } : {}),
    ...(fit.brace
      ? { braces: [{ ...stands(fit.brace), border: 20, round: 5, ...(fit.divider ? { in: "a" } : {}) }] }
      : {}),
  };
});
