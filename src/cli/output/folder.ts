import { join } from "node:path";
import { type Finding, type Outcome, type Quantity, raise, text } from "../../input/finding.js";
import type { OutputFile } from "../../model/build.js";
import { discardLeftovers, makeChange, undoChange } from "./change.js";
import { decideChange, type Obstacle, obstacleAbove } from "./decide.js";
import { type Disk, systemCode } from "./disk.js";
import {
  changedByHand,
  notAFolder,
  notOurFile,
  notWritten,
  pathLeaves,
  recordUnreadable,
  runUndone,
} from "./findings.js";
import { type Runner, takeLock } from "./lock.js";
import { readJournal, readManifest } from "./record.js";
import { foldCase, recordFolder, unsafePath } from "./safePath.js";

export type Written = {
  readonly files: readonly string[];
  /** How many of them were new or different. */
  readonly changed: number;
};

export type Tell = (words: string) => void;

/**
 * Turns a folder into the given set of files: what an earlier run wrote there and is not in the set goes, what is the
 * user's stays. Without a value nothing was written, and an error finding says why.
 *
 * Throws only for a path that no exporter should have given.
 */
export async function writeFolder(
  disk: Disk,
  runner: Runner,
  asNamed: string,
  files: readonly OutputFile[],
  tell: Tell,
): Promise<Outcome<Written>> {
  refuseUnsafe(files);
  try {
    const folder = await disk.real(asNamed);
    const kind = await disk.kind(folder);
    if (kind !== undefined && kind !== "folder")
      return refused(raise(notAFolder, { facts: { folder: text(asNamed) } }));
    const crooked = await crookedRecord(disk, folder);
    if (crooked.length > 0) return refused(raise(pathLeaves, { facts: { found: named(crooked) } }));

    await disk.makeFolder(join(folder, recordFolder));
    const unlock = await takeLock(disk, runner, join(folder, recordFolder), (other) =>
      tell(
        `waiting: process ${other.pid} on ${other.host} is writing in ${asNamed} (if it is not, delete ${other.file})`,
      ),
    );
    try {
      return await writeLocked(disk, folder, asNamed, files);
    } finally {
      await unlock();
      await disk.removeEmptyFolder(join(folder, recordFolder));
      if (kind === undefined) await disk.removeEmptyFolder(folder);
    }
  } catch (error) {
    if (systemCode(error) === undefined) throw error;
    return refused(diskFinding(error, asNamed));
  }
}

async function writeLocked(
  disk: Disk,
  folder: string,
  asNamed: string,
  files: readonly OutputFile[],
): Promise<Outcome<Written>> {
  const findings: Finding[] = [];
  const journal = await readJournal(disk, folder);
  if (journal === undefined) return refused(unreadable(asNamed, "journal.json"));
  if (journal === "none") await discardLeftovers(disk, folder);
  else {
    const links = await through(disk, folder, journal.moves);
    if (links.length > 0) return refused(raise(pathLeaves, { facts: { found: named(links) } }));
    const kept = await undoChange(disk, folder, journal);
    findings.push(raise(runUndone, { facts: { folder: text(asNamed) } }), ...kept.map(asChanged));
  }

  const manifest = await readManifest(disk, folder);
  if (manifest === undefined) return refused(unreadable(asNamed, "manifest.json"), findings);
  const change = await decideChange(disk, folder, manifest, files);
  if (change.obstacles.length > 0)
    return { value: undefined, findings: [...findings, ...asFindings(change.obstacles)] };
  if (change.moves.length > 0) await makeChange(disk, folder, change);

  const aside = change.moves.flatMap(({ path, goes }) => (typeof goes === "object" ? [{ path, ...goes }] : []));
  const changed = change.moves.filter((move) => move.comes !== undefined).length - (change.moves.length > 0 ? 1 : 0);
  return {
    value: { files: files.map((file) => file.path), changed },
    findings: [...findings, ...aside.map(asChanged)],
  };
}

/** Two exporters that mean one file, or a path that leaves the folder, are mistakes of ours. */
function refuseUnsafe(files: readonly OutputFile[]): void {
  const seen = new Set<string>();
  for (const { path } of files) {
    const why = seen.has(foldCase(path)) ? "another file has that name" : unsafePath(path);
    if (why !== undefined) throw new Error(`the output path ${JSON.stringify(path)} is refused: ${why}`);
    seen.add(foldCase(path));
  }
}

/** Folders of the record that are links or files: whoever made them, nothing is moved through them. */
async function crookedRecord(disk: Disk, folder: string): Promise<readonly string[]> {
  const crooked: string[] = [];
  for (const path of [recordFolder, `${recordFolder}/new`, `${recordFolder}/old`]) {
    const kind = await disk.kind(join(folder, path));
    if (kind !== undefined && kind !== "folder") crooked.push(path);
  }
  return crooked;
}

async function through(disk: Disk, folder: string, moves: readonly { path: string }[]): Promise<readonly string[]> {
  const found: string[] = [];
  for (const { path } of moves) if ((await obstacleAbove(disk, folder, path)) !== undefined) found.push(path);
  return found;
}

function refused(finding: Finding, before: readonly Finding[] = []): Outcome<Written> {
  return { value: undefined, findings: [...before, finding] };
}

function unreadable(folder: string, file: string): Finding {
  return raise(recordUnreadable, { facts: { folder: text(folder), found: text(`${recordFolder}/${file}`) } });
}

function asChanged({ path, beside }: { readonly path: string; readonly beside: string }): Finding {
  return raise(changedByHand, { on: [path], facts: { path: text(path), beside: text(beside) } });
}

function asFindings(obstacles: readonly Obstacle[]): readonly Finding[] {
  const theirs = obstacles.filter(({ why }) => why === "not ours" || why === "folder").map(({ path }) => path);
  const crooked = obstacles.filter(({ why }) => why === "link" || why === "no folder").map(({ path }) => path);
  return [
    ...(theirs.length > 0 ? [raise(notOurFile, { on: theirs, facts: { found: named(theirs) } })] : []),
    ...(crooked.length > 0 ? [raise(pathLeaves, { on: crooked, facts: { found: named(crooked) } })] : []),
  ];
}

/** Enough of the paths to see which they are. */
function named(paths: readonly string[]): Quantity {
  const shown = paths.slice(0, 5).join(", ");
  return text(paths.length > 5 ? `${shown} and ${paths.length - 5} more` : shown);
}

const reasons: Readonly<Record<string, readonly [why: string, hint: string]>> = {
  ENOSPC: ["the disk is full", "make room, or choose a folder on another disk with --out"],
  EDQUOT: ["your share of the disk is full", "make room, or choose a folder on another disk with --out"],
  EROFS: ["the disk is read-only", "choose another folder with --out"],
  EACCES: [
    "it may not be written by you, or a program holds a file in it",
    "close the program, or choose another --out",
  ],
  EPERM: [
    "it may not be written by you, or a program holds a file in it",
    "close the program, or choose another --out",
  ],
  EBUSY: ["a program holds a file in it", "close the program and run again"],
  ENOTDIR: ["something on the way to it is not a folder", "choose another folder with --out"],
  EEXIST: ["something appeared in it meanwhile", "run again"],
  ENAMETOOLONG: ["a path in it is too long for this system", "choose a folder with a shorter path with --out"],
};

/** What the system said when it would not write. */
export function diskFinding(error: unknown, folder: string): Finding {
  const code = systemCode(error) ?? "";
  const [why, hint] = reasons[code] ?? [`the system says ${code}`, "choose another folder with --out"];
  return raise(notWritten, { facts: { folder: text(folder), why: text(why), hint: text(hint) } });
}
