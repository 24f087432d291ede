import { dirname, join } from "node:path";
import { type Change, freeName } from "./decide.js";
import type { Disk } from "./disk.js";
import { fingerprint, type Journal, journalBytes, journalPath, type Move } from "./record.js";
import { foldersAbove, recordFolder } from "./safePath.js";

// How a folder's files are replaced as a set:
//  1. every new file is written in the record, under its number in the list of moves: new/0, new/1 ...
//  2. the journal with the list of moves is put in place: from here on the change has begun
//  3. move by move, the file that goes is moved to old/N or beside, and new/N is moved to where it belongs
//  4. the journal is removed: the change is done
//  5. old/ and new/ are emptied
// A run that dies before 2 or after 4 leaves only what step 5 throws away. One that dies between them is undone from
// the journal: each move says by itself whether it was made, so undoing may itself die and be done again.

const staged = (folder: string, index: number) => join(folder, recordFolder, "new", String(index));
const retired = (folder: string, index: number) => join(folder, recordFolder, "old", String(index));
const writesAtOnce = 16;

/** Makes a change, all of it or, where the disk fails, nothing. Throws the disk's error. */
export async function makeChange(disk: Disk, folder: string, change: Change): Promise<void> {
  await discardLeftovers(disk, folder);
  try {
    await stage(disk, folder, change);
    await writeJournal(disk, folder, { moves: change.moves });
  } catch (error) {
    await disk.remove(join(folder, journalPath));
    await discardLeftovers(disk, folder);
    throw error;
  }
  try {
    for (const [index, move] of change.moves.entries()) await makeMove(disk, folder, move, index);
    await flushFolders(disk, folder, change.moves);
  } catch (error) {
    await undoChange(disk, folder, { moves: change.moves });
    throw error;
  }
  await disk.remove(join(folder, journalPath));
  await disk.flush(join(folder, recordFolder));
  await discardLeftovers(disk, folder);
}

/** Puts everything back as it was; returns what the user had changed meanwhile and under which name it is kept. */
export async function undoChange(
  disk: Disk,
  folder: string,
  journal: Journal,
): Promise<readonly { readonly path: string; readonly beside: string }[]> {
  const kept: { path: string; beside: string }[] = [];
  for (const [index, move] of [...journal.moves.entries()].reverse()) {
    const beside = await undoMove(disk, folder, move, index);
    if (beside !== undefined) kept.push({ path: move.path, beside });
  }
  await flushFolders(disk, folder, journal.moves);
  await disk.remove(join(folder, journalPath));
  await disk.flush(join(folder, recordFolder));
  await discardLeftovers(disk, folder);
  return kept;
}

async function stage(disk: Disk, folder: string, change: Change): Promise<void> {
  for (const name of ["new", "old"]) await disk.makeFolder(join(folder, recordFolder, name));
  const writes = change.moves.flatMap((move, index) => {
    const bytes = move.comes === undefined ? undefined : change.bytes.get(move.path);
    return bytes === undefined ? [] : [() => disk.write(staged(folder, index), bytes)];
  });
  for (let first = 0; first < writes.length; first += writesAtOnce) {
    // All are waited for, even when one fails: none may still be writing while the others are thrown away.
    const results = await Promise.allSettled(writes.slice(first, first + writesAtOnce).map((write) => write()));
    for (const result of results) if (result.status === "rejected") throw result.reason;
  }
  for (const name of ["new", "old"]) await disk.flush(join(folder, recordFolder, name));
}

async function writeJournal(disk: Disk, folder: string, journal: Journal): Promise<void> {
  const draft = staged(folder, journal.moves.length);
  await disk.write(draft, journalBytes(journal));
  await disk.move(draft, join(folder, journalPath));
  await disk.flush(join(folder, recordFolder));
}

async function makeMove(disk: Disk, folder: string, move: Move, index: number): Promise<void> {
  const place = join(folder, move.path);
  if (move.goes === "old") await disk.move(place, retired(folder, index));
  else if (move.goes !== undefined) await disk.move(place, join(folder, move.goes.beside));
  if (move.comes === undefined) return removeEmptyAbove(disk, folder, move.path);
  await disk.makeFolder(dirname(place));
  if ((await disk.kind(place)) !== undefined) throw Object.assign(new Error(place), { code: "EEXIST" });
  await disk.move(staged(folder, index), place);
}

async function undoMove(disk: Disk, folder: string, move: Move, index: number): Promise<string | undefined> {
  const place = join(folder, move.path);
  const is = (await disk.kind(place)) === "file" ? fingerprint(await disk.read(place)) : undefined;
  if (move.goes !== undefined) {
    const wentTo = move.goes === "old" ? retired(folder, index) : join(folder, move.goes.beside);
    if ((await disk.kind(wentTo)) !== "file") return undefined;
    const beside = is === undefined || is === move.comes ? undefined : await freeName(disk, folder, move.path);
    if (beside !== undefined) await disk.move(place, join(folder, beside));
    await disk.makeFolder(dirname(place));
    await disk.move(wentTo, place);
    return beside;
  }
  const came = is !== undefined && is === move.comes && (await disk.kind(staged(folder, index))) === undefined;
  if (came) await disk.remove(place);
  if (came || is === undefined) await removeEmptyAbove(disk, folder, move.path);
  return undefined;
}

async function removeEmptyAbove(disk: Disk, folder: string, path: string): Promise<void> {
  for (const above of [...foldersAbove(path)].reverse()) {
    if (!(await disk.removeEmptyFolder(join(folder, above)))) return;
  }
}

async function flushFolders(disk: Disk, folder: string, moves: readonly Move[]): Promise<void> {
  const folders = new Set(moves.map((move) => dirname(join(folder, move.path))));
  for (const each of [folder, ...folders]) {
    // A folder that the change emptied is gone.
    if ((await disk.kind(each)) === "folder") await disk.flush(each);
  }
}

/** Throws away what no change needs any more. Never while a journal stands. */
export async function discardLeftovers(disk: Disk, folder: string): Promise<void> {
  for (const name of ["new", "old"]) {
    const leftovers = join(folder, recordFolder, name);
    for (const file of await disk.list(leftovers)) await disk.remove(join(leftovers, file));
    await disk.removeEmptyFolder(leftovers);
  }
}
