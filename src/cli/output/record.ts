import { createHash } from "node:crypto";
import { join } from "node:path";
import * as z from "zod";
import type { Disk } from "./disk.js";
import { recordFolder, unsafePath } from "./safePath.js";

/** What the tool wrote in a folder: each path with the fingerprint of its bytes. */
export type Manifest = ReadonlyMap<string, string>;

/** One file that a change puts in place, takes away, or both. Paths as in the manifest. */
export type Move = {
  readonly path: string;
  /** Fingerprint of what comes; absent: nothing does. */
  readonly comes?: string | undefined;
  /** Where what was there goes: into the record until the change is done, or beside under a name of the user's own. */
  readonly goes?: "old" | { readonly beside: string } | undefined;
};

/** A change that has begun, so that the next run can undo it. */
export type Journal = { readonly moves: readonly Move[] };

export const manifestPath = `${recordFolder}/manifest.json`;
export const journalPath = `${recordFolder}/journal.json`;

export function fingerprint(bytes: Uint8Array): string {
  return createHash("sha256").update(bytes).digest("hex");
}

const safe = z.string().refine((path) => unsafePath(path) === undefined);
const beside = z.string().refine((path) => unsafePath(withoutYours(path)) === undefined);
const manifestSchema = z.object({ version: z.literal(1), files: z.record(safe, z.string()) });
const journalSchema = z.object({
  version: z.literal(1),
  moves: z.array(
    z.object({
      path: safe.or(z.literal(manifestPath)),
      comes: z.string().optional(),
      goes: z.union([z.literal("old"), z.object({ beside })]).optional(),
    }),
  ),
});

export function manifestBytes(manifest: Manifest): Uint8Array {
  const files = Object.fromEntries([...manifest].sort(([a], [b]) => (a < b ? -1 : 1)));
  return json({ version: 1, files });
}

export function journalBytes(journal: Journal): Uint8Array {
  return json({ version: 1, moves: journal.moves });
}

/** An absent manifest is an empty one; undefined: it is there and cannot be read, so nobody knows whose files these are. */
export async function readManifest(disk: Disk, folder: string): Promise<Manifest | undefined> {
  const found = await readJson(disk, join(folder, manifestPath));
  if (found === absent) return new Map();
  const read = manifestSchema.safeParse(found);
  return read.success ? new Map(Object.entries(read.data.files)) : undefined;
}

/** "none" where no change is under way; undefined where there is a journal that cannot be read. */
export async function readJournal(disk: Disk, folder: string): Promise<Journal | "none" | undefined> {
  const found = await readJson(disk, join(folder, journalPath));
  if (found === absent) return "none";
  const read = journalSchema.safeParse(found);
  return read.success ? read.data : undefined;
}

/** Under what name a file of the user's is kept: "cut-list.csv.yours", "cut-list.csv.yours.2". */
export function yoursName(path: string, n: number): string {
  return n === 1 ? `${path}.yours` : `${path}.yours.${n}`;
}

function withoutYours(path: string): string {
  return path.replace(/\.yours(\.\d+)?$/, "");
}

const absent = Symbol("absent");

async function readJson(disk: Disk, path: string): Promise<unknown> {
  if ((await disk.kind(path)) !== "file") return absent;
  try {
    return JSON.parse(new TextDecoder().decode(await disk.read(path)));
  } catch (error) {
    if (error instanceof SyntaxError) return undefined;
    throw error;
  }
}

function json(value: unknown): Uint8Array {
  return new TextEncoder().encode(`${JSON.stringify(value, null, 1)}\n`);
}
