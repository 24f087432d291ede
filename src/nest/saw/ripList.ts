import type { NestedSheet, Process } from "../../model/build.js";
import type { Part } from "../../model/part.js";
import type { RipCut, RipList, RipPiece, SawCut, SawnPiece } from "../../model/rip.js";
import { type Guide, lay, nextOf, nothingYet, type Ready, settingsFor, take } from "./atHand.js";
import { bevelCuts } from "./bevels.js";
import { fromRack } from "./cutDown.js";
import type { Sawing } from "./sawing.js";

/** The rip list of a layout; undefined where nothing is sawn. */
export function ripListOf(
  sheets: readonly NestedSheet[],
  parts: readonly Part[],
  process: Process,
  sawing: Sawing,
): RipList | undefined {
  const cuts = ripCuts(sheets.map((sheet) => ({ sheet: sheet.sheet, sawn: fromRack(sheet, sawing) })));
  const placed = new Set(sheets.flatMap((sheet) => sheet.placed.map(({ part }) => part)));
  const bevels = bevelCuts(
    parts.filter(({ id }) => placed.has(id)),
    process,
    sawing,
    cuts.length + 1,
  );
  return cuts.length + bevels.length > 0 ? { cuts, bevels } : undefined;
}

/**
 * All cuts of all sheets in the order in which they are made.
 *
 * 1. Along the track first, sheet after sheet, until one person brings the pieces to the table saw.
 * 2. At the table saw, as long as the fence or the stop block stands right for any piece at hand, cuts with that.
 * 3. Then a setting all of whose cuts can be made now; of several the rips before the cross-cuts, the widest first. A rip
 *    that the sled takes too is made where its size is set, or will be for more cuts.
 *
 * A setting is anew where fence or stop block stood elsewhere before; along the track, where the last line was another;
 * and for each true edge.
 */
export function ripCuts(sheets: readonly Sawn[]): readonly RipCut[] {
  const hand = nothingYet(sheets.flatMap(({ sawn }) => sawn ?? []));
  const stands = new Map<Guide, string>();
  const cuts: RipCut[] = [];
  let since = 0;
  const ready = (sheet: string, name: string, board: SawnPiece | undefined): void => {
    const cut = board?.cut;
    if (cut) lay(hand, { sheet, name, board, cut, settings: settingsFor(cut), since: since++ });
  };
  for (const { sheet, sawn } of sheets.toReversed()) ready(sheet, sheet, sawn);
  let last: Ready | undefined;
  for (let next = nextOf(hand, stands, last); next; next = nextOf(hand, stands, last)) {
    const { guide, key } = next.setting;
    const { cut, sheet, name, board } = next.ready;
    take(hand, next.ready);
    const number = cuts.length + 1;
    const isAnother = stands.get(guide) !== key || (guide === "track" && last?.sheet !== sheet);
    const fresh = isAnother || cut.way === "true edge";
    stands.set(guide, key);
    const off = pieceOf(`${number}a`, cut.off);
    const rest = pieceOf(`${number}b`, cut.rest);
    cuts.push({
      ...factsOf(cut, guide),
      number,
      sheet,
      fresh,
      piece: pieceOf(name, board)!,
      ...(off && { off }),
      ...(rest && { rest }),
    });
    ready(sheet, `${number}b`, cut.rest);
    ready(sheet, `${number}a`, cut.off);
    last = next.ready;
  }
  return cuts;
}

type Sawn = { readonly sheet: string; readonly sawn: SawnPiece | undefined };

/** How often fence, stop block or line is set in a list. */
export const settingsOf = (cuts: readonly Pick<RipCut, "fresh">[]): number => cuts.filter(({ fresh }) => fresh).length;

function factsOf({ saw, way: usual, along, kerf, size, trouble, edge }: SawCut, guide: Guide) {
  const way = guide === "track" ? usual : guide;
  return { saw, way, along, kerf, setting: size, ...(trouble && { trouble }), ...(edge !== undefined && { edge }) };
}

function pieceOf(name: string, piece: SawnPiece | undefined): RipPiece | undefined {
  if (!piece) return undefined;
  const { x, y, length, width, shape, knots, part, cut } = piece;
  const becomes = cut ? "cut" : part === undefined ? "left" : "part";
  const odd = { ...(shape && { shape }), ...(knots && { knots }) };
  return { name, x, y, length, width, becomes, ...odd, ...(part !== undefined && { part }) };
}
