// How short a strip the true-shape search finds for published orders of shapes, beside the best that is known; and how
// many sheets the saw's packing needs for published orders of rectangles (bench-rectangles.mjs).
//
//   npm run bench:nest -- [--seconds N] [--seed S] [--oriented] [--json] FILE...
//
// FILE: {instances: [...]} of rectangles, with --oriented none of them turned, the seconds those of the processor;
// --only NAME for instances whose name holds it. Or shapes:
// {name, stripHeight, allowedRotationsDeg, items: [{id, demand, polygon: [[x, y], ...]}], bestKnown: {length}}.
// Every result is checked by clipper2 before it is told; a faulty one ends the run with 1.
// With --json one object a line: {name, kind: "strip", length, seconds, placements: [{id, x, y, rotationDeg}]}.
// More flags, to repeat a run exactly: --rounds N instead of the seconds; --threads 0 keeps it in one thread.

import { readFileSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { parseArgs } from "node:util";
import { benchRectangles, rectanglesLine } from "./bench-rectangles.mjs";

const dist = process.env.BENCH_DIST ?? join(dirname(dirname(fileURLToPath(import.meta.url))), "dist");
const load = (module) => import(pathToFileURL(join(dist, "nest", module)).href);
const { laneHere, laneSeeds } = await load("lanes.js");
const { runRound, stripRounds } = await load("shapes/lanes.js");
const { laneInThread } = await load("threads.js");
const { stripFaults } = await load("shapes/stripFaults.js");

const lanes = 2;
/** Places that each lane tries between two barriers. */
const tries = 200_000;

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    seconds: { type: "string", default: "10" },
    seed: { type: "string", default: "1" },
    rounds: { type: "string" },
    threads: { type: "string", default: "2" },
    oriented: { type: "boolean", default: false },
    only: { type: "string" },
    json: { type: "boolean", default: false },
  },
});
const seconds = numberOf("seconds", values.seconds);
const seed = numberOf("seed", values.seed);
const rounds = values.rounds === undefined ? undefined : numberOf("rounds", values.rounds);
if (positionals.length === 0) stop("name at least one file");

const rows = [];
for (const file of positionals) {
  const content = JSON.parse(readFileSync(file, "utf8"));
  rows.push(...(content.instances === undefined ? [await bench(content)] : await benchSheets(file, content)));
}
if (!values.json) means(rows.filter((row) => row.length !== undefined));
process.exitCode = rows.some((row) => row.faults.length > 0) ? 1 : 0;

async function benchSheets(file, content) {
  const how = { dist, seconds, seed, oriented: values.oriented, only: values.only };
  const all = await benchRectangles(content, how, ({ faults, ...row }) => {
    const { name, kind, sheets, lowerBound, seconds: took, placements } = row;
    if (values.json) console.log(JSON.stringify({ name, kind, sheets, lowerBound, seconds: took, placements }));
    for (const fault of faults) console.error(`${name}: ${fault}`);
  });
  if (!values.json) console.log(rectanglesLine(content.name ?? basename(file, ".json"), all, seconds));
  return all;
}

async function bench(instance) {
  const begun = performance.now();
  const found = await search(orderOf(instance), begun);
  const took = (performance.now() - begun) / 1000;
  const { length, placements } = placementsOf(instance, found.layout);
  const faults = stripFaults(instance, placements, length);
  const row = {
    name: instance.name,
    length,
    seconds: took,
    faults,
    rounds: found.rounds,
    best: instance.bestKnown?.length,
  };
  if (values.json) console.log(JSON.stringify({ name: row.name, kind: "strip", length, seconds: took, placements }));
  else console.log(rowOf(instance, row));
  for (const fault of faults) console.error(`${instance.name}: ${fault}`);
  return row;
}

/** Runs all lanes from barrier to barrier until the time is up, or for so many rounds. */
async function search(order, begun) {
  const laneOf = (each) =>
    values.threads === "0" ? laneHere(stripRounds(order, each)) : laneInThread("strip", order, each);
  const running = laneSeeds(seed, lanes).map(laneOf);
  let layout;
  let done = 0;
  let longest = 0;
  for (;;) {
    const since = (performance.now() - begun) / 1000;
    const share = rounds === undefined ? (since + longest) / seconds : done / rounds;
    if (done > 0 && layout.length < Number.POSITIVE_INFINITY && share >= 1) break;
    layout = await runRound(running, { best: layout, tries, share: Math.min(1, share) });
    longest = Math.max(done === 0 ? 0 : longest, done === 0 ? 0 : (performance.now() - begun) / 1000 - since);
    done++;
  }
  for (const lane of running) lane.end();
  return { layout, rounds: done };
}

function orderOf({ items, stripHeight, allowedRotationsDeg }) {
  const turns = allowedRotationsDeg.map((degrees) => (degrees * Math.PI) / 180);
  const forms = items.map(({ polygon, demand }) => ({
    loops: [polygon.map(([x, y]) => ({ x, y }))],
    count: demand,
    turns,
  }));
  return { forms, width: stripHeight };
}

/** From the search's own places to the files' manner: turned about 0, 0, the extents' corner at x, y. */
function placementsOf({ items, allowedRotationsDeg }, { lying }) {
  const ids = items.flatMap((item) => Array.from({ length: item.demand }, () => item));
  const laid = ids.map(({ id, polygon }, i) => {
    const rotationDeg = allowedRotationsDeg[lying[4 * i + 1]];
    const angle = (rotationDeg * Math.PI) / 180;
    const xs = polygon.map(([x, y]) => Math.cos(angle) * x - Math.sin(angle) * y);
    const ys = polygon.map(([x, y]) => Math.sin(angle) * x + Math.cos(angle) * y);
    const x = lying[4 * i + 2] + Math.min(...xs);
    return { id, x, y: lying[4 * i + 3] + Math.min(...ys), rotationDeg, end: x + Math.max(...xs) - Math.min(...xs) };
  });
  // parts were drawn in by a hair for the search: begin at 0 again
  const first = Math.min(...laid.map(({ x }) => x));
  const length = Math.max(...laid.map(({ end }) => end)) - first;
  return { length, placements: laid.map(({ id, x, y, rotationDeg }) => ({ id, x: x - first, y, rotationDeg })) };
}

function rowOf(instance, { name, length, seconds: took, faults, rounds: done, best }) {
  const area = instance.totalArea / (instance.stripHeight * length);
  const over = best === undefined ? "" : `${percent(length / best - 1)} over ${best}`;
  const checked = faults.length === 0 ? "sound" : `${faults.length} FAULTS`;
  return `${name.padEnd(10)} ${length.toFixed(3).padStart(11)}  filled ${percent(area)}  ${over.padEnd(26)} ${took.toFixed(1)} s  ${done} rounds  ${checked}`;
}

function means(all) {
  const known = all.filter((row) => row.best !== undefined);
  if (known.length === 0) return;
  const over = known.map((row) => row.length / row.best - 1);
  const mean = over.reduce((sum, value) => sum + value, 0) / over.length;
  console.log(`mean ${percent(mean)} over the best known, worst ${percent(Math.max(...over))}, seed ${seed}`);
}

function percent(share) {
  return `${(100 * share).toFixed(2)} %`.padStart(8);
}

function numberOf(name, text) {
  const value = Number(text);
  if (!(value > 0)) stop(`--${name} takes a number above 0, not ${text}`);
  return value;
}

function stop(why) {
  console.error(why);
  process.exit(2);
}
