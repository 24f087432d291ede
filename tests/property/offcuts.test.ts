import fc from "fast-check";
import { expect, it } from "vitest";
import { areaOfRegion } from "../../src/geometry/measure.js";
import { sawnRow } from "../../src/nest/sawnRow.js";
import { nestShapes } from "../../src/nest/shapes/sheets.js";
import { clearArea } from "../../src/shop/clearArea.js";
import { parseShop } from "../../src/shop/parse.js";
import { offcutLine } from "../../src/shop/stockText.js";
import { zonesOf } from "../../src/shop/zones.js";
import { items, orderOf, panel } from "../nest/shapes/orders.js";
import { sheetFaults } from "../nest/shapes/sheetFaults.js";

const place = fc.tuple(fc.integer({ min: -50, max: 650 }), fc.integer({ min: -50, max: 450 }));
const corner = fc.record(
  { at: place, round: fc.integer({ min: 0, max: 80 }), bulge: fc.constantFrom(0, 0.2, -0.2, 1) },
  { requiredKeys: ["at"] },
);
const zone = fc.oneof(
  fc.record({ at: place, across: fc.integer({ min: 1, max: 300 }) }),
  fc.record({
    at: place,
    size: fc.tuple(fc.integer({ min: 1, max: 300 }), fc.integer({ min: 1, max: 300 })).map(([l, w]) => `${l} x ${w}`),
  }),
  fc.record({ outline: fc.array(place, { minLength: 3, maxLength: 6 }) }),
);
/** Corners about a middle, so that most of the outlines do not cross themselves; some do all the same. */
const round = fc.array(fc.integer({ min: 60, max: 300 }), { minLength: 3, maxLength: 9 }).map((radii) =>
  radii.map((r, i) => {
    const angle = (2 * Math.PI * i) / radii.length;
    return { at: [Math.round(r * Math.cos(angle)), Math.round(r * Math.sin(angle))] };
  }),
);
const offcut = fc.record(
  {
    name: fc.constant("A"),
    outline: fc.oneof(round, round, fc.array(corner, { minLength: 3, maxLength: 7 })),
    trim: fc.integer({ min: 0, max: 30 }),
    knots: fc.array(zone, { maxLength: 3 }),
    "true edge": fc.constantFrom("side.1", "side.2", "side.9"),
  },
  { requiredKeys: ["name", "outline"] },
);

it("any offcut is taken or told of, reads back as it was, and is nested on soundly", () => {
  let taken = 0;
  let told = 0;
  fc.assert(
    fc.property(offcut, (written) => {
      const file = (row: string) => `version: 1\nunits: mm\nboards: {mdf-18: {offcuts: [${row}]}}\n`;
      const read = parseShop(file(JSON.stringify(written)), "shop.yaml");
      const offcuts = read.value!.boards["mdf-18"]!.offcuts;
      expect(offcuts.length + Math.min(1, read.findings.length)).toBe(1);
      told += read.findings.length > 0 ? 1 : 0;
      for (const finding of read.findings)
        expect(finding.at[0]!.path.slice(0, 3)).toEqual(["boards", "mdf-18", "offcuts"]);
      const [one] = offcuts;
      if (one === undefined) return;
      taken++;
      const again = parseShop(file(offcutLine(one).slice(2)), "shop.yaml");
      expect(again.findings).toEqual([]);
      const areaOf = (of: typeof one) =>
        clearArea(of, zonesOf(of)).reduce((sum, region) => sum + areaOfRegion(region), 0);
      expect(areaOf(again.value!.boards["mdf-18"]!.offcuts[0]!)).toBeCloseTo(areaOf(one), 2);
      const row = { ...one, zones: zonesOf(one), cost: 0, count: 1, onHand: true };
      const order = orderOf(items([[3, panel(60, 40)]], 6), [row], 1);
      expect(sheetFaults(order, nestShapes(order))).toEqual([]);
      const sawn = sawnRow(row, false, 0.5);
      if (typeof sawn !== "string") expect(sawn.length * sawn.width).toBeLessThanOrEqual(one.length * one.width + 1e-6);
    }),
    { seed: 20310715, numRuns: 40, endOnFailure: true },
  );
  expect(taken).toBeGreaterThan(8);
  expect(told).toBeGreaterThan(8);
});
