import type { NestedSheet, Placed, Process } from "../../model/build.js";
import type { PartId } from "../../model/ids.js";
import type { Part } from "../../model/part.js";
import type { Board, PieceBevel, SawnPiece } from "../../model/rip.js";
import { tiltOf } from "./bevels.js";
import { cutAt } from "./cutUp.js";
import { sameSize, wayFor } from "./handling.js";
import type { Sawing } from "./sawing.js";
import { leavesOf } from "./sawnSheets.js";
import { isSmall, type LaidBevel, type LaidBevels, laidOn, sidesAlong, withStripBevels } from "./stripBevels.js";

/**
 * Sheets on which bevels lie so that they can be cut along a strip: parts lie face up, and are turned by half a turn, which
 * changes neither their blank nor their grain, until like bevels of a strip lie along one side of it; and where other parts
 * of the strip do not have that bevel, these are crossed off first, so that what is left of it is still a strip when it is
 * bevelled. A strip whose small parts gain nothing stays as it was packed.
 */
export function bevelsTogether(
  sheets: readonly NestedSheet[],
  parts: readonly Part[],
  process: Pick<Process, "parts">,
  sawing: Sawing,
): readonly NestedSheet[] {
  const turned = sheets.map((sheet) => {
    if (!sheet.sawn) return sheet;
    const up = faceUp(sheet, laidOn([sheet], parts, process));
    return alike(up, laidOn([up], parts, process));
  });
  const laid = laidOn(turned, parts, process);
  return turned.map((sheet) => (sheet.sawn ? inOrder(sheet, sheet.sawn, laid, sawing) : sheet));
}

/** What is bevelled with its face up: to a saw a rectangle is the same either way, and like bevels then lean alike. */
function faceUp(sheet: NestedSheet, laid: LaidBevels): NestedSheet {
  const isBevelled = (part: PartId) => (laid.get(part)?.length ?? 0) > 0;
  return {
    ...sheet,
    placed: sheet.placed.map((each) => (each.backUp && isBevelled(each.part) ? { ...each, backUp: false } : each)),
  };
}

/** Of each part with bevels along its strip the steeper one on the upper or right side, as far as a half turn does that. */
function alike(sheet: NestedSheet, laid: LaidBevels): NestedSheet {
  const strips = stripOf(sheet.sawn!);
  const placed = sheet.placed.map((each): Placed => {
    const along = strips.get(each.part);
    const bevels = laid.get(each.part);
    if (along === undefined || bevels === undefined) return each;
    const [near, far] = sidesAlong(along).map((side) => rankOf(bevels.find((bevel) => bevel.side === side)));
    return near! > far! ? { ...each, turn: each.turn + Math.PI } : each;
  });
  return { ...sheet, placed };
}

const rankOf = (bevel: LaidBevel | undefined): number =>
  bevel === undefined ? 0 : 2 * tiltOf({ tilt: Math.abs(bevel.bevel) }) + (bevel.down === "under" ? 1 : 0);

/** Which way runs the cut by which each part comes off its strip. */
function stripOf({ cut }: SawnPiece): ReadonlyMap<PartId, boolean> {
  if (!cut) return new Map();
  return new Map(
    [cut.off, cut.rest].flatMap((each) => {
      if (!each) return [];
      return each.part === undefined ? [...stripOf(each)] : [[each.part, cut.along] as const];
    }),
  );
}

/** A sheet with each of its strips in the best order. */
function inOrder(sheet: NestedSheet, sawn: SawnPiece, laid: LaidBevels, sawing: Sawing): NestedSheet {
  const ordered = ordering(sawn, undefined);
  if (ordered === sawn) return sheet;
  const before = placesOf(sawn);
  const after = placesOf(ordered);
  const placed = sheet.placed.map((each): Placed => {
    const [from, to] = [before.get(each.part)!, after.get(each.part)!];
    return { ...each, x: each.x + to.x - from.x, y: each.y + to.y - from.y };
  });
  return { ...sheet, placed, sawn: ordered };

  /** `along`: how the cut runs that the piece comes from. */
  function ordering(piece: SawnPiece, along: boolean | undefined): SawnPiece {
    const strip = along === piece.cut?.along ? piece : bestOrder(piece, laid, sawing);
    const { cut } = strip;
    if (!cut) return strip;
    const off = cut.off && ordering(cut.off, cut.along);
    const rest = cut.rest && ordering(cut.rest, cut.along);
    if (off === cut.off && rest === cut.rest) return strip;
    return { ...strip, cut: { ...cut, ...(off && { off }), ...(rest && { rest }) } };
  }
}

const placesOf = (sawn: SawnPiece): ReadonlyMap<PartId, Board> =>
  new Map(leavesOf(sawn).flatMap((leaf) => (leaf.part === undefined ? [] : [[leaf.part, leaf] as const])));

