import { describe, expect, it } from "vitest";
import { rectangle } from "../../src/geometry/shapes.js";
import { wordsOf } from "../../src/input/words.js";
import type { Feature, Part } from "../../src/model/part.js";
import type { Method, Shop } from "../../src/model/shop.js";
import { processFindings } from "../../src/process/process.js";
import { bed, bits, cut, feature, hole, opening, panel, rounded } from "./benchParts.js";

type Case = readonly [part: Part, method: Method, shop?: Partial<Shop>];
type Pair = { readonly raised: Case; readonly short: Case };

const withOpening = (r: number, more: Partial<Feature> = {}) =>
  panel([feature("terminal", opening(rounded(50, 50, 78, 54, r, "terminal"), r > 0 ? "bit" : "sharp"), more)]);

const sized = (length: number, width: number) =>
  panel([], { profile: { outer: rectangle(0, 0, length, width, ["front", "right", "back", "left"]), holes: [] } });

const recess = (side: "face" | "back", at: number) =>
  feature(
    side,
    { kind: "pocket", region: { outer: rounded(at, 50, 80, 60, 10, side), holes: [] }, depth: 6, corner: "bit" },
    { side },
  );
const bothSides = panel([recess("face", 50), recess("back", 200)]);
const pinned = { ...bed, "second side": "pins" } as const;

const straight = (d: number, length: number) => ({ kind: "straight" as const, d, "cutting length": length });

/** For every code: a panel that raises it, and one just short of it. */
const cases: Readonly<Record<string, Pair>> = {
  // the smallest bit is 3 mm: it leaves 1.5
  "corner-too-tight": {
    raised: [withOpening(1.49), "cnc"],
    short: [withOpening(1.5), "cnc", { bits: { "3 straight": straight(3, 18) } }],
  },
  "corner-left-to-bench": {
    raised: [withOpening(0, { stage: "bench" }), "hand"],
    short: [withOpening(3, { stage: "bench" }), "hand"],
  },
  "bit-too-short": {
    raised: [panel(), "cnc", { bits: { "3 straight": straight(3, 17.9) } }],
    short: [panel(), "cnc", { bits: { "3 straight": straight(3, 18) } }],
  },
  "no-bit-fits": {
    raised: [panel([feature("bolt", hole(2.9, "through"))]), "cnc"],
    short: [panel([feature("bolt", hole(3, 12))]), "cnc"],
  },
  "tool-to-buy": {
    raised: [panel([feature("pilot", hole(4.8, 30, 9), { side: { edge: "front" } })]), "cnc"],
    short: [panel([feature("pilot", hole(4.95, 30, 9), { side: { edge: "front" } })]), "cnc"],
  },
  "rip-too-wide": {
    raised: [sized(2000, 640.1), "saw", { saw: { kerf: 3.2, step: 0.5, "longest rip": 640 } }],
    short: [sized(2000, 640), "saw", { saw: { kerf: 3.2, step: 0.5, "longest rip": 640 } }],
  },
  "part-over-machine": { raised: [sized(2400, 1300.1), "cnc"], short: [sized(2400, 1300), "cnc"] },
  "no-pin-bit": {
    raised: [bothSides, "cnc", { cnc: pinned, bits: { "8 straight": straight(8, 27.9) } }],
    short: [bothSides, "cnc", { cnc: pinned, bits: { "8 straight": straight(8, 28) } }],
  },
  "bit-over-rpm": {
    raised: [panel(), "cnc", { bits: { "8 straight": { ...straight(8, 18), "most rpm": 5999 } } }],
    short: [panel(), "cnc", { bits: { "8 straight": { ...straight(8, 18), "most rpm": 6000 } } }],
  },
  "no-machine": { raised: [panel(), "cnc", { cnc: undefined }], short: [panel(), "saw", { cnc: undefined }] },
};

describe("every finding of the process", () => {
  it("has a panel that raises it and one just short of it", () => {
    expect(Object.keys(cases).sort()).toEqual(processFindings.map((def) => def.code).sort());
  });

  for (const def of processFindings)
    it(`${def.code}: is raised, in words that can be read, and not raised just short of it`, () => {
      const { raised, short } = cases[def.code]!;
      const { findings } = cut(...raised);
      expect(findings.map((finding) => finding.code)).toEqual([def.code]);
      expect(findings[0]!.severity).toBe(def.severity);
      const { words, next } = wordsOf(findings[0]!, def, { unit: "mm" });
      expect(`${words} ${next}`).not.toMatch(/[{}]|undefined|NaN|Infinity/);
      expect(cut(...short).codes).toEqual([]);
    });
});

describe("a part wider than the fence reaches", () => {
  it("is no trouble to a track saw that cuts as long as the part is", () => {
    const saws = (longest: number) => ({
      saw: { kerf: 3.2, step: 0.5, "longest rip": 640 },
      "track saw": { kerf: 2.4, "longest cut": longest },
    });
    expect(cut(sized(2000, 700), "saw", saws(2000)).codes).toEqual([]);
    expect(cut(sized(2000, 700), "saw", saws(1999)).codes).toEqual(["rip-too-wide"]);
  });
});

describe("an inside corner", () => {
  it("that is left sharp is an error at the machine and by the hand router, and a warning at the bench", () => {
    expect(cut(withOpening(0), "cnc").findings.map((each) => each.severity)).toEqual(["error"]);
    expect(cut(withOpening(0), "hand").findings.map((each) => each.severity)).toEqual(["error"]);
    expect(cut(withOpening(0), "saw").findings.map((each) => each.severity)).toEqual(["error"]);
    expect(cut(withOpening(0, { stage: "assembled" }), "cnc").findings.map((each) => each.severity)).toEqual([
      "warning",
    ]);
  });

  it("that is too tight is told with its place, how many there are and what the smallest bit leaves", () => {
    const [finding] = cut(withOpening(0), "cnc").findings;
    expect(finding!.facts).toMatchObject({
      corners: { value: 4 },
      radius: { value: 0 },
      x: { value: 50 },
      y: { value: 50 },
      bit: { value: "3 straight" },
      least: { value: 1.5 },
    });
    expect(finding!.at).toEqual([{ file: "job.yaml", path: ["terminal"] }]);
  });

  it("of a pocket counts too", () => {
    const recess = (r: number) =>
      panel([
        feature("recess", {
          kind: "pocket",
          region: { outer: rounded(50, 50, 80, 60, r, "recess"), holes: [] },
          depth: 6,
          corner: "bit",
        }),
      ]);
    expect(cut(recess(0), "cnc").codes).toEqual(["corner-too-tight"]);
    expect(cut(recess(1.5), "cnc").codes).toEqual([]);
  });
});

it("gives a tool to what can be cut although one corner cannot, so that one mistake is one finding", () => {
  const made = cut(withOpening(0), "cnc", { bits: { ...bits } });
  expect(made.tool).toEqual({ outline: "8 straight", terminal: "8 straight" });
  expect(made.findings).toHaveLength(1);
});
