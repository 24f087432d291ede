/** Signs a line may hold: 256 in RS-274/NGC (NISTIR 6556, 3.3.1, from memory), fewer on small controllers. */
const longest = 100;

/**
 * Text as comment lines, each in round brackets and never over a hundred signs. Nothing in it can end the comment, start
 * another line, be taken as a word of the program or as a command that a controller picks out of the stream:
 *
 *   "top)M3S9(\n%"  ->  "(top M3S9)"   only letters, digits, spaces and . , : + - = / ' are kept
 *   "~ ! ?"         ->  nothing        some controllers act on these wherever they stand (common practice, no source)
 *   "é ß ⌀"         ->  "e ss dia"     ASCII alone
 *
 * `first` opens each line, a word of ours: so a name can never open a comment that means something, as "(MSG," does.
 */
export function comments(first: string, text: string): readonly string[] {
  return wrapped(plain(text), longest - first.length - 3).map((line) => `(${first} ${line})`);
}

/** The words that a controller shows its reader while it waits (NISTIR 6556, 3.3.4: "MSG,"). */
export function message(text: string): string {
  return `(MSG, ${plain(text)
    .slice(0, longest - 7)
    .trim()})`;
}

const signs: Readonly<Record<string, string>> = {
  "⌀": "dia ",
  ß: "ss",
  "×": "x",
  "–": "-",
  "—": "-",
  "’": "'",
  "½": " 1/2",
};

function plain(text: string): string {
  return [...text]
    .map((sign) => signs[sign] ?? sign)
    .join("")
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .replace(/[^A-Za-z0-9 .,:+=/'-]+/g, " ")
    .replace(/ +/g, " ")
    .trim();
}

function wrapped(text: string, width: number): readonly string[] {
  const lines: string[] = [];
  for (const word of text.split(" ").flatMap((each) => each.match(new RegExp(`.{1,${width}}`, "g")) ?? [])) {
    const last = lines[lines.length - 1];
    if (last !== undefined && last.length + 1 + word.length <= width) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}
