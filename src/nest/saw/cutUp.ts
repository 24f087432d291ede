import type { Board, SawnPiece } from "../../model/rip.js";
import type { Split } from "../rectangles/rest.js";
import { isLargeEnough, type Size, sameSize, wayFor } from "./handling.js";
import type { Sawing } from "./sawing.js";
import type { Strip, Wanted } from "./wanted.js";

/** A piece cut up, and how well that went. */
export type CutUp = {
  readonly piece: SawnPiece<number>;
  /** How many cuts are made of pieces too small to hold. */
  readonly small: number;
};

/**
 * How a piece is cut up. `tries`: whether the rest of a loose strip is looked into here, or has been decided above.
 * `rows`: what goes on the same way at the end of a row is put in order with it, which spares settings.
 */
type How = { readonly tries: boolean; readonly rows: boolean };
const usual: How = { tries: true, rows: true };

/**
 * Cuts a piece of board up into what is wanted of it, with the saws' own kerfs: the first cut at the reference edges, the
 * left and the lower one.
 *
 * Order:  strips of one width follow one another, the widest first, so that narrow ones come last, but for a loose one
 *         that is cut up itself, which takes what is left; where a piece would then be too small to hold, the widest last,
 *         which keeps it large; or else in the order in which they were packed.
 * Rest:   a loose last strip is cut to its size where that leaves something worth keeping whole, unless it is cut up
 *         safely only while it is wide.
 */
function cutUp(board: Board, wanted: Wanted, sawing: Sawing, how: How): CutUp {
  if (wanted.kind === "blank") return cutFree(board, wanted, sawing);
  const along = wanted.split === "along";
  const [run, room] = along ? [board.length, board.width] : [board.width, board.length];
  const loose = (strip: Strip) => (strip.loose && !(how.rows && isOneBlank(strip.of)) ? 1 : 0);
  const row = how.rows ? inOneRow(wanted.strips, wanted.split, run) : wanted.strips;
  const widestFirst = row.toSorted((a, b) => loose(a) - loose(b) || b.size - a.size);
  const widestLast = row.toSorted((a, b) => loose(a) - loose(b) || a.size - b.size);
  const strips = [widestFirst, widestLast].find((each) => isHeldThroughout(run, room, each, sawing)) ?? row;
  return takeStrips(board, along, strips, sawing, how);
}

/** Where the rest of a row, all along as wide as what is wanted of it, is cut up the same way, it is more of the row. */
function inOneRow(strips: readonly Strip[], split: Split, run: number): readonly Strip[] {
  return strips.flatMap((strip) => {
    const of = strip.loose ? withoutFrame(strip.of, split, run) : strip.of;
    return of.kind === "strips" && of.split === split ? inOneRow(of.strips, split, run) : [strip];
  });
}

/** What is wanted of a piece that is so long across the cuts, less a cut along it that need not be made. */
function withoutFrame(wanted: Wanted, split: Split, run: number): Wanted {
  if (wanted.kind === "blank" || wanted.split === split) return wanted;
  const [strip, ...others] = wanted.strips;
  if (strip === undefined || others.length > 0 || run - strip.size > sameSize) return wanted;
  return withoutFrame(strip.of, split, run);
}

/** What is cut up no further has nothing to gain from a wide strip. */
function isOneBlank(wanted: Wanted): boolean {
  if (wanted.kind === "blank") return true;
  const [strip, ...others] = wanted.strips;
  return strip !== undefined && others.length === 0 && isOneBlank(strip.of);
}

/** Whether what remains is held for every cut when strips come off in this order. */
function isHeldThroughout(run: number, room: number, strips: readonly Strip[], sawing: Sawing): boolean {
  let left = room;
  return strips.every(({ size }, i) => {
    const before = left;
    left -= size + wayFor(run, before, size, sawing).kerf;
    const isCut = i < strips.length - 1 || before - size > sameSize;
    return !isCut || isLargeEnough({ length: run, width: before }, sawing.hold);
  });
}

function takeStrips(board: Board, along: boolean, strips: readonly Strip[], sawing: Sawing, how: How): CutUp {
  const [strip, ...others] = strips;
  if (strip === undefined) return leave(board);
  const room = along ? board.width : board.length;
  if (room - strip.size <= sameSize && others.length === 0) return cutUp(board, strip.of, sawing, how);
  if (others.length > 0 || !strip.loose) {
    const goOn = (rest: Board) => takeStrips(rest, along, others, sawing, how);
    return cutOff(board, along, strip, goOn, sawing, how);
  }
  const rest = { width: room - strip.size, length: along ? board.length : board.width };
  if (!isWorthKeeping(rest, sawing) && how.tries) return cutUp(board, strip.of, sawing, how);
  const cut = cutOff(board, along, strip, leave, sawing, { ...how, tries: false });
  if (cut.small === 0 || !how.tries) return cut;
  const whole = cutUp(board, strip.of, sawing, how);
  return whole.small <= cut.small ? whole : cut;
}

