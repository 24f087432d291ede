// How many sheets a workshop's orders need, and how long that takes: packed for the saw, beside a general-purpose packer
// of rectangles, which need not be able to cut from edge to edge. Then how often a count of sheets is proven fewest.
//
//   npm run bench:packers -- [--seconds N] [--orders N] [--proven N] [--seed S]
//
// Orders of 10, 100 and 1,000 parts on sheets of 2440 x 1220 mm with 5 mm of trim, a kerf of 3.2 mm; --orders of each size
// (sheets are added up over them), at most --seconds of processor time for the search of one. Cut from edge to edge twice:
// with each piece large enough to be held, as every list is made, and without that, which the packer does not ask either.
// --proven: so many orders of 5 to 60 parts, each searched for 200 layouts. Whatever is packed is checked: all parts once,
// inside the trim, a kerf apart. A fault ends the run with 1.

import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { parseArgs } from "node:util";
// its package names the other form as its main one, which a bare import does not read
import { MaxRectsPacker, PACKING_LOGIC } from "maxrects-packer/dist/maxrects-packer.mjs";

const dist = process.env.BENCH_DIST ?? join(dirname(dirname(fileURLToPath(import.meta.url))), "dist");
const load = (module) => import(pathToFileURL(join(dist, "nest", module)).href);
const { beginRectangles } = await load("rectangles/search.js");
const { boundOf } = await load("bound.js");
const { pick, randomFrom } = await load("random.js");

const sheet = { length: 2440, width: 1220, trim: 5 };
const kerf = 3.2;
/** What a usual workshop can do, as the shop file has it where nothing else is said; one kerf, as the packer has one. */
const sawing = {
  table: { kerf, reach: 1e5, crossCut: 650, length: 2440, width: 650 },
  track: { kerf, longest: 3100 },
  hold: { length: 300, width: 50 },
  step: 0.5,
  setting: 0.01,
};

const { values } = parseArgs({
  options: {
    seconds: { type: "string", default: "5" },
    orders: { type: "string", default: "3" },
    proven: { type: "string", default: "200" },
    seed: { type: "string", default: "1" },
  },
});
const [seconds, orders, toProve, seed] = ["seconds", "orders", "proven", "seed"].map((name) => numberOf(name));
let faults = 0;

console.log(
  `Sheets of ${sheet.length} x ${sheet.width} mm, kerf ${kerf} mm. ${orders} orders of each size: the sheets of all of them,`,
);
console.log(
  "and the processor time of one of them in the mean. Cut from edge to edge no order can do with less than its bound.",
);
for (const count of [10, 100, 1000]) compare(count);
prove(toProve);
process.exitCode = faults > 0 ? 1 : 0;

function compare(count) {
  const all = Array.from({ length: orders }, (_, i) => orderOf(partsOf(count, seed + i)));
  const bounds = all.map((order) => boundOf(order).count);
  const unheld = ({ sawing: _, ...order }) => order;
  const ways = {
    "general-purpose packer, cuts as they come": (order) => packed(order),
    "edge to edge, nothing held: first list": (order) => searched(unheld(order), 0),
    [`edge to edge, nothing held: up to ${seconds} s`]: (order) => searched(unheld(order), seconds),
    "edge to edge, all held: first list": (order) => searched(order, 0),
    [`edge to edge, all held: up to ${seconds} s`]: (order) => searched(order, seconds),
  };
  console.log(`\n${`orders of ${count} parts`.padEnd(44)} sheets      time`);
  for (const [way, layOut] of Object.entries(ways)) {
    const results = all.map((order) => timed(() => layOut(order)));
    for (const [i, { sheets }] of results.entries()) check(way, all[i], sheets);
    const used = sum(results.map(({ sheets }) => sheets.length));
    const time = (1000 * sum(results.map((result) => result.seconds))) / orders;
    console.log(`  ${way.padEnd(42)} ${String(used).padStart(6)} ${time.toFixed(0).padStart(6)} ms`);
  }
  console.log(`  ${"bound of cuts from edge to edge".padEnd(42)} ${String(sum(bounds)).padStart(6)}`);
}

/** Counts the orders whose number of sheets no layout can go below. */
function prove(count) {
  const random = randomFrom(seed);
  let proven = 0;
  for (let i = 0; i < count; i++) {
    const order = orderOf(partsOf(5 + Math.floor(random() * 56), seed + i));
    const { result } = beginRectangles(order).advance(200);
    if (result.left.length === 0 && result.sheets.length === boundOf(order).count) proven++;
  }
  console.log(`\nproven fewest (as many sheets as the bound): ${proven} of ${count} orders of 5 to 60 parts, all held`);
}

