import type {
  BevelCut,
  PieceBevel,
  PieceSide,
  RipCut,
  RipList,
  RipPiece,
  SawCut,
  SawKind,
  SawnPiece,
} from "../../model/rip.js";
import { type Guide, lay, type Next, nextOf, nothingYet, type Ready, settingsFor, take } from "./atHand.js";
import { inTurn, tiltOf } from "./bevels.js";
import { sameSize } from "./handling.js";

type Sawn = { readonly sheet: string; readonly sawn: SawnPiece | undefined };

/** A piece on the bench, as the list names it. */
type Lying = Pick<Ready, "sheet" | "name" | "board"> & { readonly bevelled: Bevelled };
type Bevelled = NonNullable<RipPiece["bevelled"]>;

/**
 * All cuts of all sheets in the order in which they are made, with the bevels of their strips.
 *
 * 1. Along the track first, sheet after sheet, until one person brings the pieces to the table saw.
 * 2. At the table saw, as long as the fence or the stop block stands right for any piece at hand, cuts with that.
 * 3. Then a setting all of whose cuts can be made now; of several the rips before the cross-cuts, the widest first. A rip
 *    that the sled takes too is made where its size is set, or will be for more cuts.
 * 4. Where all strips that are to be bevelled lie ready, and what else could be set waits for them, all of them, tilt by
 *    tilt; then on with the blade upright.
 *
 * A setting is anew where fence or stop block stood elsewhere before, or the blade leant; along the track, where the last
 * line was another; and for each true edge.
 */
export function inOrder(sheets: readonly Sawn[]): RipList {
  const pieces = sheets.flatMap(({ sawn }) => sawn ?? []);
  const hand = nothingYet(pieces);
  let toBevel = pieces.reduce((sum, piece) => sum + countBevelled(piece), 0);
  const waiting: Lying[] = [];
  const lying = new Map<Ready, Bevelled>();
  const stands = new Map<Guide, string>();
  const leans = new Set<SawKind>();
  const cuts: RipCut[] = [];
  const bevels: BevelCut[] = [];
  let since = 0;
  let last: Ready | undefined;

  for (const { sheet, sawn } of sheets.toReversed()) if (sawn) put({ sheet, name: sheet, board: sawn, bevelled: [] });
  for (;;) {
    const next = nextOf(hand, stands, last);
    if (waiting.length > 0 && (next === undefined || (next.waits && waiting.length === toBevel))) bevelAll();
    else if (next === undefined) return { cuts, bevels };
    else cutOne(next);
  }

  function put({ sheet, name, board, bevelled }: Lying): void {
    const { cut, bevels: own } = board;
    if (own) waiting.push({ sheet, name, board, bevelled });
    else if (cut) {
      const ready = { sheet, name, board, cut, settings: settingsFor(cut), since: since++ };
      lying.set(ready, bevelled);
      lay(hand, ready);
    }
  }

  function cutOne({ ready, setting: { guide, key } }: Next): void {
    const { cut, sheet, name, board } = ready;
    take(hand, ready);
    const number = nextNumber();
    const isAnother = stands.get(guide) !== key || (guide === "track" && last?.sheet !== sheet);
    const upright = leans.delete(cut.saw);
    stands.set(guide, key);
    const before = lying.get(ready)!;
    const [offBevels, restBevels] = partedBevels(before, cut);
    const off = pieceOf(`${number}a`, cut.off, offBevels);
    const rest = pieceOf(`${number}b`, cut.rest, restBevels);
    cuts.push({
      ...factsOf(cut, guide),
      number,
      sheet,
      fresh: isAnother || upright || cut.way === "true edge",
      ...(upright && { upright }),
      piece: pieceOf(name, board, before)!,
      ...(off && { off }),
      ...(rest && { rest }),
    });
    if (cut.rest) put({ sheet, name: `${number}b`, board: cut.rest, bevelled: restBevels });
    if (cut.off) put({ sheet, name: `${number}a`, board: cut.off, bevelled: offBevels });
    last = ready;
  }

  /** Every bevel of all strips that lie ready; each strip is laid at hand when its last one is cut. */
  function bevelAll(): void {
    const all = waiting.splice(0);
    toBevel -= all.length;
    const each = all.flatMap((strip) => (strip.board.bevels ?? []).map((bevel) => ({ ...bevel, strip })));
    const now = new Map(all.map((strip) => [strip, strip]));
    for (const { strip, ...bevel } of inTurn(each)) {
      const { sheet, name, board, bevelled } = now.get(strip)!;
      const { saw, way, side, down, less } = bevel;
      bevels.push({ ...bevel, number: nextNumber(), sheet, piece: pieceOf(name, board, bevelled)! });
      const after = [...bevelled, { side, down, less }];
      now.set(strip, { sheet, name, board: narrowed(board, bevel), bevelled: after });
      stands.set(saw === "track" ? "track" : way, `leant ${tiltOf(bevel)}`);
      leans.add(saw);
    }
    for (const strip of now.values()) {
      const { bevels: _, ...board } = strip.board;
      put({ ...strip, board });
    }
  }

  function nextNumber(): number {
    return cuts.length + bevels.length + 1;
  }
}

