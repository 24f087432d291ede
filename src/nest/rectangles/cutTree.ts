import { noise, type Rest } from "./rest.js";

/**
 * A piece of a sheet as it is cut up. With `item` it is that item's blank; else it is cut into strips, which lie beside
 * one another from its lower left corner on, and the last `left` of it is free. mm, one kerf added as to every rest.
 *
 * Strips of strips run the other way: what runs the same way is one row. Trees are copied before they are changed.
 */
export type Piece = {
  w: number;
  h: number;
  item: number | undefined;
  /** The item's turn, rad. */
  turn: number;
  /** Strips stand side by side along the sheet's length, the cuts between them run across it. */
  across: boolean;
  strips: Piece[];
  left: number;
};

const none: Piece[] = [];

export const blankOf = (item: number, turn: number, w: number, h: number): Piece => ({
  w,
  h,
  item,
  turn,
  across: false,
  strips: none,
  left: 0,
});

/** A piece with these strips in it and the rest of it free. */
export function cutInto(w: number, h: number, across: boolean, strips: Piece[]): Piece {
  const taken = strips.reduce((sum, strip) => sum + (across ? strip.w : strip.h), 0);
  return { w, h, item: undefined, turn: 0, across, strips, left: room((across ? w : h) - taken) };
}

export const emptySheet = (w: number, h: number): Piece => cutInto(w, h, true, []);

export function copyOf(piece: Piece): Piece {
  if (piece.item !== undefined) return piece;
  const { w, h, across, left } = piece;
  return { w, h, item: undefined, turn: 0, across, strips: piece.strips.map(copyOf), left };
}

/** The same cuts with other items, or what stands for them, in order from the lower left corner. */
export function renamed(piece: Piece, nameOf: (blank: Piece, item: number) => Pick<Piece, "item" | "turn">): Piece {
  if (piece.item !== undefined) return { ...piece, ...nameOf(piece, piece.item) };
  return { ...piece, strips: piece.strips.map((strip) => renamed(strip, nameOf)) };
}

/** What lies in a piece, from its lower left corner. */
export function itemsIn(piece: Piece, items: number[] = []): number[] {
  if (piece.item !== undefined) items.push(piece.item);
  else for (const strip of piece.strips) itemsIn(strip, items);
  return items;
}

/** Every blank, which `tell` is given with its place. */
export function eachBlank(
  piece: Piece,
  x: number,
  y: number,
  tell: (blank: Piece, x: number, y: number) => void,
): void {
  if (piece.item !== undefined) tell(piece, x, y);
  let at = 0;
  for (const strip of piece.strips) {
    eachBlank(strip, piece.across ? x + at : x, piece.across ? y : y + at, tell);
    at += piece.across ? strip.w : strip.h;
  }
}

/** The free end of every piece, which `tell` is given with its place. */
export function eachFree(piece: Piece, x: number, y: number, tell: (piece: Piece, free: Rest) => void): void {
  if (piece.item !== undefined) return;
  let at = 0;
  for (const strip of piece.strips) {
    eachFree(strip, piece.across ? x + at : x, piece.across ? y : y + at, tell);
    at += piece.across ? strip.w : strip.h;
  }
  if (piece.left > 0) tell(piece, freeEnd(piece, x, y, at));
}

const freeEnd = ({ across, left, w, h }: Piece, x: number, y: number, at: number): Rest =>
  across ? { x: x + at, y, w: left, h } : { x, y: y + at, w, h: left };

/**
 * Takes out of a piece what `isTaken` names. Strips left with nothing in them join the free end; one that is all of its
 * piece takes its place.
 *
 * Returns: whether nothing remains in it.
 */
export function takeOut(piece: Piece, isTaken: (item: number) => boolean): boolean {
  if (piece.item !== undefined) return isTaken(piece.item);
  const { across } = piece;
  const kept: Piece[] = [];
  for (const strip of piece.strips) {
    if (takeOut(strip, isTaken)) piece.left += across ? strip.w : strip.h;
    else keep(piece, strip, kept);
  }
  piece.strips = kept;
  return kept.length === 0;
}

/** A strip that holds one strip as large as itself is that one; and where this runs as the piece does, its strips are. */
function keep(piece: Piece, strip: Piece, kept: Piece[]): void {
  const [only, ...others] = strip.strips;
  if (strip.item !== undefined || only === undefined || others.length > 0 || strip.left > 0) {
    kept.push(strip);
    return;
  }
  if (only.item !== undefined) kept.push(only);
  else {
    kept.push(...only.strips);
    piece.left = room(piece.left + only.left);
  }
}

export const room = (length: number): number => (length > noise ? length : 0);