/** A workshop's parts, whole and half millimetres: walls of few heights, panels, narrow strips. */
function partsOf(count, from) {
  const random = randomFrom(1000 * from + count);
  const between = (least, most) => Math.round(2 * (least + random() * (most - least))) / 2;
  const kinds = [
    () => [between(120, 900), pick(random, [100, 149.5, 150, 218, 300])],
    () => [between(120, 900), pick(random, [100, 149.5, 150, 218, 300])],
    () => [between(60, 1100), between(50, 600)],
    () => [between(60, 1100), between(50, 600)],
    () => [between(300, 900), between(50, 80)],
  ];
  return Array.from({ length: count }, () => pick(random, kinds)());
}

function orderOf(parts) {
  const at = (x, y) => ({ x, y, bulge: 0, by: "side" });
  return {
    items: parts.map(([w, h], i) => ({
      id: `${i}`,
      shape: { outer: [at(0, 0), at(w, 0), at(w, h), at(0, h)], holes: [] },
      gap: kerf,
      turns: [0, Math.PI / 2],
    })),
    stock: [{ name: "sheet", ...sheet, cost: 1 }],
    edgeToEdge: true,
    sawing,
    seed: 1,
    iterations: 1,
  };
}

/** The best layout of a search that ends when its time is up, or when no layout can do with less; 0: the first list. */
function searched(order, time) {
  const search = beginRectangles(order);
  const begun = process.cpuUsage();
  let found = search.advance(1);
  const least = time > 0 ? boundOf(order).count : 0;
  while (secondsSince(begun) < time && (found.result.left.length > 0 || found.result.sheets.length > least))
    found = search.advance(10);
  return found.result.sheets.map(({ placed }) =>
    placed.map(({ item, x, y, turn }) => {
      const { x: w, y: h } = order.items[item].shape.outer[2];
      return Math.abs(Math.sin(turn)) > 0.5 ? { item, x, y, w: h, h: w } : { item, x, y, w, h };
    }),
  );
}

/** The best of the packer's own rules. A kerf is added to each part and once to the sheet, as for cuts from edge to edge. */
function packed({ items }) {
  const room = [sheet.length, sheet.width].map((side) => side - 2 * sheet.trim + kerf);
  const tries = [PACKING_LOGIC.MAX_AREA, PACKING_LOGIC.MAX_EDGE].map((logic) => {
    const packer = new MaxRectsPacker(...room, 0, {
      smart: false,
      pot: false,
      square: false,
      allowRotation: true,
      logic,
    });
    packer.addArray(
      items.map(({ shape }, item) => {
        const { x, y } = shape.outer[2];
        return { width: x + kerf, height: y + kerf, data: item };
      }),
    );
    return packer.bins;
  });
  const best = tries.reduce((a, b) => (b.length < a.length ? b : a));
  return best.map(({ rects }) =>
    rects.map(({ x, y, width, height, rot, data }) => {
      // a part that lies turned keeps its own width and height
      const [w, h] = rot ? [height, width] : [width, height];
      return { item: data, x: x + sheet.trim, y: y + sheet.trim, w: w - kerf, h: h - kerf };
    }),
  );
}

function check(way, { items }, sheets) {
  const fault = (what) => {
    faults++;
    if (faults <= 10) console.error(`${way}: ${what}`);
  };
  const hair = 1e-6;
  const laid = sheets.flat();
  if (laid.length !== items.length || new Set(laid.map(({ item }) => item)).size !== items.length)
    fault(`${laid.length} parts of ${items.length} laid`);
  for (const { item, w, h } of laid) {
    const { x, y } = items[item].shape.outer[2];
    const [long, short] = [Math.max(x, y), Math.min(x, y)];
    if (Math.abs(Math.max(w, h) - long) > hair || Math.abs(Math.min(w, h) - short) > hair)
      fault(`part ${item} is not whole`);
  }
  for (const parts of sheets) {
    for (const { item, x, y, w, h } of parts) {
      const { trim, length, width } = sheet;
      if (Math.min(x, y) < trim - hair || x + w > length - trim + hair || y + h > width - trim + hair)
        fault(`part ${item} lies over the trim`);
    }
    for (const [i, a] of parts.entries())
      for (const b of parts.slice(i + 1)) {
        const apart = Math.max(b.x - a.x - a.w, a.x - b.x - b.w, b.y - a.y - a.h, a.y - b.y - b.h);
        if (apart < kerf - hair) fault(`parts ${a.item} and ${b.item} lie ${apart} apart`);
      }
  }
}

function timed(work) {
  const begun = process.cpuUsage();
  const sheets = work();
  return { sheets, seconds: secondsSince(begun) };
}

function secondsSince(begun) {
  const { user, system } = process.cpuUsage(begun);
  return (user + system) / 1e6;
}

function sum(of) {
  return of.reduce((total, value) => total + value, 0);
}

function numberOf(name) {
  const value = Number(values[name]);
  if (value > 0) return value;
  console.error(`--${name} takes a number above 0, not ${values[name]}`);
  process.exit(2);
}
