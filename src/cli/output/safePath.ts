/** The folder inside an output folder where the tool keeps its record of what it wrote. */
export const recordFolder = ".bafflewright";

// Names that Windows keeps for devices, whatever their ending. Source: Microsoft, "Naming Files, Paths, and
// Namespaces", section "Naming conventions".
const device = /^(con|prn|aux|nul|com[0-9¹²³]|lpt[0-9¹²³])(\.|$)/i;
// biome-ignore lint/suspicious/noControlCharactersInRegex: the same page forbids them.
const forbidden = /[\u0000-\u001f<>:"|?*\\]/;
const longestSegment = 120;

/**
 * Why a path may not be written in an output folder, or undefined where it may: it must stay inside the folder and
 * mean the same file on Linux, macOS and Windows. Paths use forward slashes and are relative to the folder.
 */
export function unsafePath(path: string): string | undefined {
  const segments = path.split("/");
  if (segments.some((segment) => segment === "" || segment === "." || segment === "..")) return "it leaves the folder";
  if (foldCase(segments[0]!) === recordFolder) return "it lies in the tool's own record";
  if (forbidden.test(path)) return "it has characters that some systems forbid";
  if (segments.some((segment) => device.test(segment))) return "it has a name that Windows keeps for a device";
  if (segments.some((segment) => /[. ]$/.test(segment))) return "a name in it ends in a dot or a space";
  if (segments.some((segment) => segment.length > longestSegment)) return "a name in it is too long";
  return undefined;
}

/** The same for two paths that a Windows or macOS disk would take for one file. */
export function foldCase(path: string): string {
  return path.normalize("NFC").toLowerCase();
}

/** The folders above a path, outermost first: "a/b/c.dxf" gives "a", "a/b". */
export function foldersAbove(path: string): readonly string[] {
  const segments = path.split("/");
  return segments.slice(1).map((_, index) => segments.slice(0, index + 1).join("/"));
}
