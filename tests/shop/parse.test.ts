import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { Finding } from "../../src/input/finding.js";
import { wordsOf } from "../../src/input/words.js";
import type { Shop } from "../../src/model/shop.js";
import { noSuchRow, shopFindings } from "../../src/shop/findings.js";
import { parseShop } from "../../src/shop/parse.js";
import { builtIn, starterShop, starterShopYaml } from "../../src/shop/starter.js";

const starter = starterShop();
const shop = (lines: string) => parseShop(`version: 1\nunits: mm\n${lines}\n`, "shop.yaml");
const codesOf = (findings: readonly Finding[]) => findings.map((finding) => finding.code);

/** Every number and text of a shop with the path that leads to it. */
function leaves(value: unknown, path = ""): readonly (readonly [string, unknown])[] {
  if (typeof value !== "object" || value === null) return value === undefined ? [] : [[path, value]];
  return Object.entries(value).flatMap(([key, inner]) => leaves(inner, `${path}/${key}`));
}

describe("the starter shop file", () => {
  it("is what the template holds", () => {
    expect(readFileSync("templates/shop.yaml", "utf8")).toBe(starterShopYaml());
  });

  it("reads back, row by row, as the built-in tables", () => {
    // A comment more, so that it is read and not recognised.
    const { value, findings } = parseShop(`${starterShopYaml()}# read\n`, builtIn);
    expect(findings).toEqual([]);
    const written = new Map(leaves(starter));
    const read = new Map(leaves(value));
    expect([...read.keys()].sort()).toEqual([...written.keys()].sort());
    for (const [path, expected] of written) {
      if (typeof expected === "number") expect(Math.abs(Number(read.get(path)) - expected), path).toBeLessThan(1e-8);
      else expect(read.get(path), path).toBe(expected);
    }
  });

  it("is recognised as it came", () => {
    const { value, findings, locate } = parseShop(starterShopYaml(), "shop.yaml");
    expect([value, findings]).toEqual([{ ...starter, file: "shop.yaml" }, []]);
    expect(locate({ file: "shop.yaml", path: ["units"] }).line).toBe(8);
  });
});

