import { mkdirSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { type Disk, realDisk } from "../../src/cli/output/disk.js";
import { writeFolder } from "../../src/cli/output/folder.js";
import type { Finding } from "../../src/input/finding.js";
import { mostBytes, readTextFile } from "../../src/input/textFile.js";
import { failsAt, killedAt, runner } from "../cli/output/failing.js";
import { file, inScratch, put } from "../cli/output/tree.js";
import type { CallPair, Table } from "./road.js";

const why = "it is about files on the disk, not about what stands in a job";

/** One name asked for in a folder that holds these files. */
function reading(files: Readonly<Record<string, string | Uint8Array>>, name: string): Promise<readonly Finding[]> {
  return inScratch(async (folder) => {
    mkdirSync(join(folder, "sub"));
    for (const [path, bytes] of Object.entries(files)) writeFileSync(join(folder, path), bytes);
    return (await readTextFile(join(folder, name))).findings;
  });
}

const readers = (files: Readonly<Record<string, string | Uint8Array>>, raises: string, spares: string): CallPair => ({
  why,
  raises: () => reading(files, raises),
  spares: () => reading(files, spares),
});

const first = [file("plan.json", "first"), file("old/gone.svg", "made once")];
const second = [file("plan.json", "second"), file("parts/top.dxf", "top")];
const write = (folder: string, files = first, disk: Disk = realDisk, run = 1) =>
  writeFolder(disk, runner(run), folder, files, () => {});

/** What the second set meets in a folder of the first, after something was done to it. */
const meeting = (happens: (folder: string) => unknown, disk: Disk = realDisk) =>
  inScratch(async (scratch) => {
    const folder = join(scratch, "out");
    await write(folder);
    await happens(folder);
    return (await write(folder, second, disk, 3)).findings;
  });

const nothing = () => {};
const writers = (raises: (folder: string) => unknown, spares: (folder: string) => unknown = nothing): CallPair => ({
  why,
  raises: () => meeting(raises),
  spares: () => meeting(spares),
});

/** A run that dies at one of its changes to the disk. */
const dying = (at: number) => (folder: string) => write(folder, second, killedAt(realDisk, at).disk, 2).catch(nothing);

/** The first of a run's changes to the disk after whose death the next one has something to undo. */
let begins: Promise<number> | undefined;
const beginning = () => {
  begins ??= (async () => {
    for (let at = 1; ; at++) if ((await meeting(dying(at))).some(({ code }) => code === "output-run-undone")) return at;
  })();
  return begins;
};

/** What reading files and writing the output folder find. */
export const filesTable: Table = {
  "no-such-file": readers({ "job.yaml": "" }, "jbo.yaml", "job.yaml"),
  "not-a-file": readers({ "sub.yaml": "" }, "sub", "sub.yaml"),
  "file-too-large": readers(
    { "more.yaml": "#".repeat(mostBytes + 1), "most.yaml": "#".repeat(mostBytes) },
    "more.yaml",
    "most.yaml",
  ),
  "unreadable-file": readers({ ab: "" }, "a\0b", "ab"),
  "not-utf8": readers({ latin: Uint8Array.of(0x74, 0xfc), utf8: Uint8Array.of(0x74, 0xc3, 0xbc) }, "latin", "utf8"),
  "output-not-ours": writers(
    (folder) => put(folder, "parts/top.dxf", "mine"),
    (folder) => put(folder, "parts/top2.dxf", "mine"),
  ),
  "output-leaves-folder": writers(
    (folder) => symlinkSync(folder, join(folder, "parts")),
    (folder) => mkdirSync(join(folder, "parts")),
  ),
  "output-record": writers((folder) => put(folder, ".bafflewright/manifest.json", "{")),
  "output-not-a-folder": {
    why,
    raises: () =>
      inScratch(async (scratch) => {
        put(scratch, "out", "");
        return (await write(join(scratch, "out"))).findings;
      }),
    spares: () => inScratch(async (scratch) => (await write(join(scratch, "out"))).findings),
  },
  "output-not-written": {
    why,
    raises: () => meeting(nothing, failsAt(realDisk, 1, "ENOSPC")),
    spares: () => meeting(nothing, failsAt(realDisk, 1000, "ENOSPC")),
  },
  "output-changed-by-hand": writers(
    (folder) => put(folder, "plan.json", "first, and mine"),
    (folder) => put(folder, "plan.json", "first"),
  ),
  "output-run-undone": {
    why,
    raises: async () => meeting(dying(await beginning())),
    spares: async () => meeting(dying((await beginning()) - 1)),
  },
};
