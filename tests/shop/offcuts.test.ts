import { describe, expect, it } from "vitest";
import { areaOf, areaOfRegion } from "../../src/geometry/measure.js";
import type { Offcut } from "../../src/model/shop.js";
import { clearArea } from "../../src/shop/clearArea.js";
import { parseShop } from "../../src/shop/parse.js";
import { starterShop } from "../../src/shop/starter.js";
import { offcutLine } from "../../src/shop/stockText.js";
import { shopYaml } from "../../src/shop/yamlText.js";
import { zonesOf } from "../../src/shop/zones.js";

const shop = (lines: string) => parseShop(`version: 1\nunits: mm\n${lines}\n`, "shop.yaml");
const rack = (...rows: readonly string[]) =>
  shop(`boards:\n  mdf-18:\n    offcuts:\n${rows.map((row) => `      ${row}`).join("\n")}`);
const offcutsOf = (read: ReturnType<typeof shop>): readonly Offcut[] => read.value?.boards["mdf-18"]?.offcuts ?? [];
const plain = "- {name: A, length: 800, width: 300}";
const slanted =
  "outline: [{at: [0, 0], side: factory}, {at: [900, 0]}, {at: [900, 250]}, {at: [400, 600]}, {at: [0, 600]}]";

describe("an odd offcut", () => {
  it("is read as its outline, with zones, from its lower left corner", () => {
    const read = rack(
      plain,
      `- {name: B, ${slanted}, true edge: factory, trim: 3, knots: [{at: [200, 150], across: 30}]}`,
    );
    expect(read.findings).toEqual([]);
    const [a, b] = offcutsOf(read);
    expect(a).toEqual({ name: "A", length: 800, width: 300, trim: 0 });
    expect(b).toMatchObject({ name: "B", length: 900, width: 600, trim: 3, "true edge": "factory" });
    // the rectangle less the triangle of 500 x 350 that is missing
    expect(areaOf(b!.outline!)).toBeCloseTo(900 * 600 - (500 * 350) / 2, 6);
    expect(areaOf(b!.knots![0]!)).toBeCloseTo(Math.PI * 15 ** 2, 9);
  });

  it("measured from elsewhere lies at its own corner all the same, its zones with it", () => {
    const outline = "outline: [{at: [-100, 50]}, {at: [300, 50]}, {at: [300, 250]}, {at: [-100, 150]}]";
    const [offcut] = offcutsOf(rack(`- {name: C, ${outline}, clamps: [{at: [0, 100], size: 40 x 20}]}`));
    expect(offcut).toMatchObject({ length: 400, width: 200 });
    expect(offcut!.outline![0]).toMatchObject({ x: 0, y: 0 });
    expect(offcut!.clamps![0]![0]).toMatchObject({ x: 80, y: 40, by: "clamp" });
  });

  it.each([
    ["outline-crosses", "- {name: B, outline: [{at: [0, 0]}, {at: [500, 300]}, {at: [500, 0]}, {at: [0, 300]}]}", 2],
    ["no-area", "- {name: B, outline: [{at: [0, 0]}, {at: [500, 0]}, {at: [250, 0.0001]}]}", undefined],
    ["offcut-size", "- {name: B, length: 300}", undefined],
    ["offcut-size", `- {name: B, length: 300, ${slanted}}`, undefined],
    ["no-such-true-edge", `- {name: B, ${slanted}, true edge: factroy}`, undefined],
    ["no-such-true-edge", "- {name: B, length: 300, width: 200, true edge: bottom}", undefined],
    [
      "true-edge-bowed",
      "- {name: B, outline: [{at: [0, 0], bulge: 0.1}, {at: [500, 0]}, {at: [0, 300]}], true edge: side.1}",
      undefined,
    ],
    [
      "nothing-left-of-board",
      "- {name: B, length: 300, width: 200, clamps: [{at: [150, 100], size: 400 x 300}]}",
      undefined,
    ],
    ["nothing-left-of-board", "- {name: B, length: 300, width: 60, trim: 30}", undefined],
    ["out-of-range", "- {name: B, length: 9000, width: 60}", undefined],
  ])("with a mistake in it (%s) is left out, at its place, and the others are used", (code, row, corner) => {
    const read = rack(plain, row);
    expect(read.findings.map((finding) => finding.code)).toEqual([code]);
    const [at] = read.findings[0]!.at;
    expect(at!.path.slice(0, 4)).toEqual(["boards", "mdf-18", "offcuts", 1]);
    if (corner !== undefined) expect(at!.path).toEqual(["boards", "mdf-18", "offcuts", 1, "outline", corner]);
    expect(read.locate(at!).line).toBe(7);
    expect(offcutsOf(read).map(({ name }) => name)).toEqual(["A"]);
    expect(read.value!.boards["mdf-18"]!.sheets.length).toBeGreaterThan(0);
  });

  it("names the way out: the side that was meant", () => {
    const [finding] = rack(`- {name: B, ${slanted}, true edge: factroy}`).findings;
    expect(finding!.facts).toMatchObject({ nearest: { value: "factory" }, found: { value: "factroy" } });
  });
});

