/** Lines are no longer than this where an object or array can stand on one. */
const width = 120;

/**
 * JSON that reads well and compares well: two spaces, what fits stays on one line, keys of every inner object sorted so
 * that the text follows from the data alone. Those of the outermost keep their order.
 */
export function printJson(value: Readonly<Record<string, unknown>>): string {
  const lines = Object.entries(value)
    .filter(([, inner]) => inner !== undefined)
    .map(([key, inner]) => `  ${JSON.stringify(key)}: ${print(inner, 2)}`);
  return `{\n${lines.join(",\n")}\n}\n`;
}

function print(value: unknown, indent: number): string {
  if (value === null || typeof value !== "object") return JSON.stringify(value) ?? "null";
  const items = Array.isArray(value)
    ? value.map((inner) => print(inner, indent + 2))
    : sortedEntries(value).map(([key, inner]) => `${JSON.stringify(key)}: ${print(inner, indent + 2)}`);
  const [open, close] = Array.isArray(value) ? ["[", "]"] : ["{", "}"];
  const line = `${open}${items.join(", ")}${close}`;
  if (line.length + indent <= width && !line.includes("\n")) return line;
  const pad = " ".repeat(indent + 2);
  return `${open}\n${items.map((item) => pad + item).join(",\n")}\n${" ".repeat(indent)}${close}`;
}

function sortedEntries(value: object): readonly (readonly [string, unknown])[] {
  return Object.entries(value)
    .filter(([, inner]) => inner !== undefined)
    .sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0));
}
