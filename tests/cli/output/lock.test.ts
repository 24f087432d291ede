import { readdirSync, utimesSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { realDisk } from "../../../src/cli/output/disk.js";
import { writeFolder } from "../../../src/cli/output/folder.js";
import { takeLock } from "../../../src/cli/output/lock.js";
import { runner } from "./failing.js";
import { file, inScratch, treeOf } from "./tree.js";

const silent = () => {};

describe("two runs in one folder", () => {
  it("wait for each other, and the one that waits says for whom", () =>
    inScratch(async (folder) => {
      const free = await takeLock(realDisk, runner(11, [22]), folder, silent);
      const events: string[] = [];
      const second = takeLock(realDisk, runner(22, [11]), folder, ({ pid }) => events.push(`waits for ${pid}`)).then(
        async (lower) => {
          events.push("second in");
          await lower();
        },
      );
      await new Promise((resolve) => setTimeout(resolve, 30));
      events.push("first out");
      await free();
      await second;
      expect(events).toEqual(["waits for 11", "first out", "second in"]);
      expect(readdirSync(folder)).toEqual([]);
    }));

  it("are never both inside, however many start at once", () =>
    inScratch(async (folder) => {
      const pids = [1, 2, 3, 4, 5, 6, 7, 8];
      let inside = 0;
      let most = 0;
      await Promise.all(
        pids.map(async (pid) => {
          const lower = await takeLock(realDisk, runner(pid, pids), folder, silent);
          most = Math.max(most, ++inside);
          await new Promise((resolve) => setTimeout(resolve, 3));
          inside--;
          await lower();
        }),
      );
      expect(most).toBe(1);
    }));

  it("leave the whole set of the one that came last", () =>
    inScratch(async (folder) => {
      const set = (pid: number) => Array.from({ length: 12 }, (_, n) => file(`parts/${n}.dxf`, `of ${pid}`));
      await Promise.all(
        [1, 2, 3].map((pid) => writeFolder(realDisk, runner(pid, [1, 2, 3]), folder, set(pid), silent)),
      );
      const words = Object.entries(treeOf(folder)).filter(([path]) => path.endsWith(".dxf"));
      expect(words).toHaveLength(12);
      expect(new Set(words.map(([, of]) => of)).size).toBe(1);
    }));
});

describe("a lock whose owner is gone", () => {
  const takenAtOnce = (folder: string, pid: number, alive: readonly number[]) =>
    takeLock(realDisk, runner(pid, alive), folder, () => {
      throw new Error("it waited");
    });

  it("counts as none and is swept away", () =>
    inScratch(async (folder) => {
      writeFileSync(join(folder, "lock.77.bench.aaaa"), "");
      await (await takenAtOnce(folder, 11, []))();
      expect(readdirSync(folder)).toEqual([]);
    }));

  it("counts as none when this process has got its number", () =>
    inScratch(async (folder) => {
      writeFileSync(join(folder, "lock.11.bench.aaaa"), "");
      await (await takenAtOnce(folder, 11, [11]))();
    }));

  it("counts as none when the machine was started since", () =>
    inScratch(async (folder) => {
      writeFileSync(join(folder, "lock.77.bench.aaaa"), "");
      utimesSync(join(folder, "lock.77.bench.aaaa"), 1000, 1000);
      const later = { ...runner(11, [77]), startedAt: 2_000_000 };
      await (await takeLock(realDisk, later, folder, silent))();
    }));

  it("of another machine counts as none after ten minutes", () =>
    inScratch(async (folder) => {
      const name = join(folder, "lock.77.elsewhere.aaaa");
      writeFileSync(name, "");
      utimesSync(name, Date.now() / 1000 - 601, Date.now() / 1000 - 601);
      await (await takenAtOnce(folder, 11, []))();
    }));
});
