import fc from "fast-check";
import { identity } from "../../src/geometry/frame.js";
import type { Profile, Region } from "../../src/geometry/profile.js";
import { circle, polygon, rectangle } from "../../src/geometry/shapes.js";
import type { PartProcess, Plan, Process } from "../../src/model/build.js";
import { boardId, partId, pieceId } from "../../src/model/ids.js";
import type { Job } from "../../src/model/job.js";
import type { Part } from "../../src/model/part.js";
import type { BoardStock, Method, Shop } from "../../src/model/shop.js";
import { sampleJob, sampleShop } from "../fixtures/jobAndShop.js";

/** Everything that nestParts is given. */
export type Order = { readonly job: Job; readonly shop: Shop; readonly plan: Plan; readonly process: Process };

export const planOf = (parts: readonly Part[]): Plan => ({
  frames: [],
  sizes: [],
  withheld: [],
  built: { parts, joints: [], axes: [], mounts: [], air: [], steps: [], buys: [] },
});

/** A part that is nothing but its blank. */
export function blankPart(role: string, board: string, blank: Region, more: Partial<Part> = {}): Part {
  const piece = pieceId("set");
  return {
    id: partId(piece, role),
    number: role,
    piece,
    role,
    from: [{ file: "sample.yaml", path: ["pieces", role] }],
    board: boardId(board),
    thickness: 18,
    features: [],
    profile: blank,
    blank,
    edges: {},
    coverings: {},
    at: identity,
    ...more,
  };
}

export const plain = (length: number, width: number): Region => ({
  outer: rectangle(0, 0, length, width, "side"),
  holes: [],
});

export const ring = (outside: number, inside: number): Region => ({
  outer: circle({ x: 0, y: 0 }, outside / 2, "outside"),
  holes: [circle({ x: 0, y: 0 }, inside / 2, "inside")],
});

/** A plate with one rounded corner and a notch in another; its origin lies outside of it. */
export function plate(length: number, width: number): Region {
  const round = Math.min(length, width) / 5;
  const outer: Profile = polygon(
    [
      { x: 10, y: 20 },
      { x: 10 + length, y: 20 },
      { x: 10 + length, y: 20 + width / 2 },
      { x: 10 + length * 0.7, y: 20 + width / 2 },
      { x: 10 + length * 0.7, y: 20 + width },
      { x: 10 + round, y: 20 + width },
      { x: 10, y: 20 + width - round },
    ],
    "side",
  ).map((v, i) => (i === 5 ? { ...v, bulge: Math.tan(Math.PI / 8) } : v));
  return { outer, holes: [rectangle(20, 30, 10 + length * 0.5, 20 + width * 0.4, "opening")] };
}

export const board = (more: Partial<BoardStock>): BoardStock => ({
  material: "MDF",
  thickness: 18,
  density: 750,
  grain: false,
  sheets: [],
  offcuts: [],
  ...more,
});

const nothingElse = { registration: [], hand: { profiles: [], jigs: [] } } as const;

export function orderOf(
  parts: readonly Part[],
  boards: Readonly<Record<string, BoardStock>>,
  how: (part: Part) => Partial<PartProcess>,
): Order {
  const quarters = [0, Math.PI / 2, Math.PI, (3 * Math.PI) / 2];
  const process = parts.map(
    (part): PartProcess => ({
      part: part.id,
      method: "cnc",
      why: "as the test says",
      sides: ["face"],
      gap: 8,
      turns: quarters,
      work: [],
      ...how(part),
    }),
  );
  const names = Object.keys(boards).map((name) => [name, { stock: name }] as const);
  return {
    job: { ...sampleJob({ unit: "mm" }), boards: Object.fromEntries(names) },
    shop: { ...sampleShop, boards },
    plan: planOf(parts),
    process: { ...nothingElse, parts: process },
  };
}

const size = (min: number, max: number) => fc.integer({ min: min * 8, max: max * 8 }).map((eighths) => eighths / 8);

const blank: fc.Arbitrary<Region> = fc.oneof(
  fc.tuple(size(30, 900), size(30, 500)).map(([l, w]) => plain(l, w)),
  fc.tuple(size(120, 500), size(50, 90)).map(([d, share]) => ring(d, (d * share) / 100)),
  fc.tuple(size(120, 1100), size(100, 800)).map(([l, w]) => plate(l, w)),
);

const sheet = fc.record({ length: size(1000, 3050), width: size(600, 1830), trim: size(0, 15) });
const stock = fc.record({
  sheets: fc.array(fc.tuple(sheet, fc.option(size(10, 90), { nil: undefined }), fc.integer({ min: 0, max: 2 })), {
    maxLength: 2,
  }),
  offcuts: fc.array(sheet, { maxLength: 3 }),
});

const boardStock = stock.map(({ sheets, offcuts }) =>
  board({
    sheets: sheets.map(([size, price, onHand]) => ({
      ...size,
      "on hand": onHand,
      ...(price !== undefined && { price }),
    })),
    offcuts: offcuts.map((size, i) => ({
      name: "ABC"[i]!,
      length: size.length / 2.5,
      width: size.width / 2.5,
      trim: size.trim,
    })),
  }),
);

const turnSets = [
  [0],
  [0, Math.PI],
  [0, Math.PI / 2],
  [0, Math.PI / 2, Math.PI, (3 * Math.PI) / 2],
  [0.3, 0.3 + Math.PI],
];
const gaps: Readonly<Record<Method, readonly number[]>> = { saw: [3.2], hand: [9.2], cnc: [8, 14.7] };

/** Part sets of all shapes on two boards with odd stock, turns and gaps, by all three methods. */
export const orders: fc.Arbitrary<Order> = fc
  .tuple(
    fc.array(fc.tuple(blank, fc.nat(), fc.nat(), fc.nat(), fc.nat(), fc.boolean()), { minLength: 1, maxLength: 16 }),
    fc.record({ one: boardStock, two: boardStock }),
  )
  .map(([blanks, boards]) => {
    const parts = blanks.map(([region, which], i) => blankPart(`p${i}`, which % 3 === 0 ? "two" : "one", region));
    return orderOf(parts, boards, (part) => {
      const [region, , by, turns, gap, back] = blanks[parts.indexOf(part)]!;
      const isPlain = region.outer.length === 4 && region.outer.every((v) => v.bulge === 0);
      const method = (["saw", "hand", "cnc", "cnc"] as const)[by % 4]!;
      const actual = method === "saw" && !isPlain ? "hand" : method;
      return {
        method: actual,
        sides: back ? ["back"] : ["face"],
        gap: gaps[actual][gap % gaps[actual].length]!,
        turns: actual === "saw" ? turnSets[turns % 3]! : turnSets[turns % turnSets.length]!,
      };
    });
  });
