import { type Document, LineCounter, parseDocument, type YAMLError } from "yaml";
import { count, type Finding, type FindingDef, type Located, list, raise, text } from "./finding.js";
import { locator } from "./locate.js";
import { asWritten } from "./refusal.js";
import {
  emptyFile,
  notAMap,
  notPlainText,
  severalDocuments,
  tabIndent,
  tooDeep,
  unreadableYaml,
} from "./yamlFindings.js";
import { mostLevels, plainValue } from "./yamlValue.js";

/** After this many, a broken line only repeats itself in its neighbours. */
const mostSyntaxFindings = 5;
/** Far above what texts in quotes can add to the levels of a job. */
const mostBrackets = 500;

/**
 * Reads a YAML file as plain values and the places where they stand. Every mistake is a finding with its place; the
 * value is undefined where there is any. Anchors and aliases are taken, other YAML refinements are not.
 */
export function readYaml(source: string, file: string): Located<{ readonly data: Readonly<Record<string, unknown>> }> {
  const written = source.replace(/^\ufeff/, "");
  const lines = new LineCounter();
  const refuseAt = (offset: number, def: FindingDef, facts: Finding["facts"] = {}) => {
    for (let i = 0; i < offset; i++) if (i === 0 || written[i - 1] === "\n") lines.addNewLine(i);
    return refused<never>(locator(undefined, lines), [raise(def, { at: [{ file, path: [], offset }], facts })]);
  };
  const garbage = written.search(/(?![\t\n\r])\p{Cc}|\ufffd/u);
  if (garbage >= 0) return refuseAt(garbage, notPlainText);
  const bracket = tooManyBrackets(written);
  if (bracket !== undefined) return refuseAt(bracket, tooDeep, { most: count(mostLevels) });
  // Unique keys are looked after by plainValue: the library compares each key with each.
  const document = parseDocument(written, {
    lineCounter: lines,
    prettyErrors: false,
    uniqueKeys: false,
    stringKeys: true,
    logLevel: "error",
  });
  const locate = locator(document, lines);
  const syntax = syntaxFindings(document, file);
  if (syntax.length > 0) return refused(locate, syntax);
  if (document.contents === null) return refused(locate, [raise(emptyFile, { at: [{ file, path: [] }] })]);
  const { value, findings } = plainValue(document, file, lines);
  if (findings.length > 0) return refused(locate, findings);
  if (value === null) return refused(locate, [raise(emptyFile, { at: [{ file, path: [] }] })]);
  if (!isMap(value)) {
    return refused(locate, [raise(notAMap, { at: [{ file, path: [] }], facts: { found: text(asWritten(value)) } })]);
  }
  return { value: { data: value }, findings: [], locate };
}

/** A plain map, as readYaml gives it. */
export function isMap(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function refused<T>(locate: Located<T>["locate"], findings: readonly Finding[]): Located<T> {
  return { value: undefined, findings, locate };
}

function syntaxFindings(document: Document.Parsed, file: string): readonly Finding[] {
  // Of the library's warnings only tags it does not know matter: their value is not what was meant.
  const tags = document.warnings.filter((warning) => warning.code === "TAG_RESOLVE_FAILED");
  const errors = [...document.errors, ...tags].sort((a, b) => a.pos[0] - b.pos[0]);
  return errors
    .filter((error, i) => i === 0 || error.pos[0] !== errors[i - 1]!.pos[0])
    .slice(0, mostSyntaxFindings)
    .map((error) => syntaxFinding(error, file));
}

function syntaxFinding(error: YAMLError, file: string): Finding {
  const at = [{ file, path: [], offset: error.pos[0] }];
  if (error.code === "TAB_AS_INDENT") return raise(tabIndent, { at });
  if (error.code === "MULTIPLE_DOCS") return raise(severalDocuments, { at });
  if (error.code === "RESOURCE_EXHAUSTION") return raise(tooDeep, { at, facts: { most: count(mostLevels) } });
  const [reason, ...allowed] = reasons[error.code] ?? ["this is not YAML", "a key, a colon, a space and a value"];
  return raise(unreadableYaml, { at, facts: { reason: text(reason), allowed: list(allowed) } });
}

/** Where brackets open within brackets beyond any sense; the library takes seconds over a file of nothing else. */
function tooManyBrackets(written: string): number | undefined {
  let open = 0;
  for (let i = 0; i < written.length; i++) {
    const sign = written[i];
    if (sign === "[" || sign === "{") open += 1;
    else if (sign === "]" || sign === "}") open -= 1;
    if (open > mostBrackets) return i;
  }
  return undefined;
}

/** The commonest of the library's errors in words of the bench: what is wrong, what to try. */
const reasons: Partial<Record<YAMLError["code"], readonly [string, ...string[]]>> = {
  MISSING_CHAR: ["something is missing", "close the quote or bracket", "put a colon and a space behind the key"],
  BAD_INDENT: ["the indentation does not fit", "indent what belongs together equally far, with spaces"],
  UNEXPECTED_TOKEN: [
    "something here does not belong",
    "close the bracket or quote before it",
    "put the value in quotes",
  ],
  MULTILINE_IMPLICIT_KEY: ["a key runs over two lines", "put a colon behind the key, on the same line"],
  BLOCK_AS_IMPLICIT_KEY: ["a second colon on the line", "put a value with a colon into quotes", "begin a new line"],
  BAD_SCALAR_START: ["a value cannot begin with this sign", "put the value into quotes"],
  BAD_DQ_ESCAPE: ["a backslash means something inside double quotes", "use single quotes", "write two backslashes"],
  NON_STRING_KEY: ["a key has to be a word", "put the key into quotes"],
  TAG_RESOLVE_FAILED: ["a word that begins with ! means something to YAML", "put the value into quotes"],
  BAD_ALIAS: ["a word that begins with * repeats something", "put the value into quotes"],
  BLOCK_IN_FLOW: ["lines with dashes or keys stand inside brackets", "close the bracket first"],
};
