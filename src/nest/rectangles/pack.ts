import type { NestStock } from "../engine.js";
import { pick, type Random } from "../random.js";
import type { Sawing } from "../saw/sawing.js";
import type { Piece } from "./cutTree.js";
import { type Ground, groundOf } from "./ground.js";
import { noise, type Rest, type Span, type Split, spanIn, splitRest } from "./rest.js";
import type { Tile, TileLie } from "./tile.js";

/** How one layout is made. Which rule serves an order best is not known beforehand: the search tries many. */
export type Rule = {
  /** Which rest a tile goes to: the least left beside it; the least area left, or that with a tile as long or as wide as
   *  the rest much preferred; the lowest and then leftmost. */
  readonly fit: "beside" | "area" | "flush" | "low";
  /** How what remains is parted: the same way throughout, so that the larger rest is largest, across the longer side of
   *  the corner left over, by chance, or only once something else is laid beside it or above. */
  readonly split: Split | "larger" | "shorter" | "chance" | "late";
  /** The whole rack is open from the start; or a sheet is opened when no open one takes the tile. */
  readonly rack: "open" | "in turn";
  /** Which sheet is opened: the first kind that takes the tile, or any. */
  readonly open: "first" | "any";
};

/** An item laid in a rest, and how that rest was parted: what the item took of it, and what is left beside and above. */
export type Laid = {
  readonly item: number;
  readonly x: number;
  readonly y: number;
  readonly turn: number;
  readonly rest: Rest;
  readonly w: number;
  readonly h: number;
  readonly split: Split;
  readonly right?: Rest;
  readonly above?: Rest;
};
export type OpenSheet = {
  readonly stock: number;
  rests: Rest[];
  readonly laid: Laid[];
  /** By the rests that share them. */
  readonly corners: Map<Rest, Corner>;
  /** How it is cut up, where that was changed piece by piece (insert.ts): what is said of each tile then is only its place. */
  readonly tree?: Piece;
};
/** A tile of which it is not decided yet how its rest is parted, and what lies beside and above it, each with the corner. */
type Corner = { readonly laid: Laid; readonly right: Rest; readonly above: Rest };
export type Packing = { readonly sheets: readonly OpenSheet[]; readonly left: readonly number[] };

type Spot = {
  readonly sheet: OpenSheet;
  readonly rest: Rest;
  readonly lie: TileLie;
  readonly across: Span;
  readonly up: Span;
  readonly splits: readonly Split[];
  readonly splitsOf: Ground["splits"];
  readonly cost: number;
};

/** Lays the tiles one after another, each in the best rest of all open sheets, every rest parted by full cuts. */
export function pack(
  tiles: readonly Tile[],
  stock: readonly NestStock[],
  kerf: number,
  rule: Rule,
  random: Random,
  sawing?: Sawing,
): Packing {
  const used = stock.map(() => 0);
  const sheets: OpenSheet[] = [];
  const left: number[] = [];
  const grounds = stock.map((row) => groundOf(row, kerf, sawing));
  const least = Math.min(...tiles.map((tile) => tile.short));
  const open = (row: number): OpenSheet => {
    used[row] = used[row]! + 1;
    const sheet = { stock: row, rests: [grounds[row]!.whole], laid: [], corners: new Map() };
    sheets.push(sheet);
    return sheet;
  };
  if (rule.rack === "open")
    stock.forEach((row, i) => {
      if (row.cost === 0) for (let n = 0; n < Math.min(row.count ?? 0, tiles.length); n++) open(i);
    });
  for (const tile of tiles) {
    let spot = bestSpot(tile, sheets, grounds, rule);
    if (!spot) {
      const takes = stock.flatMap((row, i) =>
        used[i]! < (row.count ?? Number.POSITIVE_INFINITY) && fitsAlone(tile, grounds[i]!) ? [i] : [],
      );
      const [first, ...others] = takes;
      if (first === undefined) {
        left.push(tile.item);
        continue;
      }
      const fresh = open(rule.open === "first" ? first : pick(random, [first, ...others]));
      spot = bestSpot(tile, [fresh], grounds, rule);
    }
    if (spot) lay(tile, spot, rule, random, least);
  }
  return { sheets: sheets.filter((sheet) => sheet.laid.length > 0), left };
}

const fitsAlone = (tile: Tile, { whole, splits }: Ground): boolean =>
  tile.lies.some((lie) => {
    if (lie.least.w > whole.w + noise || lie.least.h > whole.h + noise) return false;
    return splits(whole, Math.min(lie.w, whole.w), Math.min(lie.h, whole.h)).length > 0;
  });

function bestSpot(tile: Tile, sheets: readonly OpenSheet[], grounds: readonly Ground[], rule: Rule): Spot | undefined {
  let least = Number.POSITIVE_INFINITY;
  let best: Spot | undefined;
  for (const sheet of sheets) {
    const ground = grounds[sheet.stock]!;
    for (const rest of sheet.rests)
      for (const lie of tile.lies) {
        if (lie.least.w > rest.w + noise || lie.least.h > rest.h + noise) continue;
        // most fit without anything left free beside them: these are only looked at closely if they cost less
        const isPlain = tile.pad === 0 && lie.w <= rest.w + noise && lie.h <= rest.h + noise;
        if (isPlain && costOf(rest, Math.min(lie.w, rest.w), Math.min(lie.h, rest.h), rule) >= least - noise) continue;
        const spot = spotIn(tile, sheet, rest, lie, ground, rule);
        if (!spot || spot.cost >= least - noise) continue;
        best = spot;
        least = spot.cost;
      }
  }
  return best;
}

