import { spawn, spawnSync } from "node:child_process";
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, it } from "vitest";
import { inScratch, treeOf } from "../cli/output/tree.js";

const main = fileURLToPath(new URL("../../dist/cli/main.js", import.meta.url));
/** ms in which a run puts its files in place, less on a fast disk: a kill that comes too late does no harm. */
const writing = 30;
const starter = "templates/estate-cargo.yaml";
const make = (job: string, folder: string) => [main, "make", job, "--out", folder];

it("leaves a folder that the next run turns into a clean one, for 24 runs killed at seeded moments", () =>
  inScratch(async (scratch) => {
    const [clean, out] = [join(scratch, "clean"), join(scratch, "out")];
    // Shown in inches almost every file is another, so that there is much to replace each time.
    const inches = join(scratch, "estate-cargo.yaml");
    writeFileSync(inches, readFileSync(starter, "utf8").replace(/^show: mm/m, "show: in 1/16"));
    spawnSync(process.execPath, make(starter, clean));
    let died = 0;
    for (let n = 0; n < 24; n++) {
      const child = spawn(process.execPath, make(inches, out), { stdio: "ignore" });
      // From the moment it begins to write: steps of the golden section, which never repeat, over the time it takes.
      const begins = join(out, ".bafflewright", "new");
      const watch = setInterval(() => {
        if (!existsSync(begins)) return;
        clearInterval(watch);
        setTimeout(() => child.kill("SIGKILL"), writing * ((n * 0.618034) % 1));
      }, 1);
      await new Promise<void>((resolve) => {
        child.on("close", (_code, signal) => {
          clearInterval(watch);
          if (signal === "SIGKILL") died++;
          resolve();
        });
      });
      spawnSync(process.execPath, make(starter, out));
      expect(treeOf(out), `killed ${n}`).toEqual(treeOf(clean));
    }
    console.log(`${died} of 24 runs died`);
    expect(died).toBeGreaterThanOrEqual(12);
  }));
