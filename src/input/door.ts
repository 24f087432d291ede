import { type ZodType, z } from "zod";
import { outOfRange } from "./doorFindings.js";
import { list, text } from "./finding.js";
import {
  angleGate,
  areaGate,
  countGate,
  frequencyGate,
  type Gate,
  lengthGates,
  massGate,
  numberGate,
  powerGate,
  resistanceGate,
  sizeGates,
  volumeGate,
  volumesGate,
} from "./gate.js";
import type { LengthUnit } from "./length.js";
import { asWritten, refuse } from "./refusal.js";

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
  /** L, least and most: `18 to 24 L`; a single volume gives both. */
  volumes(range: Range): ZodType<readonly [number, number]>;
  /** rad: `45`, `45deg`. */
  angle(range: Range): ZodType<number>;
  /** kg: `12 kg`, `26 lb`. */
  mass(range: Range): ZodType<number>;
  /** Hz: `31 Hz`. */
  frequency(range: Range): ZodType<number>;
  /** mm2: `346 cm2`, `53.6 in2`. */
  area(range: Range): ZodType<number>;
  /** W: `350 W`. */
  power(range: Range): ZodType<number>;
  /** Ohm: `4 ohm`. */
  resistance(range: Range): ZodType<number>;
  /** A plain number: `0.52`. */
  number(range: Range): ZodType<number>;
  /** A plain whole number: `8`. */
  count(range: Range): ZodType<number>;
  /** A place in plan: [x, y], mm. */
  point(): ZodType<readonly [number, number]>;
  /** Two lengths: `78 x 54`. */
  size(range: Range): ZodType<readonly [number, number]>;
};

/** How far from the datum anything in a vehicle can lie, mm. */
const reach: Range = { min: -20_000, max: 20_000 };

/** The door for a file whose bare lengths are in this unit. */
export function doorFor(unit: LengthUnit): Door {
  const length = lengthGates[unit];
  const size = sizeGates[unit];
  return {
    length: (range) => through(length, range),
    volume: (range) => through(volumeGate, range),
    volumes: (range) => through(volumesGate, range),
    angle: (range) => through(angleGate, range),
    mass: (range) => through(massGate, range),
    frequency: (range) => through(frequencyGate, range),
    area: (range) => through(areaGate, range),
    power: (range) => through(powerGate, range),
    resistance: (range) => through(resistanceGate, range),
    number: (range) => through(numberGate, range),
    count: (range) => through(countGate, range),
    point: () => z.tuple([through(length, reach), through(length, reach)]),
    size: (range) => through(size, range),
  };
}

/** The schema of a gate: reads what is written, keeps it in range, and says in the JSON Schema what may be written. */
function through<T>(gate: Gate<T>, range: Range): ZodType<T> {
  return gate.takes.transform((written, issues): T => {
    const value = gate.read(written);
    if (value === undefined) {
      return refuse(issues, gate.problem, { found: text(asWritten(written)), allowed: list(gate.examples) });
    }
    if (gate.sizes(value).every((size) => size >= range.min && size <= range.max)) return value;
    const limits = { least: gate.fact(range.min), most: gate.fact(range.max) };
    return refuse(issues, outOfRange, { found: text(asWritten(written)), ...limits });
  });
}
