import { describe, expect, it } from "vitest";
import { csvBytes } from "../../../src/export/csv/csv.js";
import { csvExporter } from "../../../src/export/csv/csvExporter.js";
import type { Show } from "../../../src/input/show.js";
import { sampleBuild } from "../../fixtures/build.js";
import { readCsv } from "./reader.js";

type Record_ = Readonly<Record<string, string>>;

async function table(path: string, show: Show = { unit: "mm" }): Promise<readonly Record_[]> {
  const files = [...(await csvExporter.write(sampleBuild(show)))];
  const [heads, ...rows] = readCsv(files.find((file) => file.path === path)!.bytes);
  return rows.map((row) => {
    expect(row).toHaveLength(heads!.length);
    return Object.fromEntries(row.map((cell, i) => [heads![i]!, cell]));
  });
}

describe("a CSV file", () => {
  const written = (cell: string | number | undefined) => readCsv(csvBytes([[cell, "after"]]))[0]!;

  it.each(["=1+1", "+SUM(A1)", "-cmd|' /C calc'!A0", "@SUM(A1)", "\t=1+1", "\r=1", "＝1+1", "|x"])(
    "does not let %j start a formula",
    (cell) => {
      const [read, after] = written(cell);
      expect(read).toMatch(/^'[^\t\r\n]+$/);
      expect(after).toBe("after");
    },
  );

  it.each([
    ["-3.5", "-3.5"],
    ["+2", "+2"],
    ["- oak", "'- oak"],
  ])("keeps numbers as numbers: %j is read as %j", (cell, read) => {
    expect(written(cell)[0]).toBe(read);
  });

  it("writes numbers with a point, no exponent and no negative zero", () => {
    expect(readCsv(csvBytes([[1e-9, -0, -3.25, 1234567.5, undefined]]))[0]).toEqual([
      "0",
      "0",
      "-3.25",
      "1234567.5",
      "",
    ]);
  });

  it.each(['3/4" ply, "good"', "a,b", "two\r\nlines\u2028three", "Ωλ ü 😀"])("brings %j back on one line", (cell) => {
    expect(written(cell)[0]).toBe(cell.replace(/[\r\n\u2028]+/g, " "));
  });
});

describe("cut-list.csv", () => {
  it("has shown and exact sizes, and the same exact ones whatever is shown", async () => {
    const mm = await table("cut-list.csv");
    const inches = await table("cut-list.csv", { unit: "in", denominator: 16 });
    const walls = mm.find(({ numbers }) => numbers === "B3 B4")!;
    expect(walls).toMatchObject({ quantity: "2", "as cut length": "420 mm", "as cut width": "113.6 mm" });
    expect(walls).toMatchObject({ "as cut length mm": "420", "as cut width mm": "113.6", "thickness mm": "18.2" });
    expect(inches.find(({ numbers }) => numbers === "B1")).toMatchObject({ "as cut length": '16 9/16"' });
    const exact = (rows: readonly Record_[]) =>
      rows.map((row) => Object.entries(row).filter(([head]) => / mm$/.test(head)));
    expect(exact(inches)).toEqual(exact(mm));
  });

  it("brings a hostile name back as text", async () => {
    const row = (await table("cut-list.csv")).find(({ numbers }) => numbers === "H1")!;
    expect(row.parts).toBe(`'=SUM(A1:A9) "../lid"; <b>%%c & Ωλ 50° panel`);
    expect(row.quantity).toBe("1");
  });

  it("names parts as the drawings do", async () => {
    const rows = await table("cut-list.csv");
    expect(rows.find(({ numbers }) => numbers === "B1")!.parts).toBe("box top");
    expect(rows.find(({ numbers }) => numbers === "B3 B4")!.parts).toBe("box left, box right");
  });

  it("bears the build's hash in every row, and the cautions of the cut list", async () => {
    const rows = await table("cut-list.csv");
    expect(new Set(rows.map(({ build }) => build))).toEqual(new Set([sampleBuild().hash]));
    const cautions = rows.filter(({ numbers }) => numbers === "caution");
    expect(cautions.map(({ notes }) => notes).join(" ")).toContain("fine dust that harms lungs");
  });
});

describe("buy.csv", () => {
  it("sums what has a price and counts what has none", async () => {
    const rows = await table("buy.csv");
    const costs = rows.filter(({ what }) => what !== "total").map(({ cost }) => Number(cost));
    const total = rows.find(({ what }) => what === "total")!;
    expect(Number(total.cost)).toBe(costs.reduce((sum, cost) => sum + cost, 0));
    expect(total).toMatchObject({ currency: "EUR", note: "without 7 items that have no price in the shop file" });
  });
});
