import { existsSync, mkdirSync, readFileSync, rmSync, statSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { type Disk, realDisk } from "../../../src/cli/output/disk.js";
import { writeFolder } from "../../../src/cli/output/folder.js";
import type { OutputFile } from "../../../src/model/build.js";
import { failsAt, Killed, killedAt, runner } from "./failing.js";
import { file, inScratch, put, treeOf } from "./tree.js";

const first = [
  file("parts/box-top.dxf", "top, first"),
  file("parts/box-left.dxf", "left"),
  file("sheets/box-1.dxf", "sheet, first"),
  file("old/gone.svg", "made by the first set only"),
  file("plan.json", "first"),
];
const second = [
  file("parts/box-top.dxf", "top, second"),
  file("parts/box-left.dxf", "left"),
  file("sheets/box-1.dxf", "sheet, second"),
  file("parts/ring/ring.dxf", "made by the second set only"),
  file("plan.json", "second"),
];

const quiet = () => {};
const write = (folder: string, files: readonly OutputFile[], disk: Disk = realDisk, pid = 1) =>
  writeFolder(disk, runner(pid), folder, files, quiet);

async function cleanTree(files: readonly OutputFile[]) {
  return inScratch(async (folder) => {
    await write(folder, files);
    return treeOf(folder);
  });
}

describe("a folder of the tool's own", () => {
  it("holds the set, a manifest and nothing else", () =>
    inScratch(async (folder) => {
      const out = join(folder, "not", "there yet");
      const { value, findings } = await write(out, first);
      expect(findings).toEqual([]);
      expect(value).toEqual({ files: first.map(({ path }) => path), changed: 5 });
      const files = Object.entries(treeOf(out)).filter(([, words]) => words !== "/");
      expect(files.map(([path]) => path).sort()).toEqual(
        [".bafflewright/manifest.json", ...first.map(({ path }) => path)].sort(),
      );
      expect(readFileSync(join(out, "parts/box-top.dxf"), "utf8")).toBe("top, first");
    }));

  it("is replaced as a set: what is made no more goes, with the folder it leaves empty", () =>
    inScratch(async (folder) => {
      await write(folder, first);
      const { value } = await write(folder, second);
      expect(value?.changed).toBe(4);
      expect(treeOf(folder)).toEqual(await cleanTree(second));
      expect(existsSync(join(folder, "old"))).toBe(false);
    }));

  it("is not touched by a run that makes the same again", () =>
    inScratch(async (folder) => {
      await write(folder, first);
      const before = statSync(join(folder, "plan.json")).mtimeMs;
      const { value } = await write(folder, first);
      expect(value?.changed).toBe(0);
      expect(statSync(join(folder, "plan.json")).mtimeMs).toBe(before);
    }));

  it("gets back a file that was deleted", () =>
    inScratch(async (folder) => {
      await write(folder, first);
      rmSync(join(folder, "parts"), { recursive: true });
      await write(folder, first);
      expect(treeOf(folder)).toEqual(await cleanTree(first));
    }));
});

describe("the user's own files", () => {
  it("survive beside the set", () =>
    inScratch(async (folder) => {
      put(folder, "photo of the boot.jpg", "mine");
      put(folder, "parts/notes.txt", "mine too");
      await write(folder, first);
      await write(folder, second);
      await write(folder, []);
      expect(treeOf(folder)).toMatchObject({ "photo of the boot.jpg": "mine", "parts/notes.txt": "mine too" });
      expect(Object.keys(treeOf(folder)).filter((path) => path.endsWith(".dxf"))).toEqual([]);
    }));

  it("stop a run before anything is written where they are in its way, and are named", () =>
    inScratch(async (folder) => {
      put(folder, "parts/box-left.dxf", "mine");
      mkdirSync(join(folder, "plan.json"));
      const before = treeOf(folder);
      const { value, findings } = await write(folder, first);
      expect(value).toBeUndefined();
      expect(findings.map(({ code, on }) => [code, on])).toEqual([
        ["output-not-ours", ["parts/box-left.dxf", "plan.json"]],
      ]);
      expect(treeOf(folder)).toEqual(before);
    }));

  it("are kept beside where they are changed files of the tool, each version under its own name", () =>
    inScratch(async (folder) => {
      await write(folder, first);
      put(folder, "plan.json", "changed once");
      put(folder, "old/gone.svg", "changed and made no more");
      const { findings } = await write(folder, second);
      expect(findings.map(({ code, on }) => [code, on])).toEqual([
        ["output-changed-by-hand", ["old/gone.svg"]],
        ["output-changed-by-hand", ["plan.json"]],
      ]);
      put(folder, "plan.json", "changed twice");
      await write(folder, second);
      expect(treeOf(folder)).toMatchObject({
        "plan.json": "second",
        "plan.json.yours": "changed once",
        "plan.json.yours.2": "changed twice",
        "old/gone.svg.yours": "changed and made no more",
      });
    }));

  it("count as theirs when the record is damaged", () =>
    inScratch(async (folder) => {
      await write(folder, first);
      put(folder, ".bafflewright/manifest.json", '{"version":1,"files":{"../escape":"00"}}');
      const before = treeOf(folder);
      const { value, findings } = await write(folder, second);
      expect(value).toBeUndefined();
      expect(findings.map(({ code }) => code)).toEqual(["output-record"]);
      expect(treeOf(folder)).toEqual(before);
    }));
});

describe("no path leaves the folder", () => {
  it.each([
    "../up.dxf",
    "/etc/up.dxf",
    "a//b.dxf",
    "a/./b.dxf",
    "C:/up.dxf",
    "a\\b.dxf",
    "parts/aux.dxf",
    ".Bafflewright/x",
  ])("refuses %s as a mistake of ours", (path) =>
    inScratch(async (folder) => {
      await expect(write(folder, [file(path, "")])).rejects.toThrow("is refused");
      expect(treeOf(folder)).toEqual({});
    }),
  );

  it("refuses two files that one name means on a disk that ignores case", () =>
    inScratch(async (folder) => {
      await expect(write(folder, [file("Top.dxf", ""), file("top.dxf", "")])).rejects.toThrow("another file");
    }));

  it.skipIf(process.platform === "win32").each(["parts", "plan.json", ".bafflewright"])(
    "writes nothing through a link at %s",
    (name) =>
      inScratch(async (folder) => {
        const [out, elsewhere] = [join(folder, "out"), join(folder, "elsewhere")];
        mkdirSync(out);
        put(elsewhere, "box-top.dxf", "outside");
        symlinkSync(elsewhere, join(out, name));
        const { value, findings } = await write(out, first);
        expect(value).toBeUndefined();
        expect(findings.map(({ code }) => code)).toEqual(["output-leaves-folder"]);
        expect(treeOf(elsewhere)).toEqual({ "box-top.dxf": "outside" });
      }),
  );

  it.skipIf(process.platform === "win32")("removes nothing through a link that took the place of a folder", () =>
    inScratch(async (folder) => {
      const [out, elsewhere] = [join(folder, "out"), join(folder, "elsewhere")];
      await write(out, first);
      put(elsewhere, "gone.svg", "made by the first set only");
      rmSync(join(out, "old"), { recursive: true });
      symlinkSync(elsewhere, join(out, "old"));
      await write(out, second);
      expect(treeOf(elsewhere)).toEqual({ "gone.svg": "made by the first set only" });
    }),
  );

  it.skipIf(process.platform === "win32")("follows a link that the user named as the folder itself", () =>
    inScratch(async (folder) => {
      mkdirSync(join(folder, "real"));
      symlinkSync(join(folder, "real"), join(folder, "named"));
      await write(join(folder, "named"), first);
      expect(existsSync(join(folder, "real", "plan.json"))).toBe(true);
    }),
  );
});

describe("a disk that fails", () => {
  it.each(["ENOSPC", "EACCES", "EROFS", "EBUSY", "EIO"])("with %s leaves everything as it was", (code) =>
    inScratch(async (folder) => {
      await write(folder, first);
      const before = treeOf(folder);
      for (let at = 1; ; at++) {
        const { value, findings } = await write(folder, second, failsAt(realDisk, at, code));
        if (value !== undefined) break;
        expect(findings.map((finding) => finding.code)).toEqual(["output-not-written"]);
        expect(treeOf(folder), `failed at ${at}`).toEqual(before);
      }
      expect(treeOf(folder)).toEqual(await cleanTree(second));
    }),
  );

  it("leaves no folder behind that was not there", () =>
    inScratch(async (folder) => {
      const out = join(folder, "new");
      expect((await write(out, first, failsAt(realDisk, 3, "ENOSPC"))).value).toBeUndefined();
      expect(existsSync(out)).toBe(false);
    }));

  it("is not asked to write where a file stands for the folder", () =>
    inScratch(async (folder) => {
      writeFileSync(join(folder, "out"), "mine");
      const { findings } = await write(join(folder, "out"), first);
      expect(findings.map(({ code }) => code)).toEqual(["output-not-a-folder"]);
      const below = await write(join(folder, "out", "below"), first);
      expect(below.findings.map(({ code }) => code)).toEqual(["output-not-written"]);
    }));
});

describe("a run killed at any step", () => {
  it("leaves a folder from which the next run makes what a clean run makes", () =>
    inScratch(async (scratch) => {
      const clean = await cleanTree(second);
      let died = 0;
      for (let at = 1; ; at++) {
        const folder = join(scratch, String(at));
        await write(folder, first);
        const dying = write(folder, second, killedAt(realDisk, at).disk, 2);
        const outcome = await dying.catch((error: unknown) => error);
        if (!(outcome instanceof Killed)) break;
        died++;
        const { value } = await write(folder, second, realDisk, 3);
        expect(value, `killed at ${at}`).toBeDefined();
        expect(treeOf(folder), `killed at ${at}`).toEqual(clean);
      }
      expect(died).toBeGreaterThanOrEqual(20);
    }));

  it("is undone even by a run that is killed while undoing", () =>
    inScratch(async (scratch) => {
      const clean = await cleanTree(second);
      for (let at = 1; at < 60; at += 3) {
        const folder = join(scratch, String(at));
        await write(folder, first);
        await write(folder, second, killedAt(realDisk, 26).disk, 2).catch(() => {});
        await write(folder, second, killedAt(realDisk, at).disk, 3).catch(() => {});
        await write(folder, second, realDisk, 4);
        expect(treeOf(folder), `killed at ${at}`).toEqual(clean);
      }
    }));

  it("loses nothing that the user had changed before or changes after", () =>
    inScratch(async (scratch) => {
      for (let at = 1; ; at += 2) {
        const folder = join(scratch, String(at));
        await write(folder, first);
        put(folder, "plan.json", "changed before");
        const dying = write(folder, second, killedAt(realDisk, at).disk, 2);
        if (!((await dying.catch((error: unknown) => error)) instanceof Killed)) break;
        put(folder, "parts/box-top.dxf", "changed after");
        put(folder, "note.txt", "mine");
        await write(folder, second, realDisk, 3);
        const words = Object.values(treeOf(folder));
        for (const mine of ["changed before", "changed after", "mine"]) {
          expect(words, `${mine}, killed at ${at}`).toContain(mine);
        }
        expect(words).toContain("top, second");
      }
    }));

  it("is told of by the next one, if it had begun to replace files", () =>
    inScratch(async (folder) => {
      await write(folder, first);
      await write(folder, second, killedAt(realDisk, 26).disk, 2).catch(() => {});
      const { findings } = await write(folder, second, realDisk, 3);
      expect(findings.map(({ code }) => code)).toEqual(["output-run-undone"]);
    }));
});
