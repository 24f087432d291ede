import fc from "fast-check";
import { extentsOf } from "../../src/geometry/measure.js";
import type { Region } from "../../src/geometry/profile.js";
import { circle, polygon, rectangle } from "../../src/geometry/shapes.js";
import { moved, turned } from "../../src/geometry/transform.js";
import type { Part } from "../../src/model/part.js";
import type { Shop } from "../../src/model/shop.js";
import { blankPart, board, type Order, orderOf, plain, planOf } from "./nestOrders.js";

/** Sizes as they are set at a fence, mm. */
const size = (min: number, max: number) => fc.integer({ min: min * 2, max: max * 2 }).map((halves) => halves / 2);

/** A workshop's parts: walls of few heights, panels, and narrow or short ones; at least 50 one way. */
const blank = fc.oneof(
  { weight: 4, arbitrary: fc.tuple(size(120, 900), fc.constantFrom(100, 149.5, 150, 218, 300)) },
  { weight: 3, arbitrary: fc.tuple(size(60, 1100), size(50, 600)) },
  { weight: 1, arbitrary: fc.tuple(size(50, 700), size(12, 49)) },
  { weight: 1, arbitrary: fc.tuple(size(50, 290), size(50, 290)) },
);

const sheet = fc.constantFrom(
  { length: 2440, width: 1220, trim: 5 },
  { length: 2440, width: 1220, trim: 0 },
  { length: 1525, width: 1525, trim: 2 },
  { length: 2500, width: 1250, trim: 10 },
);
const offcut = fc.record({ length: size(310, 1500), width: size(60, 900), trim: fc.constantFrom(0, 5) });

/** An odd offcut: corners above its true edge as seen from the middle of that, wherever they stand out; turned anyhow. */
const oddOffcut = fc
  .tuple(
    size(320, 1400),
    fc.array(fc.tuple(fc.integer({ min: 2, max: 98 }), size(100, 900)), { minLength: 2, maxLength: 5 }),
    fc.nat(359),
    fc.constantFrom(0, 0, 5),
  )
  .map(([base, corners, degrees, trim]) => {
    const around = [...new Map(corners)].sort(([a], [b]) => a - b);
    const points = around.map(([share, r]) => ({
      x: base / 2 + r * Math.cos((share / 100) * Math.PI),
      y: r * Math.sin((share / 100) * Math.PI),
    }));
    const whole = polygon([{ x: 0, y: 0 }, { x: base, y: 0 }, ...points], (i) => `side.${i + 1}`);
    const turnedAnyhow = turned(whole, (degrees * Math.PI) / 180);
    const { min, max } = extentsOf(turnedAnyhow);
    return {
      length: max.x - min.x,
      width: max.y - min.y,
      trim,
      outline: moved(turnedAnyhow, -min.x, -min.y),
      "true edge": "side.1",
    };
  });

/** A rectangle with a knot in it. */
const knotty = fc.tuple(offcut, fc.nat(100), fc.nat(100), size(10, 40)).map(([board, x, y, r]) => ({
  ...board,
  knots: [circle({ x: (board.length * x) / 100, y: (board.width * y) / 100 }, r, "knot")],
}));

const anyOffcut = fc.oneof(
  { weight: 3, arbitrary: offcut },
  { weight: 2, arbitrary: oddOffcut },
  { weight: 1, arbitrary: knotty },
);
const stock = fc.tuple(fc.array(sheet, { minLength: 1, maxLength: 2 }), fc.array(anyOffcut, { maxLength: 3 }));

const tableSaw = fc.record({
  kerf: fc.constantFrom(2, 3.2),
  step: fc.constantFrom(0.5, 25.4 / 32),
  "longest rip": fc.constantFrom(660, 1300),
  "longest cross-cut": fc.constantFrom(400, 650),
  "one person": fc.constant({ length: 2440, width: 650 }),
  setting: fc.constantFrom(0, 0.01, 0.1),
});
const trackSaw = fc.constantFrom({ kerf: 2.4, "longest cut": 3100 }, { kerf: 1.6, "longest cut": 3100 });

/** So many sizes, each so often. */
type Spread = { readonly sizes: number; readonly least: number; readonly most: number };

