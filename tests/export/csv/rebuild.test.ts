import { describe, expect, it } from "vitest";
import { cutListCsv } from "../../../src/export/csv/cutListCsv.js";
import { processOf } from "../../../src/process/process.js";
import { starterShop } from "../../../src/shop/starter.js";
import { type BoxSpec, planBox } from "../../property/boxes.js";
import { readCsv } from "./reader.js";

// Knows the text of cut-list.csv and nothing else of the project: its own vectors, its own trigonometry.

type V = readonly [number, number, number];
type Corner = { readonly edge: string; readonly x: number; readonly y: number };
type Panel = {
  readonly name: string;
  readonly thickness: number;
  readonly outline: readonly Corner[];
  readonly bevels: ReadonlyMap<string, number>;
  readonly joints: readonly {
    readonly edge: string;
    readonly on: string;
    readonly angle: number;
    readonly from: V;
    readonly to: V;
  }[];
};
/** Where a panel stands: its origin and the directions of its x, y and of what one sees of its face. */
type Pose = { readonly o: V; readonly x: V; readonly y: V; readonly z: V };

const plus = (a: V, b: V, s = 1): V => [a[0] + s * b[0], a[1] + s * b[1], a[2] + s * b[2]];
const times = (a: V, s: number): V => [a[0] * s, a[1] * s, a[2] * s];
const crossed = (a: V, b: V): V => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
const unit = (a: V): V => times(a, 1 / Math.hypot(...a));
const way = ({ x, y, z }: Pose, [a, b, c]: V): V => plus(plus(times(x, a), y, b), z, c);
const put = (pose: Pose, p: V): V => plus(pose.o, way(pose, p));

function panelsIn(bytes: Uint8Array): ReadonlyMap<string, Panel> {
  const [heads, ...rows] = readCsv(bytes);
  const panels = new Map<string, Panel>();
  for (const row of rows) {
    const cell = (head: string) => row[heads!.indexOf(head)]!;
    if (cell("numbers") === "caution") continue;
    const names = cell("parts").split(", ");
    cell("numbers")
      .split(" ")
      .forEach((number, i) => {
        const share = (head: string) =>
          cell(head)
            .split(" | ")
            .flatMap((text) => (text.startsWith(`${number}: `) ? text.slice(number.length + 2).split("; ") : []));
        panels.set(number, {
          name: names[i]!,
          thickness: Number(cell("thickness mm")),
          outline: share("outline mm").map((text) => {
            const [, edge, x, y] = /^(.+?) (\S+) (\S+)(?: bulge \S+)?$/.exec(text)!;
            return { edge: edge!, x: Number(x), y: Number(y) };
          }),
          bevels: new Map(
            share("bevels deg").map((text) => {
              const [, edge, tilt] = /^(.+) (\S+)$/.exec(text)!;
              return [edge!, (Number(tilt) * Math.PI) / 180];
            }),
          ),
          joints: share("joints mm").map((text) => {
            const found =
              /^(.+) (?:butts on|mitres with|is rebated into|runs in a groove of) (\S+) at (\S+) deg from (.+) to (.+)$/.exec(
                text,
              )!;
            const place = (numbers: string) => numbers.split(" ").map(Number) as unknown as V;
            return {
              edge: found[1]!,
              on: found[2]!,
              angle: (Number(found[3]) * Math.PI) / 180,
              from: place(found[4]!),
              to: place(found[5]!),
            };
          }),
        });
      });
  }
  return panels;
}

/** Both ends of an edge of a panel, in its own plane. */
function ends({ outline }: Panel, edge: string): readonly [Corner, Corner] {
  const i = outline.findIndex((corner) => corner.edge === edge);
  return [outline[i]!, outline[(i + 1) % outline.length]!];
}

/** The pose of a panel whose edge lies between two places, its inside at an angle to the inside of the board it meets. */
function poseOn(other: Pose, panel: Panel, { edge, angle, from, to }: Panel["joints"][number]): Pose {
  const [a, b] = ends(panel, edge);
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const [ux, uy] = [(b.x - a.x) / length, (b.y - a.y) / length];
  const along = unit(plus(to, from, -1));
  const own = crossed(along, [0, 0, 1]);
  const inward = plus(times(own, Math.cos(angle)), [0, 0, -1], Math.sin(angle));
  // in the panel's plane any direction is so much along its edge and so much to its left
  const x = plus(times(along, ux), inward, -uy);
  const y = plus(times(along, uy), inward, ux);
  const o = plus(plus(from, x, -a.x), y, -a.y);
  const [X, Y] = [way(other, x), way(other, y)];
  return { o: put(other, o), x: X, y: Y, z: crossed(X, Y) };
}

const origin: Pose = { o: [0, 0, 0], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] };
const along = (a: V, b: V) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** The pose of what this one is seen from: its origin and directions by what each has along this one's own. */
function behind({ o, x, y, z }: Pose, placed: Pose): Pose {
  const seen = (v: V): V => way(placed, [along(v, x), along(v, y), along(v, z)]);
  return { o: plus(placed.o, seen(times(o, -1))), x: seen([1, 0, 0]), y: seen([0, 1, 0]), z: seen([0, 0, 1]) };
}

/** The poses of all panels that hang together with the first one, each found from a joint with one that is placed. */
function assembled(panels: ReadonlyMap<string, Panel>, first: string): ReadonlyMap<string, Pose> {
  const poses = new Map<string, Pose>([[first, origin]]);
  for (let round = 0; round < panels.size; round++) {
    for (const [number, panel] of panels) {
      for (const joint of panel.joints) {
        const [here, there] = [poses.get(number), poses.get(joint.on)];
        if (here === undefined && there !== undefined) poses.set(number, poseOn(there, panel, joint));
        if (here !== undefined && there === undefined) poses.set(joint.on, behind(poseOn(origin, panel, joint), here));
      }
    }
  }
  return poses;
}

