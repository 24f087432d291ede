import { describe, expect, it } from "vitest";
import { circle, rectangle } from "../../src/geometry/shapes.js";
import { boardId, partId, pieceId } from "../../src/model/ids.js";
import type { Part } from "../../src/model/part.js";
import type { BoardStock } from "../../src/model/shop.js";
import {
  bed,
  cut,
  feature,
  hole,
  id,
  opening,
  panel,
  processAll,
  rounded,
  sheetOutline,
  toolsBy,
} from "./benchParts.js";

const q = Math.PI / 2;
const disc = panel([], { profile: { outer: circle({ x: 0, y: 0 }, 150, "edge"), holes: [] } });

describe("the method", () => {
  it("is the piece's, else the job's, else the shop's", () => {
    expect(cut(panel(), "cnc")).toMatchObject({ method: "cnc", why: "as the shop says" });
    expect(cut(panel(), "cnc", {}, { "cut by": "hand" })).toMatchObject({ method: "hand", why: "as the job says" });
    const pieces = { lid: { kind: "panel", "cut by": "saw" } };
    expect(cut(panel(), "cnc", {}, { "cut by": "hand", pieces })).toMatchObject({
      method: "saw",
      why: "a plain rectangle",
    });
  });

  it("is the hand router where an outline meant for the saw is round or notched", () => {
    const clipped = [
      ...sheetOutline.slice(0, 2),
      { x: 400, y: 280, bulge: 0, by: "clip" },
      { x: 380, y: 300, bulge: 0, by: "back" },
      sheetOutline[3]!,
    ];
    for (const part of [disc, panel([], { profile: { outer: clipped, holes: [] } })])
      expect(cut(part, "saw").method).toBe("hand");
    expect(cut(disc, "saw").why).toContain("not a plain rectangle");
  });

  it("stays the saw for a rectangle with bevels along its sides", () => {
    const bevel = { front: { bevel: 0.1, flush: 0, finish: { kind: "bare" as const } } };
    const made = cut(panel([], { edges: bevel }), "saw");
    expect(made).toMatchObject({ method: "saw", why: "a rectangle with sawn bevels" });
  });

  it("is what the panel itself says, before its piece", () => {
    const pieces = { lid: { kind: "panel", "cut by": "saw" } };
    expect(cut(panel([], { cutBy: "cnc" }), "saw", {}, { pieces })).toMatchObject({
      method: "cnc",
      why: "as the panel says",
    });
  });

  it("stays the saw for a rectangle with an opening, which is routed by hand", () => {
    const made = cut(panel([feature("opening", opening(circle({ x: 200, y: 150 }, 60, "opening")))]), "saw");
    expect(made).toMatchObject({ method: "saw", why: "sawn outline, hand-routed opening" });
    expect(made.tool).toEqual({ outline: "saw", opening: "8 straight" });
  });

  it("takes a rectangle with a vertex in the middle of a side for what it is", () => {
    const outer = [...sheetOutline.slice(0, 1), { x: 200, y: 0, bulge: 0, by: "front" }, ...sheetOutline.slice(1)];
    expect(cut(panel([], { profile: { outer, holes: [] } }), "saw").method).toBe("saw");
  });
});

describe("the side that lies up", () => {
  const groove = { kind: "groove", path: [], closed: false, width: 4, depth: 4 } as const;
  const chamfer = { kind: "edge", form: "chamfer", along: ["front"], width: 6, depth: 6, angle: q / 2 } as const;

  it("is the face where nothing asks, the back for a groove on the back", () => {
    const back = feature("groove", groove, { side: "back" });
    expect(cut(panel(), "cnc").sides).toEqual(["face"]);
    expect(cut(panel([back]), "cnc").sides).toEqual(["back"]);
  });

  it("is the one with more to cut where both are worked; the rest is left to hand and bench", () => {
    const both = panel([feature("groove", groove, { side: "back" }), feature("insert", hole(5, 14))]);
    const made = cut(both, "cnc");
    expect(made.sides).toEqual(["face"]);
    expect(made.work.map(({ by, setup }) => [by, setup])).toEqual([
      ["cnc", 1],
      ["hand", undefined],
      ["cnc", 1],
    ]);
    expect(made.work[1]?.why).toContain("on the back");
  });

  it("is each in turn where the shop turns sheets over on pins, and the part is cut out in the second setup", () => {
    const both = panel([feature("groove", groove, { side: "back" }), feature("insert", hole(5, 14))]);
    const made = cut(both, "cnc", { cnc: { ...bed, "second side": "pins" } });
    expect(made.sides).toEqual(["back", "face"]);
    expect(made.work.map(({ by, setup }) => [by, setup])).toEqual([
      ["cnc", 2],
      ["cnc", 1],
      ["cnc", 2],
    ]);
  });

  it("does not ask for a side for through holes, work on edges, or what is done at the bench", () => {
    const quiet = [
      feature("bolt", hole(5, "through"), { side: "face" }),
      feature("pilot", hole(5, 30, 9), { side: { edge: "front" } }),
      feature("chamfer", chamfer, { side: "face" }),
      feature("later", hole(5, 10), { side: "face", stage: "bench" }),
    ];
    expect(cut(panel([...quiet, feature("groove", groove, { side: "back" })]), "cnc").sides).toEqual(["back"]);
  });
});

