/** The inside of a box: its section's area, mm2, and perimeter, and how far it is extruded, mm. */
export type Inside = { readonly area: number; readonly perimeter: number; readonly length: number };

/** The walls of one board, one batch: the area they show to the air, mm2, and how far off its thickness may be, mm. */
export type Walls = { readonly board: string; readonly area: number; readonly tolerance: number };

/** One cause of a volume that is off: what a millimetre of it changes, L per mm, and how far off it may be, mm. */
export type Cause = { readonly what: string; readonly litresPerMm: number; readonly tolerance: number };

/** L, to either side. `worst`: all causes at their limits at once. `likely`: root of the sum of squares. */
export type Spread = { readonly worst: number; readonly likely: number };

/**
 * What makes the volume of a box uncertain, to first order, its outside sizes held: V = area x length. `cutting`: how far
 * off a size may be that is cut, mm, to either side.
 *
 * - thickness: a wall grows inwards by it, so dV = -area of the wall x dt. Walls of one board are of one batch, too thick
 *   or too thin together.
 * - section: each size across it is off by the cut, half of it at either wall, so dV = perimeter / 2 x length dc.
 * - length: off by the cut, so dV = area dc.
 *
 * Source:  own derivation, partial derivatives of area x length.
 */
export function causesOf(
  { area, perimeter, length }: Inside,
  walls: readonly Walls[],
  cutting: number,
): readonly Cause[] {
  return [
    ...walls.map((each) => {
      return { what: `thickness of ${each.board}`, litresPerMm: -each.area / 1e6, tolerance: each.tolerance };
    }),
    { what: "section as cut", litresPerMm: (perimeter * length) / 2 / 1e6, tolerance: cutting },
    { what: "length as cut", litresPerMm: area / 1e6, tolerance: cutting },
  ];
}

/**
 * How far a volume may be off for causes that know nothing of each other.
 *
 * Source:  the sum of squares: JCGM 100:2008 (GUM), 5.1.2, first-order propagation; worst case: the sum of the limits,
 *          as in any chain of tolerances.
 */
export function spreadOf(causes: readonly Cause[]): Spread {
  const shares = causes.map(({ litresPerMm, tolerance }) => Math.abs(litresPerMm) * tolerance);
  return { worst: shares.reduce((sum, share) => sum + share, 0), likely: Math.hypot(...shares) };
}
