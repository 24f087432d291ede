import { describe, expect, it } from "vitest";
import type { Finding, FindingDef } from "../../src/input/finding.js";
import type { Show } from "../../src/input/show.js";
import { wordsOf } from "../../src/input/words.js";
import { partFindings } from "../../src/pieces/common/part.js";
import { kinds } from "../../src/pieces/kinds.js";
import { planFindings } from "../../src/plan/plan.js";
import { starterShop } from "../../src/shop/starter.js";
import { chamberPairs } from "../findings/chambers.js";
import { formPairs } from "../findings/forms.js";
import { portPairs } from "../findings/ports.js";
import { battenPairs, hatchPairs, removablePairs } from "../findings/removables.js";
import { type Change, planned } from "./planned.js";

/** A job that raises a code, and one just short of it: changes to the estate starter. */
type Pair = { readonly raises: readonly Change[]; readonly short: readonly Change[] };

const box = (path: string, value: unknown): Change => [["pieces", "box", ...path.split(".")], value];
const plate = (path: string, value: unknown): Change => [["pieces", "plate", ...path.split(".")], value];
const ring = (path: string, value: unknown): Change => [["pieces", "ring", ...path.split(".")], value];
const without = (...pieces: string[]): Change[] => pieces.map((name) => [["pieces", name], undefined]);
const free = box("stands", { x: 200, y: 30 });
const panel = (spec: object): Change => [["pieces", "cover"], { kind: "panel", board: "plate", ...spec }];
const bevelled = (side: string) => [panel({ outline: "60 x 30", bevels: { [side]: { angle: "30deg" } } })];
const peg = (deep: number) => panel({ outline: "60 x 30", holes: { peg: { at: [30, 15], across: 5, deep } } });
const slit = (long: number) => panel({ outline: "60 x 30", openings: { slit: { at: [30, 15], size: `4 x ${long}` } } });
const sides = (gap: number): Change[] => [
  ...["notch", "open over", "bolted"].map((key) => plate(key, undefined)),
  plate("sides", { left: { gap }, right: { gap } }),
];

/** Codes that a fault of the program raises, or that need kinds of pieces that the shop does not have: tested apart. */
const apart: Readonly<Record<string, string>> = {
  "shape-in-doubt": "two methods disagree about a shape: tests/geometry proves that they do not",
  "outline-in-doubt": "the same, of an outline that is moved",
  "free-size-unsettled": "two boxes that move each other: tests/plan/solve.test.ts",
  "thread-off-face": "plates ask only for threads on their overlap: tests/pieces/enclosure",
  "plate-opens-over-nothing": "below",
};

