import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import type { OutputFile } from "../../../src/model/build.js";

/** Everything in a folder: files as text, folders as "/". */
export function treeOf(folder: string): Record<string, string> {
  const entries = readdirSync(folder, { recursive: true, withFileTypes: true });
  return Object.fromEntries(
    entries
      .map((entry): [string, string] => {
        const full = join(entry.parentPath, entry.name);
        const path = full.slice(folder.length + 1).replaceAll("\\", "/");
        return [path, entry.isDirectory() ? "/" : readFileSync(full, "latin1")];
      })
      .sort(([a], [b]) => (a < b ? -1 : 1)),
  );
}

export function file(path: string, words: string): OutputFile {
  return { path, bytes: new TextEncoder().encode(words) };
}

export function put(folder: string, path: string, words: string): void {
  mkdirSync(dirname(join(folder, path)), { recursive: true });
  writeFileSync(join(folder, path), words);
}

/** A new empty folder for one test, removed after it. */
export async function inScratch<T>(work: (folder: string) => Promise<T>): Promise<T> {
  const folder = mkdtempSync(join(tmpdir(), "bafflewright-"));
  try {
    return await work(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
