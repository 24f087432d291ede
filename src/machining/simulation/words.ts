/** One word of a line: a letter and its number. */
export type Word = { readonly letter: string; readonly value: number };

/** A line taken apart; `bad`: what is no word, where there is such a thing. */
export type WordsOfLine = { readonly words: readonly Word[]; readonly bad: string | undefined };

const longest = 256;

/**
 * A line of RS-274/NGC as its words; comments in round brackets are left out. Stricter than most controllers: nothing
 * but words and comments may stand on a line of at most 256 signs.
 *
 * Source: NISTIR 6556, 3.3 (form of a line).
 */
export function wordsOf(line: string): WordsOfLine {
  const words: Word[] = [];
  if (line.length > longest) return { words, bad: `${line.length} signs` };
  if (/[^\x20-\x7e]/.test(line)) return { words, bad: "a sign that is not ASCII" };
  let rest = line;
  while (rest.trim() !== "") {
    const comment = /^\s*\([^()]*\)/.exec(rest);
    const word = /^\s*([A-Z])\s*([-+]?(?:\d+\.?\d*|\.\d+))(?![\d.])/.exec(rest);
    const match = comment ?? word;
    if (match === null) return { words, bad: rest.trim() };
    if (word) words.push({ letter: word[1]!, value: Number(word[2]) });
    rest = rest.slice(match[0].length);
  }
  return { words, bad: undefined };
}
