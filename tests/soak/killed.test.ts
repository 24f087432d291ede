import { spawn, spawnSync } from "node:child_process";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, it } from "vitest";
import { inScratch, treeOf } from "../cli/output/tree.js";

const main = fileURLToPath(new URL("../../dist/cli/main.js", import.meta.url));
const starter = "templates/estate-cargo.yaml";
const make = (folder: string, ...more: string[]) => [main, "make", starter, "--out", folder, ...more];

it("leaves a folder that the next run turns into a clean one, for 40 runs killed at seeded moments", () =>
  inScratch(async (scratch) => {
    const [clean, out] = [join(scratch, "clean"), join(scratch, "out")];
    const begun = performance.now();
    spawnSync(process.execPath, make(clean));
    const whole = performance.now() - begun;
    let died = 0;
    for (let n = 0; n < 40; n++) {
      // Another seed gives other sheets, so that there is something to replace each time.
      const child = spawn(process.execPath, make(out, "--seed", String(n)), { stdio: "ignore" });
      // Spread over the last third of a run, where it writes: steps of the golden section never repeat.
      const moment = 0.65 + 0.4 * ((n * 0.618034) % 1);
      const timer = setTimeout(() => child.kill("SIGKILL"), whole * moment);
      await new Promise<void>((resolve) => {
        child.on("close", (_code, signal) => {
          clearTimeout(timer);
          if (signal === "SIGKILL") died++;
          resolve();
        });
      });
      spawnSync(process.execPath, make(out));
      expect(treeOf(out), `killed ${n}`).toEqual(treeOf(clean));
    }
    console.log(`${died} of 40 runs died`);
    expect(died).toBeGreaterThanOrEqual(20);
  }));
