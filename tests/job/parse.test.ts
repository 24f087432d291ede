import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { areaOf } from "../../src/geometry/measure.js";
import { parseJob } from "../../src/job/parse.js";
import { kinds } from "../../src/pieces/kinds.js";
import { codesOf, jobText, parsed, testKinds } from "./jobText.js";

describe("parseJob", () => {
  it("reads a whole job into millimetres, radians and profiles", () => {
    const { value, findings } = parsed({
      units: "units: in",
      boards: "boards: {box: {stock: mdf-3/4, measured: 0.74}}",
      outline: "  outline: [{at: [0, 0], side: rear}, {at: [40, 0]}, {at: [40, 30], round: 2}, {at: [0, 2' 6\"]}]",
      space: [
        "  height: 16 1/2",
        "  obstacles:",
        "    battery: {from: [30, 20, 7], to: [38, 28, 0], clear: 12mm, is: battery}",
        "    post: {outline: [[1, 1], [3, 1], [1, 3]], bottom: 0, top: 10}",
        "  lines: {striker: {x: 20}}",
        "  opening: {side: rear, width: 39, height: 27}",
        "  no screws: {tank: {from: [10, 15], to: [30, 30]}}",
      ].join("\n"),
      drivers: "drivers: {ten: {cut-out: 233mm, mass: 12 lb, wants: {closed: 0.6 to 0.8 ft3}, data: {sd: 346 cm2}}}",
      pieces: "pieces: {rail: {kind: strip, board: box, wide: 2 3/8, tilt: 45}}",
      more: "show: in 1/32\ncut by: saw\ndate: 2026-03-31",
    });
    expect(findings).toEqual([]);
    expect(value).toMatchObject({
      version: 1,
      file: "job.yaml",
      units: "in",
      show: { unit: "in", denominator: 32 },
      "cut by": "saw",
      date: "2026-03-31",
      boards: { box: { stock: "mdf-3/4", measured: 18.796 } },
      pieces: { rail: { kind: "strip", wide: 60.325, tilt: Math.PI / 4 } },
      withheld: [],
    });
    expect(value?.space).toMatchObject({
      height: 419.1,
      sides: ["rear", "side.2", "side.3", "side.4"],
      lines: { striker: { x: 508 } },
      opening: { side: "rear", width: 990.6, height: 685.8 },
    });
    const { battery, post } = value!.space.obstacles;
    expect(battery).toMatchObject({ bottom: 0, top: 177.8, clear: 12, is: "battery" });
    expect(areaOf(battery!.outline)).toBeCloseTo(8 * 8 * 645.16, 6);
    expect(post).toMatchObject({ bottom: 0, top: 254, clear: 0 });
    expect(areaOf(post!.outline)).toBeCloseTo(2 * 645.16, 6);
    expect(areaOf(value!.space["no screws"].tank!.outline)).toBeCloseTo(20 * 15 * 645.16, 6);
    expect(value?.drivers.ten?.massKg).toBeCloseTo(12 * 0.45359237, 12);
    expect(value?.drivers.ten?.wants?.closed?.[1]).toBeCloseTo(0.8 * 28.316846592, 9);
    expect(value?.drivers.ten?.data?.sd).toBeCloseTo(34_600, 9);
  });

  it("needs no more than version, title, units and a space", () => {
    const { value, findings } = parsed({ boards: "", pieces: "" });
    expect(codesOf(findings)).toEqual(["no-pieces"]);
    expect(value).toMatchObject({ show: { unit: "mm" }, boards: {}, drivers: {}, coverings: {}, pieces: {} });
  });

  it("tells every mistake at once, in the order of the file, with line and column", () => {
    const source = jobText({
      boards: "boards: {box: {stock: mdf-18, mesured: 18.2}, lid: {stock: 12}}",
      space: "  obstacles: {battery: {from: [0, 0, 0], to: [10, 10]}}",
      drivers: "drivers: {ten: {cut-out: 9000}}",
      coverings: "coverings: {carpet: {thick: 3}}",
      pieces:
        "pieces: {rail: {kind: strip, board: box, wide: fre}, bar: {kind: stripp, board: box}, ok: {kind: strip, board: box, wide: 60}}",
    });
    const { value, findings, locate } = parseJob(source, "job.yaml", testKinds);
    const places = findings.map((finding) => `${finding.code} ${Object.values(locate(finding.at[0]!)).join(":")}`);
    expect(places).toEqual([
      "unknown-key job.yaml:4:31",
      "wrong-type job.yaml:4:60",
      "too-few job.yaml:7:46",
      "out-of-range job.yaml:8:26",
      "missing-key job.yaml:9:13",
      "not-one-of job.yaml:10:48",
      "unknown-kind job.yaml:10:66",
    ]);
    expect(Object.keys(value!.pieces)).toEqual(["ok"]);
    expect(value?.withheld).toEqual(["rail", "bar"]);
    expect(value?.unread).toEqual([
      { kind: "board", name: "box" },
      { kind: "board", name: "lid" },
      { kind: "driver", name: "ten" },
      { kind: "covering", name: "carpet" },
      { kind: "obstacle", name: "battery" },
    ]);
  });

  it.each([
    ["the header", { title: "title: [a]" }],
    ["the version", { version: "version: 7" }],
    ["the units", { units: "" }],
    ["the outline", { outline: "  outline: [{at: [0, 0]}, {at: [1, 0]}, {at: [1]}]" }],
    ["a zone without screws", { space: "  no screws: {tank: {from: [0, 0]}}" }],
    ["a map that is none", { drivers: "drivers: ten" }],
    ["obstacles that are none", { space: "  obstacles: [battery]" }],
  ])("cannot use a job with a mistake in %s", (_, changed) => {
    const { value, findings, locate } = parsed(changed);
    expect(value).toBeUndefined();
    expect(findings.length).toBeGreaterThan(0);
    expect(locate(findings[0]!.at[0]!).file).toBe("job.yaml");
  });

  it("looks no further where the version is not its own", () => {
    expect(codesOf(parsed({ version: "version: 2", more: "future: key" }).findings)).toEqual(["unknown-version"]);
  });

  it("does not call sizes too large while nobody knows their unit", () => {
    expect(codesOf(parsed({ units: "units: inch" }).findings)).toEqual(["not-one-of"]);
  });

  it("withholds an entry whose name will not do, and names that only capitals tell apart", () => {
    const pieces =
      "pieces: {'a:b': {kind: strip, board: box, wide: 60}, Rail: {kind: strip, board: box, wide: 60}, rail: {kind: strip, board: box, wide: 60}}";
    const { value, findings } = parsed({ pieces });
    expect(codesOf(findings)).toEqual(["bad-name", "names-alike"]);
    expect(value?.withheld).toEqual(["a:b", "rail"]);
  });

  it.each(["templates/estate-cargo.yaml"])("reads the starter %s without a finding", (file) => {
    const { value, findings } = parseJob(readFileSync(file, "utf8"), file, kinds);
    expect(findings).toEqual([]);
    expect(Object.keys(value!.pieces).length).toBeGreaterThan(0);
  });
});
