import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { buildJob, type Stage, usualOptions } from "../../src/flow/build.js";
import { nearestOn } from "../../src/geometry/distance.js";
import { pointInProfile } from "../../src/geometry/inside.js";
import { hasErrors } from "../../src/input/finding.js";
import { parseJob } from "../../src/job/parse.js";
import { kinds } from "../../src/pieces/kinds.js";
import { starterShop } from "../../src/shop/starter.js";

const starter = readFileSync("templates/estate-cargo.yaml", "utf8");

async function build(source: string, file = "job.yaml") {
  const { value: job, findings: found } = parseJob(source, file, kinds);
  const stages: Stage[] = [];
  const { value, findings } = await buildJob(job!, starterShop(), kinds, {
    ...usualOptions,
    found,
    onStage: (stage) => stages.push(stage),
  });
  return { build: value!, findings, stages };
}

it("has no program for a sheet that measures more than its parts are made for, and says so", async () => {
  const { value: job } = parseJob(starter, "job.yaml", kinds);
  const shop = starterShop();
  const stock = shop.boards["mdf-18"]!;
  const thick = { ...stock, sheets: stock.sheets.map((sheet) => ({ ...sheet, measured: 18.6 })) };
  const boards = { ...shop.boards, "mdf-18": thick };
  const { value, findings } = await buildJob(job!, { ...shop, boards }, kinds, usualOptions);
  expect(findings.filter(({ severity }) => severity === "error").map(({ code }) => code)).toEqual(["sheet-thicker"]);
  expect(value!.program.setups.map(({ name }) => name)).toEqual(["plate 1"]);
  expect(value!.program.withheld).toEqual(["box 1"]);
});

it("keeps every part off the dowels where sheets are turned over", async () => {
  const lid = `
  lid:
    kind: panel
    board: plate
    outline: 400 x 300
    holes: {one: {at: [50, 50], across: 8, deep: 6}, other: {at: [90, 50], across: 8, deep: 6, from: back}}
`;
  const { value: job } = parseJob(starter + lid, "job.yaml", kinds);
  const shop = starterShop();
  const { value } = await buildJob(
    job!,
    { ...shop, cnc: { ...shop.cnc!, "second side": "pins" } },
    kinds,
    usualOptions,
  );
  const { process, program } = value!;
  expect(process.registration.length).toBeGreaterThan(0);
  const pinned = program.setups.filter(({ pins }) => pins.length > 0);
  expect(pinned.some(({ turnedOver }) => turnedOver)).toBe(true);
  for (const { pins, parts, board } of pinned) {
    const { keepOff } = process.registration.find((each) => each.board === board)!;
    for (const { blank } of parts) {
      for (const { at } of pins) {
        expect(pointInProfile(blank.outer, at)).toBe(false);
        expect(nearestOn(blank.outer, at)!.distance).toBeGreaterThanOrEqual(keepOff);
      }
    }
  }
});

it("engraves the number of every part where the shop has it so, off all that is cut", async () => {
  const { value: job } = parseJob(starter, "job.yaml", kinds);
  const shop = starterShop();
  const { value } = await buildJob(job!, { ...shop, cnc: { ...shop.cnc!, numbers: "engraved" } }, kinds, usualOptions);
  const engraved = value!.program.setups.flatMap(({ runs }) =>
    runs.flatMap(({ operations }) => operations.flatMap(({ kind, part }) => (kind === "engrave" ? [part] : []))),
  );
  const left = value!.findings.flatMap(({ code, on }) => (code === "number-left" ? on : []));
  const parts = value!.plan.built.parts.map(({ id }) => id);
  expect([...engraved, ...parts.filter((id) => left.includes(id))].sort()).toEqual([...parts].sort());
  expect(engraved.length).toBeGreaterThan(8);
});

describe("the starter's build", () => {
  it("goes through every stage, has no errors, and places each part on one sheet", async () => {
    const { build: made, findings, stages } = await build(starter);
    expect(stages).toEqual(["plan", "checks", "process", "nest", "program", "done"]);
    expect(hasErrors(findings)).toBe(false);
    const placed = made.layout.sheets.flatMap((sheet) => sheet.placed.map(({ part }) => part)).sort();
    expect(placed).toEqual(made.plan.built.parts.map(({ id }) => id).sort());
    expect(made.process.parts.map(({ part }) => part).sort()).toEqual(placed);
  });

  it("is the same whatever the file is called, how it is shown, and what a comment in it says", async () => {
    const [one, other] = await Promise.all([
      build(starter),
      build(`# first a comment\n${starter.replace("show: mm", "show: in 1/16")}`, "elsewhere.yaml"),
    ]);
    expect(other.build.job.show).toEqual({ unit: "in", denominator: 16 });
    expect(other.build.hash).toBe(one.build.hash);
  });

  it("has another hash when anything is cut differently, or by another bit", async () => {
    const one = await build(starter);
    const moved = await build(starter.replace("set in: 60", "set in: 61"));
    expect(moved.build.hash).not.toBe(one.build.hash);
    const { job, shop } = one.build;
    const bits = Object.fromEntries(Object.entries(shop.bits).map(([name, bit]) => [name, { ...bit, d: bit.d + 0.1 }]));
    const other = await buildJob(job, { ...shop, bits }, kinds, usualOptions);
    expect(other.value?.hash).not.toBe(one.build.hash);
  });
});

describe("a job with a mistake in one piece", () => {
  it("is built without the piece and what leans on it, findings of reading first", async () => {
    const { build: made, findings } = await build(starter.replace("recess: frame", "reces: frame"));
    expect(findings[0]?.at[0]?.path.slice(0, 2)).toEqual(["pieces", "ring"]);
    expect(made.plan.withheld).toContain("ring");
    expect(made.plan.built.parts.some(({ piece }) => piece === "ring")).toBe(false);
    expect(made.plan.built.parts.some(({ piece }) => piece === "box")).toBe(true);
  });
});
