import {
  areaPathsD,
  differenceD,
  EndType,
  FillRule,
  inflatePathsD,
  intersectD,
  JoinType,
  type PathsD,
} from "clipper2-ts";
import type { Profile, Region } from "../../../src/geometry/profile.js";
import { tessellate } from "../../../src/geometry/tessellate.js";
import type { NestOrder, NestResult } from "../../../src/nest/engine.js";

// An independent look at what an engine returns: its own turning and moving, clipper2 for what meets what.

/** What polygons of arcs lose, mm; a fault is deeper. */
const chord = 0.005;
const slack = 0.015;
const decimals = 6;

/** All that is wrong, in words; empty if sound. */
export function sheetFaults(order: NestOrder, result: NestResult): string[] {
  const faults: string[] = [];
  const laid = result.sheets.flatMap((sheet) => sheet.placed.map(({ item }) => item));
  for (const [i, item] of order.items.entries()) {
    const times = [...laid, ...result.left].filter((one) => one === i).length;
    if (times !== 1) faults.push(`${item.id} is there ${times} times`);
  }
  for (const [row, stock] of order.stock.entries()) {
    const used = result.sheets.filter((sheet) => sheet.stock === row).length;
    if (stock.count !== undefined && used > stock.count) faults.push(`${used} of ${stock.count} ${stock.name}`);
  }
  for (const sheet of result.sheets) faults.push(...faultsOfSheet(order, sheet));
  return faults;
}

function faultsOfSheet(order: NestOrder, sheet: NestResult["sheets"][number]): string[] {
  const faults: string[] = [];
  const { length, outline, trim, width, zones = [] } = order.stock[sheet.stock]!;
  const whole: PathsD = [
    outline
      ? tessellate(outline, chord)
      : [
          { x: 0, y: 0 },
          { x: length, y: 0 },
          { x: length, y: width },
          { x: 0, y: width },
        ],
  ];
  const room = grown(whole, -trim + slack);
  const parts = sheet.placed.map((one) => {
    const { gap, id, shape, turns } = order.items[one.item]!;
    if (!turns.includes(one.turn)) faults.push(`${id} is turned by ${one.turn}`);
    return { id, gap, paths: laid(shape, one.turn, one.x, one.y) };
  });
  for (const [i, a] of parts.entries()) {
    if (areaOf(differenceD(a.paths, room, FillRule.NonZero, decimals)) > 1e-4)
      faults.push(`${a.id} lies over the trim`);
    const zone = zones.map((each) => tessellate(each, chord));
    if (zone.length > 0 && meets(grown(a.paths, a.gap - slack), zone)) faults.push(`${a.id} lies in a zone`);
    for (const b of parts.slice(i + 1).filter((each) => isNear(a.paths, each.paths, Math.max(a.gap, each.gap))))
      if (meets(grown(a.paths, Math.max(a.gap, b.gap) - slack), b.paths))
        faults.push(`${a.id} and ${b.id} are too near`);
  }
  return faults;
}

function laid({ outer, holes }: Region, turn: number, x: number, y: number): PathsD {
  const c = Math.cos(turn);
  const s = Math.sin(turn);
  const lie = (profile: Profile) =>
    tessellate(profile, chord).map((p) => ({ x: c * p.x - s * p.y, y: s * p.x + c * p.y }));
  const paths = [lie(outer), ...holes.map((hole) => lie(hole).reverse())];
  const minX = paths[0]!.reduce((least, p) => Math.min(least, p.x), Number.POSITIVE_INFINITY);
  const minY = paths[0]!.reduce((least, p) => Math.min(least, p.y), Number.POSITIVE_INFINITY);
  return paths.map((path) => path.map((p) => ({ x: p.x - minX + x, y: p.y - minY + y })));
}

const grown = (paths: PathsD, by: number): PathsD =>
  inflatePathsD(paths, by, JoinType.Round, EndType.Polygon, 2, decimals, chord);
const meets = (a: PathsD, b: PathsD): boolean => areaOf(intersectD(a, b, FillRule.NonZero, decimals)) > 1e-4;
/** Whether the extents of two are within a distance: those farther apart need no closer look. */
function isNear([a]: PathsD, [b]: PathsD, distance: number): boolean {
  const apart = (pick: (p: { x: number; y: number }) => number) => {
    const [one, other] = [a!.map(pick), b!.map(pick)];
    return Math.max(Math.min(...other) - Math.max(...one), Math.min(...one) - Math.max(...other));
  };
  return apart((p) => p.x) < distance && apart((p) => p.y) < distance;
}

const areaOf = (paths: PathsD): number => Math.abs(areaPathsD(paths));
