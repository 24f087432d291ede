import { type Document, isAlias, isMap, isScalar, isSeq, type LineCounter, type Node, type YAMLMap } from "yaml";
import { count, type Finding, type FindingDef, type Quantity, raise, text } from "./finding.js";
import { nearest } from "./nearest.js";
import { asWritten } from "./refusal.js";
import { duplicateKey, forbiddenKey, tooDeep, tooMuchRepeated, unknownAlias } from "./yamlFindings.js";

/** A job needs about six. */
export const mostLevels = 32;
/** Values in all, repeats counted each time: far above any job, far below what fills a memory. */
const mostValues = 200_000;

/** Names that objects bring along themselves, so that a look-up by them would find something that nobody wrote. */
const ownNames: ReadonlySet<string> = new Set(Object.getOwnPropertyNames(Object.prototype));

/**
 * The plain value of a document: maps, lists, texts, numbers. Findings at the offset of what cannot be taken: a key
 * twice, a key that is not a word, a repeat of nothing or without end. The caller uses the value only without findings.
 */
export function plainValue(
  document: Document.Parsed,
  file: string,
  lines: LineCounter,
): { readonly value: unknown; readonly findings: readonly Finding[] } {
  const findings: Finding[] = [];
  const anchors = new Map<string, Node>();
  const said = new Set<Node>();
  let values = 0;

  function refuse(def: FindingDef, node: Node | undefined, facts: Readonly<Record<string, Quantity>>): undefined {
    if (node !== undefined && said.has(node)) return undefined;
    if (node !== undefined) said.add(node);
    findings.push(raise(def, { at: [{ file, path: [], offset: node?.range?.[0] ?? 0 }], facts }));
    return undefined;
  }

  function plain(node: unknown, level: number): unknown {
    if (isAlias(node)) return repeated(node.source, node, level);
    if (isScalar(node)) return counted(node) ? node.value : undefined;
    if (!isMap(node) && !isSeq(node)) return null;
    if (level > mostLevels) return refuse(tooDeep, node, { most: count(mostLevels) });
    if (!counted(node)) return undefined;
    return isMap(node) ? plainMap(node, level) : node.items.map((item) => plain(item, level + 1));
  }

  /** Anchors are entered as they are met, so that an alias means the last one above it, as YAML has it. */
  function counted(node: Node): boolean {
    if ("anchor" in node && typeof node.anchor === "string") anchors.set(node.anchor, node);
    values += 1;
    if (values === mostValues + 1) refuse(tooMuchRepeated, undefined, { most: count(mostValues) });
    return values <= mostValues;
  }

  function repeated(name: string, at: Node, level: number): unknown {
    const marked = anchors.get(name);
    if (marked !== undefined) return level > mostLevels ? plain(marked, level) : plain(marked, level + 1);
    const close = nearest(name, [...anchors.keys()]);
    return refuse(unknownAlias, at, { found: text(name), ...(close && { nearest: text(close) }) });
  }

  function plainMap(map: YAMLMap, level: number): Readonly<Record<string, unknown>> {
    const firsts = new Map<string, Node>();
    const entries: [string, unknown][] = [];
    for (const { key, value } of map.items) {
      const name = isScalar(key) && typeof key.value === "string" ? key.value : undefined;
      if (name === undefined || name === "" || ownNames.has(name)) {
        refuse(forbiddenKey, isScalar(key) || isMap(key) || isSeq(key) ? key : map, { found: text(asWritten(name)) });
        continue;
      }
      const first = firsts.get(name);
      if (first === undefined && isScalar(key)) firsts.set(name, key);
      else if (isScalar(key)) refuse(duplicateKey, key, { found: text(name), first: count(lineOf(first)) });
      entries.push([name, plain(value, level + 1)]);
    }
    return Object.fromEntries(entries);
  }

  function lineOf(node: Node | undefined): number {
    return lines.linePos(node?.range?.[0] ?? 0).line;
  }

  return { value: plain(document.contents, 1), findings };
}
