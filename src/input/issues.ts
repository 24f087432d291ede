import { type ZodType, z } from "zod";
import { count, type Finding, type FindingDef, list, type Origin, type Outcome, raise, text } from "./finding.js";
import { nearest } from "./nearest.js";
import { asWritten, isRefusal } from "./refusal.js";
import {
  doesNotFit,
  missingKey,
  nothingWritten,
  notOneOf,
  tooFew,
  tooLarge,
  tooMany,
  tooSmall,
  unknownKey,
  wrongType,
} from "./schemaFindings.js";
import { factsIn } from "./words.js";

type Issue = z.core.$ZodIssue;
type Facts = Finding["facts"];
type Keys = readonly (string | number)[];
/** What is wrong at a place, before it is known whether anything was written there at all. */
type Complaint = {
  readonly def: FindingDef;
  readonly path: Keys;
  readonly token?: "key";
  readonly facts: Facts;
  readonly input: unknown;
  /** What may be written instead: words, examples, or a kind of value. */
  readonly allowed: readonly string[];
};

/** Reads plain data with a schema: the one place where what zod says becomes findings. `at`: where the data stands. */
export function readWith<T>(schema: ZodType<T>, data: unknown, at: Origin): Outcome<T> {
  const read = schema.safeParse(data, { reportInput: true, error: knownKeys });
  if (read.success) return { value: read.data, findings: [] };
  const complaints = read.error.issues.flatMap((issue) => complaintsOf(issue, []));
  return { value: undefined, findings: complaints.map((complaint) => findingOf(complaint, at)) };
}

/** An issue about unknown keys does not say which are known; only here is its schema at hand, and a message to tell it. */
function knownKeys(issue: z.core.$ZodRawIssue): string | undefined {
  const owner = issue.inst;
  return issue.code === "unrecognized_keys" && owner instanceof z.ZodObject
    ? JSON.stringify(Object.keys(owner.shape))
    : undefined;
}

function complaintsOf(issue: Issue, above: Keys): readonly Complaint[] {
  const path = [...above, ...issue.path.filter((step) => typeof step !== "symbol")];
  const base = { path, input: issue.input, facts: {}, allowed: [] };
  switch (issue.code) {
    case "unrecognized_keys":
      return issue.keys.map((key) => unknownKeyComplaint(key, issue.message, path));
    case "invalid_type":
      return [{ ...base, def: wrongType, allowed: [kindOf(issue.expected)] }];
    case "invalid_value":
      return [{ ...base, def: notOneOf, allowed: issue.values.map(String) }];
    case "too_small":
      return [{ ...base, ...tooSmallComplaint(issue) }];
    case "too_big":
      return [{ ...base, ...tooBigComplaint(issue) }];
    case "invalid_union":
      return unionComplaints(issue, path);
    case "custom":
      return [{ ...base, ...customComplaint(issue) }];
    default:
      return [{ ...base, def: doesNotFit }];
  }
}

function unknownKeyComplaint(key: string, message: string, path: Keys): Complaint {
  const known = parsedKeys(message);
  const close = nearest(key, known);
  const facts = { found: text(key), allowed: list(known), ...(close && { nearest: text(close) }) };
  return { def: unknownKey, path: [...path, key], token: "key", facts, input: key, allowed: known };
}

function parsedKeys(message: string): readonly string[] {
  return message.startsWith("[") ? z.array(z.string()).parse(JSON.parse(message)) : [];
}

function tooSmallComplaint(issue: z.core.$ZodIssueTooSmall): Pick<Complaint, "def" | "facts"> {
  const least = count(Number(issue.minimum));
  if (issue.origin === "number" || issue.origin === "int") return { def: tooSmall, facts: { least } };
  if (issue.input === "") return { def: nothingWritten, facts: {} };
  return { def: tooFew, facts: { least: text(`${issue.minimum} ${itemsOf(issue.origin)}`) } };
}

function tooBigComplaint(issue: z.core.$ZodIssueTooBig): Pick<Complaint, "def" | "facts"> {
  if (issue.origin === "number" || issue.origin === "int") {
    return { def: tooLarge, facts: { most: count(Number(issue.maximum)) } };
  }
  return { def: tooMany, facts: { most: text(`${issue.maximum} ${itemsOf(issue.origin)}`) } };
}

