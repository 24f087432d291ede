import { dirname, join } from "node:path";
import type { OutputFile } from "../../model/build.js";
import type { Disk } from "./disk.js";
import { fingerprint, type Manifest, type Move, manifestBytes, manifestPath, yoursName } from "./record.js";
import { foldCase, foldersAbove } from "./safePath.js";

/** Why nothing may be written at a path. */
export type Obstacle = { readonly path: string; readonly why: "not ours" | "link" | "folder" | "no folder" };

export type Change = {
  /** Takings first, then puttings, the manifest last. Empty where the folder is already as it should be. */
  readonly moves: readonly Move[];
  /** The bytes that come, by path. */
  readonly bytes: ReadonlyMap<string, Uint8Array>;
  readonly obstacles: readonly Obstacle[];
};

type Look = {
  readonly disk: Disk;
  readonly folder: string;
  readonly manifest: Manifest;
  /** The manifest's paths as a disk that ignores case would take them. */
  readonly folded: ReadonlyMap<string, string>;
};

/**
 * What must be done to turn a folder into a set of files, looked at once and not yet begun. Only what the manifest
 * names, with the bytes it names, may be replaced; what the user changed by hand is put beside.
 */
export async function decideChange(
  disk: Disk,
  folder: string,
  manifest: Manifest,
  files: readonly OutputFile[],
): Promise<Change> {
  const look = { disk, folder, manifest, folded: new Map([...manifest.keys()].map((path) => [foldCase(path), path])) };
  const coming = new Map(files.map((file) => [file.path, file.bytes]));
  const obstacles: Obstacle[] = [];
  const takings: Move[] = [];
  const puttings: Move[] = [];

  for (const path of [...new Set([...manifest.keys(), ...coming.keys()])].sort()) {
    const bytes = coming.get(path);
    const obstacle = await obstacleAt(look, path, bytes !== undefined);
    if (obstacle !== undefined) obstacles.push({ path, why: obstacle });
    else if (bytes === undefined) takings.push({ path, goes: await whereItGoes(look, path) });
    else puttings.push({ path, comes: fingerprint(bytes), goes: await whereItGoes(look, path) });
  }

  const next = manifestBytes(new Map(puttings.map((move) => [move.path, move.comes!])));
  const isThere = (await disk.kind(join(folder, manifestPath))) === "file";
  const put: Move = { path: manifestPath, comes: fingerprint(next), goes: isThere ? "old" : undefined };
  const before = isThere ? fingerprint(await disk.read(join(folder, manifestPath))) : undefined;
  const changed = puttings.filter((move) => move.goes !== "old" || manifest.get(move.path) !== move.comes);
  const moves = [...takings.filter((move) => move.goes !== undefined), ...changed];
  return {
    moves: before === put.comes && moves.length === 0 ? [] : [...moves, put],
    bytes: new Map([...coming, [manifestPath, next]]),
    obstacles,
  };
}

async function obstacleAt(look: Look, path: string, comes: boolean): Promise<Obstacle["why"] | undefined> {
  const above = await obstacleAbove(look.disk, look.folder, path);
  if (above !== undefined) return comes || above === "link" ? above : undefined;
  const kind = await look.disk.kind(join(look.folder, path));
  // A file of ours that became something else is the user's doing: it is left alone, and stops only what comes there.
  if (!comes || kind === undefined) return undefined;
  if (kind === "folder") return "folder";
  if (kind !== "file") return "link";
  if (look.manifest.has(path)) return undefined;
  return (await isOursUnderAnotherCase(look, path)) ? undefined : "not ours";
}

/** A path leads out of the folder where a folder above it is a link: such a path is never read nor written. */
export async function obstacleAbove(
  disk: Disk,
  folder: string,
  path: string,
): Promise<"link" | "no folder" | undefined> {
  for (const above of foldersAbove(path)) {
    const kind = await disk.kind(join(folder, above));
    if (kind === "link") return "link";
    if (kind !== undefined && kind !== "folder") return "no folder";
  }
  return undefined;
}

/** "Parts/A.dxf" where we wrote "parts/a.dxf", on a disk that ignores case: listing the folder shows the old name. */
async function isOursUnderAnotherCase(look: Look, path: string): Promise<boolean> {
  if (!look.folded.has(foldCase(path))) return false;
  const names = await look.disk.list(dirname(join(look.folder, path)));
  return !names.includes(path.slice(path.lastIndexOf("/") + 1));
}

/** undefined: nothing of ours lies there. */
async function whereItGoes(look: Look, path: string): Promise<Move["goes"]> {
  const known = look.manifest.get(path);
  const full = join(look.folder, path);
  if (known === undefined || (await look.disk.kind(full)) !== "file") return undefined;
  if (fingerprint(await look.disk.read(full)) === known) return "old";
  return { beside: await freeName(look.disk, look.folder, path) };
}

/** The first name beside a file that nothing has taken. */
export async function freeName(disk: Disk, folder: string, path: string): Promise<string> {
  for (let n = 1; ; n++) {
    const name = yoursName(path, n);
    if ((await disk.kind(join(folder, name))) === undefined) return name;
  }
}
