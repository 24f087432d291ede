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
import type { Profile } from "../../src/geometry/profile.js";
import { tessellate } from "../../src/geometry/tessellate.js";
import type { Layout, NestedSheet, Placed, Process } from "../../src/model/build.js";
import type { Part } from "../../src/model/part.js";

// An independent look at a layout: blanks as polygons, laid by this file's own arithmetic, compared by clipper2-ts.

/** Chord error of the polygons, mm, and so what a distance between two of them may be out by (twice, with noise). */
const chord = 0.01;
const slack = 0.025;
/** Decimals that clipper2 keeps, and an area that is nothing: a hair of the slack along a metre. */
const decimals = 6;
const nothing = 1e-3;

/** All that is wrong with a layout, in words; empty if it is sound. */
export function faultsOf(layout: Layout, parts: readonly Part[], process: Process): string[] {
  return [...countFaults(layout, parts), ...layout.sheets.flatMap((sheet) => sheetFaults(sheet, parts, process))];
}

function countFaults(layout: Layout, parts: readonly Part[]): string[] {
  const names = layout.sheets.map((sheet) => sheet.sheet);
  const twice = names.filter((name, i) => names.indexOf(name) !== i).map((name) => `two sheets are called ${name}`);
  const faults = parts.flatMap((part) => {
    const sheets = layout.sheets.flatMap((sheet) =>
      sheet.placed.filter((one) => one.part === part.id).map(() => sheet),
    );
    const left = layout.left.filter((id) => id === part.id).length;
    if (sheets.length + left !== 1) return [`${part.id} is placed ${sheets.length} times and left ${left} times`];
    return sheets.filter((sheet) => sheet.board !== part.board).map((sheet) => `${part.id} lies on ${sheet.board}`);
  });
  return [...twice, ...faults];
}

function sheetFaults(sheet: NestedSheet, parts: readonly Part[], process: Process): string[] {
  const laid = sheet.placed.map((placed) => {
    const part = parts.find((each) => each.id === placed.part)!;
    const how = process.parts.find((each) => each.part === placed.part)!;
    const polygons = polygonsOf(part, placed);
    return { part, placed, how, polygons, box: boxOf(polygons) };
  });
  const faults: string[] = [];
  laid.forEach((a, i) => {
    const { trim } = sheet;
    const inside =
      a.box.x0 > trim - slack &&
      a.box.y0 > trim - slack &&
      a.box.x1 < sheet.length - trim + slack &&
      a.box.y1 < sheet.width - trim + slack;
    if (!inside) faults.push(`${a.part.id} lies over the trim of ${sheet.sheet}`);
    if (!a.how.turns.includes(a.placed.turn)) faults.push(`${a.part.id} is turned by ${a.placed.turn}`);
    if (a.placed.backUp !== (a.how.sides[0] === "back")) faults.push(`${a.part.id} lies the wrong way up`);
    for (const b of laid.slice(i + 1)) {
      // at a saw each has half of its own gap left on its blank, and the cut goes between
      const gap = sheet.sawn ? (a.how.gap + b.how.gap) / 2 : Math.max(a.how.gap, b.how.gap);
      if (apart(a.box, b.box, gap)) continue;
      if (areaOf(intersectD(a.polygons, b.polygons, FillRule.NonZero, decimals)) > nothing)
        faults.push(`${a.part.id} and ${b.part.id} overlap on ${sheet.sheet}`);
      else if (areaOf(intersectD(grown(a.polygons, gap - slack), b.polygons, FillRule.NonZero, decimals)) > nothing)
        faults.push(`${a.part.id} and ${b.part.id} are nearer than ${gap} on ${sheet.sheet}`);
    }
  });
  return faults;
}

/** The area of a sheet that no blank covers, mm2. */
export function wasteOf(sheet: NestedSheet, parts: readonly Part[]): number {
  const whole: PathsD = [
    [
      { x: 0, y: 0 },
      { x: sheet.length, y: 0 },
      { x: sheet.length, y: sheet.width },
      { x: 0, y: sheet.width },
    ],
  ];
  const laid = sheet.placed.flatMap((one) => polygonsOf(parts.find((part) => part.id === one.part)!, one));
  return areaOf(differenceD(whole, laid, FillRule.NonZero, decimals));
}

type Box = { readonly x0: number; readonly y0: number; readonly x1: number; readonly y1: number };

/** Whether the sheet can be taken apart into single blanks by cuts, each from edge to edge and `kerf` wide. */
export function isGuillotine(boxes: readonly Box[], kerf: number): boolean {
  if (boxes.length <= 1) return true;
  for (const [low, high] of [
    ["x0", "x1"],
    ["y0", "y1"],
  ] as const) {
    const sorted = [...boxes].sort((a, b) => a[low] - b[low]);
    let end = Number.NEGATIVE_INFINITY;
    for (const [i, box] of sorted.entries()) {
      if (i > 0 && box[low] - end >= kerf - 1e-6)
        return isGuillotine(sorted.slice(0, i), kerf) && isGuillotine(sorted.slice(i), kerf);
      end = Math.max(end, box[high]);
    }
  }
  return false;
}

export function boxesOf(sheet: NestedSheet, parts: readonly Part[]): Box[] {
  return sheet.placed.map((one) => boxOf(polygonsOf(parts.find((part) => part.id === one.part)!, one)));
}

/** The outer counter-clockwise, the holes clockwise, as clipper2 wants them. */
function polygonsOf(part: Part, placed: Placed): PathsD {
  const lie = ({ x, y }: { x: number; y: number }) => {
    const mx = placed.backUp ? -x : x;
    return {
      x: mx * Math.cos(placed.turn) - y * Math.sin(placed.turn),
      y: mx * Math.sin(placed.turn) + y * Math.cos(placed.turn),
    };
  };
  const loop = (profile: Profile, hole: boolean) => {
    const points = tessellate(profile, chord).map(lie);
    return hole === placed.backUp ? points : points.reverse();
  };
  const { outer, holes } = part.blank;
  const polygons = [loop(outer, false), ...holes.map((hole) => loop(hole, true))];
  const { x0, y0 } = boxOf(polygons);
  return polygons.map((points) => points.map((p) => ({ x: p.x - x0 + placed.x, y: p.y - y0 + placed.y })));
}

function boxOf(polygons: PathsD): Box {
  const xs = polygons[0]!.map((p) => p.x);
  const ys = polygons[0]!.map((p) => p.y);
  return { x0: Math.min(...xs), y0: Math.min(...ys), x1: Math.max(...xs), y1: Math.max(...ys) };
}

const apart = (a: Box, b: Box, gap: number) =>
  a.x1 + gap <= b.x0 || b.x1 + gap <= a.x0 || a.y1 + gap <= b.y0 || b.y1 + gap <= a.y0;

const grown = (polygons: PathsD, by: number): PathsD =>
  by > 0 ? inflatePathsD(polygons, by, JoinType.Round, EndType.Polygon, 2, decimals, 0.001) : polygons;

const areaOf = (polygons: PathsD) => Math.abs(areaPathsD(polygons));
