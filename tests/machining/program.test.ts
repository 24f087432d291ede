import { describe, expect, it } from "vitest";
import { relieve } from "../../src/geometry/corners.js";
import { nearestOn } from "../../src/geometry/distance.js";
import { areaOfRegion } from "../../src/geometry/measure.js";
import { circle, rectangle } from "../../src/geometry/shapes.js";
import { boardId, featureId, partId, pieceId } from "../../src/model/ids.js";
import type { Cut, Part } from "../../src/model/part.js";
import type { Move } from "../../src/model/program.js";
import { feature, opening, panel, rounded } from "../process/benchParts.js";
import { all, byKind, operationsOf, programFor, type Setting, shaped } from "./setting.js";

const only = (part: Part, tool: string, setting: Setting = {}) =>
  programFor([part], all(tool), setting).program.setups[0]!;
const cutting = (moves: readonly Move[]) => moves.filter(({ role }) => role === "cut");
const bottom = (moves: readonly Move[]) => Math.min(...moves.map(({ to }) => to[2]));
const block = (name: string, w: number, h: number): Part => {
  const id = partId(pieceId("set"), name);
  const region = { outer: rectangle(0, 0, w, h, "outline"), holes: [] };
  const part = shaped(region);
  return { ...part, id, features: part.features.map((one) => ({ ...one, id: featureId(id, "outline") })) };
};

describe("a way through the board", () => {
  it("ends 0.3 mm below the thickest sheet measured", () => {
    for (const { moves, floor } of operationsOf(only(panel(), "12 straight"))) {
      expect(floor).toBe(-18.3);
      expect(bottom(moves)).toBeCloseTo(-18.3, 12);
    }
  });

  it("runs round the outside with the clock in a climb cut, against it in a conventional one", () => {
    const turning = (direction: "climb" | "conventional") => {
      const [operation] = operationsOf(only(panel(), "12 straight", { cnc: { direction } }));
      const round = cutting(operation!.moves);
      return round.reduce((sum, { to: [x, y] }, i) => {
        const [a, b] = round[i - 1]?.to ?? [x, y];
        return sum + (a * y - x * b) / 2;
      }, 0);
    };
    expect(turning("climb")).toBeLessThan(0);
    expect(turning("conventional")).toBeGreaterThan(0);
  });

  it("goes by the diameter measured, not by the label", () => {
    const bits = { worn: { kind: "straight", d: 12, measured: 11.8, "cutting length": 40 } } as const;
    const setup = only(panel(), "worn", { bits });
    const outer = setup.parts[0]!.profile.outer;
    for (const { to } of cutting(operationsOf(setup)[0]!.moves)) {
      expect(nearestOn(outer, { x: to[0], y: to[1] })!.distance).toBeCloseTo(5.9, 6);
    }
    expect(setup.runs[0]!.d).toBe(11.8);
  });

  it("stops in corners relieved with the bit's own radius, and goes through a slot of its own width", () => {
    const square = rectangle(100, 80, 178, 134, "window");
    const relieved = relieve(square, 6, "diagonal", "outside").profile;
    const slot = rounded(250, 80, 12, 90, 6, "slot");
    const part = panel([feature("window", opening(relieved, "relief")), feature("slot", opening(slot))]);
    const { program, codes } = programFor([part], all("12 straight"));
    expect(codes).toEqual([]);
    const inside = operationsOf(program.setups[0]!).filter(({ kind }) => kind === "inside");
    expect(inside.map(({ feature: id }) => id).sort()).toEqual(
      part.features
        .slice(1)
        .map(({ id }) => id)
        .sort(),
    );
    const holes = program.setups[0]!.parts[0]!.profile.holes;
    for (const { moves } of inside) {
      for (const { to } of cutting(moves)) {
        const near = Math.min(...holes.map((hole) => nearestOn(hole, { x: to[0], y: to[1] })!.distance));
        expect(Math.abs(near - 6)).toBeLessThan(0.002);
      }
    }
  });

  it("clears what would drop out of an opening too small for tabs", () => {
    const part = panel([feature("hole", opening(circle({ x: 200, y: 150 }, 20, "hole")))]);
    const [inside] = operationsOf(only(part, "6 straight")).filter(({ kind }) => kind === "inside");
    const centre = { x: 300, y: 250 }; // the part lies at 100, 100
    const radii = cutting(inside!.moves).map(({ to }) => Math.hypot(to[0] - centre.x, to[1] - centre.y));
    expect(Math.max(...radii)).toBeCloseTo(17, 6);
    expect(Math.min(...radii)).toBeLessThan(3);
  });

  it("leaves a skin where the shop holds parts by one", () => {
    const [outside] = operationsOf(only(panel(), "12 straight", { cnc: { hold: "skin" } }));
    expect(outside!.floor).toBe(-17.5);
    expect(outside!.moves.some(({ role }) => role === "tab")).toBe(false);
  });

  it("lifts over the tabs of a neighbour, so that both stay whole", () => {
    const parts = [block("a", 300, 200), block("b", 300, 200)];
    const { program } = programFor(parts, all("12 straight"), { placed: (_, i) => ({ x: 100 + 314 * i, y: 100 }) });
    const lifted = operationsOf(program.setups[0]!).map(({ moves }) =>
      moves.flatMap((move, i) => {
        const from = moves[i - 1]?.to;
        return move.role === "tab" && from && from[1] !== move.to[1] && Math.abs(move.to[0] - 407) < 3
          ? [from[1], move.to[1]]
          : [];
      }),
    );
    const [a, b] = lifted.map((ys) => [...new Set(ys.map((y) => Math.round(y)))].sort());
    expect(a!.length).toBeGreaterThan(0);
    expect(a).toEqual(b);
  });
});

