import { type Document, isAlias, isCollection, isMap, isScalar, isSeq, type LineCounter, type Node } from "yaml";
import type { Locate } from "./finding.js";

/**
 * Where an origin stands in a document. A path whose last keys are missing gives the nearest parent's key; one that
 * leads through an alias is followed into what the alias repeats.
 */
export function locator(document: Document.Parsed | undefined, lines: LineCounter): Locate {
  return (at) => {
    const offset = at.offset ?? (document === undefined ? 0 : offsetOf(document, at.path, at.token === "key"));
    const place = lines.linePos(offset);
    return { file: at.file, line: Math.max(1, place.line), column: Math.max(1, place.col) };
  };
}

function offsetOf(document: Document.Parsed, path: readonly (string | number)[], wantsKey: boolean): number {
  let node: unknown = document.contents;
  let key: unknown = node;
  for (const step of path) {
    const next = stepInto(isAlias(node) ? node.resolve(document) : node, step);
    if (next === undefined) return startOf(key) ?? 0;
    key = next.key;
    node = next.value;
  }
  return (wantsKey ? undefined : startOf(node)) ?? startOf(key) ?? 0;
}

/** The pair or item below a node; an item of a list is its own key. */
function stepInto(
  node: unknown,
  step: string | number,
): { readonly key: unknown; readonly value: unknown } | undefined {
  if (isMap(node)) {
    const pair = node.items.find(({ key }) => isScalar(key) && key.value === String(step));
    return pair && { key: pair.key, value: pair.value };
  }
  if (!isSeq(node)) return undefined;
  const item = node.items[Number(step)];
  return item === undefined ? undefined : { key: item, value: item };
}

function startOf(node: unknown): number | undefined {
  return isRanged(node) ? node.range?.[0] : undefined;
}

function isRanged(node: unknown): node is Node {
  return isScalar(node) || isAlias(node) || isCollection(node);
}
