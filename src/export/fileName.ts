/** Device names that Windows keeps for itself, with or without an extension (Microsoft, "Naming Files", from memory). */
const reserved = /^(con|prn|aux|nul|com\d|lpt\d|conin|conout)$/i;

/** In code points: at most 200 bytes of UTF-8, which leaves room for a folder's own suffixes under 255. */
const longest = 50;

/**
 * A name without folders and extension that Linux, macOS and Windows all take: letters and digits of any script, with
 * "-" for everything else ("box/block.2" becomes "box-block-2"). Names that were different may come out the same: see
 * `uniqueFileNames`.
 */
export function safeFileName(text: string): string {
  const words = text.normalize("NFKC").replace(/[^\p{L}\p{M}\p{N}_]+/gu, "-");
  const short = trimDashes([...trimDashes(words)].slice(0, longest).join(""));
  if (short === "") return "unnamed";
  return reserved.test(short) ? `${short}-` : short;
}

/**
 * Safe names in the order given, no two alike even where a file system ignores case: the second "Top" beside "top"
 * becomes "Top-2".
 */
export function uniqueFileNames(names: readonly string[]): readonly string[] {
  const taken = new Set<string>();
  return names.map((name) => {
    const safe = safeFileName(name);
    let free = safe;
    for (let n = 2; taken.has(foldCase(free)); n++) free = `${safe}-${n}`;
    taken.add(foldCase(free));
    return free;
  });
}

/** Upper first: it takes the sharp s and the two sigmas together, as a file system that ignores case may do. */
function foldCase(name: string): string {
  return name.toUpperCase().toLowerCase();
}

function trimDashes(text: string): string {
  return text.replace(/^-+|-+$/g, "");
}
