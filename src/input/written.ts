// How numbers and units are written on the bench. One pattern both checks the text and stands in the JSON Schema, so
// it keeps to what every regular-expression dialect knows: character classes and plain groups, no flags.

/** Space, tab and the narrow or unbreakable spaces that word processors put before a unit. */
export const space = "[ \t\u00a0\u2009\u202f]*";

/** Hyphen, dashes and the minus sign. */
export const dash = "[-\u2010\u2011\u2013\u2212]";
const slash = "[/\u2044]";
const vulgar = "[\u00bc-\u00be\u2150-\u215e]";
const fraction = `[0-9]+${slash}[1-9][0-9]*|${vulgar}`;
const decimal = "[0-9]+(?:[.][0-9]+|,[0-9][0-9]?)?|[.][0-9]+";
/** Whole and fraction stand apart ("11 5/8", "11-5/8"), except before a ready-made fraction sign. */
const mixed = `[0-9]+(?:[ \u00a0\u2009\u202f]+|${dash})(?:${fraction})|[0-9]+${vulgar}`;

/** A plus or minus sign, or nothing. */
export const sign = "[-+\u2212]?";
/** `18`, `29.5`, `29,5` (a comma before one or two digits), `.5`. */
export const decimalPattern = decimal;
/** Also `3/4` and `11 5/8`, with the signs for fractions. */
export const numberPattern = `${mixed}|${fraction}|${decimal}`;
/** A pattern that takes a word in capitals or not; a full stop in it is only itself. */
export function anyCase(word: string): string {
  return word.replace(/[a-z]/gi, (letter) => `[${letter.toLowerCase()}${letter.toUpperCase()}]`).replace(/\./g, "[.]");
}

/** The longest spelling first, so that "m" does not take the start of "mm" where nothing else decides. */
export function oneOf(spellings: readonly string[]): string {
  return [...spellings]
    .sort((a, b) => b.length - a.length)
    .map(anyCase)
    .join("|");
}

/** The value of a text that `numberPattern` took, with its sign if it has one. */
export function numberIn(text: string): number {
  const plain = text
    .replace(/[\u00bc-\u00be\u2150-\u215e]/g, (sign) => ` ${sign.normalize("NFKC")}`)
    .replace(/\u2044/g, "/")
    .replace(/[\u2010\u2011\u2013\u2212]/g, "-")
    .replace(",", ".")
    .trim();
  const size = plain
    .replace(/^[-+]\s*/, "")
    .split(/[\s-]+/)
    .reduce((sum, piece) => sum + (piece.includes("/") ? quotient(piece) : Number(piece)), 0);
  return plain.startsWith("-") ? -size : size;
}

function quotient(text: string): number {
  const [above, below] = text.split("/");
  return Number(above) / Number(below);
}