/** A strip with its pieces in the order in which the fewest small parts are bevelled alone; as it is where none is better. */
function bestOrder(strip: SawnPiece, laid: LaidBevels, sawing: Sawing): SawnPiece {
  const pieces = crossedOff(strip);
  const small = pieces.filter((piece) => smallSides(piece, strip, laid, sawing).length > 0);
  if (pieces.length < 2) return strip;
  let best = strip;
  let most = sharedBySmall(strip, laid, sawing);
  for (const like of small) {
    const next = reordered(strip, orderFor(like, pieces), sawing);
    const shared = next ? sharedBySmall(next, laid, sawing) : 0;
    if (next && shared > most) [best, most] = [next, shared];
  }
  return best;

  /** What has the bevels of this part last, what has one of them before that. */
  function orderFor(like: SawnPiece, all: readonly SawnPiece[]): readonly SawnPiece[] {
    const wanted = sidesOf(like, strip, laid);
    const inCommon = (piece: SawnPiece) => {
      const own = sidesOf(piece, strip, laid);
      return wanted.filter((each) => own.some((other) => other.side === each.side && rankOf(other) === rankOf(each)))
        .length;
    };
    return all.toSorted((a, b) => inCommon(a) - inCommon(b));
  }
}

/** What comes off a strip cut by cut, up to its rest. */
function crossedOff({ cut }: SawnPiece): readonly SawnPiece[] {
  if (!cut?.off) return [];
  return [cut.off, ...(cut.rest?.cut?.along === cut.along ? crossedOff(cut.rest) : [])];
}

/** The bevels of a part along the strip that it is crossed from. */
function sidesOf({ part }: SawnPiece, { cut }: SawnPiece, laid: LaidBevels): readonly LaidBevel[] {
  const sides = sidesAlong(cut!.along);
  return part === undefined ? [] : (laid.get(part) ?? []).filter(({ side }) => sides.includes(side));
}

const smallSides = (piece: SawnPiece, strip: SawnPiece, laid: LaidBevels, sawing: Sawing): readonly LaidBevel[] =>
  sidesOf(piece, strip, laid).filter((side) => isSmall(side, sawing));

/** How many bevels of small parts are cut along strips. */
function sharedBySmall(strip: SawnPiece, laid: LaidBevels, sawing: Sawing): number {
  const isOfSmall = ({ part, edge }: PieceBevel["edges"][number]) =>
    laid.get(part)!.some((side) => side.edge === edge && isSmall(side, sawing));
  const count = ({ bevels = [], cut }: SawnPiece): number => {
    const own = bevels.flatMap(({ edges }) => edges).filter(isOfSmall).length;
    return own + [cut?.off, cut?.rest].reduce((sum, each) => sum + (each ? count(each) : 0), 0);
  };
  return count(withStripBevels(strip, laid, sawing));
}

/**
 * A strip with the same cuts in another order, its rest the same.
 *
 * Returns: undefined where a cut would be made by another saw or could be held less well.
 */
function reordered(strip: SawnPiece, pieces: readonly SawnPiece[], sawing: Sawing): SawnPiece | undefined {
  const { cut, part: _, ...board } = strip;
  const [next, ...others] = pieces;
  if (!cut || next === undefined) return strip;
  const { along, trouble } = cut;
  const [run, across] = along ? [board.length, board.width] : [board.width, board.length];
  const size = along ? next.width : next.length;
  const { kerf: blade, ...way } = wayFor(run, across, size, sawing);
  if (cut.way === "true edge" || way.saw !== cut.saw || (way.trouble && way.trouble !== trouble)) return undefined;
  const kerf = Math.min(blade, across - size);
  const [offBoard, restBoard] = cutAt(board, along, size, kerf);
  const rest = restOf(restBoard);
  if (rest === undefined && across - size - kerf > sameSize) return undefined;
  const off = moved(next, offBoard.x - next.x, offBoard.y - next.y);
  return { ...board, cut: { ...way, along, size, kerf, off, ...(rest && { rest }) } };

  function restOf(left: Board): SawnPiece | undefined {
    const old = cut?.rest;
    if (others.length === 0) return old && isLike(left, old) ? old : undefined;
    return old?.cut ? reordered({ ...left, cut: old.cut }, others, sawing) : undefined;
  }
}

const isLike = (a: Board, b: Board) =>
  Math.abs(a.length - b.length) <= sameSize && Math.abs(a.width - b.width) <= sameSize;

function moved(piece: SawnPiece, dx: number, dy: number): SawnPiece {
  const { cut } = piece;
  const parted = cut && {
    ...cut,
    ...(cut.off && { off: moved(cut.off, dx, dy) }),
    ...(cut.rest && { rest: moved(cut.rest, dx, dy) }),
  };
  return { ...piece, x: piece.x + dx, y: piece.y + dy, ...(parted && { cut: parted }) };
}
