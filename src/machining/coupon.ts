import type { Region } from "../geometry/profile.js";
import { circle, rectangle } from "../geometry/shapes.js";
import { list, type Outcome, raise, text } from "../input/finding.js";
import { formatNumber } from "../input/number.js";
import { boardId, partId, pieceId } from "../model/ids.js";
import type { Move, Operation, Program } from "../model/program.js";
import type { Bit, Cnc, Shop } from "../model/shop.js";
import { rowOf } from "../shop/lookups.js";
import { rules } from "../shop/rules.js";
import type { Bench, Tool } from "./bench.js";
import { clearArea } from "./clearing.js";
import { noCoupon } from "./findings.js";
import { alongPath } from "./lines.js";
import { directed, roundLoop } from "./round.js";
import { speedsOf } from "./speeds.js";
import { secondsOf } from "./time.js";

/** The test piece, mm: a scrap this large and thick at least; how long the slot is, how wide the disc and the hole, how
 *  deep all three. Nothing goes through, so nothing comes loose. Common practice, no source. */
const piece = {
  length: 240,
  width: 100,
  thickness: 9,
  slot: 60,
  disc: 50,
  hole: 50,
  depth: 5,
  material: "MDF",
} as const;

/** A test piece for one bit: its program, and how its true diameter is read back from it. */
export type Coupon = {
  readonly program: Program;
  /** What the program takes the bit for: the diameter on its label, mm. */
  readonly d: number;
  /** The sizes the disc and the hole have where the bit is true, mm. */
  readonly disc: number;
  readonly hole: number;
  /** What to do, in order. */
  readonly words: readonly string[];
};

/** What a caliper says of the test piece, mm: the slot's width, the disc's and the hole's diameter. */
export type Reading = { readonly slot?: number; readonly disc?: number; readonly hole?: number };

/**
 * The diameter that a bit cuts, mm: the slot is as wide as the bit; the disc is smaller, and the hole larger, by what the
 * bit is wider than its label. The mean of what was measured; undefined where nothing was.
 */
export function measuredDiameter(coupon: Pick<Coupon, "d" | "disc" | "hole">, reading: Reading): number | undefined {
  const found = [
    reading.slot,
    reading.disc === undefined ? undefined : coupon.d + (coupon.disc - reading.disc),
    reading.hole === undefined ? undefined : coupon.d + (reading.hole - coupon.hole),
  ].flatMap((d) => d ?? []);
  return found.length === 0 ? undefined : found.reduce((sum, d) => sum + d, 0) / found.length;
}

/**
 * The program of a test piece for a bit of the shop, by its name: a slot, a disc and a hole in a scrap of MDF, cut as if
 * the bit had the diameter on its label. For `shop --coupon BIT`: write `value.program` as any other program and print
 * `value.words`.
 *
 * Returns: no value, and a finding, for a name or a kind of bit that makes none, or without a machine.
 */
export function couponOf(shop: Shop, name: string): Outcome<Coupon> {
  const bit = rowOf(shop.bits, name);
  const { cnc } = shop;
  const speeds =
    cnc && bit && isForCoupon(bit) ? speedsOf(cnc, { ...bit, measured: bit.d }, piece.material) : undefined;
  if (cnc === undefined || bit === undefined || speeds === undefined || "limit" in speeds) {
    const allowed = Object.entries(shop.bits).flatMap(([known, each]) => (isForCoupon(each) ? [known] : []));
    const facts = { bit: text(name), allowed: list(cnc === undefined ? ["a shop file with a machine"] : allowed) };
    return { value: undefined, findings: [raise(noCoupon, { facts })] };
  }
  const tool: Tool = { name, bit, d: bit.d, radius: bit.d / 2, speeds };
  const words = wordsFor(name, bit.d);
  const { disc, hole } = piece;
  return { value: { program: programOf(cnc, tool), d: bit.d, disc, hole, words }, findings: [] };
}

/** It cuts walls and floors, and goes into the hole. */
const isForCoupon = ({ kind, d }: Bit): boolean =>
  (kind === "straight" || kind === "compression") && d < piece.hole / 2;

function programOf(cnc: Cnc, tool: Tool): Program {
  const thickness = piece.thickness;
  const bench: Bench = {
    cnc,
    material: piece.material,
    thickness,
    through: -thickness - rules.intoSpoilboard.value,
    safe: cnc["safe height"],
    light: cnc["chip share"] < 1,
  };
  const depth = Math.min(piece.depth, tool.bit["cutting length"] ?? piece.depth);
  const blank: Region = { outer: rectangle(0, 0, piece.length, piece.width, "scrap"), holes: [] };
  const operations = [
    operation("groove", slotMoves(bench, tool, depth), depth),
    operation("pocket", holeMoves(bench, tool, depth), depth),
    operation("groove", discMoves(bench, tool, depth), depth),
  ];
  const { rpm, feed, plunge } = tool.speeds;
  const number = rowOf(cnc.tools, tool.name) ?? 1;
  const runs = [{ tool: tool.name, number, d: tool.d, rpm, feed, plunge, operations }];
  const board = boardId("scrap");
  const part = { part: partId(pieceId("coupon"), "coupon"), up: "face" as const, profile: blank, blank };
  const setup = {
    name: "coupon",
    sheet: "coupon",
    board,
    turnedOver: false,
    length: piece.length,
    width: piece.width,
    thickness,
    safe: bench.safe,
    parts: [part],
    pins: [],
    runs,
    withheld: [],
    seconds: secondsOf(runs, cnc),
  };
  return { setups: [setup] };
}

const operation = (kind: Operation["kind"], moves: readonly Move[], depth: number): Operation => ({
  kind,
  moves,
  floor: -depth,
});

const middle = piece.width / 2;

function slotMoves(bench: Bench, tool: Tool, depth: number): readonly Move[] {
  const ends = [middle - piece.slot / 2, middle + piece.slot / 2].map((y) => ({ x: 25, y, bulge: 0, by: "slot" }));
  return alongPath(bench, tool, ends, depth);
}

function holeMoves(bench: Bench, tool: Tool, depth: number): readonly Move[] {
  const outer = circle({ x: 85, y: middle }, piece.hole / 2 - tool.radius, "hole");
  return clearArea(bench, tool, { outer, holes: [] }, -depth);
}

function discMoves(bench: Bench, tool: Tool, depth: number): readonly Move[] {
  const loop = circle({ x: 175, y: middle }, piece.disc / 2 + tool.radius, "disc");
  return roundLoop(bench, tool, directed(loop, "inside", bench.cnc.direction), -depth, []);
}

function wordsFor(name: string, d: number): readonly string[] {
  const label = formatNumber(d, 3);
  return [
    `Clamp a scrap of MDF, ${piece.length} x ${piece.width} or larger and ${piece.thickness} thick or more, and run the program with the ${name}`,
    "Brush out the dust; measure with a caliper across the slot, the disc and the hole, each twice, square to each other",
    "By the slot: the bit cuts as wide as the slot is",
    `By the disc: ${label} + (${piece.disc} - the disc)`,
    `By the hole: ${label} + (the hole - ${piece.hole})`,
    `Write the mean of the three into the shop file, as measured of ${name}; where they differ by more than 0.05, look for play in the machine first`,
  ];
}
