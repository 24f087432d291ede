import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { arcOf, isFlat } from "../../src/geometry/arc.js";
import { nearestOn } from "../../src/geometry/distance.js";
import type { Point, Profile } from "../../src/geometry/profile.js";
import { tessellatePath } from "../../src/geometry/tessellate.js";
import type { Move, Operation, Setup } from "../../src/model/program.js";
import { operationsOf, programFor } from "../machining/setting.js";
import { bits, sets } from "./machiningParts.js";

const runs = { seed: 20310409, numRuns: 40 };

type Set = typeof sets extends fc.Arbitrary<infer T> ? T : never;

const tools: Readonly<Record<string, string>> = { groove: "six", pocket: "six" };

function made(set: Set) {
  return programFor(
    set.parts,
    ({ cut }) => {
      const chamfer = cut.kind === "edge" && cut.form === "chamfer";
      const hole = cut.kind === "hole" ? (cut.d === 5 ? "5 drill" : "six") : undefined;
      return { tool: chamfer ? "45 chamfer" : (hole ?? tools[cut.kind] ?? set.round), setup: set.side };
    },
    {
      bits,
      cnc: { direction: set.direction, hold: set.hold, "chip share": set.share },
      placed: () => ({ turn: set.turn, backUp: set.backUp }),
    },
  );
}

const through = ({ kind }: Operation) => kind === "inside" || kind === "outside";
const loopsIn = (setup: Setup): readonly Profile[] =>
  setup.parts.flatMap(({ profile }) => [profile.outer, ...profile.holes]);
const away = (loops: readonly Profile[], p: Point) => Math.min(...loops.map((loop) => nearestOn(loop, p)!.distance));

/** Places along a move, close enough for a distance of a thousandth. */
function placesOn(from: Move | undefined, { to, bulge }: Move): readonly Point[] {
  if (from === undefined) return [];
  const [a, b] = [
    { x: from.to[0], y: from.to[1], bulge, by: "" },
    { x: to[0], y: to[1], bulge: 0, by: "" },
  ];
  const places = tessellatePath([a, b], 0.01);
  return [...places, { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }].slice(0, bulge === 0 ? undefined : -1);
}

function each({ moves }: Operation, visit: (move: Move, places: readonly Point[]) => void): void {
  for (const [i, move] of moves.entries()) visit(move, placesOn(moves[i - 1], move));
}

/** Made once: each look at them costs less than the making. */
const programs = fc.sample(sets, runs).map((set) => ({ set, result: made(set) }));

const check = (holds: (set: Set, setup: Setup, result: ReturnType<typeof made>) => void) => {
  for (const { set, result } of programs) for (const setup of result.program.setups) holds(set, setup, result);
};

