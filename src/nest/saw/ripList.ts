import type { NestedSheet, Process } from "../../model/build.js";
import type { Part } from "../../model/part.js";
import type { RipCut, RipList, RipPiece, SawCut, SawnPiece, SawWay } from "../../model/rip.js";
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
 * 3. Then a setting all of whose cuts can be made now; of several the rips before the cross-cuts, the widest first. A rip
 *    that the sled takes too is made where its size is set, or will be for more cuts.
 *
 * A setting is anew where fence or stop block stood elsewhere before; along the track, where the last line was another;
 * and for each true edge.
 */
export function ripCuts(sheets: readonly Sawn[]): readonly RipCut[] {
  const atHand: Ready[] = sheets.flatMap(({ sheet, sawn }) =>
    sawn?.cut ? [readyOf(sheet, sheet, sawn, sawn.cut)] : [],
  );
  const toCome = countByKey(sheets.flatMap(({ sawn }) => (sawn ? [sawn] : [])));
  const stands = new Map<Guide, string>();
  const cuts: RipCut[] = [];
  let last: Ready | undefined;
  while (atHand.length > 0) {
    const next = nextTrack(atHand, last) ?? nextTable(atHand, stands, toCome, last);
    atHand.splice(atHand.indexOf(next.ready), 1);
    const { cut, sheet, name, board } = next.ready;
    const number = cuts.length + 1;
    const key = keyOf(next.guide, cut);
    const isAnother = stands.get(next.guide) !== key || (next.guide === "track" && last?.sheet !== sheet);
    const fresh = isAnother || cut.way === "true edge";
    stands.set(next.guide, key);
    for (const guide of guidesOf(cut)) countOne(toCome, keyOf(guide, cut), -1);
    const off = pieceOf(`${number}a`, cut.off);
    const rest = pieceOf(`${number}b`, cut.rest);
    cuts.push({
      ...factsOf(cut, next.guide),
      number,
      sheet,
      fresh,
      piece: pieceOf(name, board)!,
      ...(off && { off }),
      ...(rest && { rest }),
    });
    for (const [name, piece] of [
      [`${number}b`, cut.rest],
      [`${number}a`, cut.off],
    ] as const)
      if (piece?.cut) atHand.unshift(readyOf(sheet, name, piece, piece.cut));
    last = next.ready;
  }
  return cuts;
}

type Sawn = { readonly sheet: string; readonly sawn: SawnPiece | undefined };

/** How often fence, stop block or line is set in a list. */
export const settingsOf = (cuts: readonly Pick<RipCut, "fresh">[]): number => cuts.filter(({ fresh }) => fresh).length;

/** A piece that lies ready for its next cut. */
type Ready = { readonly sheet: string; readonly name: string; readonly board: SawnPiece; readonly cut: SawCut };

const readyOf = (sheet: string, name: string, board: SawnPiece, cut: SawCut): Ready => ({ sheet, name, board, cut });

/** What is set for a cut: the line at the track, the fence, the stop block. */
type Guide = "track" | SawWay;

/** What may be set for it; the first is the usual one. */
const guidesOf = ({ saw, way, sledToo }: SawCut): readonly Guide[] =>
  saw === "track" ? ["track"] : sledToo ? [way, "cross-cut"] : [way];

/** The same key, the same setting. */
const keyOf = (guide: Guide, { along, size }: SawCut): string =>
  `${guide} ${guide === "track" ? along : ""} ${Math.round(size / sameSize)}`;

/** The next cut, and by which guide it is made. */
type Next = { readonly ready: Ready; readonly guide: Guide };

/** A sheet that is begun is finished; of its pieces the one that was cut last goes on. */
function nextTrack(atHand: readonly Ready[], last: Ready | undefined): Next | undefined {
  const all = atHand.filter(({ cut }) => cut.saw === "track");
  const here = all.filter(({ sheet }) => sheet === last?.sheet);
  const again = here.filter(({ cut }) => last && keyOf("track", cut) === keyOf("track", last.cut));
  const ready = again[0] ?? here.find(({ cut }) => cut.along === last?.cut.along) ?? here[0] ?? all[0];
  return ready && { ready, guide: "track" };
}

function nextTable(
  atHand: readonly Ready[],
  stands: ReadonlyMap<Guide, string>,
  toCome: ReadonlyMap<string, number>,
  last: Ready | undefined,
): Next {
  const choices = atHand.flatMap((ready) => guidesOf(ready.cut).map((guide): Next => ({ ready, guide })));
  const set = choices.filter(({ ready, guide }) => stands.get(guide) === keyOf(guide, ready.cut));
  const goesOn = set.find(({ ready }) => ready.board === last?.cut.rest) ?? set[0];
  if (goesOn) return goesOn;
  const different = [...new Map(choices.map((next) => [keyOf(next.guide, next.ready.cut), next])).values()];
  const ranked = different.map((next) => {
    const { ready, guide } = next;
    const key = keyOf(guide, ready.cut);
    const now = atHand.reduce((sum, { board }) => sum + reachable(board, guide, key), 0);
    const waits = (toCome.get(key) ?? 0) - now;
    const most = Math.max(...guidesOf(ready.cut).map((each) => toCome.get(keyOf(each, ready.cut)) ?? 0));
    const isLesser = (toCome.get(key) ?? 0) < most;
    return { next, rank: [waits > 0 ? 1 : 0, isLesser ? 1 : 0, guide === "cross-cut" ? 1 : 0, -ready.cut.size] };
  });
  return ranked.reduce((best, each) => (comesBefore(each.rank, best.rank) ? each : best)).next;
}

/** How many cuts of one setting can be made of a piece, one after another. */
function reachable({ cut }: SawnPiece, guide: Guide, key: string): number {
  if (!cut || !guidesOf(cut).includes(guide) || keyOf(guide, cut) !== key) return 0;
  const below = [cut.off, cut.rest].reduce((sum, each) => sum + (each ? reachable(each, guide, key) : 0), 0);
  return 1 + below;
}

function comesBefore(a: readonly number[], b: readonly number[]): boolean {
  const i = a.findIndex((value, place) => value !== b[place]);
  return i >= 0 && a[i]! < b[i]!;
}

function countByKey(pieces: readonly SawnPiece[]): Map<string, number> {
  const counts = new Map<string, number>();
  const walk = ({ cut }: SawnPiece): void => {
    if (!cut) return;
    for (const guide of guidesOf(cut)) countOne(counts, keyOf(guide, cut), 1);
    if (cut.off) walk(cut.off);
    if (cut.rest) walk(cut.rest);
  };
  for (const piece of pieces) walk(piece);
  return counts;
}

const countOne = (counts: Map<string, number>, key: string, by: number) => counts.set(key, (counts.get(key) ?? 0) + by);

function factsOf({ saw, way: usual, along, kerf, size, trouble, edge }: SawCut, guide: Guide) {
  const way = guide === "track" ? usual : guide;
  return { saw, way, along, kerf, setting: size, ...(trouble && { trouble }), ...(edge !== undefined && { edge }) };
}

function pieceOf(name: string, piece: SawnPiece | undefined): RipPiece | undefined {
  if (!piece) return undefined;
  const { x, y, length, width, shape, part, cut } = piece;
  const becomes = cut ? "cut" : part === undefined ? "left" : "part";
  return { name, x, y, length, width, becomes, ...(shape && { shape }), ...(part !== undefined && { part }) };
}
