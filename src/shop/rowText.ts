import { lengthText } from "./lengthText.js";

/** A value of a row, ready to be written: lengths are texts already. */
export type Value = string | number | boolean | readonly Value[] | { readonly [key: string]: Value | undefined };
/** A row of a table by its keys; what is undefined is not written. */
export type Row = { readonly [key: string]: Value | undefined };

/** The row with its lengths as one types them. */
export function lengthsIn<T extends Row, K extends keyof T & string>(row: T, keys: readonly K[]): Row {
  const written = keys.flatMap((key) => (typeof row[key] === "number" ? [[key, lengthText(row[key])] as const] : []));
  return { ...row, ...Object.fromEntries(written) };
}

/** A row in one line: "{kind: straight, d: 3}". */
export function flow(row: Row, more?: string): string {
  const pairs = Object.entries(row).flatMap(([key, value]) =>
    value === undefined ? [] : [`${key}: ${inline(value)}`],
  );
  return `{${[...pairs, ...(more === undefined ? [] : [more])].join(", ")}}`;
}

/** A value in one line. */
export function inline(value: Value): string {
  if (typeof value === "string") return plainText(value);
  if (typeof value !== "object") return String(value);
  return isList(value) ? `[${value.map(inline).join(", ")}]` : flow(value);
}

function isList(value: Value): value is readonly Value[] {
  return Array.isArray(value);
}

/** Bare where YAML reads it as the same text or number, else in quotes. */
export function plainText(text: string): string {
  return /^(-?[0-9.]|[A-Za-z])[A-Za-z0-9 ./+-]*$/.test(text) ? text : JSON.stringify(text);
}
