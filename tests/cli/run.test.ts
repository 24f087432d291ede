import { describe, expect, it } from "vitest";
import { exit } from "../../src/cli/exit.js";
import { run } from "../../src/cli/run.js";
import type { Terminal } from "../../src/cli/terminal.js";

/** A terminal whose output breaks, as a fault of ours in the middle of a command would. */
function broken(env: Record<string, string>) {
  const told: string[] = [];
  const terminal: Terminal = {
    out: () => {
      throw new TypeError("broken on purpose\nsecond line");
    },
    err: (words) => told.push(words),
    colour: false,
    env,
  };
  return { told, terminal };
}

describe("a fault of the program's own", () => {
  it("is one honest line, how to report it, and an exit code of its own", async () => {
    const { told, terminal } = broken({});
    expect(await run(["new"], terminal)).toBe(exit.ourFault);
    expect(told).toHaveLength(2);
    expect(told[0]).toMatch(/^This is a fault in bafflewright [\d.]+, not in your file: TypeError: broken on purpose$/);
    expect(told[1]).toContain("report it with the job file");
  });

  it("shows where it happened to those who ask", async () => {
    const { told, terminal } = broken({ BAFFLEWRIGHT_DEBUG: "1" });
    expect(await run(["new"], terminal)).toBe(exit.ourFault);
    expect(told[1]).toContain("run.test.ts");
  });
});
