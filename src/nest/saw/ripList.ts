import type { NestedSheet, Process } from "../../model/build.js";
import type { Part } from "../../model/part.js";
import type { RipCut, RipList, RipPiece, SawCut, SawnPiece } from "../../model/rip.js";
import { bevelCuts } from "./bevels.js";
import { fromRack } from "./cutDown.js";
import { sameSize } from "./handling.js";
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
 * 3. Then a setting all of whose cuts can be made now; of several the rips before the cross-cuts, the widest first.
 *
 * A setting is anew where fence or stop block stood elsewhere before; along the track, where the last line was another;
 * and for each true edge.
 */
export function ripCuts(sheets: readonly Sawn[]): readonly RipCut[] {
  const atHand: Ready[] = sheets.flatMap(({ sheet, sawn }) =>
    sawn?.cut ? [readyOf(sheet, sheet, sawn, sawn.cut)] : [],
  );
  const toCome = countByKey(sheets.flatMap(({ sawn }) => (sawn ? [sawn] : [])));
  const stands = new Map<string, string>();
  const cuts: RipCut[] = [];
  let last: Ready | undefined;
  while (atHand.length > 0) {
    const next = nextTrack(atHand, last) ?? nextTable(atHand, stands, toCome, last);
    atHand.splice(atHand.indexOf(next), 1);
    const number = cuts.length + 1;
    const guide = guideOf(next.cut);
    const key = keyOf(next.cut);
    const isAnother = stands.get(guide) !== key || (guide === "track" && last?.sheet !== next.sheet);
    const fresh = isAnother || next.cut.way === "true edge";
    stands.set(guide, key);
    toCome.set(key, (toCome.get(key) ?? 0) - 1);
    const off = pieceOf(`${number}a`, next.cut.off);
    const rest = pieceOf(`${number}b`, next.cut.rest);
    cuts.push({
      ...factsOf(next.cut),
      number,
      sheet: next.sheet,
      fresh,
      piece: pieceOf(next.name, next.board)!,
      ...(off && { off }),
      ...(rest && { rest }),
    });
    for (const [name, piece] of [
      [`${number}b`, next.cut.rest],
      [`${number}a`, next.cut.off],
    ] as const)
      if (piece?.cut) atHand.unshift(readyOf(next.sheet, name, piece, piece.cut));
    last = next;
  }
  return cuts;
}

type Sawn = { readonly sheet: string; readonly sawn: SawnPiece | undefined };

/** How often fence, stop block or line is set in a list. */
export const settingsOf = (cuts: readonly Pick<RipCut, "fresh">[]): number => cuts.filter(({ fresh }) => fresh).length;

/** A piece that lies ready for its next cut. */
type Ready = { readonly sheet: string; readonly name: string; readonly board: SawnPiece; readonly cut: SawCut };

const readyOf = (sheet: string, name: string, board: SawnPiece, cut: SawCut): Ready => ({ sheet, name, board, cut });

/** What is set for a cut: the line at the track, the fence, or the stop block. */
const guideOf = ({ saw, way }: SawCut): string => (saw === "track" ? "track" : way);

function keyOf(cut: SawCut): string {
  return `${guideOf(cut)} ${cut.saw === "track" ? cut.along : ""} ${Math.round(cut.size / sameSize)}`;
}

/** A sheet that is begun is finished; of its pieces the one that was cut last goes on. */
function nextTrack(atHand: readonly Ready[], last: Ready | undefined): Ready | undefined {
  const ready = atHand.filter(({ cut }) => cut.saw === "track");
  const here = ready.filter(({ sheet }) => sheet === last?.sheet);
  const again = here.filter(({ cut }) => last && keyOf(cut) === keyOf(last.cut));
  return again[0] ?? here.find(({ cut }) => cut.along === last?.cut.along) ?? here[0] ?? ready[0];
}

function nextTable(
  atHand: readonly Ready[],
  stands: ReadonlyMap<string, string>,
  toCome: ReadonlyMap<string, number>,
  last: Ready | undefined,
): Ready {
  const set = atHand.filter(({ cut }) => stands.get(guideOf(cut)) === keyOf(cut));
  const goesOn = set.find(({ board }) => board === last?.cut.rest) ?? set[0];
  if (goesOn) return goesOn;
  const choices = [...new Map(atHand.map((ready) => [keyOf(ready.cut), ready])).values()];
  const ranked = choices.map((ready) => {
    const key = keyOf(ready.cut);
    const now = atHand.reduce((sum, { board }) => sum + reachable(board, key), 0);
    const waits = (toCome.get(key) ?? 0) - now;
    return { ready, rank: [waits > 0 ? 1 : 0, ready.cut.way === "cross-cut" ? 1 : 0, -ready.cut.size] };
  });
  return ranked.reduce((best, each) => (comesBefore(each.rank, best.rank) ? each : best)).ready;
}

/** How many cuts of one setting can be made of a piece, one after another. */
function reachable({ cut }: SawnPiece, key: string): number {
  if (!cut || keyOf(cut) !== key) return 0;
  return 1 + (cut.off ? reachable(cut.off, key) : 0) + (cut.rest ? reachable(cut.rest, key) : 0);
}

function comesBefore(a: readonly number[], b: readonly number[]): boolean {
  const i = a.findIndex((value, place) => value !== b[place]);
  return i >= 0 && a[i]! < b[i]!;
}

function countByKey(pieces: readonly SawnPiece[]): Map<string, number> {
  const counts = new Map<string, number>();
  const walk = ({ cut }: SawnPiece): void => {
    if (!cut) return;
    counts.set(keyOf(cut), (counts.get(keyOf(cut)) ?? 0) + 1);
    if (cut.off) walk(cut.off);
    if (cut.rest) walk(cut.rest);
  };
  for (const piece of pieces) walk(piece);
  return counts;
}

function factsOf({ saw, way, along, kerf, size, trouble, edge }: SawCut) {
  return { saw, way, along, kerf, setting: size, ...(trouble && { trouble }), ...(edge !== undefined && { edge }) };
}

function pieceOf(name: string, piece: SawnPiece | undefined): RipPiece | undefined {
  if (!piece) return undefined;
  const { x, y, length, width, shape, part, cut } = piece;
  const becomes = cut ? "cut" : part === undefined ? "left" : "part";
  return { name, x, y, length, width, becomes, ...(shape && { shape }), ...(part !== undefined && { part }) };
}
