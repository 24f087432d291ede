import type { Point } from "./profile.js";

/**
 * Every number that decides in geometry. Three kinds, never used for one another:
 * noise is what floating point does to exact shapes, chord error is what a polygon loses of an arc, and a clearance is a
 * gap that a fabricator can feel (the ones they choose stand in the job and shop files).
 */
export const tolerance = {
  // noise, mm
  /** Two points this close are one. A thousand times finer than the finest step a machine takes (0.001 mm), and still
   *  a thousand times coarser than what a crossing of two flat arcs loses in double precision over 10 m. */
  samePoint: 1e-6,
  /** Curves that come this close side by side and cross no deeper are tangent: a touch, not two crossings. Double
   *  precision keeps about 1e-12 mm on a 10 m sheet, and arcs of large radius lose some of it. */
  touch: 1e-9,
  /** rad: edges that meet with less turn than this run on smoothly (1e-6 rad is 0.001 mm in a metre). */
  smooth: 1e-6,

  /** How far panels are grown into each other before asking whether they shut air in. Panels in exact contact do not:
   *  once turned, the last digits of their shared faces differ (measured: 198 of 200 turned butt boxes leaked). */
  seam: 1e-4,

  /** An arc that stands off its chord by less than this share of it is a line: the centre of a flatter one lies so far
   *  away (over 10,000,000 mm for a metre of edge) that double precision no longer knows where. */
  flat: 1e-8,

  // chord error, mm
  /** For pictures, solids and nesting: finer than a dust grain and than any measured board. */
  chord: 0.01,
  /** For the cheap area guard: the polygon's own loss is known and allowed for, so it may be coarse. */
  guardChord: 0.05,
  /** For the guard's second question, where a wall as thin as the chords is in doubt: a twelfth of the coarse one's chords. */
  guardFineChord: 0.05 / 144,

  // clearance, mm
  /** Parts that run into each other less deep than this touch: no saw or router in the shop works finer. */
  contact: 0.01,
  /** mm3: parts that share less than this touch. A grain of dust is more. */
  overlapVolume: 1,
} as const;

/** Whether two places are one but for noise. */
export function samePoint(a: Point, b: Point): boolean {
  return Math.hypot(a.x - b.x, a.y - b.y) <= tolerance.samePoint;
}
