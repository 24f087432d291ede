import { spawn, spawnSync } from "node:child_process";
import { chmodSync, cpSync, existsSync, mkdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { inScratch, put, treeOf } from "./output/tree.js";

// The real command, as `npm run build` made it.
const main = fileURLToPath(new URL("../../dist/cli/main.js", import.meta.url));
const starter = fileURLToPath(new URL("../../templates/estate-cargo.yaml", import.meta.url));

// One board with a hole: quick to make, for what does not depend on the job.
const small = `version: 1
title: One board
units: mm
cut by: cnc
boards:
  board: {stock: mdf-12}
space:
  outline: [{at: [0, 0]}, {at: [900, 0]}, {at: [900, 700]}, {at: [0, 700]}]
pieces:
  lid:
    kind: panel
    board: board
    outline: [{at: [0, 0]}, {at: [300, 0]}, {at: [300, 200]}, {at: [0, 200]}]
`;

type Options = { readonly cwd?: string; readonly env?: Record<string, string>; readonly uid?: number };

function bafflewright(args: readonly string[], { cwd, env, uid }: Options = {}) {
  const options = { cwd, uid, env: { ...process.env, ...env }, encoding: "utf8" as const };
  const { status, stdout, stderr } = spawnSync(process.execPath, [main, ...args], options);
  return { status, out: stdout, err: stderr };
}

/** The same without waiting, so that several may run at once. */
function started(args: readonly string[]) {
  const child = spawn(process.execPath, [main, ...args], { stdio: ["ignore", "pipe", "pipe"] });
  let err = "";
  child.stderr.on("data", (chunk) => {
    err += String(chunk);
  });
  const ended = new Promise<{ status: number | null; err: string }>((resolve) => {
    child.on("close", (status) => resolve({ status, err }));
  });
  return { child, ended };
}

const version: string = JSON.parse(readFileSync(new URL("../../package.json", import.meta.url), "utf8")).version;

describe("help and arguments", () => {
  it("print help on the output, with every command and the exit codes", () => {
    const { status, out, err } = bafflewright(["--help"]);
    expect({ status, err }).toEqual({ status: 0, err: "" });
    for (const name of ["new", "check", "make", "nest", "buy", "schema", "explain", "shop"]) {
      expect(out).toMatch(new RegExp(`^  ${name} `, "m"));
    }
    expect(out).toContain("Exit codes:");
    expect(bafflewright(["make", "--help"]).out).toContain("--out <folder>");
  });

  it("print help when nothing is asked for", () => {
    expect(bafflewright([])).toEqual(bafflewright(["--help"]));
  });

  it("print the version", () => {
    expect(bafflewright(["--version"])).toEqual({ status: 0, out: `${version}\n`, err: "" });
  });

  it.each([
    [["mkae", "job.yaml"], "Did you mean make?"],
    [["make"], "missing required argument 'job'"],
    [["check", "a.yaml", "--colour"], "unknown option '--colour'"],
    [["make", "a.yaml", "--seed", "seven"], "Write a whole number from 0 on"],
    [["make", "a.yaml", "--iterations", "0"], "Write a whole number from 1 on"],
    [["nest", "a.yaml", "--iterations", "200,x"], "Write a whole number from 1 on"],
    [["nest", "a.yaml", "--time", "soon"], "Write seconds or minutes"],
  ])("end with 2 for %j and say what is wrong", (args, words) => {
    const { status, out, err } = bafflewright(args);
    expect({ status, out }).toEqual({ status: 2, out: "" });
    expect(err).toContain(words);
    expect(err).toContain("--help");
  });
});

describe("the starter", () => {
  it("is listed and copied, and never over a file that is there", () =>
    inScratch(async (cwd) => {
      expect(bafflewright(["new"], { cwd }).out).toMatch(/estate-cargo +Cargo floor/);
      expect(bafflewright(["new", "estate-cargo"], { cwd }).status).toBe(0);
      expect(readFileSync(join(cwd, "estate-cargo.yaml"))).toEqual(readFileSync(starter));
      put(cwd, "estate-cargo.yaml", "mine");
      const again = bafflewright(["new", "estate-cargo"], { cwd });
      expect(again.status).toBe(2);
      expect(again.err).toContain("is there already");
      expect(readFileSync(join(cwd, "estate-cargo.yaml"), "utf8")).toBe("mine");
      expect(bafflewright(["new", "estate-cargo", "other.yaml"], { cwd }).status).toBe(0);
      expect(bafflewright(["new", "estate-crago"], { cwd })).toMatchObject({
        status: 2,
        err: expect.stringContaining("did you mean estate-cargo?"),
      });
    }));

  it("has no errors, and check says so", () => {
    const { status, out, err } = bafflewright(["check", starter]);
    expect(status, err).toBe(0);
    expect(out).toMatch(/box +[\d.]+ L net, 20 L wanted/);
    expect(err).not.toMatch(/^error/m);
  });

  it("gives a machine the findings and the result as one JSON value", () =>
    inScratch(async (folder) => {
      const { status, out, err } = bafflewright(["check", written(folder, small), "--json"]);
      expect({ status, err }).toEqual({ status: 0, err: "" });
      expect(JSON.parse(out)).toMatchObject({
        version: 1,
        hash: expect.stringMatching(/^[0-9a-f]{10}$/),
        findings: [],
      });
    }));

  it("nests: sheets to buy, and each part with its place", () => {
    const { status, out } = bafflewright(["nest", starter]);
    expect(status).toBe(0);
    expect(out).toMatch(/sheets +\d+ to buy/);
    expect(out).toMatch(/box\/top +at /);
  });

  it("can be bought for", () => {
    const { status, out } = bafflewright(["buy", starter]);
    expect(status).toBe(0);
    expect(out).toMatch(/mdf-18/);
    expect(out).toMatch(/M6/);
  });
});

describe("a layout", () => {
  const sheetsOf = (out: string) => JSON.parse(out).layout.sheets;

  it("that is searched for a while is found again by the count it gives, and kept once it is accepted", () =>
    inScratch(async (cwd) => {
      put(cwd, "job.yaml", small);
      const timed = bafflewright(["nest", "job.yaml", "--time", "1s", "--seed", "7", "--accept", "--json"], { cwd });
      expect(timed.status).toBe(0);
      const kept = readFileSync(join(cwd, "job.layout.json"), "utf8");
      const counts = JSON.parse(timed.out).search.iterations.join(",");
      const again = ["nest", "job.yaml", "--iterations", counts, "--seed", "7", "--anew", "--json"];
      expect(sheetsOf(bafflewright(again, { cwd }).out)).toEqual(sheetsOf(timed.out));
      for (const command of ["nest", "check", "make"]) bafflewright([command, "job.yaml"], { cwd });
      expect(sheetsOf(bafflewright(["nest", "job.yaml", "--seed", "3", "--json"], { cwd }).out)).toEqual(
        sheetsOf(timed.out),
      );
      expect(readFileSync(join(cwd, "job.layout.json"), "utf8")).toBe(kept);
    }));

  it("that was accepted no longer holds when a part changes, and is told so", () =>
    inScratch(async (cwd) => {
      put(cwd, "job.yaml", small);
      bafflewright(["nest", "job.yaml", "--accept"], { cwd });
      put(cwd, "job.yaml", small.replaceAll("300", "301"));
      const { status, err } = bafflewright(["make", "job.yaml", "--out", "made"], { cwd });
      expect(status).toBe(0);
      expect(err).toMatch(/job\.yaml:6.*accepted-layout-stale/);
      expect(err).toMatch(/lid panel has changed/);
    }));

  it("that is not as it was accepted is told at its own file, and never written over", () =>
    inScratch(async (cwd) => {
      put(cwd, "job.yaml", small);
      put(cwd, "job.layout.json", "notes of my own");
      const { status, err } = bafflewright(["nest", "job.yaml", "--accept"], { cwd });
      expect(status).toBe(1);
      expect(err).toMatch(/job\.layout\.json:1:1.*accepted-layout-unreadable/);
      expect(readFileSync(join(cwd, "job.layout.json"), "utf8")).toBe("notes of my own");
    }));

  it("is the best so far where its search is stopped", async () => {
    await inScratch(async (cwd) => {
      put(cwd, "job.yaml", small);
      const { child, ended } = started(["nest", join(cwd, "job.yaml"), "--time", "10min", "--accept"]);
      setTimeout(() => child.kill("SIGINT"), 3000);
      const { status, err } = await ended;
      if (process.platform === "win32") return;
      expect(err).toContain("stopping with the best so far");
      expect(status).toBe(0);
      expect(existsSync(join(cwd, "job.layout.json"))).toBe(true);
    });
  });
});

describe("what is asked of the program itself", () => {
  it("is its schema, as JSON", () => {
    const { status, out } = bafflewright(["schema"]);
    expect(status).toBe(0);
    expect(JSON.parse(out)).toHaveProperty("properties.pieces");
  });

  it("is the starter shop file, which a job may then use", () =>
    inScratch(async (cwd) => {
      const { out } = bafflewright(["shop"]);
      put(cwd, "my shop.yaml", out);
      const { status, err } = bafflewright(["check", written(cwd, small), "--shop", join(cwd, "my shop.yaml")]);
      expect(status, err).toBe(0);
    }));

  it("is which shop file a job uses: beside it, or the built-in one", () =>
    inScratch(async (cwd) => {
      cpSync(starter, join(cwd, "job.yaml"));
      expect(bafflewright(["shop", "job.yaml"], { cwd }).out).toContain("built-in");
      put(cwd, "shop.yaml", bafflewright(["shop"]).out);
      expect(bafflewright(["shop", "job.yaml"], { cwd }).out).toBe("shop.yaml\n");
    }));

  it("is what a finding or a key means", () => {
    expect(bafflewright(["explain", "duplicate-key"])).toMatchObject({
      status: 0,
      out: expect.stringContaining("Two values under one name"),
    });
    expect(bafflewright(["explain", "cut-out"]).out).toContain("drivers.<name>.cut-out");
    expect(bafflewright(["explain", "duplicate-kee"])).toMatchObject({
      status: 2,
      err: expect.stringContaining("did you mean duplicate-key?"),
    });
  });
});

describe("input that cannot be used", () => {
  const refusals: readonly (readonly [what: string, make: (folder: string) => string])[] = [
    ["a file that is not there", (folder) => join(folder, "none.yaml")],
    ["a folder", (folder) => folder],
    ["an empty file", (folder) => written(folder, "")],
    ["a file of nothing but comments", (folder) => written(folder, "# later\n")],
    ["a list", (folder) => written(folder, "- 1\n")],
    [
      "an unknown version",
      (folder) => written(folder, readFileSync(starter, "utf8").replace("version: 1", "version: 9")),
    ],
    ["tabs", (folder) => written(folder, readFileSync(starter, "utf8").replace("  height: 420", "\theight: 420"))],
    ["a duplicate key", (folder) => written(folder, `${readFileSync(starter, "utf8")}\ntitle: again\n`)],
    ["an alias to nothing", (folder) => written(folder, "version: 1\ntitle: *nowhere\n")],
    ["aliases that explode", (folder) => written(folder, bomb())],
    ["a file over 1 MB", (folder) => written(folder, `# ${"x".repeat(1_100_000)}`)],
    ["a picture", (folder) => written(folder, "\u0089PNG\r\n\u001a\n\u0000\u0000")],
  ];

  it.each(refusals)("is %s: exit 2, a place, a next step and no stack trace", (_, make) =>
    inScratch(async (folder) => {
      const { status, out, err } = bafflewright(["make", make(folder), "--out", join(folder, "out")]);
      expect({ status, out }, err).toEqual({ status: 2, out: "" });
      expect(err).toMatch(/^error/m);
      expect(err).toMatch(/^ {2}next/m);
      expect(err).not.toMatch(/\n\s+at .*:\d+/);
      expect(existsSync(join(folder, "out"))).toBe(false);
    }),
  );

  it("is a shop file that is not there", () => {
    const { status, err } = bafflewright(["check", starter, "--shop", "/no/such/shop.yaml"]);
    expect(status).toBe(2);
    expect(err).toContain("/no/such/shop.yaml");
  });
});

describe("a mistake in one piece", () => {
  it("is told with line, column and what to try; the others are made, and the exit code is 1", () =>
    inScratch(async (folder) => {
      const lines = readFileSync(starter, "utf8").split("\n");
      const at = lines.findIndex((line) => line.includes("recess: frame"));
      lines[at] = "    reces: frame";
      const file = written(folder, lines.join("\n"));
      const { status, out, err } = bafflewright(["make", file, "--out", join(folder, "out")]);
      expect(status, err).toBe(1);
      expect(err).toContain(`${file}:${at + 1}:5  pieces.ring`);
      expect(err).toContain("recess");
      expect(out).toMatch(/files +\d+ in/);
      expect(existsSync(join(folder, "out", "plan.json"))).toBe(true);
    }));
});

describe("make", () => {
  it("prints parts, volume, sheets and files, and writes what it says", () =>
    inScratch(async (folder) => {
      const out = join(folder, "out");
      const run = bafflewright(["make", starter, "--out", out]);
      expect(run.status, run.err).toBe(0);
      for (const words of [/parts +\d+ in 4 pieces/, /20 L wanted/, /size settled on/, /\d+ to buy/]) {
        expect(run.out).toMatch(words);
      }
      const files = Object.entries(treeOf(out)).filter(([path, of]) => of !== "/" && !path.startsWith("."));
      expect(run.out).toContain(`${files.length} in ${out}`);
      expect(files.map(([path]) => path)).toEqual(
        expect.arrayContaining(["plan.json", "cut-list.csv", "drawings.pdf"]),
      );
    }));

  it("gives the same bytes again, from another folder and with the job elsewhere", () =>
    inScratch(async (folder) => {
      const job = written(folder, small);
      bafflewright(["make", job, "--out", join(folder, "one")]);
      mkdirSync(join(folder, "moved"));
      cpSync(job, join(folder, "moved", "job.yaml"));
      bafflewright(["make", "job.yaml", "--out", join(folder, "two")], { cwd: join(folder, "moved") });
      expect(treeOf(join(folder, "two"))).toEqual(treeOf(join(folder, "one")));
    }));

  it("leaves the folder as it was where an error holds back everything", () =>
    inScratch(async (folder) => {
      put(folder, "out/keep.txt", "mine");
      const broken = small.replace("kind: panel", "kind: nonsense");
      const { status, out } = bafflewright(["make", written(folder, broken), "--out", join(folder, "out")]);
      expect(status).toBe(1);
      expect(out).toContain("left as it was");
      expect(treeOf(join(folder, "out"))).toEqual({ "keep.txt": "mine" });
    }));

  it("writes to output/NAME when no folder is named", () =>
    inScratch(async (cwd) => {
      put(cwd, "boot.yaml", small);
      expect(bafflewright(["make", "boot.yaml"], { cwd }).status).toBe(0);
      expect(statSync(join(cwd, "output", "boot", "plan.json")).isFile()).toBe(true);
    }));

  it("ends with 2 and writes nothing where a file of the user's is in the way", () =>
    inScratch(async (folder) => {
      const out = join(folder, "out");
      put(out, "plan.json", "mine");
      const { status, err } = bafflewright(["make", written(folder, small), "--out", out]);
      expect(status).toBe(2);
      expect(err).toContain("plan.json");
      expect(treeOf(out)).toEqual({ "plan.json": "mine" });
    }));

  it("ends with 2 where the folder is a file", () =>
    inScratch(async (folder) => {
      const { status, err } = bafflewright(["make", written(folder, small), "--out", join(folder, "job.yaml")]);
      expect(status).toBe(2);
      expect(err).toContain("is not a folder");
    }));

  // Only someone who may not do everything can be kept from writing.
  const nobody = process.getuid?.() === 0 ? 65534 : undefined;
  it.skipIf(process.platform === "win32")("ends with 2 where the folder is read-only", () =>
    inScratch(async (folder) => {
      chmodSync(folder, 0o755);
      mkdirSync(join(folder, "out"));
      chmodSync(join(folder, "out"), 0o555);
      const job = written(folder, small);
      const { status, err } = bafflewright(["make", job, "--out", join(folder, "out")], { uid: nobody });
      expect(status, err).toBe(2);
      expect(err).toContain("may not be written by you");
    }),
  );

  it("lets two runs in one folder wait for each other", () =>
    inScratch(async (folder) => {
      const job = written(folder, small);
      bafflewright(["make", job, "--out", join(folder, "alone")]);
      const runs = [1, 2].map(() => started(["make", job, "--out", join(folder, "shared")]));
      for (const { ended } of runs) expect(await ended).toMatchObject({ status: 0 });
      expect(treeOf(join(folder, "shared"))).toEqual(treeOf(join(folder, "alone")));
    }));

  it("killed while it writes, leaves a folder that the next run turns into what a clean run makes", () =>
    inScratch(async (folder) => {
      const job = written(folder, small);
      const [clean, out] = [join(folder, "clean"), join(folder, "out")];
      const begun = performance.now();
      bafflewright(["make", job, "--out", clean]);
      const whole = performance.now() - begun;
      for (const part of [0.8, 0.9, 0.95]) {
        const { child, ended } = started(["make", job, "--out", out]);
        setTimeout(() => child.kill("SIGKILL"), whole * part);
        await ended;
      }
      expect(bafflewright(["make", job, "--out", out]).status).toBe(0);
      expect(treeOf(out)).toEqual(treeOf(clean));
    }));
});

function written(folder: string, words: string): string {
  const file = join(folder, "job.yaml");
  writeFileSync(file, words);
  return file;
}

/** A hundred million values in ten lines. */
function bomb(): string {
  const levels = Array.from({ length: 8 }, (_, n) => `l${n + 1}: &l${n + 1} [${Array(10).fill(`*l${n}`).join(", ")}]`);
  return ["version: 1", "l0: &l0 [1, 2, 3]", ...levels].join("\n");
}
