import { bulgeOfSweep } from "../../../src/geometry/arc.js";
import { fillet } from "../../../src/geometry/corners.js";
import { selfCrossing } from "../../../src/geometry/crossing.js";
import type { Point, Profile, Region, Vertex } from "../../../src/geometry/profile.js";
import { againstTheClock, circle, polygon, rectangle, slot } from "../../../src/geometry/shapes.js";
import { mirrored, moved, turned } from "../../../src/geometry/transform.js";
import type { Seeded } from "./seeded.js";

/** A shape as a workshop draws it, the distance it is to be moved by, and the family it comes from. */
export type Drawn = { readonly family: string; readonly region: Region; readonly distance: number };

const steps = [3, 6, 5, 2.5, 9.525, 12.7, 18, 0.5, 1, 25.4 / 16] as const;

/** One shape of the workshop kind. */
export function drawShape(random: Seeded): Drawn {
  const [family, draw] = random.pick(families);
  const distance = random.pick(steps);
  const region = draw(random, distance);
  const change = random.pick(changes);
  const sign = random.chance(0.5) ? 1 : -1;
  return { family, region: change(region, random), distance: sign * distance };
}

/** Two shapes that lie on, in or beside one another, often flush. */
export function drawPair(random: Seeded): { readonly family: string; readonly a: Region; readonly b: Region } {
  const first = drawPlain(random);
  const second = drawPlain(random);
  const flush = random.chance(0.6);
  const corner = random.pick(first.region.outer);
  const own = random.pick(second.region.outer);
  const dx = flush ? corner.x - own.x : random.whole(-40, 60);
  const dy = flush ? corner.y - own.y : random.whole(-40, 60);
  const placed = map(second.region, (loop) => moved(loop, dx, dy));
  const angle = random.chance(0.3) ? random.between(0, 6) : 0;
  const both = [first.region, placed].map((region) => map(region, (loop) => turned(loop, angle)));
  return { family: `${first.family} and ${second.family}`, a: both[0]!, b: both[1]! };
}

function drawPlain(random: Seeded): { family: string; region: Region } {
  const [family, draw] = random.pick(families);
  return { family, region: draw(random, random.pick(steps)) };
}

type Draw = (random: Seeded, distance: number) => Region;

const families: readonly (readonly [string, Draw])[] = [
  ["rounded rectangle", roundedRectangle],
  ["notched plate", notchedPlate],
  ["ring", ring],
  ["slot", aSlot],
  ["tab twice as wide as the distance", tabbed],
  ["collinear run", collinear],
  ["tangent arcs", tangentArcs],
  ["near-zero edges", nearZero],
  ["steps of 0.001", tinySteps],
  ["bay with a neck", bay],
  ["bowed plate", bowed],
  ["plate with holes", holed],
  ["free polygon", freePolygon],
];

const solid = (outer: Profile): Region => ({ outer, holes: [] });
const at = (x: number, y: number): Point => ({ x, y });
const named = (i: number) => `e${i}`;

function roundedRectangle(random: Seeded, distance: number): Region {
  const w = random.whole(20, 200);
  const h = random.whole(20, 200);
  const plate = rectangle(0, 0, w, h, ["bottom", "right", "top", "left"]);
  const radius = random.pick([distance, 2 * distance, Math.min(w, h) / 2, random.whole(1, 10), random.between(0.5, 9)]);
  return solid(fillet(plate, radius).profile);
}

function notchedPlate(random: Seeded, distance: number): Region {
  const w = random.whole(60, 300);
  const h = random.whole(50, 200);
  const x = random.whole(5, w - 45);
  const wide = random.pick([2 * distance, 40, 25.4, random.whole(3, 40)]);
  const deep = random.pick([h / 2, distance, 2 * distance, random.whole(2, 45)]);
  const points = [
    at(0, 0),
    at(w, 0),
    at(w, h),
    at(x + wide, h),
    at(x + wide, h - deep),
    at(x, h - deep),
    at(x, h),
    at(0, h),
  ];
  const sharp = polygon(points, named);
  const radius = random.pick([0, distance, wide / 2, 3, random.between(0.1, 6)]);
  return solid(fillet(sharp, radius, { corners: random.pick(["inside", "all", "outside"] as const) }).profile);
}

