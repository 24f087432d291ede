import fc from "fast-check";
import type { BoxSpec } from "./boxes.js";
import { boxes } from "./boxes.js";
import { endsOf, namedWalls, type Size, sizeNames, sizesOf } from "./boxFaces.js";

const whole = (min: number, max: number) => fc.integer({ min, max });

/** Where something stands: across which size, and at which share of it. */
const place = fc.record({
  across: fc.constantFrom(...sizeNames),
  share: fc.double({ min: 0.15, max: 0.85, noNaN: true }),
});
type Place = { readonly across: Size; readonly share: number };

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
  const mouth = slot?.backwards ? two : one;
  const laps = [mouth, ...walls.filter((wall) => wall !== mouth), ...endsOf(box)];
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
