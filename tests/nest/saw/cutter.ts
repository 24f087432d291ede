import { areaPathsD, differenceD, FillRule, intersectD, type PathD, type PathsD } from "clipper2-ts";
import type { Profile } from "../../../src/geometry/profile.js";
import { tessellate } from "../../../src/geometry/tessellate.js";
import type { BevelCut, PieceSide, RipCut, RipList, RipPiece } from "../../../src/model/rip.js";

// A cutter that knows the rip list and nothing else: it takes the pieces that lie in front of it by the names that are
// pencilled on them, sets what the list says, cuts, and measures what comes off.

/**
 * `form`: of what is no rectangle, its outline and holes as it lies on its true edge, which is the lowest of it. `bevels`:
 * how its sides lean, and whether it is narrower above or below there, as it lay on its sheet.
 */
export type Board = {
  readonly length: number;
  readonly width: number;
  readonly form?: PathsD;
  readonly bevels?: readonly Leaning[];
};
export type Leaning = { readonly side: PieceSide; readonly tilt: number; readonly narrower: "above" | "below" };

/**
 * What is wrong with a list, in words, and what lies on the bench when it is done: parts, and pieces by their names.
 * `bevels`: of parts cut free.
 */
export type Bench = {
  readonly faults: readonly string[];
  readonly parts: ReadonlyMap<string, Board>;
  readonly left: ReadonlyMap<string, Board>;
  readonly bevels: readonly BevelCut[];
};

export type SawRoom = {
  readonly thickness: number;
  /** What its fence can be set to. */
  readonly step: number;
  readonly kerfs: Readonly<Record<"track" | "table", number>>;
  readonly heldLength: number;
  readonly heldWidth: number;
  /** What the table saw takes: from fence to blade, on its sled, and what one person brings to it. */
  readonly reach?: number | undefined;
  readonly sled?: number | undefined;
  readonly onePerson?: Board | undefined;
};

/** Saws differ by less, mm. */
const hair = 1e-6;

