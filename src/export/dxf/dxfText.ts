/** The longest string an R12 reader takes is 255 bytes (DXF reference, from memory). */
const longest = 250;

/**
 * Text for a TEXT entity or a comment: one line, 7-bit, at most 250 bytes. Nothing in it can end the line, start a
 * control code of the format or turn the reading direction.
 *
 *   "%%c"   ->  "% %c"     a reader would show a diameter sign
 *   "\U+"   ->  "\ U+"     a reader would take the digits that follow as a character
 *   "^J"    ->  "^ J"      a reader would take it as a line feed
 *   "⌀ 50°" ->  "%%c 50%%d", the format's own signs
 *   "é ß"   ->  "e ss"     many R12 readers know only the letters of ASCII
 *   "Ω"     ->  "\U+03A9", the format's way to write any other sign; one without a four-digit code becomes "?"
 */
export function dxfText(text: string): string {
  const oneLine = text
    .replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]+/gu, " ")
    .replace(/%(?=%)/g, "% ")
    .replace(/\\(?=[UM]\+)/gi, "\\ ")
    .replace(/\^/g, "^ ")
    .trim();
  let short = "";
  for (const sign of oneLine) {
    const written = signs[sign] ?? escaped(sign);
    if (short.length + written.length > longest) break;
    short += written;
  }
  return short;
}

/** Control codes of TEXT for diameter, degree and plus-minus; letters that do not fall apart into one of ASCII. */
const signs: Readonly<Record<string, string>> = {
  "⌀": "%%c",
  "°": "%%d",
  "±": "%%p",
  "×": "x",
  "–": "-",
  "—": "-",
  "’": "'",
  "‘": "'",
  "“": '"',
  "”": '"',
  ß: "ss",
  Æ: "AE",
  æ: "ae",
  Œ: "OE",
  œ: "oe",
  Ø: "O",
  ø: "o",
  Ł: "L",
  ł: "l",
};

function escaped(sign: string): string {
  const plain = sign.normalize("NFKD").replace(/\p{M}/gu, "");
  if (/^[ -~]+$/.test(plain)) return plain;
  const code = sign.codePointAt(0)!;
  if (code > 0xffff || (code >= 0xd800 && code <= 0xdfff)) return "?";
  return `\\U+${code.toString(16).toUpperCase().padStart(4, "0")}`;
}