const ordersOf = ({ sizes, least, most }: Spread): fc.Arbitrary<Order> =>
  fc
    .tuple(
      fc.array(fc.tuple(blank, fc.nat(4), fc.boolean(), fc.integer({ min: least, max: most })), {
        minLength: 1,
        maxLength: sizes,
      }),
      stock,
      tableSaw,
      fc.option(trackSaw, { nil: undefined }),
    )
    .map(([blanks, [sheets, offcuts], saw, trackSaw]) => {
      const kerf = Math.min(saw.kerf, trackSaw?.kerf ?? saw.kerf);
      const each = blanks.flatMap(([size, by, turns, count]) =>
        Array.from({ length: count }, () => ({ size, by, turns })),
      );
      const parts = each.map(({ size: [l, w] }, i) =>
        blankPart(`p${i}`, "one", plain(onStep(l, saw.step), onStep(w, saw.step))),
      );
      const boards = { one: board({ sheets, offcuts: offcuts.map((one, i) => ({ ...one, name: "ABC"[i]! })) }) };
      const order = orderOf(parts, boards, (part) => {
        const { by, turns } = each[parts.indexOf(part)]!;
        return {
          method: by === 0 ? "hand" : "saw",
          gap: by === 0 ? kerf + 6 : kerf,
          turns: turns ? [0, Math.PI / 2] : [0],
        };
      });
      const shop: Shop = { ...order.shop, saw, "track saw": trackSaw };
      return { ...order, shop };
    });

/** Orders of sawn parts, some of them cut free for the hand router; sometimes with one kerf at both saws. */
export const sawOrders = ordersOf({ sizes: 12, least: 1, most: 4 });

/** Orders of few sizes, each many times: more than one sheet, and patterns for whole sheets. */
export const repeatOrders = ordersOf({ sizes: 4, least: 8, most: 30 });

/** Tilts as they come out of a box, degrees; above zero the back is smaller. */
const tilt = fc.constantFrom(45, 30, 22.5, 14.036243, -14.036243, -30);
const edges = ["near", "right", "far", "left"] as const;

/** Which sides of a part are bevelled: one or both long ones, two ends, or all round. */
const slant = fc.oneof(
  { weight: 3, arbitrary: tilt.map((near) => ({ near })) },
  { weight: 2, arbitrary: fc.tuple(tilt, tilt).map(([near, far]) => ({ near, far })) },
  { weight: 1, arbitrary: tilt.map((ends) => ({ left: ends, right: ends })) },
  { weight: 1, arbitrary: tilt.map((all) => ({ near: all, right: all, far: all, left: all })) },
);
type Slant = Partial<Record<(typeof edges)[number], number>>;

/** The same orders, some of the parts bevelled, and of these some with the back up; they are sawn to their size. */
export const bevelledOrders: fc.Arbitrary<Order> = fc
  .tuple(sawOrders, fc.array(fc.tuple(fc.option(slant), fc.boolean()), { minLength: 12, maxLength: 12 }))
  .map(([order, slants]) => {
    const slantOf = new Map<string, readonly [Slant | null, boolean]>();
    const parts = order.plan.built.parts.map((part, i) => {
      const like = order.plan.built.parts.findIndex(({ blank }) => `${sizeOf(blank)}` === `${sizeOf(part.blank)}`);
      const [any, backUp] = slants[like % slants.length]!;
      // 18 thick and 45 degrees from both sides leave something of the back
      const sides = Math.min(...sizeOf(part.blank)) >= 40 ? any : null;
      slantOf.set(part.id, [sides, backUp && i % 2 === 0]);
      return sides ? bevelledPart(part, sides) : part;
    });
    const process = order.process.parts.map((each) => {
      const [sides, backUp] = slantOf.get(each.part)!;
      const side = backUp ? ("back" as const) : ("face" as const);
      return sides && each.method === "saw" ? { ...each, sides: [side] } : each;
    });
    return { ...order, plan: planOf(parts), process: { ...order.process, parts: process } };
  });

const sizeOf = ({ outer }: Region): readonly number[] => {
  const { max } = extentsOf(outer);
  return [max.x, max.y];
};

/** Its face as it was, and its blank larger where the back is. */
function bevelledPart(part: Part, sides: Slant): Part {
  const { max } = extentsOf(part.blank);
  const face = rectangle(0, 0, max.x, max.y, edges);
  const more = (edge: keyof Slant) => Math.max(0, -part.thickness * Math.tan(((sides[edge] ?? 0) * Math.PI) / 180));
  const blank = rectangle(-more("left"), -more("near"), max.x + more("right"), max.y + more("far"), "blank");
  const bevels = Object.entries(sides).map(([edge, degrees]) => {
    const bevel = (degrees * Math.PI) / 180;
    return [edge, { bevel, finish: { kind: "bare" as const }, flush: 0 }] as const;
  });
  return {
    ...part,
    profile: { outer: face, holes: [] },
    blank: { outer: blank, holes: [] },
    edges: Object.fromEntries(bevels),
  };
}

const onStep = (length: number, step: number) => Math.round(length / step) * step;
