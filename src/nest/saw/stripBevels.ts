import { extentsOf } from "../../geometry/measure.js";
import type { NestedSheet, Placed, Process } from "../../model/build.js";
import type { PartId } from "../../model/ids.js";
import type { Part } from "../../model/part.js";
import type { Board, PieceBevel, PieceSide, SawnPiece } from "../../model/rip.js";
import { toSheet } from "../placed.js";
import { type BevelledSide, bevelAlong, bevelledSides, blankAlong, tiltOf } from "./bevels.js";
import { isWorthKeeping } from "./cutUp.js";
import { isLargeEnough, sameSize } from "./handling.js";
import type { Sawing } from "./sawing.js";
import { leavesOf } from "./sawnSheets.js";

/** A bevelled side of a part where it lies on its sheet; `down`: the smaller side of the board, as it lies there. */
export type LaidBevel = BevelledSide & Pick<PieceBevel, "side" | "down">;

/** What is bevelled of each part, as it lies; nothing of a part that is not sawn to its size on the sheet. */
export type LaidBevels = ReadonlyMap<PartId, readonly LaidBevel[]>;

/** What is bevelled of the parts that are sawn to their size. */
export function laidOn(
  sheets: readonly NestedSheet[],
  parts: readonly Part[],
  process: Pick<Process, "parts">,
): LaidBevels {
  const byId = new Map(parts.map((part) => [part.id, part]));
  const sawn = new Set(process.parts.filter(({ method }) => method === "saw").map(({ part }) => part));
  const placed = sheets.filter((sheet) => sheet.sawn).flatMap((sheet) => sheet.placed);
  return new Map(
    placed.flatMap((each) => {
      const part = sawn.has(each.part) ? byId.get(each.part) : undefined;
      return part ? [[each.part, laidBevels(part, each)]] : [];
    }),
  );
}

/** The bevels of a part as it lies on its sheet; none where two of its sides have one name, and cannot be told apart. */
function laidBevels(part: Part, placed: Placed): readonly LaidBevel[] {
  const { outer } = part.profile;
  const box = extentsOf(toSheet(part, placed).region(part.blank));
  const middle = { x: (box.min.x + box.max.x) / 2, y: (box.min.y + box.max.y) / 2 };
  return bevelledSides(part)
    .filter(({ edge }) => outer.filter(({ by }) => by === edge).length === 1)
    .map((bevelled): LaidBevel => {
      const at = toSheet(part, placed).point;
      const [a, b] = [at(outer[bevelled.i]!), at(outer[(bevelled.i + 1) % 4]!)];
      const level = Math.abs(b.x - a.x) > Math.abs(b.y - a.y);
      const side = level ? (a.y < middle.y ? "lower" : "upper") : a.x < middle.x ? "left" : "right";
      // face up: with the bevel positive the back is smaller, which lies under
      return { ...bevelled, side, down: bevelled.bevel > 0 === placed.backUp ? "upper" : "under" };
    });
}

/**
 * A sawn sheet with its bevels where they are cut best: along a strip, before it is crossed into parts, where all parts of
 * it are as wide as the strip and have that bevel. So a part that is small is not fed alone; several parts are bevelled at
 * one go, and equal one another. What is worth keeping of a strip is not spoilt for parts that are large enough alone.
 */
export function withStripBevels(sheet: SawnPiece, laid: LaidBevels, sawing: Sawing): SawnPiece {
  return bevelled(sheet, []);

  /** `done`: the sides along which what it lies in has been bevelled. */
  function bevelled(piece: SawnPiece, done: readonly PieceSide[]): SawnPiece {
    const { cut } = piece;
    if (!cut) return piece;
    const sides = sidesAlong(cut.along).filter((side) => !done.includes(side));
    const bevels = sides.flatMap((side) => bevelShared(piece, side, laid, sawing) ?? []);
    const all = [...done, ...bevels.map(({ side }) => side)];
    const below = (each: SawnPiece) => bevelled(each, each.cut?.along === cut.along ? all : []);
    const parted = { ...cut, ...(cut.off && { off: below(cut.off) }), ...(cut.rest && { rest: below(cut.rest) }) };
    return { ...piece, cut: parted, ...(bevels.length > 0 && { bevels }) };
  }
}

/** The long sides of a strip that is crossed by cuts that run so. */
export const sidesAlong = (along: boolean): readonly [PieceSide, PieceSide] =>
  along ? ["left", "right"] : ["lower", "upper"];

