import type { Locate, Origin } from "../input/finding.js";

/** A path of keys as it stands in the file: `pieces.box.held by.straps`, `space.outline[2].at`. */
export function pathInFile(path: Origin["path"]): string {
  return path
    .map((key, index) => {
      if (typeof key === "number") return `[${key}]`;
      const shown = /[.[\]"]/.test(key) || key === "" ? JSON.stringify(key) : key;
      return index === 0 ? shown : `.${shown}`;
    })
    .join("");
}

/** `estate.yaml:14:15`, as editors and terminals take it; the file alone where nobody knows more. */
export function placeOf(at: Origin, locate: Locate | undefined): string {
  if (locate === undefined) return at.file;
  const { file, line, column } = locate(at);
  return `${file}:${line}:${column}`;
}
