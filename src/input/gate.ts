import { type FindingDef, hertz, kilograms, litres, mm, type Quantity, radians, text } from "./finding.js";
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
} from "./inputFindings.js";
import { bareLength, type LengthUnit, lengthPattern, parseLength, parseSize, sizePattern } from "./length.js";
import { type Measure, measurePattern, readMeasure, readSpan, spanPattern } from "./measure.js";
import { angle, area, frequency, mass, power, resistance, volume } from "./measures.js";
import { formatNumber } from "./number.js";

/** What a JSON Schema says of one form that a value may have. */
type Form = { readonly type: "number" | "integer" } | { readonly type: "string"; readonly pattern: string };

/** One kind of value that is typed: how it is read, what may be written, and how to speak of it when it is refused. */
export type Gate<T> = {
  readonly takes: Form[];
  read(written: unknown): T | undefined;
  /** The numbers of a value that a range holds for. */
  sizes(value: T): readonly number[];
  readonly problem: FindingDef;
  /** Ways to write it. */
  readonly examples: readonly string[];
  /** A number of it as a fact. */
  fact(value: number): Quantity;
};

export function lengthGate(unit: LengthUnit): Gate<number> {
  return {
    takes: [{ type: "number" }, { type: "string", pattern: lengthPattern(unit) }],
    read: (written) =>
      typeof written === "number" ? bareLength(written, unit) : textRead(written, (t) => parseLength(t, unit)),
    sizes: (value) => [value],
    problem: notALength,
    examples: ["18mm", "3/4in", '11 5/8"', "1'-2 1/2\""],
    fact: mm,
  };
}

export function sizeGate(unit: LengthUnit): Gate<readonly [number, number]> {
  return {
    takes: [{ type: "string", pattern: sizePattern(unit) }],
    read: (written) => textRead(written, (t) => parseSize(t, unit)),
    sizes: (value) => value,
    problem: notASize,
    examples: ["78 x 54", "3/4in x 2in"],
    fact: mm,
  };
}

export const volumeGate = measureGate(volume, notAVolume, ["20 L", "0.7 ft3", "1220 in3"], litres);
export const angleGate = measureGate(angle, notAnAngle, ["45", "45deg"], radians);
export const massGate = measureGate(mass, notAMass, ["12 kg", "26 lb"], kilograms);
export const frequencyGate = measureGate(frequency, notAFrequency, ["31", "31 Hz"], hertz);
export const areaGate = measureGate(area, notAnArea, ["346 cm2", "53.6 in2"], (value) => inUnit(value / 100, " cm2"));
export const powerGate = measureGate(power, notAPower, ["350", "350 W"], (value) => inUnit(value, " W"));
export const resistanceGate = measureGate(resistance, notAResistance, ["4", "4 ohm"], (value) => inUnit(value, " ohm"));

export const volumesGate: Gate<readonly [number, number]> = {
  takes: [
    { type: "string", pattern: spanPattern(volume) },
    { type: "string", pattern: measurePattern(volume) },
  ],
  read: (written) => textRead(written, (t) => inOrder(readSpan(volume, t)) ?? twice(readMeasure(volume, t))),
  sizes: (value) => value,
  problem: notAVolume,
  examples: ["18 to 24 L", "20 L", "0.6 to 0.8 ft3"],
  fact: litres,
};

export const numberGate: Gate<number> = {
  takes: [{ type: "number" }],
  read: (written) => (typeof written === "number" && Number.isFinite(written) ? written : undefined),
  sizes: (value) => [value],
  problem: notANumber,
  examples: ["0.52", "8"],
  fact: (value) => inUnit(value, ""),
};

export const countGate: Gate<number> = {
  ...numberGate,
  takes: [{ type: "integer" }],
  read: (written) => (Number.isInteger(written) ? numberGate.read(written) : undefined),
  problem: notAWholeNumber,
  examples: ["6", "8"],
};

function measureGate(
  measure: Measure,
  problem: FindingDef,
  examples: readonly string[],
  fact: (value: number) => Quantity,
): Gate<number> {
  const { bare } = measure;
  const bareForm: Form[] = bare === undefined ? [] : [{ type: "number" }];
  return {
    takes: [...bareForm, { type: "string", pattern: measurePattern(measure) }],
    read: (written) =>
      typeof written === "number"
        ? bare === undefined || !Number.isFinite(written)
          ? undefined
          : written * bare
        : textRead(written, (t) => readMeasure(measure, t)),
    sizes: (value) => [value],
    problem,
    examples,
    fact,
  };
}

function textRead<T>(written: unknown, read: (text: string) => T | undefined): T | undefined {
  return typeof written === "string" ? read(written) : undefined;
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
