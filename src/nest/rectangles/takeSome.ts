import type { Random } from "../random.js";
import { itemsIn, type Piece, takeOut } from "./cutTree.js";

/**
 * Takes some items out of a sheet, at least one and up to so many: always all that some piece of it holds.
 * Where a tree names kinds instead, all of a kind that is taken go.
 *
 * Returns: what was taken.
 */
export function takeSome(tree: Piece, most: number, random: Random): readonly number[] {
  const wanted = 1 + Math.floor(random() * most);
  const taken = new Set<number>();
  for (let n = 0; n < looks && taken.size < wanted; n++) {
    const piece = anyPiece(tree, random);
    if (roomFor(piece, wanted) >= 0) for (const item of itemsIn(piece)) taken.add(item);
  }
  takeOut(tree, (item) => taken.has(item));
  return [...taken];
}

/** Pieces looked at; most are too large to be taken whole. */
const looks = 20;

/** How many more items than lie in a piece there may be; below nought where they are too many, however many. */
function roomFor(piece: Piece, most: number): number {
  if (piece.item !== undefined) return most - 1;
  let left = most;
  for (const strip of piece.strips) {
    left = roomFor(strip, left);
    if (left < 0) break;
  }
  return left;
}

/** The chance that a piece is looked into rather than taken. */
const goDown = 0.6;

/** A piece of a sheet: the way down to it ends by chance. */
function anyPiece(tree: Piece, random: Random): Piece {
  let piece = tree;
  while (piece.strips.length > 0 && (piece === tree || random() < goDown))
    piece = piece.strips[Math.floor(random() * piece.strips.length)]!;
  return piece;
}
