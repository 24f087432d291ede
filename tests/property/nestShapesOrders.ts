import fc from "fast-check";
import type { Region } from "../../src/geometry/profile.js";
import { circle, polygon, rectangle } from "../../src/geometry/shapes.js";
import type { NestItem, NestOrder, NestStock } from "../../src/nest/engine.js";
import { disc, panel, ringOf, slanted, triangle } from "../nest/shapes/orders.js";

// Orders for the true-shape engine: odd shapes with holes, odd offcuts, zones, turns that grain forbids, unlike gaps.

const size = (min: number, max: number) => fc.integer({ min: min * 4, max: max * 4 }).map((quarters) => quarters / 4);

/** An angle of sheet with a hole in one leg. */
function angled(length: number, width: number): Region {
  const leg = Math.min(length, width) / 3;
  const outer = polygon(
    [
      { x: 0, y: 0 },
      { x: length, y: 0 },
      { x: length, y: leg },
      { x: leg, y: leg },
      { x: leg, y: width },
      { x: 0, y: width },
    ],
    "side",
  );
  return { outer, holes: [circle({ x: leg / 2, y: leg / 2 }, leg / 4, "hole")] };
}

const shape: fc.Arbitrary<Region> = fc.oneof(
  fc.tuple(size(40, 400), size(40, 250)).map(([l, w]) => panel(l, w)),
  fc.tuple(size(80, 300), size(40, 85)).map(([d, share]) => ringOf(d, (d * share) / 100)),
  size(40, 200).map(disc),
  fc.tuple(size(80, 400), size(80, 300)).map(([l, w]) => triangle(l, w)),
  fc.tuple(size(90, 400), size(90, 300)).map(([l, w]) => angled(l, w)),
);

const turns = fc.constantFrom([0], [0, Math.PI], [0, Math.PI / 2, Math.PI, (3 * Math.PI) / 2], [0.3, 0.3 + Math.PI]);
const kind = fc.record({ shape, turns, gap: fc.constantFrom(4, 6, 9.5), count: fc.integer({ min: 1, max: 4 }) });

const plain: fc.Arbitrary<NestStock> = fc
  .record({ length: size(420, 900), width: size(420, 700), trim: size(0, 12), cost: size(10, 40) })
  .map((row) => ({ ...row, name: `${row.length} x ${row.width}` }));

const offcut: fc.Arbitrary<NestStock> = fc
  .tuple(size(300, 600), size(250, 400), size(20, 200), size(0, 10), fc.boolean())
  .map(([length, width, cut, trim, clamped]) => ({
    name: "offcut",
    length,
    width,
    trim,
    cost: 0,
    count: 1,
    outline: slanted(length, width, cut),
    ...(clamped && { zones: [rectangle(0, 0, 50, 40, "clamp"), circle({ x: length / 2, y: width / 2 }, 15, "knot")] }),
  }));

const stock = fc.oneof(
  fc.tuple(plain),
  fc.tuple(offcut, plain),
  fc.tuple(offcut, plain, plain),
  fc.tuple(offcut),
  plain.map((row) => [{ ...row, count: 1 }]),
);

export const shapeOrders: fc.Arbitrary<NestOrder> = fc
  // one: only what is laid at once; a hundred and twenty: all that the search does, a first time
  .record({
    kinds: fc.array(kind, { minLength: 1, maxLength: 4 }),
    stock,
    seed: fc.nat(999),
    iterations: fc.constantFrom(1, 40, 120),
  })
  .map(({ kinds, stock: rows, seed, iterations }) => ({
    items: kinds.flatMap(({ count, ...each }, k) =>
      Array.from({ length: count }, (_, n): NestItem => ({ id: `${k}.${n}`, ...each })),
    ),
    stock: rows,
    edgeToEdge: false,
    seed,
    iterations,
  }));
