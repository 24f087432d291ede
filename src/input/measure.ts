import { dash, numberIn, numberPattern, oneOf, sign, space } from "./written.js";

/** A unit as people spell it, and how many of the inner unit it holds. */
export type Unit = { readonly spelled: readonly string[]; readonly holds: number };

/** A quantity that is typed with its unit behind it, such as a volume. */
export type Measure = {
  readonly units: readonly Unit[];
  /** What a number without a unit means, in inner units. Absent: the unit must be written. */
  readonly bare?: number;
};

/** The pattern of a whole text that gives such a quantity: sign, number, unit. Three groups. */
export function measurePattern(measure: Measure): string {
  const spelled = oneOf(measure.units.flatMap((unit) => unit.spelled));
  return `^${space}(${sign})(${numberPattern})${space}(${spelled})${measure.bare === undefined ? "" : "?"}${space}$`;
}

/** The quantity a text gives, in the inner unit; undefined where it cannot be read. */
export function readMeasure(measure: Measure, text: string): number | undefined {
  const match = new RegExp(measurePattern(measure)).exec(text);
  if (match === null) return undefined;
  const [, signed = "", number = "", spelling = ""] = match;
  const holds = spelling === "" ? measure.bare : unitSpelled(measure, spelling)?.holds;
  const value = holds === undefined ? Number.NaN : numberIn(signed + number) * holds;
  return Number.isFinite(value) ? value : undefined;
}

/** The pattern of two of them, "18 to 24 L": the unit may stand behind the second alone. Five groups. */
export function spanPattern(measure: Measure): string {
  const spelled = oneOf(measure.units.flatMap((unit) => unit.spelled));
  const bare = measure.bare === undefined ? "" : "?";
  return `^${space}(${numberPattern})${space}(${spelled})?${space}(?:${oneOf(["to"])}|${dash})${space}(${numberPattern})${space}(${spelled})${bare}${space}$`;
}

/** The two ends of a span such as "18 to 24 L" or "18-24 L", in the inner unit, as written. */
export function readSpan(measure: Measure, text: string): readonly [number, number] | undefined {
  const match = new RegExp(spanPattern(measure)).exec(text);
  if (match === null) return undefined;
  const [, low = "", lowUnit, high = "", highUnit = ""] = match;
  const ends = [readMeasure(measure, `${low} ${lowUnit ?? highUnit}`), readMeasure(measure, `${high} ${highUnit}`)];
  return ends[0] === undefined || ends[1] === undefined ? undefined : [ends[0], ends[1]];
}

function unitSpelled(measure: Measure, spelling: string): Unit | undefined {
  const wanted = spelling.toLowerCase();
  return measure.units.find((unit) => unit.spelled.some((known) => known.toLowerCase() === wanted));
}
