import fc from "fast-check";
import { bench, describe } from "vitest";
import type { Part } from "../../src/model/part.js";
import { nestParts } from "../../src/nest/nest.js";
import { blankPart, board, type Order, orderOf, plain, plate, ring } from "../property/nestOrders.js";

// The nest's time at 10, 100 and 1,000 parts of a workshop's sizes, and how the first list for the saw grows from 60 to
// 1,000 (in the mean near n log n: 27 times as long), the same parts in every run:
//   npx vitest bench --run tests/bench/nest.bench.ts

const sizes = fc.sample(fc.tuple(fc.integer({ min: 60, max: 600 }), fc.integer({ min: 50, max: 400 }), fc.nat(9)), {
  seed: 20310409,
  numRuns: 1000,
});

/** Six plain panels of ten, three plates with a notch, one ring. */
const parts: readonly Part[] = sizes.map(([length, width, kind], i) => {
  if (kind === 0) return blankPart(`p${i}`, "one", ring(Math.max(length, 120), Math.max(length, 120) * 0.7));
  return blankPart(`p${i}`, "one", kind < 4 ? plate(length, width) : plain(length, width));
});

const stock = { one: board({ sheets: [{ length: 2440, width: 1220, trim: 5, price: 38 }] }) };
const nest = ({ job, shop, plan, process }: Order, iterations: number) =>
  nestParts(job, shop, plan, process, { seed: 1, iterations });

/** Enough for the order of growth; more would take minutes at 1,000 parts. */
const brief = { time: 0, iterations: 5, warmupTime: 0, warmupIterations: 1 };

for (const count of [10, 100, 1000]) {
  const order = orderOf(parts.slice(0, count), stock, () => ({}));
  describe(`${count} parts`, () => {
    bench("the first layout", () => void nest(order, 1), brief);
    bench("20 layouts", () => void nest(order, 20), brief);
  });
}

/** The same sizes as plain panels for the saw. */
const panels = sizes.map(([length, width], i) => blankPart(`p${i}`, "one", plain(length, width)));

describe("the first list for the saw", () => {
  for (const count of [60, 125, 250, 500, 1000]) {
    const order = orderOf(panels.slice(0, count), stock, () => ({
      method: "saw",
      gap: 3.2,
      turns: [0, Math.PI / 2],
    }));
    bench(`${count} parts`, () => void nest(order, 1), brief);
  }
});
