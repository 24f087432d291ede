/**
 * A place in a job or shop file as a path of keys, never a line: a new comment in the file must change no plan and no
 * cache. Only the report turns it into line and column. `token: "key"` points at the key itself, not its value.
 */
export type Origin = {
  readonly file: string;
  readonly path: readonly (string | number)[];
  readonly token?: "key";
  /** Only where a file cannot be read as YAML, so that it has no paths: how many characters stand before the place. */
  readonly offset?: number;
};

export type Locate = (at: Origin) => { readonly file: string; readonly line: number; readonly column: number };

/**
 * A fact with its unit, so that the report can show it in the reader's own. `list` is a choice, joined with commas and
 * "or"; `all` names things that belong together, joined with "and".
 */
export type Quantity =
  | { readonly unit: "mm" | "rad" | "L" | "kg" | "Hz" | "count"; readonly value: number }
  | { readonly unit: "text"; readonly value: string }
  | { readonly unit: "list" | "all"; readonly value: readonly string[] };

export type Severity = "error" | "warning" | "note";

/** What a check says: which rule, where in the file, on which parts, with which numbers. No words. */
export type Finding = {
  readonly code: string;
  readonly severity: Severity;
  readonly at: readonly Origin[];
  /** Ids of parts, features, axes or pieces. */
  readonly on: readonly string[];
  readonly facts: Readonly<Record<string, Quantity>>;
};

/**
 * The words of a finding, kept beside the check that raises it; the report and `explain` read the lists of these.
 * `words` and `next` are sentences without a full stop, with {fact} where a fact stands; a stretch in [square brackets]
 * is left out where one of its facts is missing. `explain` is a short paragraph.
 */
export type FindingDef = {
  readonly code: string;
  readonly severity: Severity;
  readonly words: string;
  readonly next: string;
  readonly explain: string;
};

/** What every stage returns: its value, if there is one, and what it found. */
export type Outcome<T> = { readonly value: T | undefined; readonly findings: readonly Finding[] };

/** The outcome of reading a file: even of one that cannot be used the places of its findings can be told. */
export type Located<T> = Outcome<T> & { readonly locate: Locate };

/** Makes a finding of its definition. */
export function raise(
  def: FindingDef,
  where: {
    readonly at?: readonly Origin[];
    readonly on?: readonly string[];
    readonly facts?: Readonly<Record<string, Quantity>>;
  } = {},
): Finding {
  return {
    code: def.code,
    severity: def.severity,
    at: where.at ?? [],
    on: where.on ?? [],
    facts: where.facts ?? {},
  };
}

export const mm = (value: number): Quantity => ({ unit: "mm", value });
export const radians = (value: number): Quantity => ({ unit: "rad", value });
export const litres = (value: number): Quantity => ({ unit: "L", value });
export const kilograms = (value: number): Quantity => ({ unit: "kg", value });
export const hertz = (value: number): Quantity => ({ unit: "Hz", value });
export const count = (value: number): Quantity => ({ unit: "count", value });
export const text = (value: string): Quantity => ({ unit: "text", value });
export const list = (value: readonly string[]): Quantity => ({ unit: "list", value });
export const all = (value: readonly string[]): Quantity => ({ unit: "all", value });

/** The place one or more keys below another. */
export function below(at: Origin, ...keys: readonly (string | number)[]): Origin {
  return { file: at.file, path: [...at.path, ...keys] };
}

export function hasErrors(findings: readonly Finding[]): boolean {
  return findings.some((finding) => finding.severity === "error");
}
