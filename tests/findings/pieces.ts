import { identity } from "../../src/geometry/frame.js";
import type { Point } from "../../src/geometry/profile.js";
import { polygon, rectangle } from "../../src/geometry/shapes.js";
import { boardId, pieceId } from "../../src/model/ids.js";
import type { PieceKind } from "../../src/model/piece.js";
import { makePart } from "../../src/pieces/common/part.js";
import { planJob } from "../../src/plan/plan.js";
import { type Toy, toy, toyJob, toyShop } from "../plan/toyKind.js";
import { chamberPairs } from "./chambers.js";
import { box, boxAlone, carpet, cover, coverAlone, plate, ring, ten, without } from "./changes.js";
import { formPairs } from "./forms.js";
import { portPairs } from "./ports.js";
import { battenPairs, hatchPairs, removablePairs } from "./removables.js";
import { pairUpTo, type Table } from "./road.js";

const plan = pairUpTo("plan");
const sides = ["top", "bottom", "front", "rear", "left", "right"];
const standing = box("stands", { x: 200, y: 30 });
const bareBox = [...boxAlone, box("driver", undefined), standing];
const slit = (long: number) => coverAlone({ openings: { slit: { at: [30, 15], size: `4 x ${long}` } } });
const bevelled = (round: number) =>
  coverAlone({
    outline: [
      { at: [0, 0], side: "near" },
      { at: [90, 0], side: "right" },
      { at: [90, 90], side: "far", round },
      { at: [0, 90], side: "left" },
    ],
    bevels: { far: { angle: "30deg" } },
  });
const peg = (deep: number) => coverAlone({ holes: { peg: { at: [30, 15], across: 5, deep } } });
const plain = ["notch", "open over", "bolted"].map((key) => plate(key, undefined));
const gaps = (gap: number) => [...plain, plate("sides", { left: { gap }, right: { gap } })];
const lying = (on: string) => ({ kind: "plate", board: "plate", outline: "space", height: `top of ${on}` });
const over = [...without("ring"), plate("open over", { driver: "box" })];
const thick = (loose: number, clamped: number) => [carpet("thick", loose), carpet("clamped", clamped)];
const shortInsert = plate("bolted.insert", "M6 x 12");

const nearEdge = [plate("bolted.set in", 10)];

/** A board with a bevel and a cut-out whose far side runs between these two; the other way round it crosses itself. */
function cutOut(from: number, to: number, bevel = 0) {
  const places: readonly Point[] = [
    { x: 10, y: 10 },
    { x: 30, y: 10 },
    { x: from, y: 30 },
    { x: to, y: 30 },
  ];
  const at = [{ file: "job.yaml", path: ["pieces", "cover"] }];
  const shape = (outer: ReturnType<typeof polygon>) => ({ region: { outer, holes: [] }, corner: "bit" }) as const;
  return makePart({
    piece: pieceId("cover"),
    role: "panel",
    from: at,
    board: { id: boardId("plate"), thickness: 12.1 },
    features: [
      { name: "outline", from: at, cut: { kind: "outline", ...shape(rectangle(0, 0, 60, 40, "outline")) } },
      { name: "opening", from: at, cut: { kind: "opening", ...shape(polygon(places, "opening")) } },
    ],
    edges: { outline: { bevel, finish: { kind: "bare" }, flush: 0 } },
    at: identity,
  }).findings;
}

/**
 * Two pieces with free sizes: the upper is the smaller the larger the lower is, by `gain`; the lower grows with what the
 * upper asks of it.
 */
function seesaw(gain: number) {
  const kind: PieceKind<Toy> = {
    ...toy,
    ask: ({ leans = [] }, size, { id }) => {
      const ask = { kind: "lift driver", by: id, from: [], driver: "driver", seated: "", lift: 1 } as const;
      const times = Array.from({ length: Math.round(size / 100) });
      return { value: leans.flatMap((name) => times.map(() => ({ ...ask, of: pieceId(name) }))), findings: [] };
    },
    miss: ({ leans }, size, { asks, offers }) => {
      const lower = offers.get(pieceId("lower"))?.planes["top"]?.origin[2] ?? 0;
      return leans === undefined ? 100 * asks.length - size : 600 + gain * (500 - lower) - size;
    },
  };
  const job = toyJob({ lower: { wantedL: 1 }, upper: { wantedL: 1, leans: ["lower"] } });
  return planJob(job, toyShop, [kind]).findings;
}