describe("any program", () => {
  it("runs its finishing centre lines at the bit's radius from the finished profile, within 0.002 mm", () => {
    let seen = 0;
    check((_, setup) => {
      const loops = loopsIn(setup);
      for (const { d, operations } of setup.runs) {
        for (const operation of operations.filter(through)) {
          // what drops out of an opening is cleared whole where no tab holds it: rings within rings
          const cleared = operation.kind === "inside" && operation.moves.every(({ role }) => role !== "tab");
          each(operation, (move, places) => {
            const near = places.map((p) => away(loops, p));
            if (move.role !== "way") for (const distance of near) expect(distance).toBeGreaterThan(d / 2 - 0.002);
            if (move.role !== "cut" || cleared || move.to[2] !== operation.floor) return;
            seen++;
            for (const distance of near) expect(distance).toBeLessThan(d / 2 + 0.002);
          });
        }
      }
    });
    expect(seen).toBeGreaterThan(500);
  });

  it("clears every profile all along: no place of it lies farther than the radius from a way", () => {
    check((_, setup) => {
      const ways = setup.runs.flatMap(({ d, operations }) => operations.filter(through).map((one) => ({ d, one })));
      for (const { part, profile } of setup.parts) {
        const own = ways.filter(({ one }) => one.part === part);
        const centres = own.flatMap(({ d, one }) => {
          const places: Point[] = [];
          each(one, (move, found) => {
            if (move.role === "cut" || move.role === "tab") places.push(...found);
          });
          return [{ d, path: places.map((p) => ({ ...p, bulge: 0, by: "" })) }];
        });
        for (const loop of [profile.outer, ...profile.holes]) {
          for (const vertex of loop) {
            const short = Math.min(...centres.map(({ d, path }) => (nearestOn(path, vertex)?.distance ?? 1e9) - d / 2));
            expect(short).toBeLessThan(0.02);
          }
        }
      }
    });
  });

  it("has tabs neither on glued edges nor on tight arcs nor at corners", () => {
    let tabs = 0;
    check((set, setup) => {
      for (const operation of operationsOf(setup).filter(through)) {
        const { profile } = setup.parts.find(({ part }) => part === operation.part)!;
        const { edges } = set.parts.find(({ id }) => id === operation.part)!;
        const loops = operation.kind === "outside" ? [profile.outer] : profile.holes;
        each(operation, (move, places) => {
          // the place in the middle of the move: an end may lie where the next edge begins
          const middle = places[Math.floor(places.length / 2)];
          if (move.role !== "tab" || middle === undefined || places.length < 2) return;
          tabs++;
          const { radius, by } = edgeBeside(loops, move.bulge === 0 ? places.at(-1)! : middle);
          expect(radius).toBeGreaterThanOrEqual(25 - 1e-6);
          expect(by.split("|").map((name) => edges[name]?.finish.kind)).not.toContain("joint");
        });
      }
    });
    expect(tabs).toBeGreaterThan(500);
  });

  it("goes no deeper in one pass than the bit is wide, but for a compression bit's first", () => {
    check((_, setup) => {
      for (const { d, tool, operations } of setup.runs) {
        for (const { kind, moves } of operations) {
          if (kind === "drill" || kind === "sink" || kind === "engrave") continue;
          const cut = moves.filter(({ role }) => role === "cut").map(({ to }) => to[2]);
          const levels = [...new Set([0, ...cut])].sort((a, b) => b - a);
          const first = tool === "compressing" ? 9 : d;
          levels.slice(1).forEach((z, i) => {
            expect(levels[i]! - z).toBeLessThanOrEqual((i === 0 ? Math.max(first, d) : d) + 1e-6);
          });
        }
      }
    });
  });

  it("works in order: what leaves the sheet firm first, openings before outlines, and each part's outline last", () => {
    const firm = ["pin", "drill", "sink"];
    const rank = ({ kind }: Operation) =>
      kind === "outside" ? 5 : kind === "inside" ? 4 : firm.includes(kind) ? firm.indexOf(kind) : 3;
    check((_, setup) => {
      const ranks = operationsOf(setup).map(rank);
      expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
    });
  });

  it("starts and ends every operation at safe height, and moves over the sheet below it only at feed", () => {
    check((_, setup) => {
      for (const { moves } of operationsOf(setup)) {
        expect([moves[0]!.to[2], moves.at(-1)!.to[2]]).toEqual([setup.safe, setup.safe]);
        moves.forEach(({ to, feed }, i) => {
          const from = moves[i - 1]?.to;
          if (feed !== "rapid" || from === undefined) return;
          const over = from[0] !== to[0] || from[1] !== to[1];
          if (over) expect(Math.min(from[2], to[2])).toBe(setup.safe);
          if (to[2] < from[2]) expect(to[2]).toBeGreaterThan(0);
        });
      }
    });
  });

  it("cuts every feature that the machine is given, or leaves it out with a finding", () => {
    let cut = 0;
    check((set, setup, { findings }) => {
      const done = new Set(operationsOf(setup).map(({ feature }) => feature));
      for (const { features } of set.parts) {
        const outline = features[0]!;
        for (const feature of features) {
          const along = feature.cut.kind === "notch" && done.has(outline.id);
          if (done.has(feature.id) || along) cut++;
          else expect(setup.withheld).toContain(feature.id);
        }
      }
      for (const feature of setup.withheld) {
        expect(findings.some(({ on }) => on.includes(feature))).toBe(true);
      }
    });
    expect(cut).toBeGreaterThan(400);
  });

  it("is the same every time", () => {
    fc.assert(
      fc.property(sets, (set) => {
        expect(JSON.stringify(made(set).program)).toBe(JSON.stringify(made(set).program));
      }),
      { ...runs, numRuns: 10 },
    );
  });
});

/** The edge of the part beside a place of the path; at a sharp corner its radius is 0. */
function edgeBeside(loops: readonly Profile[], p: Point): { readonly radius: number; readonly by: string } {
  const [nearest] = loops
    .map((loop) => ({ loop, at: nearestOn(loop, p)! }))
    .sort((one, other) => one.at.distance - other.at.distance);
  const { loop, at } = nearest!;
  const a = loop[at.edge]!;
  const b = loop[(at.edge + 1) % loop.length]!;
  const atCorner = [a, b].some((end) => Math.hypot(end.x - at.at.x, end.y - at.at.y) < 1e-6);
  if (!isFlat(a, b)) return { radius: arcOf(a, b).radius, by: at.by };
  return { radius: atCorner ? 0 : Number.POSITIVE_INFINITY, by: at.by };
}