/** Whether a rest is large enough to be held again one day. */
export const isWorthKeeping = (rest: Size, { hold }: Sawing): boolean =>
  isLargeEnough(rest, { ...hold, width: 2 * hold.width });

/** A blank out of a piece that may be larger both ways; the cut along its longer side comes first. */
function cutFree(board: Board, blank: Wanted & { readonly kind: "blank" }, sawing: Sawing): CutUp {
  const ways = [board.length >= board.width, board.length < board.width].filter(
    (along) => (along ? board.width - blank.h : board.length - blank.w) > sameSize,
  );
  const tries = ways.map((along) =>
    cutOff(board, along, { size: along ? blank.h : blank.w, of: blank }, leave, sawing, { ...usual, tries: false }),
  );
  const [first, second] = tries;
  if (first === undefined) return { piece: { ...board, part: blank.item }, small: 0 };
  return second && second.small < first.small ? second : first;
}

const leave = (piece: Board): CutUp => ({ piece, small: 0 });

/** One cut: a strip comes off at the reference edge; `goOn` says what becomes of the rest. */
function cutOff(
  board: Board,
  along: boolean,
  { size, of }: Strip,
  goOn: (rest: Board) => CutUp,
  sawing: Sawing,
  how: How,
): CutUp {
  const [run, across] = along ? [board.length, board.width] : [board.width, board.length];
  const { kerf: blade, ...way } = wayFor(run, across, size, sawing);
  const kerf = Math.min(blade, across - size);
  const [offBoard, restBoard] = cutAt(board, along, size, kerf);
  const off = cutUp(offBoard, of, sawing, how);
  const rest = across - size - kerf > sameSize ? goOn(restBoard) : undefined;
  const cut = { ...way, along, size, kerf, off: off.piece, ...(rest && { rest: rest.piece }) };
  return {
    piece: { ...board, cut },
    small: off.small + (rest?.small ?? 0) + (way.trouble === "small" ? 1 : 0),
  };
}

/** Both sides of a cut. */
export function cutAt(board: Board, along: boolean, size: number, kerf: number): readonly [Board, Board] {
  const { x, y, length, width } = board;
  return along
    ? [
        { ...board, width: size },
        { x, y: y + size + kerf, length, width: width - size - kerf },
      ]
    : [
        { ...board, length: size },
        { x: x + size + kerf, y, length: length - size - kerf, width },
      ];
}

/**
 * A whole sheet: where its edges are not trusted, two first cuts make true ones, and all is measured from these. What is
 * put in order in rows, and could not be held so, is cut as it was packed.
 */
export function cutUpSheet(sheet: Board, trim: number, wanted: Wanted, sawing: Sawing): CutUp {
  const inRows = fromTrueEdges(sheet, trim, wanted, sawing, usual);
  if (inRows.small === 0) return inRows;
  const asPacked = fromTrueEdges(sheet, trim, wanted, sawing, { ...usual, rows: false });
  return asPacked.small < inRows.small ? asPacked : inRows;
}

function fromTrueEdges(sheet: Board, trim: number, wanted: Wanted, sawing: Sawing, how: How): CutUp {
  const across = (board: Board) => trueEdge(board, false, trim, (rest) => cutUp(rest, wanted, sawing, how), sawing);
  return trueEdge(sheet, true, trim, across, sawing);
}

function trueEdge(board: Board, along: boolean, trim: number, goOn: (board: Board) => CutUp, sawing: Sawing): CutUp {
  if (trim <= sameSize) return goOn(board);
  const [run, across] = along ? [board.length, board.width] : [board.width, board.length];
  const { kerf: blade, trouble } = wayFor(run, across, trim, sawing);
  const saw = sawing.track ? "track" : "table";
  const kerf = Math.min(sawing.track?.kerf ?? blade, trim);
  const [strip, restBoard] = cutAt(board, along, trim - kerf, kerf);
  const rest = goOn(restBoard);
  const off = trim - kerf > sameSize ? { off: strip } : {};
  const cut = {
    saw,
    way: "true edge",
    along,
    size: trim - kerf,
    kerf,
    ...off,
    rest: rest.piece,
    ...(trouble && { trouble }),
  } as const;
  return { piece: { ...board, cut }, small: rest.small + (trouble === "small" ? 1 : 0) };
}
