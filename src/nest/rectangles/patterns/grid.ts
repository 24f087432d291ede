import { fitsOn, type Kind, type Size, sizeOn } from "./kind.js";
import { groupsWithin, rasterOf, type Side, type Sure, sideOf, sumsUpTo } from "./side.js";

/** A way in which a kind may lie, and the first lengths of both sides that take it. */
export type Lay = { readonly kind: number; readonly lie: number; readonly x: number; readonly y: number };

/** The pieces of a sheet that are looked at: every length of the one side by every length of the other. */
export type Grid = {
  readonly x: Side;
  readonly y: Side;
  readonly lays: readonly Lay[];
  /** Every length is looked at by itself: what is found is the best there is, and can be cut. */
  readonly isExact: boolean;
  /** Pieces and cuts to look at for one filling. */
  readonly work: number;
};

/**
 * The pieces of a sheet to look at, so few that one filling takes no more than about `work` steps: lengths near one another
 * count as one where there are too many.
 *
 * Returns: undefined where sizes are too small beside the sheet even then, or nothing fits.
 */
export function gridOf(kinds: readonly Kind[], sheet: Size, work: number, sure: Sure): Grid | undefined {
  const fitting = kinds.flatMap(({ lies }, kind) =>
    lies.flatMap((each, lie) => (fitsOn(each, sheet) ? [{ kind, lie, ...sizeOn(each, sheet) }] : [])),
  );
  if (fitting.length === 0) return undefined;
  const [widths, heights] = [fitting.map(({ w }) => w), fitting.map(({ h }) => h)];
  const across = scaleOf(sheet.w, widths, sure);
  const up = scaleOf(sheet.h, heights, sure);
  const reach = reachFor([across, up], work);
  if (reach === undefined) return undefined;
  const [x, y] = [across, up].map((scale) => sideOf(groupsIn(scale, reach), scale.below, sure)) as [Side, Side];
  const lays = fitting.flatMap(({ kind, lie }, i): Lay[] => {
    const first = { x: firstFrom(x.lengths, across.sizes[i]!), y: firstFrom(y.lengths, up.sizes[i]!) };
    return first.x < 0 || first.y < 0 ? [] : [{ kind, lie, ...first }];
  });
  const isExact = reach === 0 && across.isWhole && up.isWhole;
  return { x, y, lays, isExact, work: x.lengths.length * y.one.length + y.lengths.length * x.one.length };
}

/** A side in whole units. */
type Scale = {
  readonly sizes: readonly number[];
  readonly below: Int32Array;
  readonly raster: readonly number[];
  /** mm */
  readonly unit: number;
  /** Nothing was rounded. */
  readonly isWhole: boolean;
};

/** Units on a side at most. */
const mostUnits = 40_000;

/** What a layout may be off by at each cut, and far below what is sawn, mm. */
const hair = 1e-6;

/** Sizes that have a common measure keep it; others are rounded, up or down as it is to be sure of. */
function scaleOf(length: number, sizes: readonly number[], sure: Sure): Scale {
  const common = sizes.map(inHairs).reduce(greatestCommon, inHairs(length)) * hair;
  const isWhole = common >= 1e-3 && length / common <= mostUnits && sizes.every(isInHairs) && isInHairs(length);
  const unit = isWhole ? common : length / mostUnits;
  const rounded = (size: number) => {
    if (isWhole) return Math.round(size / unit);
    return Math.max(1, sure === "over" ? Math.floor((size - 10 * hair) / unit) : Math.ceil((size - hair) / unit));
  };
  const whole = isWhole ? Math.round(length / unit) : mostUnits;
  const units = sizes.map(rounded);
  const below = sumsUpTo(whole, units);
  return { sizes: units, below, raster: rasterOf(below), unit, isWhole };
}

const inHairs = (size: number) => Math.round(size / hair);
const isInHairs = (size: number) => Math.abs(size / hair - Math.round(size / hair)) < 0.01;
const greatestCommon = (a: number, b: number): number => (b === 0 ? a : greatestCommon(b, a % b));

/** How far apart lengths of one group may be for a filling to take no more than so many steps, mm; 0 if they need not. */
function reachFor(scales: readonly Scale[], work: number): number | undefined {
  const workAt = (reach: number) => {
    const [nx, ny] = scales.map((scale) => groupsIn(scale, reach).length) as [number, number];
    return (nx * ny * (nx + ny)) / 4;
  };
  if (workAt(0) <= work) return 0;
  let low = 0;
  let high = Math.min(...scales.map(({ sizes, unit }) => Math.min(...sizes) * unit)) / 3;
  if (workAt(high) > work) return undefined;
  for (let n = 0; n < 8; n++) {
    const middle = (low + high) / 2;
    if (workAt(middle) > work) low = middle;
    else high = middle;
  }
  return high;
}

const groupsIn = ({ raster, unit }: Scale, reach: number) => groupsWithin(raster, reach / unit);

/** The first of the ascending lengths that is no shorter; -1 if all are. */
const firstFrom = (lengths: readonly number[], size: number): number => lengths.findIndex((length) => length >= size);
