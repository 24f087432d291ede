import fc from "fast-check";
import { stringify } from "yaml";
import type { Finding } from "../../src/input/finding.js";
import { parseJob } from "../../src/job/parse.js";
import type { Plan } from "../../src/model/build.js";
import type { Job } from "../../src/model/job.js";
import { kinds } from "../../src/pieces/kinds.js";
import { planJob } from "../../src/plan/plan.js";
import { starterShop } from "../../src/shop/starter.js";

/** What stands in the job under `pieces: box`. */
export type BoxSpec = Readonly<Record<string, unknown>>;

const whole = (min: number, max: number) => fc.integer({ min, max });
type Corners = readonly (readonly [number, number])[];

const square = fc.record({ width: whole(200, 900), depth: whole(200, 700), height: whole(150, 600) });

/** Front and back lean, either way. */
const raked = fc.tuple(whole(250, 500), whole(200, 450), whole(-120, 120), whole(-120, 120)).map(
  ([depth, height, front, back]): Corners => [
    [0, 0],
    [depth, 0],
    [depth - front, height],
    [back, height],
  ],
);

/** A step, upright or leaning, as over a wheel arch. */
const stepped = fc.tuple(whole(120, 250), whole(150, 300), whole(90, 200), whole(120, 250), whole(-40, 40)).map(
  ([over, under, rise, high, lean]): Corners => [
    [0, rise],
    [over, rise],
    [over + lean, 0],
    [over + lean + under, 0],
    [over + lean + under, rise + high],
    [0, rise + high],
  ],
);

/** A rectangle with some of its corners cut off. */
const cutOff = fc
  .tuple(whole(300, 700), whole(300, 700), fc.tuple(...[0, 1, 2, 3].map(() => fc.option(whole(60, 120)))))
  .map(([w, d, cuts]): Corners => {
    const corner = (i: number, x: number, y: number, inX: number, inY: number): Corners => {
      const c = cuts[i] ?? 0;
      if (c === 0) return [[x, y]];
      const [alongX, alongY] = [
        [x + inX * c, y],
        [x, y + inY * c],
      ] as const;
      return inX * inY > 0 ? [alongY, alongX] : [alongX, alongY];
    };
    return [...corner(0, 0, 0, 1, 1), ...corner(1, w, 0, -1, 1), ...corner(2, w, d, -1, -1), ...corner(3, 0, d, 1, -1)];
  });

/** Any polygon that bows out, its corners on an oval. */
const round = fc.tuple(whole(5, 8), whole(220, 400), whole(220, 400), fc.double({ min: 0, max: 1, noNaN: true })).map(
  ([n, a, b, turn]): Corners =>
    Array.from({ length: n }, (_, i) => {
      const t = ((i + turn) / n) * 2 * Math.PI;
      return [a * Math.cos(t), b * Math.sin(t)];
    }),
);

const outside = fc
  .oneof(
    square,
    fc.record({ side: fc.oneof(raked, stepped, cutOff, round), width: whole(150, 900) }),
    fc.record({ plan: fc.oneof(cutOff, raked, stepped, round), height: whole(150, 600) }),
  )
  .map((form) =>
    Object.fromEntries(
      Object.entries(form).map(([key, value]) => [
        key,
        typeof value === "number" ? value : value.map((at) => ({ at })),
      ]),
    ),
  );

const joints = fc.oneof(
  fc.constant(undefined),
  fc.constant({ form: "square" }),
  fc.constant({ form: "mitre" }),
  fc.record({ form: fc.constant("rebate"), deep: whole(3, 9) }),
);

/** Boxes of all forms. Ends that are mitred or stand in a corner that goes in are refused by the planner, and left out. */
export const boxes: fc.Arbitrary<BoxSpec> = fc
  .record({
    outside,
    joints,
    ends: fc.constantFrom("over", "between"),
    board: fc.constantFrom("thin", "thick"),
    first: fc.option(fc.constantFrom("thin", "thick")),
    double: fc.boolean(),
    sawn: fc.boolean(),
  })
  .map(({ outside: form, joints: joined, ends, board, first, double, sawn }) => {
    const wall = "plan" in form ? "top" : "side" in form ? "right" : "front";
    const own = { ...(first ? { board: first } : {}), ...(double ? { double: "thin" } : {}) };
    return {
      kind: "enclosure",
      board,
      outside: form,
      ends,
      ...(joined === undefined ? {} : { joints: joined }),
      ...(Object.keys(own).length > 0 ? { panels: { [wall]: own } } : {}),
      stands: { x: 100, y: 100, z: 10 },
      "held by": { straps: 2, to: "rings" },
      "cut by": sawn ? "saw" : "cnc",
    };
  });

export type PlannedBox = { readonly job: Job; readonly plan: Plan; readonly findings: readonly Finding[] };

/** A job with nothing but this box in a space that it fits into. */
export function planBox(box: BoxSpec): PlannedBox {
  const source = stringify({
    version: 1,
    title: "A box",
    units: "mm",
    boards: { thin: { stock: "mdf-12", measured: 12.1 }, thick: { stock: "mdf-18", measured: 18.2 } },
    space: {
      outline: [
        [0, 0],
        [3000, 0],
        [3000, 3000],
        [0, 3000],
      ].map((at) => ({ at })),
      height: 2000,
    },
    drivers: {
      six: {
        "cut-out": 140,
        frame: 166,
        flange: 5,
        depth: 70,
        magnet: 90,
        bolts: { circle: 155, holes: 4, screw: "4.0 x 20" },
      },
    },
    coverings: { carpet: { stock: "box-carpet", thick: 3.5, clamped: 2 } },
    pieces: { box },
  });
  const read = parseJob(source, "box.yaml", kinds);
  if (read.value === undefined) throw new Error(read.findings.map(({ code }) => code).join(", "));
  const planned = planJob(read.value, starterShop(), kinds);
  return { job: read.value, plan: planned.value!, findings: [...read.findings, ...planned.findings] };
}
