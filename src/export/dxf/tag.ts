import { formatNumber } from "../../input/number.js";

/** One group of a DXF file: what the value is, and the value as text. */
export type Tag = readonly [code: number, value: string];

/** A number to so many decimals: 9 for lengths (a millionth of a micron adds up to nothing), 12 for bulges. */
export const real = (code: number, value: number, decimals = 9): Tag => [code, formatNumber(value, decimals)];
export const whole = (code: number, value: number): Tag => [code, formatNumber(value, 0)];

/** A place: x under `code`, y under `code + 10`, and z = 0 under `code + 20`. */
export function place(code: number, x: number, y: number): readonly Tag[] {
  return [real(code, x), real(code + 10, y), real(code + 20, 0)];
}

export function section(name: string, tags: readonly Tag[]): readonly Tag[] {
  return [[0, "SECTION"], [2, name], ...tags, [0, "ENDSEC"]];
}

/**
 * The file: a line for each code and each value. Lines end in CR LF, as in the ASCII files that the format's publisher
 * describes (from memory); readers take LF too. All text is 7-bit (see `dxfText`), so the encoding cannot matter.
 */
export function fileOf(tags: readonly Tag[]): Uint8Array {
  const lines = tags.map(([code, value]) => `${String(code).padStart(3)}\r\n${value}\r\n`);
  return new TextEncoder().encode(lines.join(""));
}