/** The pieces below a piece, and itself, that are bevelled before they are cut in two. */
function countBevelled({ bevels, cut }: SawnPiece): number {
  const below = [cut?.off, cut?.rest].reduce((sum, each) => sum + (each ? countBevelled(each) : 0), 0);
  return below + (bevels ? 1 : 0);
}

/** A strip that was a hair too wide for its parts, when its bevel has taken that off, with all that is crossed from it. */
function narrowed(strip: SawnPiece, { side, across }: PieceBevel): SawnPiece {
  const lengthwise = side === "lower" || side === "upper";
  const by = (lengthwise ? strip.width : strip.length) - across;
  return by <= sameSize ? strip : less(strip);

  function less(piece: SawnPiece): SawnPiece {
    const { x, y, length, width, cut, bevels: own } = piece;
    const isAcross = (each: PieceBevel) => lengthwise === (each.side === "left" || each.side === "right");
    const bevels = own?.map((each) => (isAcross(each) ? { ...each, run: each.run - by } : each));
    const start = side === "lower" ? { y: y + by } : side === "left" ? { x: x + by } : {};
    const size = lengthwise ? { width: width - by } : { length: length - by };
    // of what is cut the same way only what lies at the bevel, which is waste at the upper or right side
    const off = cut?.off && (cut.along === lengthwise ? cut.off : less(cut.off));
    const parted = cut && { ...cut, ...(off && { off }), ...(cut.rest && { rest: less(cut.rest) }) };
    return { ...piece, ...start, ...size, ...(parted && { cut: parted }), ...(bevels && { bevels }) };
  }
}

/** Bevelled sides of both pieces of a cut: neither keeps the one on the other side of it. */
function partedBevels(bevelled: Bevelled, { along }: SawCut): readonly [off: Bevelled, rest: Bevelled] {
  const [near, far]: readonly [PieceSide, PieceSide] = along ? ["lower", "upper"] : ["left", "right"];
  return [bevelled.filter(({ side }) => side !== far), bevelled.filter(({ side }) => side !== near)];
}

function factsOf({ saw, way: usual, along, kerf, size, trouble, edge }: SawCut, guide: Guide) {
  const way = guide === "track" ? usual : guide;
  return { saw, way, along, kerf, setting: size, ...(trouble && { trouble }), ...(edge !== undefined && { edge }) };
}

function pieceOf(name: string, piece: SawnPiece | undefined, bevelled: Bevelled): RipPiece | undefined {
  if (!piece) return undefined;
  const { x, y, length, width, shape, knots, part, cut, goesOn } = piece;
  const becomes = cut ? "cut" : part === undefined ? "left" : "part";
  const odd = { ...(shape && { shape }), ...(knots && { knots }), ...(bevelled.length > 0 && { bevelled }) };
  const then = { ...(part !== undefined && { part }), ...(goesOn !== undefined && { goesOn }) };
  return { name, x, y, length, width, becomes, ...odd, ...then };
}