describe("parseShop", () => {
  it("lays a row over the built-in one of its name, key by key, and keeps the rest", () => {
    const { value, findings } = shop("boards:\n  mdf-18: {measured: 18.2}\nsaw: {kerf: 2.4}\ncut by: saw");
    expect(findings).toEqual([]);
    expect(value?.boards["mdf-18"]).toMatchObject({ thickness: 18, measured: 18.2, density: 750 });
    expect(value?.boards["mdf-18"]?.source).toContain("changed in the shop file");
    expect(value?.boards["mdf-12"]).toEqual(starter.boards["mdf-12"]);
    expect(value?.saw).toMatchObject({ kerf: 2.4, step: 0.5 });
    expect(value?.["cut by"]).toBe("saw");
  });

  it("adds rows of its own and fills in trim, and takes rows out", () => {
    const board = "{material: MDF, thickness: 10, density: 760, grain: false, sheets: [{length: 2800, width: 2070}]}";
    const { value, findings } = shop(`boards: {mdf-10: ${board}}\nbits: {3 straight: none}\ncnc: none`);
    expect(findings).toEqual([]);
    expect(value?.boards["mdf-10"]).toMatchObject({ sheets: [{ trim: 5 }], offcuts: [] });
    expect(value?.bits["3 straight"]).toBeUndefined();
    expect(value?.bits["4 straight"]).toBeDefined();
    expect(value?.cnc).toBeUndefined();
  });

  it("takes a controller by the name of its habits, or by those that differ from the usual one's", () => {
    const controllerOf = (written: string) => shop(`cnc: {controller: ${written}}`);
    expect(controllerOf("lines only").value?.cnc?.controller).toMatchObject({ arcs: "lines", tools: "pause" });
    const own = controllerOf("{units: inch, decimals: 5, end: M2, extraction: M7}");
    expect(own.findings).toEqual([]);
    expect(own.value?.cnc?.controller).toEqual({
      ...starter.cnc?.controller,
      units: "inch",
      decimals: 5,
      end: "M2",
      extraction: "M7",
    });
    expect(own.value?.cnc?.feed).toEqual(starter.cnc?.feed);
    expect(codesOf(controllerOf("lines onyl").findings)).toEqual(["not-one-of"]);
    expect(codesOf(controllerOf("{ends: M2}").findings)).toEqual(["unknown-key"]);
  });

  it("takes feeds as lengths a minute in the file's unit", () => {
    const { value } = parseShop("version: 1\nunits: in\ncnc: {feed: {least: 10, most: 400}}\n", "shop.yaml");
    expect(value?.cnc?.feed).toEqual({ least: 254, most: 10160 });
  });

  it("takes bushes, and sheets and offcuts that were measured by themselves", () => {
    const { value, findings } = shop(
      [
        "bushes: {15 bush: {d: 15, bore: 12, stands: 7}, 10 bush: none}",
        "boards: {mdf-18: {offcuts: [{name: A, length: 900, width: 400, measured: 18.4}]}}",
      ].join("\n"),
    );
    expect(findings).toEqual([]);
    expect(value?.bushes["15 bush"]).toEqual({ d: 15, bore: 12, stands: 7 });
    expect(value?.bushes["10 bush"]).toBeUndefined();
    expect(value?.boards["mdf-18"]?.offcuts[0]?.measured).toBe(18.4);
  });

  it.each(["0", "-6", "-0.1"])("refuses a bit of diameter %s, and leaves it out", (d) => {
    const { value, findings } = shop(`bits: {6 straight: {d: ${d}}}`);
    expect(codesOf(findings)).toEqual(["out-of-range"]);
    expect(findings[0]?.at).toEqual([{ file: "shop.yaml", path: ["bits", "6 straight", "d"] }]);
    expect(value?.bits["6 straight"]).toBeUndefined();
  });

  it("leaves out what contradicts itself: a bush without a wall, a machine whose least is over its most", () => {
    const { value } = shop("bushes: {17 bush: {bore: 18}}\ncnc: {feed: {least: 900, most: 800}}");
    expect([value?.bushes["17 bush"], value?.cnc]).toEqual([undefined, undefined]);
    expect(shop("bits: {6 straight: {measured: 7}}").value?.bits["6 straight"]?.measured).toBe(7);
  });

  it("takes the lengths of a shop in inches, and sorts those on the shelf", () => {
    const { value, findings } = parseShop(
      'version: 1\nunits: in\nsaw: {step: 1/16}\nscrews: {"#8": {lengths: [2, 1 1/4]}}\n',
      "shop.yaml",
    );
    expect(findings).toEqual([]);
    expect(value?.saw.step).toBe(1.5875);
    expect(value?.screws["#8"]?.lengths).toEqual([31.75, 50.8]);
  });

  it("leaves out a row with a mistake in it, the built-in one too, and tells every mistake", () => {
    const { value, findings } = shop(
      "boards: {mdf-18: {thickness: 900}, mdf-12: {tickness: 12}, own: {material: MDF}}",
    );
    expect(codesOf(findings)).toEqual([
      "out-of-range",
      "unknown-key",
      "missing-key",
      "missing-key",
      "missing-key",
      "missing-key",
    ]);
    for (const name of ["mdf-18", "mdf-12", "own"]) expect(value?.boards[name]).toBeUndefined();
  });

  it("says when a row that is to be taken out is not there, and takes one out that is", () => {
    const { findings } = shop("bits: {3 strait: none}");
    expect(findings).toMatchObject([{ code: noSuchRow.code, facts: { nearest: { value: "3 straight" } } }]);
    expect(wordsOf(findings[0]!, shopFindings[0]!, { unit: "mm" }).words).toContain("3 straight");
    expect(shop("bits: {3 straight: none}").findings).toEqual([]);
  });

  it.each([
    ["version: 2\nunits: mm\n", ["unknown-version"]],
    ["units: mm\n", ["missing-version"]],
    ["version: 1\n", ["missing-key"]],
    ["version: 1\nunits: mm\nbords: {}\n", ["unknown-key"]],
    ["version: 1\nunits: mm\nsaw: {kerf: 32}\n", ["out-of-range"]],
    ["version: 1\nunits: mm\nboards: [mdf-18]\n", ["wrong-type"]],
    ["", ["empty-file"]],
  ])("cannot use %j", (source, codes) => {
    const { value, findings } = parseShop(source, "shop.yaml");
    expect(value).toBeUndefined();
    expect(codesOf(findings)).toEqual(codes);
  });
});

describe("the built-in tables", () => {
  it("give each row its source", () => {
    const tables: readonly (keyof Shop)[] = ["boards", "bits", "bushes", "inserts", "bolts", "screws", "coverings"];
    for (const table of tables) {
      for (const [name, row] of Object.entries(starter[table] as Record<string, { source?: string }>)) {
        expect(row.source?.length ?? 0, `${table} ${name}`).toBeGreaterThan(5);
      }
    }
    for (const sheet of Object.values(starter.boards).flatMap((board) => board.sheets)) {
      expect(sheet.source?.length ?? 0).toBeGreaterThan(5);
    }
  });

  it("have lengths in ascending order and heads wider than their shanks", () => {
    for (const row of [...Object.values(starter.bolts), ...Object.values(starter.screws)]) {
      expect([...row.lengths].sort((a, b) => a - b)).toEqual(row.lengths);
      expect(row.head.d).toBeGreaterThan(row.d);
    }
    for (const bolt of Object.values(starter.bolts)) {
      const { fine, medium, coarse } = bolt.clearance;
      expect(bolt.d < fine && fine < medium && medium < coarse).toBe(true);
    }
  });
});
