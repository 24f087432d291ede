import { difference } from "../geometry/boolean.js";
import { pointInRegion } from "../geometry/inside.js";
import { extentsOf } from "../geometry/measure.js";
import type { Profile, Region } from "../geometry/profile.js";
import { rectangle } from "../geometry/shapes.js";
import { moved, moveRegion, turned, turnRegion } from "../geometry/transform.js";
import { sameSize } from "./saw/handling.js";
import type { StockRow } from "./stock.js";
import { type UsableRectangle, usableRectangle } from "./usableRectangle.js";

/**
 * A row of the stock as a saw has it: an odd offcut as the largest rectangle on its true edge, a rectangle with knots or
 * holes as the largest on one of its sides; clamps and pins of the machine are nothing to a saw. With grain the side must
 * run along it. What is plain stays as it is. Gives why not, where there is none.
 *
 * `step`: of the saw's fence: where a side of the rectangle is cut, it lies on one, so that the list can tell it. mm.
 */
export function sawnRow(row: StockRow, grain: boolean, step: number): StockRow | string {
  const { outline, zones = [], "true edge": edge, ...plain } = row;
  const avoid = zones.filter(([first]) => first?.by === "knot" || first?.by === "hole");
  if (outline === undefined && avoid.length === 0) return plain;
  if (outline !== undefined && edge === undefined) return "none of its sides is named its true edge";
  const board = { outer: outline ?? rectangle(0, 0, row.length, row.width, sides), holes: avoid };
  const named = edge === undefined ? sides : [edge];
  if (named.every((side) => !reachesFence(board.outer, side)))
    return "its true edge lies further in than other sides, where no fence reaches it";
  const found = named.flatMap((side) => usableOn(board, side, grain, step));
  const [first, ...others] = found;
  if (first === undefined)
    return grain ? "no rectangle along the grain lies on its true edge" : "no rectangle is left of it";
  const best = others.reduce((a, b) => (areaOf(b) > areaOf(a) ? b : a), first);
  const { length, width, side, x, y, turn } = best;
  const holes = zones.filter(([first]) => first?.by === "hole");
  const knots = zones.filter(([first]) => first?.by === "knot");
  const whole = asItLies(piecedOut(board.outer, holes, best), best);
  const lying = knots.map((knot) => asItLies({ outer: knot, holes: [] }, best).outer);
  const within = { side, x, y, turn, whole, ...(lying.length > 0 && { knots: lying }) };
  return { ...plain, length, width, within };
}

/** What there is of a board, knots and all, with a rectangle of it. */
function piecedOut(outer: Profile, holes: readonly Profile[], { length, width, ...at }: UsableRectangle): Region {
  const whole = { outer, holes: [] };
  if (holes.length === 0) return whole;
  const [middle] = moved(turned([{ x: length / 2, y: width / 2, bulge: 0, by: "" }], at.turn), at.x, at.y);
  const pieces = difference(
    whole,
    holes.map((hole) => ({ outer: hole, holes: [] })),
  );
  return pieces.find((piece) => pointInRegion(piece, middle!)) ?? whole;
}

const sides = ["bottom", "right", "top", "left"] as const;

type Sided = UsableRectangle & { readonly side: string };

function usableOn({ outer, holes }: Region, side: string, grain: boolean, step: number): readonly Sided[] {
  const found = usableRectangle(outer, side, holes);
  if (found === undefined || (grain && Math.abs(Math.sin(found.turn)) > alongGrain)) return [];
  const settable = onSteps({ outer, holes }, side, found, step);
  return settable.length > 0 && settable.width > 0 ? [{ ...settable, side }] : [];
}

/** A side that runs less than half a degree off the grain runs along it (common practice, no source). */
const alongGrain = Math.sin((0.5 * Math.PI) / 180);

const areaOf = ({ length, width }: UsableRectangle): number => length * width;

/** A board as it lies with a rectangle of it at 0, 0. */
function asItLies(board: Region, { x, y, turn }: UsableRectangle): Region {
  return turnRegion(moveRegion(board, -x, -y), -turn);
}

/** Where on a board a side lies, seen along it: nothing of the board stands out beyond it. */
function reachesFence(outer: Profile, side: string): boolean {
  const i = outer.findIndex(({ by, bulge }) => by === side && bulge === 0);
  if (i < 0) return true;
  const [a, b] = [outer[i]!, outer[(i + 1) % outer.length]!];
  const turn = Math.atan2(b.y - a.y, b.x - a.x);
  const lying = asItLies({ outer, holes: [] }, { x: a.x, y: a.y, turn, length: 0, width: 0 });
  return extentsOf(lying).min.y > -sameSize;
}

/** A rectangle a little smaller, so that what is cut of it can be set: from the left end of its side, and across it. */
function onSteps(board: Region, side: string, found: UsableRectangle, step: number): UsableRectangle {
  const lying = asItLies(board, found);
  const { min, max } = extentsOf(lying);
  const start = lying.outer.find(({ by, bulge }) => by === side && bulge === 0)!.x;
  const further = min.x < -sameSize ? Math.ceil(-start / step - 1e-6) * step + start : 0;
  const down = (size: number, isCut: boolean) => (isCut ? Math.floor(size / step + 1e-6) * step : size);
  return {
    turn: found.turn,
    x: found.x + further * Math.cos(found.turn),
    y: found.y + further * Math.sin(found.turn),
    length: down(found.length - further, max.x > found.length + sameSize),
    width: down(found.width, max.y > found.width + sameSize),
  };
}