function spotIn(
  tile: Tile,
  sheet: OpenSheet,
  rest: Rest,
  lie: TileLie,
  { whole, splits: splitsOf }: Ground,
  rule: Rule,
): Spot | undefined {
  const across = spanIn(rest.x, rest.w, whole.w, lie.w, tile.pad, lie.least.w);
  const up = across && spanIn(rest.y, rest.h, whole.h, lie.h, tile.pad, lie.least.h);
  if (!across || !up) return undefined;
  const splits = splitsOf(rest, across.taken, up.taken);
  if (splits.length === 0) return undefined;
  return { sheet, rest, lie, across, up, splits, splitsOf, cost: costOf(rest, across.taken, up.taken, rule) };
}

/** What an area left over counts for where it is one strip: nothing is left beside the tile. */
const flushShare = 0.3;

function costOf(rest: Rest, w: number, h: number, rule: Rule): number {
  if (rule.fit === "beside") return Math.min(rest.w - w, rest.h - h);
  if (rule.fit === "area") return rest.w * rest.h - w * h;
  if (rule.fit === "flush") {
    const flush = rest.w - w < noise || rest.h - h < noise;
    return (rest.w * rest.h - w * h) * (flush ? flushShare : 1);
  }
  return rest.y + h + rest.x / 1e3;
}

/** Rests narrower than the narrowest tile, `least`, are not kept: nothing would ever lie in them. */
function lay(tile: Tile, spot: Spot, rule: Rule, random: Random, least: number): void {
  const { sheet, lie, across, up } = spot;
  const rest = settle(sheet, spot, least);
  const x = rest.x + across.before;
  const y = rest.y + up.before;
  const w = across.taken;
  const h = up.taken;
  const splits = rest === spot.rest ? spot.splits : spot.splitsOf(rest, w, h);
  const wanted = splitBy(rule, rest, w, h, random);
  const split = splits.includes(wanted) ? wanted : splits[0]!;
  const laid = { item: tile.item, x, y, turn: lie.turn, rest, w, h, split, ...splitRest(rest, w, h, split) };
  sheet.laid.push(laid);
  const inside = lie.openings.map((hole) => ({ ...hole, x: x + hole.x, y: y + hole.y }));
  const open = rule.split === "late" && splits.length === 2 ? openCorner(sheet, laid, least) : undefined;
  const rests = open ?? [laid.right, laid.above];
  const fresh = [...inside, ...rests].filter((each): each is Rest => each !== undefined && isKept(each, least));
  sheet.rests = [...sheet.rests.filter((each) => each !== rest), ...fresh];
}

const isKept = (rest: Rest, least: number): boolean => Math.min(rest.w, rest.h) >= least - noise;

/**
 * What lies beside and above a tile as long as it is not said which of the two has the corner between them: both have it,
 * and the first to be used decides. None where there is only one of them.
 */
function openCorner(sheet: OpenSheet, laid: Laid, least: number): readonly Rest[] | undefined {
  const { rest, w, h } = laid;
  const { right } = splitRest(rest, w, h, "across");
  const { above } = splitRest(rest, w, h, "along");
  if (!right || !above || !isKept(right, least) || !isKept(above, least)) return undefined;
  const corner: Corner = { laid, right, above };
  sheet.corners.set(right, corner);
  sheet.corners.set(above, corner);
  return [right, above];
}

/** The rest that is used, once it is decided who has the corner: it itself if that is needed, else what is kept larger so. */
function settle(sheet: OpenSheet, { rest, across, up, splitsOf }: Spot, least: number): Rest {
  const corner = sheet.corners.get(rest);
  if (!corner) return rest;
  const { laid, right, above } = corner;
  sheet.corners.delete(right);
  sheet.corners.delete(above);
  const isRight = rest === right;
  // with the other one keeping the corner there is still room
  const small = splitRest(laid.rest, laid.w, laid.h, isRight ? "along" : "across")[isRight ? "right" : "above"];
  const fits = isRight ? up.taken <= laid.h + noise : across.taken <= laid.w + noise;
  const spared = fits && small !== undefined && splitsOf(small, across.taken, up.taken).length > 0;
  const split: Split = isRight === spared ? "along" : "across";
  const parts = splitRest(laid.rest, laid.w, laid.h, split);
  const kept = split === "across" ? { right, above: parts.above } : { right: parts.right, above };
  sheet.laid[sheet.laid.indexOf(laid)] = { ...laid, split, ...kept };
  const [used, other] = isRight ? [kept.right, kept.above] : [kept.above, kept.right];
  const others = other && isKept(other, least) ? [other] : [];
  sheet.rests = [...sheet.rests.filter((each) => each !== right && each !== above), ...others];
  return used!;
}

function splitBy(rule: Rule, rest: Rest, w: number, h: number, random: Random): Split {
  if (rule.split === "along" || rule.split === "across") return rule.split;
  if (rule.split === "shorter") return rest.w - w < rest.h - h ? "along" : "across";
  if (rule.split === "chance") return random() < 0.5 ? "along" : "across";
  const along = Math.max((rest.w - w) * h, rest.w * (rest.h - h));
  const across = Math.max((rest.w - w) * rest.h, w * (rest.h - h));
  return along > across ? "along" : "across";
}