/** The bevel along a side of a strip, if it is that of all parts that are crossed from it, and better cut along it. */
function bevelShared(strip: SawnPiece, side: PieceSide, laid: LaidBevels, sawing: Sawing): PieceBevel | undefined {
  const lengthwise = side === "lower" || side === "upper";
  const pieces = crossedFrom(strip);
  const parts = pieces.filter(({ part }) => part !== undefined);
  const edges = parts.flatMap(({ part }) => laid.get(part!)?.filter((each) => each.side === side) ?? []);
  const [first, ...others] = edges;
  if (first === undefined || edges.length < parts.length) return undefined;
  const isLike = (each: LaidBevel) =>
    tiltOfSide(each) === tiltOfSide(first) &&
    each.down === first.down &&
    Math.abs(blankAlong(each).across - blankAlong(first).across) <= sameSize;
  const [run, width] = lengthwise ? [strip.length, strip.width] : [strip.width, strip.length];
  const { across } = blankAlong(first);
  // what is a hair too wide, since a fence has steps, is as wide as it should be when its bevel is cut
  if (!others.every(isLike) || width - across > sawing.step) return undefined;
  if (width >= sawing.hold.width && across < sawing.hold.width) return undefined;
  const { bevel, down, part } = first;
  const how = bevelAlong(run, across, part.thickness, Math.abs(bevel), sawing);
  const beside = pieces.filter(({ cut }) => cut);
  if (how.trouble === "reach" || !beside.every((each) => hasWasteAlong(each, side, how.less + width - across)))
    return undefined;
  const alone = edges.some((each) => isSmall(each, sawing));
  const spoilt = pieces.flatMap(leavesOf).some((leaf) => leaf.part === undefined && isWorthKeeping(leaf, sawing));
  if (!alone && (spoilt || parts.length === 1)) return undefined;
  return { ...how, side, down, edges: edges.map((each) => ({ part: each.part.id, edge: each.edge })) };
}

/**
 * What is left over of a sheet with its bevels, as boards that are square all round: a bevelled edge counts for nothing.
 * `before`: what it has of bevels already.
 */
export function squareRests(piece: SawnPiece, before: readonly PieceBevel[] = []): readonly Board[] {
  const { cut, part, goesOn, bevels = [] } = piece;
  const all = [...before, ...bevels];
  if (cut) {
    const [offLoses, restLoses]: readonly [PieceSide, PieceSide] = cut.along ? ["upper", "lower"] : ["right", "left"];
    const below = (each: SawnPiece | undefined, lost: PieceSide) =>
      each
        ? squareRests(
            each,
            all.filter(({ side }) => side !== lost),
          )
        : [];
    return [...below(cut.off, offLoses), ...below(cut.rest, restLoses)];
  }
  if (part !== undefined || goesOn !== undefined) return [];
  const [left, right, lower, upper] = (["left", "right", "lower", "upper"] as const).map((side) =>
    all.reduce((most, each) => (each.side === side ? Math.max(most, each.less) : most), 0),
  );
  const [length, width] = [piece.length - left! - right!, piece.width - lower! - upper!];
  return length > sameSize && width > sameSize ? [{ x: piece.x + left!, y: piece.y + lower!, length, width }] : [];
}

/** What a strip is crossed into, by the cuts that follow one another the same way. */
function crossedFrom(strip: SawnPiece): readonly SawnPiece[] {
  const { cut } = strip;
  if (!cut) return [];
  return [cut.off, cut.rest].flatMap((each): readonly SawnPiece[] => {
    if (!each) return [];
    return each.cut?.along === cut.along ? crossedFrom(each) : [each];
  });
}

/** Whether what is cut from a piece along one of its sides is waste, and wide enough that a bevel takes nothing else. */
function hasWasteAlong({ part, cut, length, width }: SawnPiece, side: PieceSide, less: number): boolean {
  // from the lower and the left side sizes are measured
  if (side === "lower" || side === "left") return false;
  if (!cut) return part === undefined && (side === "upper" ? width : length) > less;
  if (cut.along === (side === "upper")) return cut.rest !== undefined && hasWasteAlong(cut.rest, side, less);
  return [cut.off, cut.rest].every((each) => !each || hasWasteAlong(each, side, less));
}

const tiltOfSide = ({ bevel }: LaidBevel): number => tiltOf({ tilt: Math.abs(bevel) });

/** Whether a part that is cut free is too small to be held for one of its bevels. */
export function isSmall(side: BevelledSide, { hold }: Sawing): boolean {
  const { run, across } = blankAlong(side);
  return !isLargeEnough({ length: run, width: across }, hold);
}