const pairs: Readonly<Record<string, Pair>> = {
  ...Object.fromEntries(
    Object.entries({
      ...formPairs,
      ...chamberPairs,
      ...portPairs,
      ...removablePairs,
      ...hatchPairs,
      ...battenPairs,
    }).map(([code, { raises, spares }]) => [code, { raises, short: spares }]),
  ),
  "one-free-size": { raises: [box("outside.depth", "free")], short: [] },
  "free-needs-net": { raises: [box("net", undefined)], short: [box("net", undefined), box("outside.width", 530)] },
  "laps-name-each-face-once": {
    raises: [box("laps", ["top", "top", "front", "rear", "left", "right"])],
    short: [box("laps", ["top", "bottom", "front", "rear", "left", "right"])],
  },
  "line-up-needs-driver": { raises: [box("driver", undefined)], short: [box("driver", undefined), free] },
  // two boards of 18.2 and 30 of room: 66.4
  "box-too-small": { raises: [box("outside.height", 66.3)], short: [box("outside.height", 66.5)] },
  "box-not-held": { raises: [box("held by", undefined)], short: [] },
  // 18.2 of board and 25 of bite: 43.2
  "no-screw-length": {
    raises: [box("screws", { with: "4.0 x 43.1" })],
    short: [box("screws", { with: "4.0 x 43.2" })],
  },
  // the terminal's hole is 78 wide, with round corners: its middle at least 18.2 + 39 from the end of the front
  "cut-out-off-face": {
    raises: [box("terminal.corners", "round"), box("terminal.at", [57.1, 56.8])],
    short: [box("terminal.corners", "round"), box("terminal.at", [57.3, 56.8])],
  },
  // the driver's cut-out is 233 wide, and boards of 18.2 stand on both sides
  "cut-out-wider-than-face": {
    raises: [box("outside", { width: "free", depth: 269.3, height: 400 })],
    short: [box("outside", { width: "free", depth: 269.5, height: 400 })],
  },
  // 1040 wide, carpet 3.5 each side
  "plate-vanishes": { raises: sides(516.6), short: sides(516.4) },
  "no-level-top": {
    raises: [panel({ outline: "60 x 30" }), plate("height", "top of cover")],
    short: [panel({ outline: "60 x 30", lies: { x: 300, y: 500, z: 0 } }), plate("height", "top of cover")],
  },
  "too-few-bolt-places": { raises: [plate("bolted.set in", 200)], short: [] },
  // loose 12.1 + 0.5 + carpet + 1; at most 12.1 + 1 + 13 - 1 = 25.1: 25 fits while the carpet is at most 11.4 thick
  "no-bolt-length": { raises: squashy(11.5), short: squashy(11.3) },
  "no-insert-for-thread": {
    raises: [plate("bolted.with", "M10 button")],
    short: [plate("bolted.with", "M8 button")],
  },
  "groove-broken": { raises: [], short: [plate("bolted.count", 4)] },
  "groove-limited": {
    // a third of 12.1 is 4.03
    raises: [
      [["coverings", "carpet", "thick"], 6],
      [["coverings", "carpet", "clamped"], 4.1],
    ],
    short: [
      [["coverings", "carpet", "thick"], 6],
      [["coverings", "carpet", "clamped"], 4],
    ],
  },
  "ring-without-driver": { raises: [box("driver", undefined), free], short: [free] },
  "ring-too-narrow": { raises: [ring("outside", 268.9)], short: [ring("outside", 269)] },
  "recess-too-deep": {
    raises: [ring("recess", { across: 263, deep: 15.3 })],
    short: [ring("recess", { across: 263, deep: 15.2 })],
  },
  "frame-unknown": { raises: [[["drivers", "ten", "flange"], undefined]], short: [] },
  "bevel-not-sawn": { raises: bevelled("fra"), short: bevelled("far") },
  "hole-too-deep": { raises: [peg(12.1)], short: [peg(12)] },
  "nothing-left": { raises: [slit(30)], short: [slit(29.9)] },
  "unknown-name": { raises: [plate("bolted.to", "boxx")], short: [] },
  "pieces-in-a-circle": {
    raises: [panel({ outline: "60 x 30" }), [["pieces", "plate"], lying("lid")], [["pieces", "lid"], lying("plate")]],
    short: [[["pieces", "lid"], lying("box")]],
  },
  "leans-on-withheld": { raises: [box("laps", ["top"])], short: [] },
  // the space is 1040 wide
  "free-size-binds": { raises: [box("net", "43 L")], short: [box("net", "40 L")] },
  "largest-size": { raises: [box("outside.width", "largest")], short: [] },
  // even 500 high it does not go under the space's 420
  "largest-has-no-room": {
    raises: [box("outside", { width: "largest", depth: 420, height: 500 })],
    short: [box("outside", { width: "largest", depth: 420, height: 150 })],
  },
};

function squashy(thick: number): Change[] {
  return [
    [["coverings", "carpet", "thick"], thick],
    [["coverings", "carpet", "clamped"], 0.5],
    plate("bolted.insert", "M6 x 12"),
  ];
}

function lying(on: string): object {
  return { kind: "plate", board: "plate", outline: "space", height: `top of ${on}` };
}

const defs = new Map<string, FindingDef>(
  [...kinds.flatMap((kind) => kind.findings), ...planFindings, ...partFindings].map((def) => [def.code, def]),
);

const shown: readonly Show[] = [{ unit: "mm" }, { unit: "in", denominator: 16 }];

function found(changes: readonly Change[], code: string): readonly Finding[] {
  return planned(changes, starterShop()).findings.filter((finding) => finding.code === code);
}

describe("what pieces and planning find", () => {
  it("has a job for every code that raises it and one just short of it", () => {
    expect([...Object.keys(pairs), ...Object.keys(apart)].sort()).toEqual([...defs.keys()].sort());
  });

  it.each(Object.entries(pairs))("%s is raised, in words that can be read, and not just short of it", (code, pair) => {
    const raised = found(pair.raises, code);
    expect(raised.length).toBeGreaterThan(0);
    for (const finding of raised) {
      expect(finding.at.length).toBeGreaterThan(0);
      for (const show of shown) {
        const { words, next } = wordsOf(finding, defs.get(code)!, show);
        expect(`${words} ${next}`).not.toMatch(/[{}]|NaN|Infinity|undefined/);
      }
    }
    expect(found(pair.short, code)).toEqual([]);
  });

  it("says when a plate opens over a piece without a driver", () => {
    const bare = [...without("ring"), box("driver", undefined), free, plate("open over", { driver: "box" })];
    expect(found(bare, "plate-opens-over-nothing")).toHaveLength(1);
    expect(found([...without("ring"), plate("open over", { driver: "box" })], "plate-opens-over-nothing")).toEqual([]);
  });
});