/** Follows a rip list from whole sheets to the last cut. */
export function replay({ cuts, bevels }: RipList, sheets: ReadonlyMap<string, Board>, room: SawRoom): Bench {
  const bench = new Map(sheets);
  const used = new Set<string>();
  const waiting = new Set<string>();
  const parts = new Map<string, Board>();
  const faults: string[] = [];
  const stands = new Map<string, number>();
  const leans = new Map<string, number>();
  const ofParts: BevelCut[] = [];

  const all = [...cuts, ...bevels].toSorted((a, b) => a.number - b.number);
  for (const [i, each] of all.entries()) {
    const say = (fault: string) => faults.push(`cut ${each.number}: ${fault}`);
    if (each.number !== i + 1) say("is out of order");
    if ("tilt" in each) sawBevel(each, say);
    else sawCut(each, say);
  }
  for (const [name] of bench) if (waiting.has(name)) faults.push(`${name} was to be cut and never was`);
  return { faults, parts, left: bench, bevels: ofParts };

  function sawCut(cut: RipCut, say: (fault: string) => void): void {
    const board = bench.get(cut.piece.name);
    if (!board) {
      say(used.has(cut.piece.name) ? `${cut.piece.name} is cut twice` : `there is no ${cut.piece.name}`);
      return;
    }
    bench.delete(cut.piece.name);
    used.add(cut.piece.name);
    if (!isLike(board, cut.piece)) say(`${cut.piece.name} measures ${sizeOf(board)}, not ${sizeOf(cut.piece)}`);
    checkHeld(cut, board, say);
    if ((leans.get(cut.saw) ?? 0) > 0 && !cut.upright) say("is cut with the blade still leaning");
    leans.set(cut.saw, 0);
    checkSetting(cut, say);
    checkReach(cut, board, say);
    if (board.form) {
      const [off, rest] = sawn(board.form, cut);
      putOdd(cut.off, off, cut.way !== "true edge", say);
      putOdd(cut.rest, rest, cut.way === "true edge", say);
      return;
    }
    const [run, across] = cut.along ? [board.length, board.width] : [board.width, board.length];
    const left = across - cut.setting - cut.kerf;
    const kerf = room.kerfs[cut.saw];
    if (cut.kerf > kerf + hair) say(`takes ${cut.kerf}, more than its blade`);
    // The blade takes less only where it runs out of the board, or along the edge that it trues.
    if (cut.kerf < kerf - hair && left > hair && cut.setting > hair) say(`takes ${cut.kerf}, less than its blade`);
    if (left < -hair) say(`goes ${-left} beyond the board`);
    const keeps = (lost: PieceSide) => ({ bevels: (board.bevels ?? []).filter(({ side }) => side !== lost) });
    const [offLoses, restLoses] = cut.along ? (["upper", "lower"] as const) : (["right", "left"] as const);
    const sized = (size: number) => (cut.along ? { length: run, width: size } : { length: size, width: run });
    put(cut.off, { ...sized(cut.setting), ...keeps(offLoses) }, say);
    put(cut.rest, { ...sized(left), ...keeps(restLoses) }, say);
  }

  /** Lays a strip with its smaller side down and the other side at the fence, and leans the blade away from that. */
  function sawBevel(bevel: BevelCut, say: (fault: string) => void): void {
    const { piece, saw, way, tilt, setting, run, across, fresh } = bevel;
    const smaller = across - room.thickness * Math.tan(tilt);
    const line = saw === "track" ? across : smaller;
    if (Math.abs(setting - line) > 1e-6) say(`is set to ${setting}, and ${line} is wanted`);
    if (smaller < hair) say("takes all of one side");
    checkHeld(bevel, { length: run, width: across }, say);
    checkReach({ ...bevel, along: true }, { length: run, width: across }, say);
    const guide = saw === "track" ? "track bevel" : way;
    const isSet =
      Math.abs((leans.get(saw) ?? 0) - tilt) < 2e-6 && Math.abs((stands.get(guide) ?? 0) - setting) < 1e-3 + hair;
    if (!fresh && !isSet) say("is told to be set already, and is not");
    stands.set(guide, setting);
    leans.set(saw, tilt);
    if (!piece) {
      ofParts.push(bevel);
      return;
    }
    const board = bench.get(piece.name);
    if (!board) {
      say(`there is no ${piece.name}`);
      return;
    }
    if (!isLike(board, piece)) say(`${piece.name} measures ${sizeOf(board)}, not ${sizeOf(piece)}`);
    const lengthwise = bevel.side === "lower" || bevel.side === "upper";
    const [longer, wider] = lengthwise ? [board.length, board.width] : [board.width, board.length];
    // a hair more than the larger side is to be comes off too
    if (Math.abs(longer - run) > hair || wider - across < -hair || wider - across > room.step)
      say(`makes ${run} x ${across} of ${sizeOf(board)}`);
    if (board.bevels?.some(({ side }) => side === bevel.side)) say(`its ${bevel.side} side is bevelled already`);
    const leaning: Leaning = { side: bevel.side, tilt, narrower: bevel.down === "under" ? "below" : "above" };
    const size = lengthwise ? { width: across } : { length: across };
    bench.set(piece.name, { ...board, ...size, bevels: [...(board.bevels ?? []), leaning] });
  }

  /** What of an odd piece lies on one side of the blade; on the side that is used only what lies on the true edge. */
  function putOdd(piece: RipPiece | undefined, all: PathsD, isUsed: boolean, say: (fault: string) => void): void {
    const form = isUsed && all.length > 1 ? lowest(all) : all;
    if (!piece) {
      if (thickest(form) > 2e-3) say(`${area(form)} mm2 come off and have no name`);
      return;
    }
    const loop = (profile: Profile) => tessellate(profile, 0.001).map(({ x, y }) => ({ x, y }));
    const told = piece.shape
      ? piece.shape.flatMap(({ outer, holes }) => [loop(outer), ...holes.map((hole) => loop(hole).toReversed())])
      : [cornersOf(piece)];
    const less = area(differenceD(form, told, FillRule.NonZero, 6));
    const more = area(differenceD(told, form, FillRule.NonZero, 6));
    // a chord of a tessellated arc lies within hundredths of it
    if (less + more > 0.02 * (piece.length + piece.width))
      say(`${piece.name} is ${less} mm2 less and ${more} mm2 more`);
    const board = { length: piece.length, width: piece.width };
    if (piece.becomes === "part") parts.set(piece.part!, board);
    else bench.set(piece.name, piece.shape ? { ...board, form: told } : board);
    if (piece.becomes === "cut") waiting.add(piece.name);
  }

  function put(piece: RipPiece | undefined, board: Board, say: (fault: string) => void): void {
    if (!piece) {
      // less than a millimetre that is not named is a splinter
      if (board.length > 1e-3 + hair && board.width > 1e-3 + hair) say(`${sizeOf(board)} comes off and has no name`);
      return;
    }
    if (!isLike(board, piece)) say(`${piece.name} measures ${sizeOf(board)}, not ${sizeOf(piece)}`);
    if (piece.becomes === "part") {
      if (parts.has(piece.part!)) say(`${piece.part} comes off a second time`);
      parts.set(piece.part!, board);
    } else if (bench.has(piece.name) || used.has(piece.name)) say(`${piece.name} is there already`);
    else {
      bench.set(piece.name, board);
      if (piece.becomes === "cut") waiting.add(piece.name);
    }
  }

  function checkHeld(cut: Pick<RipCut, "trouble">, { length, width }: Board, say: (fault: string) => void): void {
    const held = Math.max(length, width) >= room.heldLength - 1e-3 && Math.min(length, width) >= room.heldWidth - 1e-3;
    if (!held && cut.trouble !== "small") say(`${sizeOf({ length, width })} is too small to hold`);
    if (held && cut.trouble === "small") say("is called small and is not");
  }

  function checkReach(
    cut: Pick<RipCut, "saw" | "way" | "along" | "setting" | "trouble">,
    { length, width }: Board,
    say: (fault: string) => void,
  ): void {
    if (cut.saw === "track" || cut.trouble === "reach") return;
    const { reach = 1e9, sled = 1e9, onePerson = { length: 1e9, width: 1e9 } } = room;
    const run = cut.along ? length : width;
    if (cut.way === "rip" && cut.setting > reach + 1e-3) say(`the fence does not reach ${cut.setting}`);
    if (cut.way === "cross-cut" && run > sled + 1e-3) say(`the sled does not take ${run}`);
    const isLarge = Math.max(length, width) > onePerson.length || Math.min(length, width) > onePerson.width;
    if (isLarge && room.kerfs.track > 0) say(`${sizeOf({ length, width })} is not brought to the table saw`);
  }

  function checkSetting(cut: RipCut, say: (fault: string) => void): void {
    const guide = cut.saw === "track" ? `track ${cut.along}` : cut.way;
    if (!cut.fresh && Math.abs((stands.get(guide) ?? Number.NaN) - cut.setting) > 1e-3)
      say(`needs ${cut.setting} set, and is told to be set already`);
    if (!cut.fresh && !stands.has(guide)) say("is told to be set already, and never was");
    stands.set(guide, cut.setting);
  }
}