describe("a part at the sheet's edge", () => {
  const tabbed = (y: number) => {
    const { program } = programFor([panel()], all("12 straight"), { placed: () => ({ y }) });
    const moves = operationsOf(program.setups[0]!).flatMap((operation) => operation.moves);
    return moves.filter(({ role }) => role === "tab").map(({ to }) => to[1]);
  };

  it("has no tab where the cut leaves nothing of the edge to hold on to, and one where a strip of 3 mm stays", () => {
    // the way runs 6 below the part, and clears 6 more
    expect(Math.min(...tabbed(14.9))).toBeGreaterThan(20);
    expect(Math.min(...tabbed(15))).toBeCloseTo(9, 6);
  });
});

describe("work that does not go through", () => {
  it("leaves the islands of a pocket standing", () => {
    const island = rounded(190, 140, 40, 30, 4, "island");
    const area = { outer: rounded(120, 90, 180, 140, 8, "pocket"), holes: [island] };
    const cut: Cut = { kind: "pocket", region: area, depth: 7, corner: "bit" };
    const setup = only(panel([feature("pocket", cut)]), "12 straight");
    const pocket = operationsOf(setup).find(({ kind }) => kind === "pocket")!;
    expect(pocket.floor).toBe(-7);
    const standing = island.map((vertex) => ({ ...vertex, x: vertex.x + 100, y: vertex.y + 100 }));
    for (const { to } of pocket.moves.filter(({ to: at }) => at[2] < 0)) {
      expect(nearestOn(standing, { x: to[0], y: to[1] })!.distance).toBeGreaterThan(6 - 1e-6);
    }
  });

  it("cuts a groove of the bit's width along its middle, to both of its ends, and a wider one along both sides", () => {
    const path = [
      { x: 60, y: 60, bulge: 0, by: "groove" },
      { x: 300, y: 60, bulge: 0, by: "groove" },
    ];
    const grooveOf = (width: number) => {
      const cut: Cut = { kind: "groove", path, closed: false, width, depth: 5 };
      const { program } = programFor(
        [panel([feature("groove", cut)])],
        byKind("12 straight", { groove: "6 straight" }),
      );
      const { moves } = operationsOf(program.setups[0]!).find(({ kind }) => kind === "groove")!;
      const low = cutting(moves).filter(({ to }) => to[2] === -5);
      return [0, 1].map((axis) => {
        const along = low.map(({ to }) => to[axis]!);
        return [Math.min(...along), Math.max(...along)];
      });
    };
    const [xs, ys] = grooveOf(6);
    expect(xs![1]).toBeCloseTo(400, 9);
    expect(ys).toEqual([160, 160]);
    const [, wide] = grooveOf(10);
    expect(wide![0]).toBeCloseTo(158, 6);
    expect(wide![1]).toBeCloseTo(162, 6);
  });

  it("draws a drill out between pecks, and sinks after drilling", () => {
    const cut: Cut = {
      kind: "hole",
      at: { x: 40, y: 40 },
      d: 4.5,
      depth: "through",
      sink: { d: 8, depth: 1.75, angle: Math.PI / 2 },
    };
    const { program } = programFor([panel([feature("screw", cut)])], byKind("12 straight", { hole: "4.5 drill" }));
    const [drilled, sunk] = operationsOf(program.setups[0]!);
    expect(drilled!.moves.filter(({ role }) => role === "plunge").length).toBe(2);
    expect(sunk).toMatchObject({ kind: "sink" });
    expect(sunk!.floor).toBeCloseTo(-4, 12);
  });

  it("bores a hole without a drill of its size round and round with a thinner bit", () => {
    const cut: Cut = { kind: "hole", at: { x: 40, y: 40 }, d: 10.4, depth: 12 };
    const { program } = programFor([panel([feature("bore", cut)])], byKind("12 straight", { hole: "6 straight" }));
    const { moves } = operationsOf(program.setups[0]!).find(({ kind }) => kind === "drill")!;
    const radii = cutting(moves).map(({ to }) => Math.hypot(to[0] - 140, to[1] - 140));
    expect(Math.max(...radii)).toBeCloseTo(2.2, 9);
    expect(bottom(moves)).toBe(-12);
  });

  it("engraves a mark where nothing else is cut, beside the place wanted if need be", () => {
    const hole = feature("hole", opening(circle({ x: 200, y: 150 }, 60, "hole")));
    const mark = feature("mark", { kind: "mark", text: "B12", at: { x: 200, y: 150 } });
    const { program } = programFor([panel([hole, mark])], byKind("12 straight", { mark: "60 v" }));
    const { moves } = operationsOf(program.setups[0]!).find(({ kind }) => kind === "engrave")!;
    for (const { to } of moves.filter(({ role }) => role === "cut")) {
      expect(Math.hypot(to[0] - 300, to[1] - 250)).toBeGreaterThan(62);
      expect(to[2]).toBe(-0.5);
    }
  });
});

