import { type ZodType, z } from "zod";
import {
  notAFrequency,
  notALength,
  notAMass,
  notANumber,
  notAnAngle,
  notAnArea,
  notAPower,
  notAResistance,
  notASize,
  notAVolume,
  notAWholeNumber,
} from "./doorFindings.js";
import { type FindingDef, hertz, kilograms, litres, mm, type Quantity, radians, text } from "./finding.js";
import { bareLength, type LengthUnit, lengthPattern, parseLength, parseSize, sizePattern } from "./length.js";
import { type Measure, measurePattern, readMeasure, readSpan, spanPattern } from "./measure.js";
import { angle, area, frequency, mass, power, resistance, volume } from "./measures.js";
import { formatNumber } from "./number.js";

/** What a JSON Schema says of one form that a value may have. */
type Form = { readonly type: "number" | "integer" } | { readonly type: "string"; readonly pattern: string };

/** The input side of a gate: any value, and in the JSON Schema a named definition of what may be written. */
function mayBe(id: string, description: string, examples: readonly string[], anyOf: Form[]): ZodType<unknown> {
  return z.unknown().meta({ id, description, ...(examples.length > 0 && { examples: [...examples] }), anyOf });
}

/** One kind of value that is typed: how it is read, what may be written, and how to speak of it when it is refused. */
export type Gate<T> = {
  /** Takes anything; what may be written stands in its JSON Schema. */
  readonly takes: ZodType<unknown>;
  read(value: unknown): T | undefined;
  /** The numbers of a value that a range holds for. */
  sizes(value: T): readonly number[];
  readonly problem: FindingDef;
  /** Ways to write it. */
  readonly examples: readonly string[];
  /** A number of it as a fact. */
  fact(value: number): Quantity;
};

const lengthExamples = ["18mm", "3/4in", '11 5/8"', "1'-2 1/2\""];
const sizeExamples = ["78 x 54", "3/4in x 2in"];
const volumesExamples = ["18 to 24 L", "20 L", "0.6 to 0.8 ft3"];

export const lengthGates: Readonly<Record<LengthUnit, Gate<number>>> = {
  mm: lengthGate("mm"),
  cm: lengthGate("cm"),
  in: lengthGate("in"),
};

export const sizeGates: Readonly<Record<LengthUnit, Gate<readonly [number, number]>>> = {
  mm: sizeGate("mm"),
  cm: sizeGate("cm"),
  in: sizeGate("in"),
};

function lengthGate(unit: LengthUnit): Gate<number> {
  return {
    takes: mayBe("length", "A length. A bare number is in the file's units.", lengthExamples, [
      { type: "number" },
      { type: "string", pattern: lengthPattern(unit) },
    ]),
    read: (value) =>
      typeof value === "number" ? bareLength(value, unit) : textRead(value, (t) => parseLength(t, unit)),
    sizes: (value) => [value],
    problem: notALength,
    examples: lengthExamples,
    fact: mm,
  };
}

function sizeGate(unit: LengthUnit): Gate<readonly [number, number]> {
  return {
    takes: mayBe("size", "Two lengths, the one across first.", sizeExamples, [
      { type: "string", pattern: sizePattern(unit) },
    ]),
    read: (value) => textRead(value, (t) => parseSize(t, unit)),
    sizes: (value) => value,
    problem: notASize,
    examples: sizeExamples,
    fact: mm,
  };
}

export const volumeGate = measureGate(
  "volume",
  "A volume with its unit: 20 L, 0.7 ft3.",
  volume,
  notAVolume,
  ["20 L", "0.7 ft3", "1220 in3"],
  litres,
);
export const angleGate = measureGate(
  "angle",
  "An angle in degrees: 45, 45deg.",
  angle,
  notAnAngle,
  ["45", "45deg"],
  radians,
);
export const massGate = measureGate(
  "mass",
  "A weight with its unit: 12 kg, 26 lb.",
  mass,
  notAMass,
  ["12 kg", "26 lb"],
  kilograms,
);
export const frequencyGate = measureGate(
  "frequency",
  "A frequency: 31, 31 Hz.",
  frequency,
  notAFrequency,
  ["31", "31 Hz"],
  hertz,
);
export const areaGate = measureGate(
  "area",
  "An area with its unit: 346 cm2, 53.6 in2.",
  area,
  notAnArea,
  ["346 cm2", "53.6 in2"],
  (value) => inUnit(value / 100, " cm2"),
);
export const powerGate = measureGate("power", "A power.", power, notAPower, ["350", "350 W"], (value) =>
  inUnit(value, " W"),
);
export const resistanceGate = measureGate(
  "resistance",
  "An impedance: 4, 4 ohm.",
  resistance,
  notAResistance,
  ["4", "4 ohm"],
  (value) => inUnit(value, " ohm"),
);

export const volumesGate: Gate<readonly [number, number]> = {
  takes: mayBe("volumes", "A volume or a range of them.", volumesExamples, [
    { type: "string", pattern: spanPattern(volume) },
    { type: "string", pattern: measurePattern(volume) },
  ]),
  read: (value) => textRead(value, (t) => inOrder(readSpan(volume, t)) ?? twice(readMeasure(volume, t))),
  sizes: (value) => value,
  problem: notAVolume,
  examples: volumesExamples,
  fact: litres,
};

export const numberGate: Gate<number> = {
  takes: mayBe("number", "A number without a unit.", [], [{ type: "number" }]),
  read: (value) => (typeof value === "number" && Number.isFinite(value) ? value : undefined),
  sizes: (value) => [value],
  problem: notANumber,
  examples: ["0.52", "8"],
  fact: (value) => inUnit(value, ""),
};

export const countGate: Gate<number> = {
  ...numberGate,
  takes: mayBe("count", "A whole number.", [], [{ type: "integer" }]),
  read: (value) => (Number.isInteger(value) ? numberGate.read(value) : undefined),
  problem: notAWholeNumber,
  examples: ["6", "8"],
};

function measureGate(
  id: string,
  description: string,
  measure: Measure,
  problem: FindingDef,
  examples: readonly string[],
  fact: (value: number) => Quantity,
): Gate<number> {
  const { bare } = measure;
  const bareForm: Form[] = bare === undefined ? [] : [{ type: "number" }];
  return {
    takes: mayBe(id, description, examples, [...bareForm, { type: "string", pattern: measurePattern(measure) }]),
    read: (value) =>
      typeof value === "number"
        ? bare === undefined || !Number.isFinite(value)
          ? undefined
          : value * bare
        : textRead(value, (t) => readMeasure(measure, t)),
    sizes: (value) => [value],
    problem,
    examples,
    fact,
  };
}

function textRead<T>(value: unknown, read: (text: string) => T | undefined): T | undefined {
  return typeof value === "string" ? read(value) : undefined;
}

function inUnit(value: number, unit: string): Quantity {
  return text(`${formatNumber(value, 3)}${unit}`);
}

function inOrder(span: readonly [number, number] | undefined): readonly [number, number] | undefined {
  return span && (span[0] <= span[1] ? span : [span[1], span[0]]);
}

function twice(value: number | undefined): readonly [number, number] | undefined {
  return value === undefined ? undefined : [value, value];
}
