// How long `check` and `make` take on the demo, cold, beside the floor of the same run: the bare runtime, and the
// runtime with the libraries loaded that the run needs; `check` on every starter; how long a free size takes to settle,
// and how planning grows with the panels of a box. Ratios first, because seconds are the machine's.
//
//   npm run bench                    everything
//   npm run bench -- --boxes         starters, free sizes and growth alone
//   npm run bench -- --parts FILE    the parts of one run, in this process (used by the above, as the next two)
//   npm run bench -- --settle FILE   settling the free sizes of a job: the first time, and with all code warm
//   npm run bench -- --growth        planning boxes of more and more walls

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
else if (flag === "--settle") console.log(JSON.stringify(await timeSettling(file)));
else if (flag === "--growth") console.log(JSON.stringify(await timeGrowth()));
else if (flag === "--boxes") benchBoxes();
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
  benchBoxes();
  benchModules();
}

function benchBoxes() {
  const self = fileURLToPath(import.meta.url);
  const starters = readdirSync(join(root, "templates")).filter((name) => !name.startsWith("shop"));
  const bare = cold(["-e", "0"], 3);
  const floor = cold(importing(checkLibraries), 3);
  console.log("\ncheck on each starter, cold, median of 3, beside the floor of its libraries and the bare runtime");
  for (const name of starters) {
    const time = cold([command, "check", join(root, "templates", name)], 3);
    row(name, time, `${ratio(time, floor)} ${ratio(time, bare)}`);
  }
  console.log("\nsettling the free sizes (aim 100 ms): the first time in a fresh process, and warm");
  for (const name of starters) {
    const runs = [1, 2, 3].map(() => JSON.parse(node([self, "--settle", join(root, "templates", name)]).stdout));
    if (runs[0].sizes === 0) continue;
    row(`${name}, first`, summary(runs.map(({ first }) => first)));
    row(`${name}, warm`, summary(runs.map(({ warm }) => warm)));
  }
  console.log("\nplanning a box by its walls, warm; last: what twice the walls take");
  let before;
  for (const { walls, time } of JSON.parse(node([self, "--growth"]).stdout)) {
    row(`${walls} walls`, time, before === undefined ? "" : ratio(time, before));
    before = time;
  }
}

/** The sizes of a job settled: once, and again and again on copies, so that nothing of it is remembered. */
async function timeSettling(path) {
  const { loadJob } = await load("cli/load.js");
  const { kinds } = await load("pieces/kinds.js");
  const { orderOf } = await load("plan/references.js");
  const { settleSizes } = await load("plan/solve.js");
  const { job, shop } = await loadJob(path, {});
  const once = () => {
    const copy = structuredClone(job);
    const { pieces } = orderOf(copy, shop, kinds);
    const begun = performance.now();
    const { sizes } = settleSizes(pieces, copy, shop);
    return { time: performance.now() - begun, sizes: sizes.size };
  };
  const first = once();
  const warm = Array.from({ length: 20 }, () => once().time).slice(5);
  return { first: first.time, warm: summary(warm).median, sizes: first.sizes };
}

/** Boxes with their corners on an oval, planned from the job's text on. */
async function timeGrowth() {
  const { kinds } = await load("pieces/kinds.js");
  const { parseJob } = await load("job/parse.js");
  const { planJob } = await load("plan/plan.js");
  const { starterShop } = await load("shop/starter.js");
  const shop = starterShop();
  const once = (source) => {
    const { value: read } = parseJob(source, "box.yaml", kinds);
    const begun = performance.now();
    const { value: plan } = planJob(read, shop, kinds);
    if (plan.built.parts.length === 0) throw new Error("no box was planned");
    return performance.now() - begun;
  };
  const counts = [6, 12, 24, 48];
  for (const walls of counts) once(boxOf(walls));
  return counts.map((walls) => ({ walls, time: summary(Array.from({ length: 7 }, () => once(boxOf(walls)))) }));
}

/** The job of a box with this many walls and a free height, as JSON, which is YAML too. */
function boxOf(walls) {
  const corner = (_, i) => {
    const t = (2 * Math.PI * (i + 0.3)) / walls;
    return { at: [900 + 600 * Math.cos(t), 900 + 450 * Math.sin(t)] };
  };
  const outline = [
    [0, 0],
    [2000, 0],
    [2000, 2000],
    [0, 2000],
  ].map((at) => ({ at }));
  return JSON.stringify({
    version: 1,
    title: "Growth",
    units: "mm",
    boards: { board: { stock: "mdf-12", measured: 12.1 } },
    space: { outline, height: 1000 },
    pieces: {
      box: {
        kind: "enclosure",
        board: "board",
        net: "150 L",
        outside: { plan: Array.from({ length: walls }, corner), height: "free" },
        "held by": { straps: 2, to: "rings" },
      },
    },
  });
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

function load(module) {
  return import(pathToFileURL(join(root, "dist", module)).href);
}

function importing(libraries) {
  const all = libraries.map((name) => `import(${JSON.stringify(name)})`).join(", ");
  const solids = 'import("#manifold").then((kernel) => kernel.default())';
  return ["--input-type=module", "-e", `await Promise.all([${all}, ${solids}])`];
}

function cold(args, times = repeats) {
  const taken = Array.from({ length: times }, (_, n) => {
    const begun = performance.now();
    node(typeof args === "function" ? args(n) : args);
    return performance.now() - begun;
  });
  return summary(taken);
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

function row(name, { median, least }, more = "") {
  console.log(`  ${name.padEnd(30)} ${median.toFixed(0).padStart(6)} ms  (${least.toFixed(0)})  ${more}`.trimEnd());
}

function inScratch(work) {
  const folder = mkdtempSync(join(tmpdir(), "bafflewright-bench-"));
  try {
    return work(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
