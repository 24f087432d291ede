/** A key that a job file may have, with the path that leads to it, names chosen by the user in <angle brackets>. */
export type JobKey = {
  readonly name: string;
  readonly path: string;
  /** What may stand behind it, in words. */
  readonly takes: string;
  readonly description: string | undefined;
};

type Schema = Readonly<Record<string, unknown>>;

/** Deeper than any job; a schema that refers to itself ends here. */
const deepest = 12;

/** Every key that a JSON Schema names, each path once. */
export function keysOf(schema: unknown): readonly JobKey[] {
  if (!isSchema(schema)) return [];
  const found = new Map<string, JobKey>();
  for (const key of keysBelow(schema, schema, "", deepest)) {
    const known = found.get(key.path);
    // Kinds of pieces share keys: what each takes is told once.
    if (known === undefined) found.set(key.path, key);
    else if (!known.takes.split("; or ").includes(key.takes)) {
      found.set(key.path, { ...known, takes: `${known.takes}; or ${key.takes}` });
    }
  }
  return [...found.values()];
}

function keysBelow(root: Schema, written: Schema, path: string, deep: number): readonly JobKey[] {
  if (deep === 0) return [];
  const schema = resolved(root, written);
  const named = Object.entries(isSchema(schema["properties"]) ? schema["properties"] : {});
  const own = named.flatMap(([name, below]) => {
    if (!isSchema(below)) return [];
    const at = path === "" ? name : `${path}.${name}`;
    const target = resolved(root, below);
    const description = asText(below["description"]) ?? asText(target["description"]);
    return [{ name, path: at, takes: takes(root, target), description }, ...keysBelow(root, target, at, deep - 1)];
  });
  const open = schema["additionalProperties"];
  const item = schema["items"];
  return [
    ...own,
    ...(isSchema(open) ? keysBelow(root, open, `${path}.<name>`, deep - 1) : []),
    ...(isSchema(item) ? keysBelow(root, item, `${path}[]`, deep - 1) : []),
    ...branches(schema).flatMap((branch) => keysBelow(root, branch, path, deep - 1)),
  ];
}

function takes(root: Schema, written: Schema): string {
  const schema = resolved(root, written);
  if (schema["const"] !== undefined) return String(schema["const"]);
  if (Array.isArray(schema["enum"])) return schema["enum"].map(String).join(", ");
  const examples = schema["examples"];
  if (Array.isArray(examples) && examples.length > 0) return `a value such as ${examples.map(String).join(", ")}`;
  const either = branches(schema).map((branch) => takes(root, branch));
  if (either.length > 0) return [...new Set(either)].join("; or ");
  const type = asText(schema["type"]);
  return words[type ?? ""] ?? type ?? "any value";
}

const words: Readonly<Record<string, string>> = {
  object: "keys of its own",
  array: "a list",
  string: "text",
  number: "a number",
  integer: "a whole number",
  boolean: "true or false",
};

function branches(schema: Schema): readonly Schema[] {
  return ["anyOf", "oneOf", "allOf"].flatMap((key) => {
    const of = schema[key];
    return Array.isArray(of) ? of.filter(isSchema) : [];
  });
}

/** "#/$defs/length", followed. */
function resolved(root: Schema, schema: Schema): Schema {
  const reference = asText(schema["$ref"]);
  if (!reference?.startsWith("#")) return schema;
  let target: unknown = root;
  for (const key of reference.split("/").slice(1)) target = isSchema(target) ? target[key] : undefined;
  return isSchema(target) ? target : schema;
}

function isSchema(value: unknown): value is Schema {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function asText(value: unknown): string | undefined {
  return typeof value === "string" ? value : undefined;
}
