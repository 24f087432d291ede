import type { Finding, FindingDef, Quantity } from "./finding.js";
import { type Show, showQuantity } from "./show.js";

/**
 * A finding in words: what was found and what to do, with the facts filled in. A stretch in [square brackets] is left
 * out where one of its facts is missing ("[did you mean {nearest}? ]").
 *
 * Throws: where a fact outside brackets is missing, or the definition is another code's (our own mistakes).
 */
export function wordsOf(
  finding: Finding,
  def: FindingDef,
  show: Show,
): { readonly words: string; readonly next: string } {
  if (finding.code !== def.code) throw new Error(`words of ${def.code} asked for ${finding.code}`);
  return { words: filled(def.words, finding, show), next: filled(def.next, finding, show) };
}

function filled(pattern: string, finding: Finding, show: Show): string {
  const facts = (words: string) => words.replace(/\{([^}]*)\}/g, (_, name: string) => shown(name, finding, show));
  return pattern
    .split(/(\[[^\]]*\])/)
    .map((stretch) => {
      if (!stretch.startsWith("[")) return facts(stretch);
      const inside = stretch.slice(1, -1);
      return factsIn(inside).every((name) => factOf(name, finding) !== undefined) ? facts(inside) : "";
    })
    .join("");
}

/** The names of the facts that a sentence needs. */
export function factsIn(words: string): readonly string[] {
  return [...words.matchAll(/\{([^}]*)\}/g)].map((match) => match[1]!);
}

function shown(name: string, finding: Finding, show: Show): string {
  const fact = factOf(name, finding);
  if (fact === undefined) throw new Error(`finding ${finding.code} lacks the fact {${name}}`);
  return showQuantity(fact, show);
}

function factOf(name: string, finding: Finding): Quantity | undefined {
  return Object.hasOwn(finding.facts, name) ? finding.facts[name] : undefined;
}
