/** A reader of RFC 4180, a sign at a time: it shares nothing with the writer. Throws at what the RFC does not allow. */
export function readCsv(bytes: Uint8Array): readonly (readonly string[])[] {
  const text = new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);
  if (!text.startsWith("\ufeff")) throw new Error("no byte order mark");
  const rows: string[][] = [];
  let row: string[] = [];
  let at = 1;
  while (at < text.length) {
    const [cell, after] = text[at] === '"' ? quoted(text, at + 1) : bare(text, at);
    row.push(cell);
    if (text[after] === ",") at = after + 1;
    else if (text.startsWith("\r\n", after)) {
      rows.push(row);
      row = [];
      at = after + 2;
    } else throw new Error(`neither comma nor line end at ${after}`);
    if (row.length > 0 && at === text.length) throw new Error("ends within a row");
  }
  return rows;
}

function quoted(text: string, start: number): readonly [string, number] {
  let cell = "";
  for (let at = start; at < text.length; at++) {
    if (text[at] !== '"') cell += text[at];
    else if (text[at + 1] === '"') {
      cell += '"';
      at++;
    } else return [cell, at + 1];
  }
  throw new Error("a quote that does not end");
}

function bare(text: string, start: number): readonly [string, number] {
  let at = start;
  while (at < text.length && text[at] !== "," && text[at] !== "\r") {
    if (text[at] === '"' || text[at] === "\n") throw new Error(`${JSON.stringify(text[at])} outside quotes`);
    at++;
  }
  return [text.slice(start, at), at];
}