describe("the turns a part may have", () => {
  const ply: BoardStock = {
    material: "birch plywood",
    thickness: 18,
    density: 680,
    grain: true,
    sheets: [],
    offcuts: [],
  };
  const grained = { boards: { "mdf-18": ply } };

  it("are quarter turns, and at the saw, where half a turn changes nothing, two", () => {
    expect(cut(panel(), "cnc").turns).toEqual([0, q, 2 * q, 3 * q]);
    expect(cut(panel(), "saw").turns).toEqual([0, q]);
  });

  it("are those that keep the grain, where the board has one and the part asks for it", () => {
    expect(cut(panel([], { grain: 0 }), "cnc", grained).turns).toEqual([0, 2 * q]);
    expect(cut(panel([], { grain: q }), "cnc", grained).turns).toEqual([q, 3 * q]);
    expect(cut(panel([], { grain: q }), "saw", grained).turns).toEqual([q]);
    expect(cut(panel([], { grain: q }), "cnc").turns).toHaveLength(4);
    expect(cut(panel(), "cnc", grained).turns).toHaveLength(4);
  });

  it("lay a grain that runs at an angle along the sheet, also in the mirror when the back is up", () => {
    const groove = feature("groove", { kind: "groove", path: [], closed: false, width: 4, depth: 4 }, { side: "back" });
    // grain direction g, turned by t: along the sheet when g + t is a whole half turn; mirrored, g is -g
    const [face] = cut(panel([], { grain: 0.3 }), "cnc", grained).turns;
    expect(Math.sin(0.3 + face!)).toBeCloseTo(0, 12);
    const [back] = cut(panel([groove], { grain: 0.3 }), "cnc", grained).turns;
    expect(Math.sin(-0.3 + back!)).toBeCloseTo(0, 12);
  });
});

describe("the gap to the next part", () => {
  it("is the bit that goes round and the machine's clearance: a bit's diameter and 2 mm (common practice, no source)", () => {
    expect(cut(panel(), "cnc").gap).toBe(8 + 2);
    const worn = { "8 straight": { kind: "straight" as const, d: 8, measured: 7.9, "cutting length": 32 } };
    expect(cut(panel(), "cnc", { bits: worn }).gap).toBeCloseTo(7.9 + 2, 9);
    expect(cut(panel(), "cnc", { cnc: { ...bed, clearance: 5 } }).gap).toBe(13);
  });

  it("is the kerf at the saw (common practice, no source), and two allowances and a kerf by hand", () => {
    expect(cut(panel(), "saw").gap).toBe(3.2);
    expect(cut(disc, "hand").gap).toBeCloseTo(3 + 3.2 + 3, 9);
  });
});