describe("work along edges", () => {
  const edge = (form: "rebate" | "chamfer", width: number, depth: number, along: readonly string[]) => {
    const cut: Cut = { kind: "edge", form, along, width, depth, angle: form === "chamfer" ? Math.PI / 4 : 0 };
    const tool = form === "chamfer" ? "45 chamfer" : "12 straight";
    const { program, codes } = programFor([panel([feature("edge", cut)])], byKind("12 straight", { edge: tool }));
    expect(codes).toEqual([]);
    return operationsOf(program.setups[0]!).find(({ kind }) => kind === form)!;
  };
  const low = ({ moves, floor }: ReturnType<typeof edge>) => moves.filter(({ to }) => to[2] === floor);

  it("ends a rebate at its wall and runs it out past both ends", () => {
    const ways = low(edge("rebate", 20, 5, ["front"]));
    // the panel's front edge lies at y 100, from x 100 to 500
    expect(Math.max(...ways.map(({ to }) => to[1]))).toBeCloseTo(100 + 20 - 6, 6);
    expect(Math.min(...ways.map(({ to }) => to[0]))).toBeCloseTo(98, 6);
    expect(Math.max(...ways.map(({ to }) => to[0]))).toBeCloseTo(502, 6);
  });

  it("keeps the point of a cone outside of the part, below its edge, all the way round", () => {
    const outer = rectangle(100, 100, 500, 400, "outline");
    const chamfer = edge("chamfer", 4, 4, ["front", "right", "back", "left"]);
    expect(chamfer.floor).toBeCloseTo(-4.5, 12);
    for (const { to } of low(chamfer)) {
      const outside = to[0] < 100 || to[0] > 500 || to[1] < 100 || to[1] > 400;
      expect(outside).toBe(true);
      expect(nearestOn(outer, { x: to[0], y: to[1] })!.distance).toBeGreaterThan(0.5 - 1e-6);
    }
  });
});

describe("the order of a sheet", () => {
  it("cuts what lies in an opening before the opening, and small parts before large ones", () => {
    const ring = panel([feature("hole", opening(circle({ x: 200, y: 150 }, 120, "hole")))]);
    const [small, apart] = [block("small", 60, 60), block("apart", 80, 80)];
    const { program } = programFor([ring, small, apart], all("12 straight"), {
      placed: (_, i) =>
        [
          { x: 100, y: 100 },
          { x: 270, y: 220 },
          { x: 1500, y: 800 },
        ][i]!,
    });
    const order = operationsOf(program.setups[0]!).map(({ part, kind }) => `${part} ${kind}`);
    expect(order).toEqual(["set/small outside", "lid/panel inside", "set/apart outside", "lid/panel outside"]);
  });

  it("numbers tools as the shop has them, and others by the next free place in the order of use", () => {
    const part = panel([feature("pilot", { kind: "hole", at: { x: 40, y: 40 }, d: 5, depth: 9 })]);
    const { program } = programFor([part], byKind("12 straight", { hole: "5 drill" }), {
      cnc: { tools: { "12 straight": 1 } },
    });
    expect(program.setups[0]!.runs.map(({ tool, number }) => [tool, number])).toEqual([
      ["5 drill", 2],
      ["12 straight", 1],
    ]);
  });
});