/** Corners of face and back: the back's edges are moved in by the thickness times the tangent of the tilt. */
function cornersOf({ outline, thickness, bevels }: Panel): readonly V[] {
  const n = outline.length;
  const lines = outline.map(({ edge, x, y }, i) => {
    const next = outline[(i + 1) % n]!;
    const length = Math.hypot(next.x - x, next.y - y);
    const [ux, uy] = [(next.x - x) / length, (next.y - y) / length];
    const short = thickness * Math.tan(bevels.get(edge) ?? 0);
    return { x: x - uy * short, y: y + ux * short, ux, uy };
  });
  const back = lines.map((two, i): V => {
    const one = lines[(i + n - 1) % n]!;
    const turn = one.ux * two.uy - one.uy * two.ux;
    const t = ((two.x - one.x) * two.uy - (two.y - one.y) * two.ux) / turn;
    return [one.x + one.ux * t, one.y + one.uy * t, -thickness];
  });
  return [...outline.map(({ x, y }): V => [x, y, 0]), ...back];
}

/** What the assembled panels measure along the axes of the first one. */
function outsideOf(panels: ReadonlyMap<string, Panel>, first: string): V {
  const poses = assembled(panels, first);
  const all = [...panels].flatMap(([number, panel]) => {
    const pose = poses.get(number);
    if (pose === undefined) throw new Error(`${panel.name} hangs on nothing`);
    return cornersOf(panel).map((corner) => put(pose, corner));
  });
  return [0, 1, 2].map((i) => Math.max(...all.map((p) => p[i]!)) - Math.min(...all.map((p) => p[i]!))) as unknown as V;
}

/** The cut list of a job with this box alone; no sheet is laid out, and no size depends on one. */
function cutList(box: BoxSpec): Uint8Array {
  const { job, plan } = planBox(box);
  const shop = starterShop();
  const parts = plan.built.parts.map((part, i) => ({ ...part, number: `B${i + 1}` }));
  const numbered = { ...plan, built: { ...plan.built, parts } };
  const process = processOf(job, shop, numbered).value!;
  const layout = { sheets: [], unplaced: [], reused: [], offcuts: [] };
  return cutListCsv({
    job,
    shop,
    hash: "0",
    plan: numbered,
    process,
    layout,
    program: { setups: [] },
    findings: [],
  } as unknown as Parameters<typeof cutListCsv>[0]);
}

const numberOf = (panels: ReadonlyMap<string, Panel>, name: string) =>
  [...panels].find(([, panel]) => panel.name === name)![0];
const held = {
  "held by": { straps: 2, to: "rings" },
  stands: { x: 10, y: 10 },
  kind: "enclosure",
  board: "thick",
  "cut by": "cnc",
};
const at = (...places: readonly (readonly [number, number])[]) => places.map((place) => ({ at: place }));

const jobs: readonly (readonly [string, object, string, V])[] = [
  ["square, butted", { outside: { width: 500, depth: 420, height: 300 } }, "box bottom", [500, 420, 300]],
  [
    "square, rebated",
    { outside: { width: 500, depth: 420, height: 300 }, joints: { form: "rebate", deep: 6 } },
    "box bottom",
    [500, 420, 300],
  ],
  [
    "square, mitred",
    { outside: { width: 500, depth: 420, height: 300 }, joints: { form: "mitre" } },
    "box bottom",
    [500, 420, 300],
  ],
  // seen on its bottom: across the width, then along the depth
  [
    "raked front and back",
    { outside: { side: at([0, 0], [320, 0], [250, 380], [40, 380]), width: 640 } },
    "box bottom",
    [640, 320, 380],
  ],
  [
    "raked, ends between",
    { outside: { side: at([0, 0], [320, 0], [250, 380], [40, 380]), width: 640 }, ends: "between" },
    "box bottom",
    [640, 320, 380],
  ],
  [
    "stepped",
    { outside: { side: at([0, 150], [220, 150], [220, 0], [540, 0], [540, 330], [0, 330]), width: 400 } },
    "box top",
    [400, 540, 330],
  ],
  [
    "in plan, a corner cut off",
    { outside: { plan: at([0, 0], [430, 0], [430, 370], [320, 480], [0, 480]), height: 400 } },
    "box bottom",
    [430, 480, 400],
  ],
];

describe("the cut list alone", () => {
  it.each(jobs)("puts a box together that is %s, its outside right to a hundredth", (_name, spec, first, outside) => {
    const panels = panelsIn(cutList({ ...held, ...spec }));
    const found = outsideOf(panels, numberOf(panels, first));
    found.forEach((size, i) => void expect(Math.abs(size - outside[i]!)).toBeLessThan(0.01));
  });

  it("puts the parts together wherever one begins", () => {
    const panels = panelsIn(cutList({ ...held, ...jobs[3]![1] }));
    // every joint holds: the edge of each panel lies where the list says it does
    const poses = assembled(panels, numberOf(panels, "box left"));
    for (const [number, panel] of panels) {
      for (const joint of panel.joints) {
        const [a] = ends(panel, joint.edge);
        const there = put(poses.get(joint.on)!, joint.from);
        const here = put(poses.get(number)!, [a.x, a.y, 0]);
        expect(Math.hypot(...plus(here, there, -1))).toBeLessThan(1e-4);
      }
    }
  });
});