describe("the tool for each feature", () => {
  it("is the widest bit that gets into every inside corner of what is cut through: one bit for the whole part", () => {
    const rounds = [
      feature("wide", opening(rounded(50, 50, 80, 60, 20, "wide"))),
      feature("tight", opening(rounded(200, 50, 80, 60, 3.5, "tight"))),
    ];
    expect(cut(panel(rounds), "cnc").tool).toEqual({ outline: "6 straight", wide: "6 straight", tight: "6 straight" });
    expect(cut(panel(rounds.slice(0, 1)), "cnc").tool).toEqual({ outline: "8 straight", wide: "8 straight" });
  });

  it("goes into a notch of the outline", () => {
    const notch = {
      kind: "notch",
      region: { outer: rounded(350, 100, 100, 60, 3.2, "notch"), holes: [] },
      corner: "bit",
    } as const;
    const bulge = -Math.tan(Math.PI / 8);
    const at = (x: number, y: number, by: string, b = 0) => ({ x, y, bulge: b, by });
    const outer = [
      at(0, 0, "front"),
      at(400, 0, "right"),
      at(400, 100, "notch"),
      at(353.2, 100, "notch", bulge),
      at(350, 103.2, "notch"),
      at(350, 156.8, "notch", bulge),
      at(353.2, 160, "notch"),
      at(400, 160, "right"),
      at(400, 300, "back"),
      at(0, 300, "left"),
    ];
    const made = cut(panel([feature("notch", notch)], { profile: { outer, holes: [] } }), "cnc");
    expect(made.tool).toEqual({ outline: "6 straight", notch: "6 straight" });
    expect(made.codes).toEqual([]);
  });

  it("goes between the sides of a narrow opening", () => {
    const slit = feature("slit", opening(rounded(50, 50, 200, 7, 3.5, "slit")));
    expect(cut(panel([slit]), "cnc").tool["slit"]).toBe("6 straight");
  });

  it("is long enough for the board", () => {
    expect(cut(panel([], { thickness: 30 }), "cnc").tool["outline"]).toBe("8 straight");
    const short = { ...{ "8 straight": { kind: "straight" as const, d: 8, "cutting length": 15 } } };
    const both = { ...short, "6 straight": { kind: "straight" as const, d: 6, "cutting length": 25 } };
    expect(cut(panel(), "cnc", { bits: both }).tool["outline"]).toBe("6 straight");
  });

  it("is a drill of the hole's own diameter, else the router bit that goes round in it", () => {
    expect(cut(panel([feature("bolt", hole(5, "through"))]), "cnc").tool["bolt"]).toBe("5 drill");
    expect(cut(panel([feature("bolt", hole(9, 14))]), "cnc").tool["bolt"]).toBe("8 straight");
    expect(cut(panel([feature("bolt", hole(7, 14))]), "cnc").tool["bolt"]).toBe("6 straight");
  });

  it("is a bit no wider than a groove, one that goes into a pocket's corners, and one of an edge's form", () => {
    const groove = { kind: "groove", path: [], closed: false, width: 4, depth: 4 } as const;
    const recess = {
      kind: "pocket",
      region: { outer: rounded(50, 50, 80, 60, 3, "recess"), holes: [] },
      depth: 6,
      corner: "bit",
    } as const;
    const edge = { kind: "edge", along: ["front"], width: 6, depth: 6, angle: q / 2 } as const;
    const made = cut(
      panel([
        feature("groove", groove),
        feature("recess", recess),
        feature("chamfer", { ...edge, form: "chamfer" }),
        feature("round", { ...edge, form: "roundOver", angle: 0 }),
        feature("rebate", { ...edge, form: "rebate", angle: 0 }),
      ]),
      "cnc",
    );
    expect(made.tool).toEqual({
      outline: "8 straight",
      groove: "3 straight",
      recess: "6 straight",
      chamfer: "45 chamfer",
      round: "6 round-over",
      rebate: "8 straight",
    });
    expect(made.codes).toEqual([]);
  });
});

it("gives every part of a plan its process, by its id", () => {
  expect(cut(panel([], { board: boardId("unheard of") }), "cnc").part).toBe(id);
  expect(cut(panel([feature("o", opening(rectangle(10, 10, 60, 60, "o"), "sharp"))]), "cnc").findings[0]!.on).toContain(
    id,
  );
});

describe("the bits of one board", () => {
  const panelWith = (role: string, r: number, board = "box") => ({
    ...panel([feature("opening", opening(rounded(50, 50, 80, 60, r, "opening")))]),
    id: partId(pieceId("lid"), role),
    board: boardId(board),
  });
  const bitsFor = (...parts: readonly Part[]) =>
    processAll(parts, "cnc").map((each) => [...new Set(Object.values(toolsBy(each)))]);

  it("are one bit where the tightest corner asks for one a little thinner: no change for the sake of 2 mm", () => {
    expect(bitsFor(panelWith("a", 20), panelWith("b", 3))).toEqual([["6 straight"], ["6 straight"]]);
    expect(bitsFor(panelWith("a", 20), panelWith("b", 3, "plate"))).toEqual([["8 straight"], ["6 straight"]]);
  });

  it("are two where one corner asks for a bit less than half as wide, which would be slow in all the others", () => {
    const thin = { ...panelWith("b", 1.5), thickness: 12 };
    expect(bitsFor(panelWith("a", 20), thin)).toEqual([["8 straight"], ["3 straight"]]);
  });
});