function ring(random: Seeded, distance: number): Region {
  const outside = random.whole(15, 120);
  const wall = random.pick([2 * distance, distance, random.whole(3, 14), 12]);
  const inside = Math.max(1, outside - wall);
  const center = at(random.whole(-50, 50), random.whole(-50, 50));
  return { outer: circle(center, outside, "outside"), holes: [circle(center, inside, "inside")] };
}

function aSlot(random: Seeded, distance: number): Region {
  const b = random.chance(0.5) ? at(random.whole(1, 90), 0) : at(random.whole(-60, 60), random.whole(1, 60));
  return solid(slot(at(0, 0), b, random.pick([2 * distance, 4 * distance, random.whole(4, 30)]), "slot"));
}

function tabbed(random: Seeded, distance: number): Region {
  const d = 2 * distance;
  const points: Point[] = [at(0, 0)];
  let x = 0;
  const tabs = random.whole(1, 5);
  const tall = random.pick([d, 10, 15]);
  const inner = random.chance(0.5);
  for (let i = 0; i < tabs; i++) {
    const gap = inner ? d : random.whole(8, 30);
    const tab = inner ? random.whole(8, 30) : d;
    points.push(at(x + gap, 0), at(x + gap, -tall), at(x + gap + tab, -tall), at(x + gap + tab, 0));
    x += gap + tab;
  }
  points.push(at(x + 20, 0), at(x + 20, 50), at(0, 50));
  return solid(polygon(points, named));
}

function collinear(random: Seeded): Region {
  const points: Point[] = [];
  const side = (x0: number, y0: number, x1: number, y1: number) => {
    const n = random.whole(1, 5);
    for (let i = 0; i < n; i++) points.push(at(x0 + ((x1 - x0) * i) / n, y0 + ((y1 - y0) * i) / n));
  };
  const w = random.whole(30, 200);
  const h = random.whole(30, 200);
  side(0, 0, w, 0);
  side(w, 0, w, h);
  side(w, h, w / 3, h);
  side(w / 3, h, w / 3, h / 2);
  side(w / 3, h / 2, 0, h / 2);
  side(0, h / 2, 0, 0);
  return solid(polygon(points, named));
}

/** A chain of arcs that run smoothly into one another, left and right, closed by a back: a wavy edge. */
function tangentArcs(random: Seeded): Region {
  const vertices: Vertex[] = [];
  const n = random.whole(2, 6);
  const step = random.whole(10, 40);
  const bulge = bulgeOfSweep(random.pick([Math.PI / 2, Math.PI / 3, Math.PI, random.between(0.1, 2)]));
  for (let i = 0; i < n; i++) vertices.push({ x: i * step, y: 0, bulge: i % 2 === 0 ? bulge : -bulge, by: `wave${i}` });
  vertices.push({ x: n * step, y: 0, bulge: 0, by: "right" });
  vertices.push({ x: n * step, y: step + 40, bulge: random.chance(0.5) ? 0 : 0.3, by: "top" });
  vertices.push({ x: 0, y: step + 40, bulge: 0, by: "left" });
  return solid(vertices);
}

function nearZero(random: Seeded, distance: number): Region {
  const { outer } = notchedPlate(random, distance);
  const tiny = random.pick([1e-7, 1e-9, 5e-7, 1e-5]);
  const i = random.whole(0, outer.length - 1);
  const v = outer[i]!;
  if (v.bulge !== 0) return solid(outer);
  const next = outer[(i + 1) % outer.length]!;
  const length = Math.hypot(next.x - v.x, next.y - v.y);
  const shifted = { ...v, x: v.x + ((next.x - v.x) / length) * tiny, y: v.y + ((next.y - v.y) / length) * tiny };
  return solid([...outer.slice(0, i), { ...v, by: "tiny" }, shifted, ...outer.slice(i + 1)]);
}

function tinySteps(random: Seeded): Region {
  const points: Point[] = [at(0, 0), at(120, 0), at(120, 60)];
  let x = 120;
  let y = 60;
  for (let i = 0; i < random.whole(2, 8); i++) {
    x -= random.pick([10, 5, 0.001, 3]);
    points.push(at(x, y));
    y += random.pick([0.001, -0.001, 0.002]);
    points.push(at(x, y));
  }
  points.push(at(0, y));
  return solid(polygon(points, named));
}

