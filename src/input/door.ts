import type { ZodType } from "zod";

/** Least and most that make sense where a value is typed, in the value's inner unit. */
export type Range = { readonly min: number; readonly max: number };

/**
 * The door through which typed values come in: each makes a zod schema that takes what a fabricator writes and gives
 * the inner unit. A bare number is in the job's `units`. Out of range or unreadable gives an issue whose `params` are
 * the facts of a finding.
 */
export type Door = {
  /** mm: `18`, `18mm`, `3/4in`, `11 5/8"`, `1'-2 1/2"`, `29.5cm`. */
  length(range: Range): ZodType<number>;
  /** L: `20 L`, `0.7 ft3`, `1220 in3`. */
  volume(range: Range): ZodType<number>;
  /** rad: `45`, `45deg`. */
  angle(range: Range): ZodType<number>;
  /** kg: `12 kg`, `26 lb`. */
  mass(range: Range): ZodType<number>;
  /** Hz: `31 Hz`. */
  frequency(range: Range): ZodType<number>;
  /** mm2: `346 cm2`, `53.6 in2`. */
  area(range: Range): ZodType<number>;
  /** A place in plan: [x, y], mm. */
  point(): ZodType<readonly [number, number]>;
  /** Two lengths: `78 x 54`. */
  size(range: Range): ZodType<readonly [number, number]>;
};