/** What the kinds of pieces and the planning of them can find. */
export const piecesTable: Table = {
  ...Object.fromEntries(
    Object.entries({
      ...formPairs,
      ...chamberPairs,
      ...portPairs,
      ...removablePairs,
      ...hatchPairs,
      ...battenPairs,
    }).map(([code, { at, raises, spares }]) => [code, plan(at, raises, spares)]),
  ),
  "one-free-size": plan("pieces.box.outside.depth", [box("outside.depth", "free")], []),
  "free-needs-net": plan(
    "pieces.box.outside.width",
    [box("net", undefined)],
    [box("net", undefined), box("outside.width", 530)],
  ),
  "laps-name-each-face-once": plan(
    "pieces.box.laps",
    [box("laps", ["top", ...sides.slice(1, 5), "left"])],
    [box("laps", sides)],
  ),
  "line-up-needs-driver": plan("pieces.box.stands.line up", [...boxAlone, box("driver", undefined)], boxAlone),
  // two boards of 18.2 and 30 of room: 66.4
  "box-too-small": plan(
    "pieces.box.outside.height",
    [...bareBox, box("outside.height", 66.3)],
    [...bareBox, box("outside.height", 66.4)],
  ),
  "box-not-held": plan("pieces.box", [box("held by", undefined)], [box("held by", { straps: 1, to: "floor rings" })]),
  // a bolt 10 from the edge of a hole's middle: no insert of the built-in shop is so wide
  "thread-off-face": plan("pieces.plate.bolted", nearEdge, nearEdge, {
    raises: "inserts: {M6 x 15: {hole: 20.1}}",
    spares: "inserts: {M6 x 15: {hole: 20}}",
  }),
  // 18.2 of board and 25 of bite: 43.2
  "no-screw-length": plan(
    "pieces.box.screws.with",
    [box("screws", { with: "4.0 x 43.1" })],
    [box("screws", { with: "4.0 x 43.2" })],
  ),
  // the terminal's hole is 78 wide: its middle at least 18.2 + 39 from the end of the front
  "cut-out-off-face": plan(
    "pieces.box.terminal",
    [box("terminal.corners", "round"), box("terminal.at", [57.1, 75])],
    [box("terminal.corners", "round"), box("terminal.at", [57.2, 75])],
  ),
  // the starter's driver has a cut-out of 233: it needs 233 between two boards of 18.2
  "cut-out-wider-than-face": plan(
    "pieces.box.driver",
    [...boxAlone, box("net", undefined), box("outside", { width: 400, depth: 269.3, height: 150 })],
    [...boxAlone, box("net", undefined), box("outside", { width: 400, depth: 269.5, height: 150 })],
  ),
  // the space is 1040 wide, and the carpet 3.5 thick on both sides
  "plate-vanishes": plan("pieces.plate", gaps(516.5), gaps(516.4)),
  "no-level-top": plan(
    "pieces.plate.height",
    [cover({}), plate("height", "top of cover")],
    [cover({ lies: { x: 300, y: 500, z: 0 } }), plate("height", "top of cover")],
  ),
  "plate-opens-over-nothing": plan("pieces.plate.open over", [...over, box("driver", undefined), standing], over),
  "too-few-bolt-places": plan(
    "pieces.plate.bolted.count",
    [plate("bolted.set in", 111.8)],
    [plate("bolted.set in", 111.7)],
  ),
  // with carpet under the head and clamped under the plate it must be no longer than 12.1 + 2 x 0.5 + 13 - 1 = 25.1
  "no-bolt-length": plan(
    "pieces.plate.bolted.with",
    [shortInsert, ...thick(11.5, 0.5)],
    [shortInsert, ...thick(11.4, 0.5)],
  ),
  "no-insert-for-thread": plan(
    "pieces.plate.bolted.with",
    [plate("bolted.with", "M10 button")],
    [plate("bolted.with", "M8 button")],
  ),
  "groove-broken": plan("pieces.plate.covered", [plate("covered.wrap", 54.7)], [plate("covered.wrap", 54.8)]),
  // a third of 12.1 is 4.03
  "groove-limited": plan("pieces.plate.covered", thick(6, 4.1), thick(6, 4)),
  "ring-without-driver": plan(
    "pieces.ring.around.driver",
    [...without("plate"), box("driver", undefined), standing],
    without("plate"),
  ),
  // a recess of 262 + 2 x 0.5, and 3 on either side
  "ring-too-narrow": plan("pieces.ring.outside", [ring("outside", 268.9)], [ring("outside", 269)]),
  "recess-too-deep": plan(
    "pieces.ring.recess",
    [ring("recess", { across: 263, deep: 15.3 })],
    [ring("recess", { across: 263, deep: 15.2 })],
  ),
  "frame-unknown": plan("pieces.ring.recess", [ten("flange", undefined)], [ten("flange", 0)]),
  "bevel-not-sawn": plan("pieces.cover.bevels.far", bevelled(30), bevelled(0)),
  "hole-too-deep": plan("pieces.cover.holes.peg.deep", peg(12.1), peg(12)),
  "unknown-name": plan("pieces.plate.bolted.to", [plate("bolted.to", "bx")], [plate("bolted.to", "box")]),
  "pieces-in-a-circle": plan(
    "pieces.plate.height",
    [cover({}), [["pieces", "plate"], lying("lid")], [["pieces", "lid"], lying("plate")]],
    [
      [["pieces", "lid"], lying("box")],
      [["pieces", "plate"], lying("lid")],
    ],
  ),
  "leans-on-withheld": plan(
    "pieces.ring.around.driver",
    [box("net", undefined)],
    [box("net", undefined), box("outside.width", 530)],
  ),
  "free-size-binds": plan("pieces.box.outside.width", [box("net", "42.16 L")], [box("net", "42.15 L")]),
  "largest-size": plan("pieces.box.outside.width", [box("outside.width", "largest")], []),
  // the battery stands there, 12 kept clear of it
  "largest-has-no-room": plan(
    "pieces.box.outside.width",
    [...boxAlone, box("outside.width", "largest"), box("stands", { x: 740, y: 420 })],
    [...boxAlone, box("outside.width", "largest"), box("stands", { x: 720, y: 420 })],
  ),
  "nothing-left": plan("pieces.cover", slit(30), slit(29.9)),
  "shape-in-doubt": {
    why: "no job draws a cut-out that crosses itself; it tells of a fault of the program",
    raises: () => cutOut(19.9, 20.1),
    spares: () => cutOut(20.1, 19.9),
  },
  "outline-in-doubt": {
    why: "the outlines that jobs draw are simple; it tells of a fault of the program",
    raises: () => cutOut(20.1, 19.9, Number.NaN),
    spares: () => cutOut(20.1, 19.9, 0.3),
  },
  "free-size-unsettled": {
    why: "no kind of piece with a free size leans on another that has one",
    raises: () => seesaw(1),
    spares: () => seesaw(0.5),
  },
};