/** A bay whose mouth is narrower than it is: growth closes it, shrinkage of its fingers splits it. */
function bay(random: Seeded, distance: number): Region {
  const mouth = random.pick([2 * distance, distance, 3 * distance, 4]);
  const wide = mouth + random.pick([2 * distance, 20, 6]);
  const wall = random.pick([distance, 2 * distance, 8, 15]);
  const floor = wall + random.whole(5, 30);
  const lip = floor + random.whole(4, 40);
  const top = lip + random.pick([distance, 2 * distance, 5]);
  const w = wide + 2 * wall;
  const m0 = (w - mouth) / 2;
  const m1 = (w + mouth) / 2;
  const points = [
    at(0, 0),
    at(w, 0),
    at(w, top),
    at(m1, top),
    at(m1, lip),
    at(w - wall, lip),
    at(w - wall, floor),
    at(wall, floor),
    at(wall, lip),
    at(m0, lip),
    at(m0, top),
    at(0, top),
  ];
  const sharp = polygon(points, named);
  return solid(random.chance(0.5) ? sharp : fillet(sharp, random.pick([1, distance / 2, 2])).profile);
}

/** Edges bowed in and out, as a measured floor comes. */
function bowed(random: Seeded): Region {
  const n = random.whole(3, 9);
  const vertices: Vertex[] = [];
  for (let i = 0; i < n; i++) {
    const angle = (2 * Math.PI * i) / n;
    const away = random.between(40, 120);
    const bulge = random.chance(0.3) ? 0 : random.between(-0.25, 0.45);
    vertices.push({ x: away * Math.cos(angle), y: away * Math.sin(angle), bulge, by: named(i) });
  }
  // edges bowed in may cross near a sharp corner: that is no shape
  return selfCrossing(vertices) === undefined ? solid(vertices) : bowed(random);
}

function holed(random: Seeded, distance: number): Region {
  const outer = rectangle(0, 0, 200, 120, ["bottom", "right", "top", "left"]);
  const holes: Profile[] = [];
  const r = random.whole(5, 20);
  const between = random.pick([2 * distance, distance, 5, 0.5]);
  for (let i = 0; i < 3; i++) {
    const x = 25 + i * (2 * r + between);
    if (x + r >= 199) break;
    holes.push(
      random.chance(0.7) ? circle(at(x, 60), r, `hole${i}`) : rectangle(x - r, 60 - r, x + r, 60 + r, `hole${i}`),
    );
  }
  holes.push(slot(at(30, 20), at(90, 20), 8, "slot"));
  return { outer, holes };
}

/** A star polygon about the origin, so that it never crosses itself. */
function freePolygon(random: Seeded): Region {
  const n = random.whole(3, 14);
  const points: Point[] = [];
  for (let i = 0; i < n; i++) {
    const angle = (2 * Math.PI * (i + random.between(0, 0.6))) / n;
    const away = random.between(15, 130);
    points.push(at(away * Math.cos(angle), away * Math.sin(angle)));
  }
  return solid(polygon(points, named));
}

type Change = (region: Region, random: Seeded) => Region;

const changes: readonly Change[] = [
  (region) => region,
  (region) => map(region, mirrored),
  (region, random) => map(region, (loop) => startMoved(loop, random.whole(0, loop.length - 1))),
  (region, random) => {
    const angle = random.between(0, 7);
    return map(region, (loop) => turned(loop, angle));
  },
  (region, random) => {
    const [dx, dy] = [random.between(-2000, 2000), random.between(-2000, 2000)];
    return map(region, (loop) => moved(turned(loop, 0.7), dx, dy));
  },
  (region) => map(region, (loop) => againstTheClock(againstTheClock(mirrored(loop)))),
];

function startMoved(loop: Profile, by: number): Profile {
  return [...loop.slice(by), ...loop.slice(0, by)];
}

function map(region: Region, change: (loop: Profile) => Profile): Region {
  return { outer: change(region.outer), holes: region.holes.map(change) };
}
