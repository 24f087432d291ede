import {
  type FileHandle,
  lstat,
  mkdir,
  open,
  readdir,
  readFile,
  realpath,
  rename,
  rmdir,
  unlink,
} from "node:fs/promises";
import { setTimeout as pause } from "node:timers/promises";

/** What lies at a path, links not followed; undefined where nothing does. */
export type Kind = "file" | "folder" | "link" | "other";

/**
 * The few things the output folder needs of a disk. Everything that changes a disk goes through here, so that a test
 * can stop it at any step. Each fails by throwing the system's own error.
 */
export type Disk = {
  kind(path: string): Promise<Kind | undefined>;
  /** The path with every link followed; the path itself where nothing lies there yet. */
  real(path: string): Promise<string>;
  read(path: string): Promise<Uint8Array>;
  /** Names in a folder, sorted; none where there is no folder. */
  list(folder: string): Promise<readonly string[]>;
  /** Makes or replaces a file and returns when its bytes are on the disk. */
  write(path: string, bytes: Uint8Array): Promise<void>;
  /** Makes an empty file that must not exist yet. */
  create(path: string): Promise<void>;
  /** Replaces a file at `to`. */
  move(from: string, to: string): Promise<void>;
  /** Removes a file; one that is not there is no error. */
  remove(path: string): Promise<void>;
  /** Makes a folder and those above it; one that is there is no error. */
  makeFolder(path: string): Promise<void>;
  /** Removes a folder if it is empty, and says whether it did. */
  removeEmptyFolder(path: string): Promise<boolean>;
  /** Returns when the names in a folder are on the disk. */
  flush(folder: string): Promise<void>;
  /** Milliseconds since 1970 at which a file was last written; undefined where it is not there. */
  writtenAt(path: string): Promise<number | undefined>;
};

/** The system's code of an error: "ENOENT". Other errors have none, nor has the runtime's own "ERR_INVALID_ARG_TYPE". */
export function systemCode(error: unknown): string | undefined {
  const code = error instanceof Error && "code" in error ? error.code : undefined;
  return typeof code === "string" && /^E[A-Z0-9]+$/.test(code) ? code : undefined;
}

export const realDisk: Disk = {
  async kind(path) {
    const found = await lstat(path).catch(absent);
    if (found === undefined) return undefined;
    if (found.isSymbolicLink()) return "link";
    return found.isFile() ? "file" : found.isDirectory() ? "folder" : "other";
  },
  real: async (path) => (await realpath(path).catch(absent)) ?? path,
  read: (path) => readFile(path),
  list: async (folder) => ((await readdir(folder).catch(absent)) ?? []).sort(),
  write: (path, bytes) =>
    using(open(path, "w"), async (file) => {
      await file.writeFile(bytes);
      await file.sync();
    }),
  create: (path) => using(open(path, "wx"), async () => {}),
  move: (from, to) => patiently(() => rename(from, to)),
  remove: (path) => patiently(() => unlink(path).catch(absent)),
  async makeFolder(path) {
    await mkdir(path, { recursive: true });
  },
  async removeEmptyFolder(path) {
    const removed = await rmdir(path).then(
      () => true,
      () => false,
    );
    return removed;
  },
  async flush(folder) {
    // Windows opens no folder for this and keeps names safe by its own journal.
    if (process.platform !== "win32") await using(open(folder, "r"), (handle) => handle.sync());
  },
  writtenAt: async (path) => (await lstat(path).catch(absent))?.mtimeMs,
};

function absent(error: unknown): undefined {
  const code = systemCode(error);
  if (code === "ENOENT" || code === "ENOTDIR") return undefined;
  throw error;
}

async function using(opening: Promise<FileHandle>, work: (file: FileHandle) => Promise<void>): Promise<void> {
  const file = await opening;
  try {
    await work(file);
  } finally {
    await file.close();
  }
}

/** Windows refuses to move a file that a virus scanner or a viewer holds for a moment: try again for a second. */
async function patiently(work: () => Promise<void>): Promise<void> {
  for (let attempt = 0; ; attempt++) {
    try {
      return await work();
    } catch (error) {
      const held = ["EPERM", "EACCES", "EBUSY"].includes(systemCode(error) ?? "");
      if (process.platform !== "win32" || !held || attempt === 20) throw error;
      await pause(50);
    }
  }
}