describe("zones", () => {
  it("stand on sheets and on the machine's bed, and none of what is over them counts as clear", () => {
    const read = shop(
      [
        "cnc: {clamps: [{at: [0, 600], size: 60 x 40}], pins: [{outline: [[0, 0], [80, 0], [0, 80]]}]}",
        "boards: {mdf-18: {sheets: [{length: 1000, width: 500, trim: 0, knots: [{at: [500, 250], across: 100}], holes: [{at: [0, 0], size: 200 x 100}]}]}}",
      ].join("\n"),
    );
    expect(read.findings).toEqual([]);
    expect(zonesOf(read.value!.cnc!).map(areaOf)).toEqual([2400, 3200]);
    const [sheet] = read.value!.boards["mdf-18"]!.sheets;
    const clear = clearArea(sheet!, zonesOf(sheet!)).reduce((sum, region) => sum + areaOfRegion(region), 0);
    // a quarter of the hole lies on the sheet
    expect(clear).toBeCloseTo(500_000 - Math.PI * 50 ** 2 - 100 * 50, 4);
  });

  it("that leave nothing of a sheet or of the bed take that out alone", () => {
    const sheets =
      "[{length: 1000, width: 500, holes: [{at: [500, 250], size: 1000 x 500}]}, {length: 800, width: 400}]";
    const read = shop(
      `boards: {mdf-18: {sheets: ${sheets}}}\ncnc: {clamps: [{at: [0, 800], size: 2999 x 2999}, {at: [1602, 800], size: 2999 x 2999}]}`,
    );
    expect(read.findings.map(({ code, at }) => [code, ...at[0]!.path])).toEqual([
      ["nothing-left-of-board", "boards", "mdf-18", "sheets", 0],
      ["nothing-left-of-board", "cnc"],
    ]);
    expect(read.value!.boards["mdf-18"]!.sheets.map(({ length }) => length)).toEqual([800]);
    expect(read.value!.cnc).toBeUndefined();
  });
});

it("stock that is written as a shop file reads back as the same stock", () => {
  const read = rack(
    plain,
    `- {name: B, ${slanted}, true edge: factory, measured: 18.3, knots: [{at: [200, 150], across: 30}]}`,
    "- {name: round one, outline: [{at: [0, 100], bulge: 1}, {at: [200, 100], bulge: 1}], holes: [{at: [100, 100], size: 20 x 10}]}",
    "- {name: C, outline: [{at: [0, 0]}, {at: [400, 0]}, {at: [400, 200], round: 30}, {at: [0, 100]}]}",
  );
  // two corners enclose nothing by themselves: the third offcut is refused
  expect(read.findings.map(({ code }) => code)).toEqual(["too-few"]);
  const again = rack(...offcutsOf(read).map(offcutLine));
  expect(again.findings).toEqual([]);
  for (const [i, offcut] of offcutsOf(read).entries()) {
    const other = offcutsOf(again)[i]!;
    expect(other).toMatchObject({ name: offcut.name, trim: offcut.trim });
    expect(other.length).toBeCloseTo(offcut.length, 6);
    expect(other.width).toBeCloseTo(offcut.width, 6);
    expect(other.measured).toBe(offcut.measured);
    if (offcut.outline) expect(areaOf(other.outline!)).toBeCloseTo(areaOf(offcut.outline), 3);
    expect(zonesOf(other).map(areaOf)).toEqual(zonesOf(offcut).map(areaOf));
  }
  const whole = parseShop(
    `${shopYaml({ ...starterShop(), ...read.value!, "least offcut": { length: 400, width: 90 } })}# read\n`,
    "shop.yaml",
  );
  expect(whole.findings).toEqual([]);
  expect(whole.value!.boards["mdf-18"]!.offcuts.map(({ name }) => name)).toEqual(["A", "B", "C"]);
  expect(whole.value!["least offcut"]).toEqual({ length: 400, width: 90 });
});

it("none on hand is none; ten thousand are a slip, told of at their place", () => {
  const hand = (n: number) => shop(`boards: {mdf-18: {sheets: [{length: 800, width: 400, on hand: ${n}}]}}`);
  expect(hand(0).findings).toEqual([]);
  expect(hand(0).value!.boards["mdf-18"]!.sheets[0]!["on hand"]).toBe(0);
  expect(hand(10_000).findings).toMatchObject([
    { code: "out-of-range", at: [{ path: ["boards", "mdf-18", "sheets", 0, "on hand"] }] },
  ]);
  expect(hand(10_000).value!.boards["mdf-12"]).toBeDefined();
});
