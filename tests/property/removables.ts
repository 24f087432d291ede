import fc from "fast-check";
import type { BoxSpec } from "./boxes.js";
import { boxes } from "./boxes.js";
import { endsOf, namedWalls, type Size, sizeNames, sizesOf } from "./boxFaces.js";

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
  divider: fc.option(fc.record({ across: fc.constantFrom(...sizeNames), share: share() })),
  brace: fc.option(fc.record({ across: fc.constantFrom(...sizeNames), share: share() })),
  /** Corners by the places of their faces in the list: a wall and the next, or a wall and an end. */
  corners: fc.array(fc.record({ wall: whole(0, 20), end: fc.constantFrom(0, 1, 2), turned: fc.boolean() }), {
    maxLength: 4,
  }),
  hatch: fc.option(
    fc.record({
      which: whole(0, 20),
      size: fc.tuple(whole(50, 140), whole(50, 140)),
      overlap: fc.option(whole(30, 50), { nil: undefined }),
      gasket: fc.constantFrom(2, 3),
    }),
    { freq: 2 },
  ),
});

function share() {
  return fc.double({ min: 0.2, max: 0.8, noNaN: true });
}

/**
 * Boxes of all forms with one panel bolted on: any wall or end, over its neighbours or between them, with a divider or a
 * brace that may meet it, battens in corners, and a service hatch in the middle of another face. What has no room is
 * refused by the planner, and left out.
 */
export const removableBoxes: fc.Arbitrary<BoxSpec> = fc.tuple(boxes, fitted).map(([drawn, fit]) => {
  const { box, walls } = namedWalls(drawn);
  const ends = endsOf(box);
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
  const others = faces.filter((face) => face !== name);
  const hatch = fit.hatch && {
    in: others[fit.hatch.which % others.length]!,
    size: fit.hatch.size.join(" x "),
    with: bolt,
    gasket: fit.hatch.gasket,
    ...(fit.hatch.overlap ? { overlap: fit.hatch.overlap } : {}),
  };
  const sizes = sizesOf(box);
  const stands = ({ across, share: part }: { across: Size; share: number }) => ({
    across,
    at: Math.round(part * sizes[across]),
  });
  return {
    ...box,
    joints: undefined,
    ...(along.length > 0 && fit.between !== "laps" ? { battens: [{ along: [...new Set(along)], wide: 18 }] } : {}),
    panels: { [name]: { bolted, ...(fit.between === "set in" ? { "set in": 8 } : {}) } },
    ...(fit.between === "laps" ? { laps: [...others, name], ends: undefined } : {}),
    ...(hatch ? { hatch } : {}),
    ...(fit.divider ? { dividers: [{ ...stands(fit.divider), between: ["a", "b"] }] } : {}),
    ...(fit.brace
      ? { braces: [{ ...stands(fit.brace), border: 20, round: 5, ...(fit.divider ? { in: "a" } : {}) }] }
      : {}),
  };
});
