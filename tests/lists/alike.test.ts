import { describe, expect, it } from "vitest";
import { mirrored, moved, turned } from "../../src/geometry/transform.js";
import { alike } from "../../src/lists/alike.js";
import { featureId, partId, pieceId } from "../../src/model/ids.js";
import type { Cut, Part } from "../../src/model/part.js";
import { samplePart } from "../fixtures/build.js";
import { quarter } from "../fixtures/outlines.js";

/** An L with one rounded corner and one hole off its middle: it has no symmetry at all. */
const outer = [
  { x: 0, y: 0, bulge: 0, by: "bottom" },
  { x: 300, y: 0, bulge: 0, by: "right" },
  { x: 300, y: 80, bulge: quarter, by: "right|step" },
  { x: 280, y: 100, bulge: 0, by: "step" },
  { x: 120, y: 100, bulge: 0, by: "rise" },
  { x: 120, y: 200, bulge: 0, by: "top" },
  { x: 0, y: 200, bulge: 0, by: "left" },
];
const el = withHole({ ...samplePart("B2"), profile: { outer, holes: [] } }, { x: 60, y: 150 });

function withHole(part: Part, at: { readonly x: number; readonly y: number }, d = 12): Part {
  const cut: Cut = { kind: "hole", at, d, depth: 10 };
  const outline: Cut = { kind: "outline", region: part.profile, corner: "bit" };
  const id = partId(pieceId("shelf"), "el");
  const feature = (name: string, it: Cut) =>
    ({ id: featureId(id, name), from: [], side: "face", cut: it, stage: "sheet" }) as const;
  return { ...part, id, features: [feature("outline", outline), feature("hole", cut)] };
}

describe("parts compared for the cut list", () => {
  it("are the same when one is the other turned and shifted, whatever its edges are called", () => {
    const about = { x: 17, y: -4 };
    const lain = moved(turned(outer, 1.1, about), 400, 30).map((v) => ({ ...v, by: `other ${v.by}` }));
    const [hole] = moved(turned([{ x: 60, y: 150, bulge: 0, by: "" }], 1.1, about), 400, 30);
    const started = [...lain.slice(3), ...lain.slice(0, 3)];
    expect(alike(el, withHole({ ...el, profile: { outer: started, holes: [] } }, hole!))).toBe("same");
  });

  it("are of opposite hands when only a mirror makes them the same", () => {
    const other = withHole({ ...el, profile: { outer: mirrored(outer), holes: [] } }, { x: -60, y: 150 });
    expect(alike(el, other)).toBe("opposite hand");
    expect(alike(other, el)).toBe("opposite hand");
  });

  it("differ by one hole's place, size, depth or side", () => {
    const hole = el.features[1]!;
    if (hole.cut.kind !== "hole") throw new Error("a hole");
    const change = (feature: Part["features"][number]): Part => ({ ...el, features: [el.features[0]!, feature] });
    expect(alike(el, el)).toBe("same");
    expect(alike(el, withHole(el, { x: 60.1, y: 150 }))).toBeUndefined();
    expect(alike(el, withHole(el, { x: 60, y: 150 }, 12.5))).toBeUndefined();
    expect(alike(el, change({ ...hole, cut: { ...hole.cut, depth: "through" } }))).toBeUndefined();
    expect(alike(el, change({ ...hole, side: "back" }))).toBeUndefined();
    expect(alike(el, change({ ...hole, stage: "bench" }))).toBeUndefined();
  });

  it("differ by board, thickness, covering, edge finish and grain", () => {
    const wrapped = { kind: "wrapped", covering: "carpet", loose: 3, clamped: 2, wrap: 40 } as const;
    const edged: Part = { ...el, edges: { bottom: { bevel: 0, flush: 0, finish: wrapped } } };
    expect(alike(el, edged)).toBeUndefined();
    expect(alike(el, { ...el, thickness: 18 })).toBeUndefined();
    expect(alike(el, { ...el, coverings: { face: "carpet" } })).toBeUndefined();
    expect(alike(el, { ...el, grain: 0 })).toBeUndefined();
    expect(alike({ ...el, grain: 0 }, { ...el, grain: Math.PI })).toBe("same");
    expect(alike({ ...el, grain: 0 }, { ...el, grain: Math.PI / 2 })).toBeUndefined();
  });

  it("compare by the arcs as well: a straight corner is not a rounded one", () => {
    const straight = outer.map((v) => ({ ...v, bulge: 0 }));
    expect(alike(el, withHole({ ...el, profile: { outer: straight, holes: [] } }, { x: 60, y: 150 }))).toBeUndefined();
  });

  it("find the two side walls of the sample the same, and its front and back not", () => {
    expect(alike(samplePart("B3"), samplePart("B4"))).toBe("same");
    expect(alike(samplePart("B5"), samplePart("B6"))).toBeUndefined();
  });

  it("match rings by their holes, as a round outline has no corner to start from", () => {
    const ring = samplePart("R1");
    const turnedBy = (angle: number): Part => ({
      ...ring,
      profile: {
        outer: moved(ring.profile.outer, 90, 5),
        holes: ring.profile.holes.map((h) => moved(turned(h, angle), 90, 5)),
      },
      features: ring.features.map((feature) => ({ ...feature, cut: turnCut(feature.cut, angle) })),
    });
    expect(alike(ring, turnedBy(0.3))).toBe("same");
  });
});

function turnCut(cut: Cut, angle: number): Cut {
  const lay = (p: Part["profile"]["outer"]) => moved(turned(p, angle), 90, 5);
  if ("region" in cut) return { ...cut, region: { outer: lay(cut.region.outer), holes: cut.region.holes.map(lay) } };
  if (cut.kind === "hole") return { ...cut, at: lay([{ ...cut.at, bulge: 0, by: "" }])[0]! };
  return cut;
}
