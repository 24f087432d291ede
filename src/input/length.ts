import { dash, decimalPattern, numberIn, numberPattern, oneOf, sign, space } from "./written.js";

/** What a bare number means in a job file. */
export const lengthUnits = ["mm", "cm", "in"] as const;
export type LengthUnit = (typeof lengthUnits)[number];

const inch = 25.4;
const foot = 304.8;
const bareHolds: Readonly<Record<LengthUnit, number>> = { mm: 1, cm: 10, in: inch };

// Straight, curly and doubled marks, primes: whatever a keyboard, a phone or a word processor puts there.
const inchMark = `["\u201c\u201d\u2033]|'{2}|\u2018{2}|\u2019{2}|\u2032{2}|${oneOf(["in", "in.", "inch", "inches"])}`;
const footMark = `['\u2018\u2019\u2032]|${oneOf(["ft", "ft.", "foot", "feet"])}`;
const units: readonly { readonly spelled: string; readonly holds: number }[] = [
  { spelled: oneOf(["mm"]), holds: 1 },
  { spelled: oneOf(["cm"]), holds: 10 },
  { spelled: oneOf(["m"]), holds: 1000 },
  { spelled: inchMark, holds: inch },
  { spelled: footMark, holds: foot },
];

/** A length that says its unit. Four groups: number and unit, feet and inches. */
const marked = [
  `(${numberPattern})${space}(${units.map((unit) => unit.spelled).join("|")})`,
  `([0-9]+)${space}(?:${footMark})${space}(?:${dash})?${space}(${numberPattern})${space}(?:${inchMark})?`,
].join("|");

/**
 * A number without a unit. A fraction means something only where bare numbers are inches: "3/4" in a millimetre job
 * is far more likely a forgotten inch sign than three quarters of a millimetre.
 */
const bareNumber = (unit: LengthUnit) => (unit === "in" ? numberPattern : decimalPattern);

/** The pattern of a text that parseLength reads. */
export function lengthPattern(unit: LengthUnit): string {
  return `^${space}(${sign})(?:(${bareNumber(unit)})|${marked})${space}$`;
}

/** The pattern of two lengths with an x between them; where only the second has a unit it stands for both. */
export function sizePattern(unit: LengthUnit): string {
  const one = `(?:${bareNumber(unit)}|${marked})`;
  return `^${space}(?:${one}${space}[xX\u00d7]${space}${one}|(?:${numberPattern})${space}[xX\u00d7]${space}(?:${marked}))${space}$`;
}

const patterns: Readonly<Record<LengthUnit, RegExp>> = {
  mm: new RegExp(lengthPattern("mm")),
  cm: new RegExp(lengthPattern("cm")),
  in: new RegExp(lengthPattern("in")),
};

/**
 * A length as a fabricator types it, mm: `18`, `18mm`, `3/4in`, `11 5/8"`, `1'-2 1/2"`, `29.5cm`, `2 ft`; with the
 * signs for fractions, curly quotes and long dashes too. A bare number is in `unit`. Undefined: not a length.
 */
export function parseLength(text: string, unit: LengthUnit): number | undefined {
  const match = patterns[unit].exec(text);
  if (match === null) return undefined;
  const [, signed, bare, number, mark, feet, inches] = match;
  const size =
    scaled(bare, bareHolds[unit]) + scaled(number, holdsOf(mark)) + scaled(feet, foot) + scaled(inches, inch);
  return settled(signed === "" || signed === "+" ? size : 0 - size);
}

/** A length given as a bare number, mm; undefined where it is not finite. */
export function bareLength(number: number, unit: LengthUnit): number | undefined {
  return settled(number * bareHolds[unit]);
}

/** A size as a fabricator types it, `78 x 54` or `3/4in x 2in`, mm. Undefined: not a size. */
export function parseSize(text: string, unit: LengthUnit): readonly [number, number] | undefined {
  if (!new RegExp(sizePattern(unit)).test(text)) return undefined;
  const [first = "", second = ""] = text.split(/[xX\u00d7]/);
  const unmarked = new RegExp(`^${space}(?:${numberPattern})${space}$`).test(first);
  const sides = [parseLength(unmarked ? first + markOf(second) : first, unit), parseLength(second, unit)];
  return sides[0] === undefined || sides[1] === undefined ? undefined : [sides[0], sides[1]];
}

/** What stands behind the number: "mm", an inch sign, nothing. */
function markOf(length: string): string {
  return new RegExp(`^${space}(?:${numberPattern})([^0-9]*)$`).exec(length)?.[1] ?? "";
}

function scaled(number: string | undefined, holds: number): number {
  return number === undefined ? 0 : numberIn(number) * holds;
}

function holdsOf(mark: string | undefined): number {
  return units.find((unit) => mark !== undefined && new RegExp(`^(?:${unit.spelled})$`).test(mark))?.holds ?? 0;
}

/** Rounded to a millionth of a micrometre, so that 3/4in and 19.05 are one number and compare as equal. */
function settled(mm: number): number | undefined {
  return Math.abs(mm) < 1e9 ? Math.round(mm * 1e9) / 1e9 + 0 : undefined;
}