function itemsOf(origin: string): string {
  return origin === "string" ? "letters" : "values";
}

function customComplaint(issue: z.core.$ZodIssueCustom): Pick<Complaint, "def" | "facts" | "allowed"> {
  if (!isRefusal(issue.params)) return { def: doesNotFit, facts: { reason: text(issue.message) }, allowed: [] };
  const { finding, facts } = issue.params;
  return { def: finding, facts, allowed: facts.allowed?.unit === "list" ? facts.allowed.value : [] };
}

/**
 * A value that may have several forms. Where it has one of them but is wrong inside, that form's mistakes are the ones
 * to tell; where it has none, one complaint lists all that may be written.
 */
function unionComplaints(issue: z.core.$ZodIssueInvalidUnion, path: Keys): readonly Complaint[] {
  const forms = issue.errors.map((issues) => issues.flatMap((inner) => complaintsOf(inner, path)));
  const [closest] = forms.filter((form) => !form.some((one) => isOtherForm(one, path))).sort(byCount);
  if (closest !== undefined && issue.input !== undefined && issue.input !== null) return closest;
  const complaints = forms.flat().filter((one) => one.path.length === path.length);
  const allowed = [...new Set(complaints.flatMap((one) => one.allowed))];
  const words = complaints.filter((one) => one.def === notOneOf).flatMap((one) => one.allowed);
  const isMisspelt = typeof issue.input === "string" && nearest(issue.input, words) !== undefined;
  const readable = complaints.find((one) => one.def !== notOneOf && one.def !== wrongType);
  const def = isMisspelt || readable === undefined ? sharedDef(complaints) : readable.def;
  return [{ def, path, input: issue.input, facts: {}, allowed }];
}

function byCount(a: readonly unknown[], b: readonly unknown[]): number {
  return a.length - b.length;
}

/** Says that the value has another form altogether, and not that something in it or about its size is wrong. */
function isOtherForm({ def, path, allowed }: Complaint, at: Keys): boolean {
  return path.length === at.length && (def === wrongType || def === notOneOf || allowed.length > 0);
}

function sharedDef(complaints: readonly Complaint[]): FindingDef {
  return complaints.some((one) => one.def === notOneOf) ? notOneOf : wrongType;
}

function findingOf(complaint: Complaint, at: Origin): Finding {
  const { path, token, input } = complaint;
  const origin: Origin = { file: at.file, path: [...at.path, ...path], ...(token && { token }) };
  const key = origin.path.at(-1);
  const named = typeof key === "number" ? `item ${key + 1}` : (key ?? "the file");
  const allowed = complaint.allowed.length > 0 ? complaint.allowed : ["a value"];
  const { words, next } = complaint.def;
  // where nothing is listed and the words do not ask for it, there is nothing to choose from
  const toUse = complaint.allowed.length > 0 || input == null || factsIn(words + next).includes("allowed");
  const base = { key: text(named), found: text(asWritten(input)), ...(toUse && { allowed: list(allowed) }) };
  if (token === undefined && input === undefined) return raise(missingKey, { at: [origin], facts: base });
  if (token === undefined && input === null) return raise(nothingWritten, { at: [origin], facts: base });
  const close = typeof input === "string" && complaint.def === notOneOf ? nearest(input, allowed) : undefined;
  const hint: Facts = wantsQuotes(complaint) ? { hint: text("put it into quotes if it is meant as a text") } : {};
  const facts: Facts = { ...base, ...(close && { nearest: text(close) }), ...hint, ...complaint.facts };
  return raise(complaint.def, { at: [origin], facts });
}

/** A bare number or a bare true where a text belongs, as in `reference: 2024`. */
function wantsQuotes({ def, input, allowed }: Complaint): boolean {
  return def === wrongType && allowed.includes(kindOf("string")) && typeof input !== "object";
}

function kindOf(expected: string): string {
  return kinds[expected] ?? expected;
}

const kinds: Readonly<Record<string, string>> = {
  object: "keys with values below it",
  record: "names with values below them",
  array: "a list in square brackets",
  tuple: "a list in square brackets",
  string: "a text",
  number: "a number",
  int: "a whole number",
  boolean: "true or false",
};
