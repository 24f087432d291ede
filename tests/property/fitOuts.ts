import fc from "fast-check";
import type { BoxSpec } from "./boxes.js";
import { boxes } from "./boxes.js";

const sizes = ["width", "depth", "height"] as const;
const whole = (min: number, max: number) => fc.integer({ min, max });

/** Where something stands: across which size, and at which share of it. */
const place = fc.record({ across: fc.constantFrom(...sizes), share: fc.double({ min: 0.15, max: 0.85, noNaN: true }) });
type Place = { readonly across: (typeof sizes)[number]; readonly share: number };

const fitted = fc.record({
  first: fc.option(place, { freq: 4 }),
  second: fc.option(place),
  braces: fc.array(fc.record({ place, border: whole(15, 40), windows: whole(1, 3) }), { maxLength: 1 }),
  slot: fc.option(
    fc.record({
      corner: whole(0, 20),
      gap: whole(15, 60),
      long: whole(60, 420),
      turns: fc.boolean(),
      backwards: fc.boolean(),
    }),
    { freq: 2 },
  ),
  inFirst: fc.boolean(),
});

/** How large a box is across its three sizes. */
function sizesOf(box: BoxSpec): Readonly<Record<(typeof sizes)[number], number>> {
  const { width, depth, height, side, plan } = box["outside"] as {
    readonly [key in (typeof sizes)[number]]: number;
  } & { readonly side?: readonly Corner[]; readonly plan?: readonly Corner[] };
  const reach = (corners: readonly Corner[], axis: 0 | 1) => {
    const places = corners.map(({ at }) => at[axis]);
    return Math.max(...places) - Math.min(...places);
  };
  if (side) return { width, depth: reach(side, 0), height: reach(side, 1) };
  if (plan) return { width: reach(plan, 0), depth: reach(plan, 1), height };
  return { width, depth, height };
}

type Corner = { readonly at: readonly [number, number] };

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

/**
 * Boxes of all forms with dividers, braces and a slot port in them. What cannot stand where it is drawn is refused by
 * the planner, and the box left out.
 */
export const fittedBoxes: fc.Arbitrary<BoxSpec> = fc.tuple(boxes, fitted).map(([drawn, fit]) => {
  const { box, walls } = namedWalls(drawn);
  const { first, second, braces, slot, inFirst } = fit;
  const reach = sizesOf(box);
  const stands = ({ across, share }: Place) => ({ across, at: Math.round(share * reach[across]) });
  const dividers = [
    ...(first ? [{ ...stands(first), between: ["a", "b"] }] : []),
    ...(first && second ? [{ ...stands(second), between: ["b", "c"] }] : []),
  ];
  const chamber = dividers.length === 0 ? undefined : inFirst ? "a" : "b";
  const at = (key: string) => (chamber === undefined ? {} : { [key]: chamber });
  const n = walls.length;
  const [one, two] = slot ? [walls[slot.corner % n]!, walls[(slot.corner + 1) % n]!] : ["", ""];
  const ends = "plan" in (box["outside"] as object) || !("side" in (box["outside"] as object));
  const mouth = slot?.backwards ? two : one;
  const laps = [mouth, ...walls.filter((wall) => wall !== mouth), ...(ends ? ["top", "bottom"] : ["left", "right"])];
  return {
    ...box,
    ...(dividers.length > 0 ? { dividers } : {}),
    ...(braces.length > 0
      ? { braces: braces.map(({ place: where, ...own }) => ({ ...stands(where), ...own, round: 5, ...at("in") })) }
      : {}),
    ...(slot
      ? {
          laps,
          ends: undefined,
          "slot ports": [
            {
              in: mouth,
              beside: slot.backwards ? one : two,
              gap: slot.gap,
              long: slot.long,
              ...(slot.turns ? { turns: true } : {}),
              ...at("chamber"),
            },
          ],
        }
      : {}),
  };
});
