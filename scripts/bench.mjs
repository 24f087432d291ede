// How long `check` and `make` take on the demo, cold, beside the floor of the same run: the bare runtime, and the
// runtime with the libraries loaded that the run needs. Ratios first, because seconds are the machine's.
//
//   npm run bench                  everything
//   npm run bench -- --parts FILE  the parts of one run, in this process (used by the above)

import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const job = join(root, "templates", "estate-cargo.yaml");
const command = join(root, "dist", "cli", "main.js");
const repeats = 7;

const checkLibraries = ["commander", "yaml", "zod", "clipper2-ts", "makerjs", "#manifold"];
const makeLibraries = [...checkLibraries, "@svgdotjs/svg.js", "svgdom", "pdfkit"];

const [flag, file] = process.argv.slice(2);
if (flag === "--parts") console.log(JSON.stringify(await timeParts(file)));
else bench();

function bench() {
  const bare = cold(["-e", "0"]);
  const checkFloor = cold(importing(checkLibraries));
  const makeFloor = cold(importing(makeLibraries));
  const check = cold([command, "check", job]);
  const make = inScratch((folder) => cold((n) => [command, "make", job, "--out", join(folder, String(n))]));

  console.log(
    `check  ${ratio(check, checkFloor)} of its libraries' floor (aim 2)   ${ratio(check, bare)} of the bare runtime`,
  );
  console.log(
    `make   ${ratio(make, makeFloor)} of its libraries' floor           ${ratio(make, bare)} of the bare runtime`,
  );
  console.log(`\ncold, median of ${repeats} runs, the fastest in brackets`);
  row("bare runtime", bare);
  row("with the libraries of check", checkFloor);
  row("with the libraries of make", makeFloor);
  row("check", check);
  row("make (aim 3 s)", make);

  console.log("\nparts of one run, median of 3 fresh processes");
  const runs = [1, 2, 3].map(() => JSON.parse(node([fileURLToPath(import.meta.url), "--parts", job]).stdout));
  for (const part of Object.keys(runs[0])) row(part, summary(runs.map((run) => run[part])));
  benchModules();
}

/** Each file in tests/bench times one module; vitest runs them. */
function benchModules() {
  const folder = join(root, "tests", "bench");
  if (!existsSync(folder) || !readdirSync(folder).some((name) => name.endsWith(".bench.ts"))) return;
  const vitest = join(root, "node_modules", "vitest", "vitest.mjs");
  spawnSync(process.execPath, [vitest, "bench", "--run", "tests/bench"], { cwd: root, stdio: "inherit" });
}

async function timeParts(path) {
  const times = {};
  let since = performance.now();
  const lap = (name) => {
    const now = performance.now();
    times[name] = now - since;
    since = now;
  };
  const load = (module) => import(pathToFileURL(join(root, "dist", module)).href);
  const { loadJob } = await load("cli/load.js");
  const { buildJob, usualOptions } = await load("flow/build.js");
  const { kinds } = await load("pieces/kinds.js");
  lap("import what check needs");
  const { job, shop } = await loadJob(path, {});
  lap("load");
  let stage;
  const onStage = (next) => {
    if (stage === undefined) since = performance.now();
    else lap(stage);
    stage = next;
  };
  const { value: build } = await buildJob(job, shop, kinds, { ...usualOptions, onStage });
  lap("hash");
  const { exporters } = await load("export/formats.js");
  lap("import the formats");
  let bytes = 0;
  for (const exporter of exporters) {
    for (const written of await exporter.write(build)) bytes += written.bytes.length;
    lap(`export ${exporter.format}`);
  }
  if (bytes === 0) throw new Error("the formats wrote nothing");
  return times;
}

function importing(libraries) {
  const all = libraries.map((name) => `import(${JSON.stringify(name)})`).join(", ");
  const solids = 'import("#manifold").then((kernel) => kernel.default())';
  return ["--input-type=module", "-e", `await Promise.all([${all}, ${solids}])`];
}

function cold(args) {
  const times = Array.from({ length: repeats }, (_, n) => {
    const begun = performance.now();
    node(typeof args === "function" ? args(n) : args);
    return performance.now() - begun;
  });
  return summary(times);
}

function node(args) {
  const run = spawnSync(process.execPath, args, { cwd: root, encoding: "utf8" });
  if (run.status !== 0) throw new Error(`${args.join(" ")} ended with ${run.status}\n${run.stderr}`);
  return run;
}

function summary(times) {
  const sorted = [...times].sort((a, b) => a - b);
  return { median: sorted[Math.floor(sorted.length / 2)], least: sorted[0] };
}

function ratio(time, floor) {
  return `${(time.median / floor.median).toFixed(2)} x`.padStart(7);
}

function row(name, { median, least }) {
  console.log(`  ${name.padEnd(30)} ${median.toFixed(0).padStart(6)} ms  (${least.toFixed(0)})`);
}

function inScratch(work) {
  const folder = mkdtempSync(join(tmpdir(), "bafflewright-bench-"));
  try {
    return work(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