describe("a sheet that is turned over", () => {
  const groove: Cut = {
    kind: "groove",
    path: [
      { x: 60, y: 60, bulge: 0, by: "groove" },
      { x: 300, y: 90, bulge: 0, by: "groove" },
    ],
    closed: false,
    width: 6,
    depth: 5,
  };
  const part = panel([
    feature("groove", groove, { side: "back" }),
    feature("pilot", { kind: "hole", at: { x: 40, y: 40 }, d: 5, depth: 9 }),
  ]);
  const registration = {
    board: boardId("box"),
    d: 8,
    tool: "8 drill",
    into: 10,
    fromEnds: [15, 25] as const,
    keepOff: 10,
  };
  const bits = { "groove bit": { kind: "straight", d: 6, "cutting length": 20 } } as const;
  const { program } = programFor(
    [part],
    ({ cut }) =>
      cut.kind === "groove"
        ? { tool: "groove bit", setup: 1 }
        : { tool: cut.kind === "hole" ? "5 drill" : "12 straight", setup: 2 },
    { bits, placed: () => ({ backUp: true }), process: { registration: [registration] } },
  );
  const [first, second] = program.setups;

  it("has two setups, the second with y measured from the other edge and the other side up", () => {
    expect(program.setups.map(({ name, turnedOver }) => [name, turnedOver])).toEqual([
      ["box 1", false],
      ["box 1 turned", true],
    ]);
    expect([first!.parts[0]!.up, second!.parts[0]!.up]).toEqual(["back", "face"]);
    const [one, other] = [first!, second!].map(({ parts }) => parts[0]!.profile.outer);
    for (const { x, y } of one!) expect(nearestOn(other!, { x, y: 1220 - y })!.distance).toBeLessThan(1e-9);
    expect(areaOfRegion(second!.parts[0]!.profile)).toBeCloseTo(120_000, 6);
  });

  const both = (setting: Setting, tool = "8 drill") =>
    programFor(
      [part],
      ({ cut }) =>
        cut.kind === "groove"
          ? { tool: "groove bit", setup: 1 }
          : { tool: cut.kind === "hole" ? "5 drill" : "12 straight", setup: 2 },
      {
        ...setting,
        bits: { ...bits, ...setting.bits },
        placed: () => ({ backUp: true }),
        process: { registration: [{ ...registration, tool }] },
      },
    );

  it("bores the holes for its dowels to their size where a thinner bit makes them", () => {
    const { program: bored, codes } = both({}, "6 straight");
    expect(codes).toEqual([]);
    const pins = operationsOf(bored.setups[0]!).filter(({ kind }) => kind === "pin");
    expect(pins).toHaveLength(2);
    for (const { moves } of pins) {
      const cuts = moves.filter(({ role }) => role === "cut");
      const away = cuts.map(({ to: [x, y] }) => Math.min(Math.hypot(x - 15, y - 610), Math.hypot(x - 2415, y - 610)));
      expect(Math.max(...away)).toBeCloseTo((8 - 6) / 2, 3);
    }
  });

  it("is not cut from one side where the other cannot be, nor without its dowels", () => {
    const low = both({ cnc: { travel: 30 } });
    expect(low.codes).toEqual(["travel-too-short"]);
    expect(low.program).toEqual({ setups: [], withheld: ["box 1", "box 1 turned"] });
    const slow = both({ bits: { "slow drill": { kind: "drill", d: 8, "most rpm": 100 } } }, "slow drill");
    expect(slow.codes).toEqual(["no-turning-speed"]);
    expect(slow.program).toEqual({ setups: [], withheld: ["box 1", "box 1 turned"] });
  });

  it("drills the pins in the first, through the sheet and into the spoilboard, and only there", () => {
    const pins = operationsOf(first!).filter(({ kind }) => kind === "pin");
    expect(pins.map(({ floor }) => floor)).toEqual([-28, -28]);
    expect(operationsOf(first!).slice(0, 2)).toEqual(pins);
    expect(operationsOf(second!).some(({ kind }) => kind === "pin")).toBe(false);
    expect(first!.pins).toEqual(second!.pins);
    for (const { at } of first!.pins) expect(at.y).toBe(610);
  });
});

describe("what keeps a setup out of the program", () => {
  it("names it as withheld, and writes the rest", () => {
    const { program, codes } = programFor([panel()], all("12 straight"), { cnc: { travel: 20 } });
    expect(codes).toEqual(["travel-too-short"]);
    expect(program).toEqual({ setups: [], withheld: ["box 1"] });
  });

  it("makes no program of parts planned for 18.0 on a board that measures 18.4", () => {
    const { program, codes } = programFor([panel()], all("12 straight"), {
      job: { boards: { box: { stock: "mdf-18", measured: 18.4 } } },
    });
    expect(codes).toEqual(["thickness-changed"]);
    expect(program.setups).toEqual([]);
  });
});
