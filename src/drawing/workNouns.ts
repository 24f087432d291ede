import type { Cut, Feature } from "../model/part.js";

/** What there is to cut, counted: "1 opening, 18 holes, 1 groove on the back". The outline and marks go without saying. */
export function countedWork(features: readonly Feature[]): string {
  const counts = new Map<string, number>();
  for (const feature of features) {
    const noun = nounOf(feature);
    if (noun !== undefined) counts.set(noun, (counts.get(noun) ?? 0) + 1);
  }
  return [...counts].map(([noun, count]) => `${count} ${count === 1 ? noun : plural(noun)}`).join(", ");
}

function nounOf({ cut, side }: Feature): string | undefined {
  const noun = wordOf(cut);
  if (noun === undefined) return undefined;
  return typeof side === "object" ? `${noun} into an edge` : side === "back" ? `${noun} on the back` : noun;
}

function wordOf(cut: Cut): string | undefined {
  switch (cut.kind) {
    case "outline":
    case "mark":
      return undefined;
    case "pocket":
      return "recess";
    case "edge":
      return cut.form === "roundOver" ? "round-over" : cut.form;
    default:
      return cut.kind;
  }
}

function plural(noun: string): string {
  return noun.replace(/^\S+/, (word) => (/(s|ch)$/.test(word) ? `${word}es` : `${word}s`));
}
