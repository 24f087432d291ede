import type { SawCut, SawnPiece } from "../../model/rip.js";

/** The same piece with its parts by name. */
export function named<Item, Id>(piece: SawnPiece<Item>, nameOf: (item: Item) => Id): SawnPiece<Id> {
  const { part, cut, ...board } = piece;
  return {
    ...board,
    ...(part !== undefined && { part: nameOf(part) }),
    ...(cut && { cut: namedCut(cut, nameOf) }),
  };
}

function namedCut<Item, Id>({ off, rest, ...cut }: SawCut<Item>, nameOf: (item: Item) => Id): SawCut<Id> {
  return { ...cut, ...(off && { off: named(off, nameOf) }), ...(rest && { rest: named(rest, nameOf) }) };
}