/** An odd piece on both sides of the blade. A cut along is measured from the true edge, one across from its left end. */
function sawn(form: PathsD, { along, setting, kerf }: RipCut): readonly [off: PathsD, rest: PathsD] {
  const y0 = Math.min(...form.flat().map(({ y }) => y));
  const x0 = Math.min(...form.flat().flatMap(({ x, y }) => (y < y0 + 1e-3 ? [x] : [])));
  const from = (along ? y0 : x0) + setting;
  const [far, to] = [1e5, from + kerf];
  const halves: PathsD = along
    ? [box(-far, -far, far, from), box(-far, to, far, far)]
    : [box(-far, -far, from, far), box(to, -far, far, far)];
  const [off, rest] = halves.map((half) => intersectD(form, [half], FillRule.NonZero, 6));
  return [off!, rest!];
}

const box = (x0: number, y0: number, x1: number, y1: number): PathD => [
  { x: x0, y: y0 },
  { x: x1, y: y0 },
  { x: x1, y: y1 },
  { x: x0, y: y1 },
];
const cornersOf = ({ x, y, length, width }: RipPiece) => box(x, y, x + length, y + width);
const area = (paths: PathsD) => Math.abs(areaPathsD(paths));

/** The piece that lies lowest, with its holes. */
function lowest(all: PathsD): PathsD {
  const outers = all.filter((path) => areaPathsD([path]) > 0);
  const low = (path: PathD) => Math.min(...path.map(({ y }) => y));
  const [first] = outers.toSorted((a, b) => low(a) - low(b) || areaPathsD([b]) - areaPathsD([a]));
  return first ? intersectD(all, [first], FillRule.NonZero, 6) : [];
}

/** The narrower way across the extents of the largest piece, mm. */
function thickest(all: PathsD): number {
  const sizes = all.map((path) => {
    const [xs, ys] = [path.map(({ x }) => x), path.map(({ y }) => y)];
    return Math.min(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys));
  });
  return Math.max(0, ...sizes);
}

const isLike = (a: Board, b: Board) => Math.abs(a.length - b.length) < hair && Math.abs(a.width - b.width) < hair;
const sizeOf = ({ length, width }: Board) => `${length} x ${width}`;
