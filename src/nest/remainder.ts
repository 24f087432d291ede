import { intersection } from "../geometry/boolean.js";
import { areaOfRegion, extentsOf } from "../geometry/measure.js";
import { offsetRegion } from "../geometry/offset.js";
import type { Profile, Region } from "../geometry/profile.js";
import { rectangle } from "../geometry/shapes.js";
import { sureDifference } from "../geometry/sure.js";
import type { NestedSheet, Process } from "../model/build.js";
import type { Part } from "../model/part.js";
import type { Shop } from "../model/shop.js";
import { clearArea } from "../shop/clearArea.js";
import { rules } from "../shop/rules.js";
import type { Rectangle } from "./clearRectangle.js";
import { clearRectangles, type Least } from "./clearRectangles.js";
import { toSheet } from "./placed.js";
import { type Sawing, sawingOf } from "./saw/sawing.js";
import { laidOn, squareRests, withStripBevels } from "./saw/stripBevels.js";

/** What is left of a sheet that is worth keeping. Sheet frame, mm. */
export type Remainder = {
  /** Its pieces as they are, with what was cut out of them as holes; the largest first. */
  readonly regions: readonly Region[];
  /** The same as rectangles that can be cut from it, a kerf between them; the largest first. */
  readonly rectangles: readonly Rectangle[];
};

/** From which size on what is left over goes to the rack. */
export function leastOffcut(shop: Pick<Shop, "least offcut">): Least {
  return shop["least offcut"] ?? { length: rules.leastOffcutLength.value, width: rules.leastOffcutWidth.value };
}

/**
 * What a sheet leaves: all of it but the blanks with their gaps, the trim, the zones and what an odd offcut lacks. Of that
 * only what is wide enough to be kept: slivers between parts and necks between pieces are waste. A sheet that is sawn
 * leaves the pieces that its cuts leave, within the trim, but for those that go on as sheets of their own.
 */
export function remainderOf(
  sheet: NestedSheet,
  parts: readonly Part[],
  process: Pick<Process, "parts">,
  shop: Pick<Shop, "least offcut" | "saw" | "track saw">,
): Remainder {
  const least = leastOffcut(shop);
  const whole = clearArea(sheet, sheet.zones ?? []);
  const left = sheet.sawn
    ? leftBySaw(sheet, parts, process, sawingOf(shop)).flatMap((piece) =>
        whole.flatMap((region) => intersection(piece, region)),
      )
    : whole.flatMap((region) => without(region, blanksOn(sheet, parts, process)));
  const wide = left.flatMap((region) => withoutNecks(region, Math.min(least.length, least.width)));
  const pieces = wide.map((region) => ({ region, rectangles: clearRectangles([region], least, shop.saw.kerf) }));
  const kept = pieces.filter(({ rectangles }) => rectangles.length > 0);
  return {
    regions: kept.map(({ region }) => region).sort((a, b) => areaOfRegion(b) - areaOfRegion(a)),
    rectangles: kept.flatMap(({ rectangles }) => rectangles).sort((a, b) => b.length * b.width - a.length * a.width),
  };
}

/** The blanks as they lie, grown by their gaps. */
function blanksOn({ placed }: NestedSheet, parts: readonly Part[], process: Pick<Process, "parts">): readonly Region[] {
  return placed.flatMap((one) => {
    const part = parts.find((each) => each.id === one.part);
    if (part === undefined) return [];
    const gap = process.parts.find((each) => each.part === one.part)?.gap ?? 0;
    const blank = toSheet(part, one).region(part.blank);
    const grown = gap > 0 ? offsetRegion(blank, gap) : [blank];
    return grown.length > 0 ? grown : [boxAbout(blank, gap)];
  });
}

const boxAbout = (region: Region, by: number): Region => {
  const { min, max } = extentsOf(region);
  return { outer: rectangle(min.x - by, min.y - by, max.x + by, max.y + by, "around"), holes: [] };
};

/** Where the cut is in doubt the blanks count by their extents: less is left then, never more. */
function without(region: Region, blanks: readonly Region[]): readonly Region[] {
  if (blanks.length === 0) return [region];
  const sure = sureDifference(region, blanks);
  return (
    sure.value ??
    sureDifference(
      region,
      blanks.map((blank) => boxAbout(blank, 0)),
    ).value ??
    []
  );
}

/** Moved in by half a width and out again: what is narrower than the width is gone, all else as it was. */
function withoutNecks(region: Region, width: number): readonly Region[] {
  const half = width / 2 - rounding;
  const cores = offsetRegion(region, -half, { corners: "sharp" });
  return cores.flatMap((core) =>
    offsetRegion(core, half, { corners: "sharp" }).flatMap((wide) => intersection(wide, region)),
  );
}

/** So that a piece which is as wide as asked, but for noise, is kept. mm */
const rounding = 1e-3;

/** The pieces that are neither cut on, nor a part, nor another sheet, as they are when their bevelled edges are cut off. */
function leftBySaw(
  sheet: NestedSheet,
  parts: readonly Part[],
  process: Pick<Process, "parts">,
  sawing: Sawing,
): readonly Region[] {
  if (!sheet.sawn) return [];
  const sawn = withStripBevels(sheet.sawn, laidOn([sheet], parts, process), sawing);
  return squareRests(sawn).map(({ x, y, length, width }) => ({
    outer: edgeOf(x, y, x + length, y + width),
    holes: [],
  }));
}

const edgeOf = (x0: number, y0: number, x1: number, y1: number): Profile => rectangle(x0, y0, x1, y1, "edge");
