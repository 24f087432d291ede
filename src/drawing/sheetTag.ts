import { pointInProfile, pointInRegion } from "../geometry/inside.js";
import { extentsOf } from "../geometry/measure.js";
import type { Extents, Point, Region } from "../geometry/profile.js";
import { crosses, meet, overlap, type Segment } from "./dimensions/labels.js";
import type { Item, Text } from "./page.js";
import { segmentsOf } from "./partView.js";
import { filledBox, lineThrough, polar } from "./shapes.js";
import { boxOf, write } from "./textBox.js";

type Line = { readonly text: string; readonly height: number; readonly bold: boolean };

/** Base line to base line of a tag, mm. */
const step = 4.4;
/** Places tried across a part, each way. */
const tries = 15;

/** What a part on a sheet is called: its number always, its name, size and how it lies where they have room. */
export type TagWords = { readonly number: string; readonly name: string; readonly size: string; readonly lies: string };

/**
 * A part's tag on a sheet, `region` on paper: near its middle, clear of its edges and of the `others`, level or upright. Of
 * several forms the fullest that has a clear place, on the part or else in an opening where nothing lies; never across the
 * part's edge. Undefined where not even the number has room.
 */
export function sheetTag(words: TagWords, region: Region, others: readonly Region[]): readonly Text[] | undefined {
  const extents = extentsOf(region.outer);
  const lines = [region, ...others].flatMap(edgesOf).filter((line) => crosses(line, extents));
  const centres = centresIn(extents);
  const onPart = (at: Point) => pointInRegion(region, at);
  const inOpening = (at: Point) =>
    region.holes.some((hole) => pointInProfile(hole, at)) && !others.some((other) => pointInRegion(other, at));
  const ways = [
    { lies: onPart, turn: 0 },
    { lies: onPart, turn: Math.PI / 2 },
    { lies: inOpening, turn: 0 },
  ];
  for (const form of formsOf(words)) {
    for (const { lies, turn } of ways) {
      const box = boxAround(form, turn);
      const centre = centres.find((at) => isClear(box, at, lines) && lies(at));
      if (centre) return textsOf(form, centre, turn);
    }
  }
  return undefined;
}

/**
 * A part's number beside it, with a line to it, for one that has no room for it: on the nearest place of `room` that is
 * clear of all parts and of the words that are there, the line across no other part and no words if that can be.
 */
export function tagBeside(
  number: string,
  part: Region,
  others: readonly Region[],
  taken: readonly Extents[],
  room: Extents,
): readonly Item[] {
  const hold = part.outer[0]!;
  const lines = [part, ...others].flatMap(edgesOf);
  const theirs = others.flatMap(edgesOf);
  const form = [{ text: number, height: 2.5, bold: true }];
  const box = boxAround(form, 0);
  const boxAt = ({ x, y }: Point): Extents => ({
    min: { x: x + box.min.x, y: y + box.min.y },
    max: { x: x + box.max.x, y: y + box.max.y },
  });
  const isFree = (at: Point) =>
    isWithin(boxAt(at), room) &&
    isClear(box, at, lines) &&
    !taken.some((each) => overlap(each, boxAt(at), 0)) &&
    ![part, ...others].some((each) => pointInRegion(each, at));
  const places = distances.flatMap((away) => directions.map((angle) => polar(hold, away, angle))).filter(isFree);
  const isOpen = (leader: Segment) =>
    !theirs.some((line) => meet(line, leader)) && !taken.some((each) => crosses(leader, each));
  const at = places.find((place) => isOpen([place, hold])) ?? places[0];
  if (at === undefined) return [];
  const texts = textsOf(form, at, 0);
  return [lineThrough([at, hold], "narrow"), ...texts.flatMap((each) => [filledBox(boxOf(each), 1), each])];
}

/** Places tried round a part, mm of paper and rad. */
const distances = [4, 6, 9, 13, 18, 25, 34];
const directions = Array.from({ length: 24 }, (_, i) => (i * Math.PI) / 12);

const isWithin = (box: Extents, room: Extents): boolean =>
  box.min.x > room.min.x && box.max.x < room.max.x && box.min.y > room.min.y && box.max.y < room.max.y;

function edgesOf(region: Region): readonly Segment[] {
  return [region.outer, ...region.holes].flatMap((path) =>
    segmentsOf({ kind: "stroke", path, closed: true, line: "narrow" }),
  );
}

function formsOf({ number, name, size, lies }: TagWords): readonly (readonly Line[])[] {
  const head = { text: number, height: 3.5, bold: true };
  const small = (text: string) => ({ text, height: 2.5, bold: false });
  const last = lies === "" ? [] : [{ text: lies, height: 2.5, bold: true }];
  return [
    [head, ...(name === "" ? [] : [small(name)]), small(size), ...last],
    [head, small(size), ...last],
    [{ text: [number, name].join("  "), height: 2.5, bold: true }, small(size), ...last],
    [{ text: [number, size, lies].filter(Boolean).join("  "), height: 2.5, bold: true }],
    [head],
    [{ text: number, height: 2.5, bold: true }],
    [{ text: number, height: 1.8, bold: true }],
  ];
}

/** Places over an area, those nearest to its middle first. */
function centresIn({ min, max }: Extents): readonly Point[] {
  const middle = { x: (min.x + max.x) / 2, y: (min.y + max.y) / 2 };
  const at = (low: number, high: number, i: number) => low + ((high - low) * i) / (tries - 1);
  const places = Array.from({ length: tries * tries }, (_, i) => ({
    x: at(min.x, max.x, i % tries),
    y: at(min.y, max.y, Math.floor(i / tries)),
  }));
  const away = (p: Point) => Math.hypot(p.x - middle.x, p.y - middle.y);
  return places.sort((a, b) => away(a) - away(b) || a.y - b.y || a.x - b.x);
}

function isClear({ min, max }: Extents, { x, y }: Point, lines: readonly Segment[]): boolean {
  const box = { min: { x: min.x + x, y: min.y + y }, max: { x: max.x + x, y: max.y + y } };
  return !lines.some((line) => crosses(line, box));
}

/** The paper a tag takes, seen from its middle. */
function boxAround(lines: readonly Line[], turn: number): Extents {
  const boxes = textsOf(lines, { x: 0, y: 0 }, turn).map(boxOf);
  // the smallest words are there because there is hardly any room
  const edge = lines.every(({ height }) => height < 2.5) ? 0.3 : 0.6;
  return {
    min: { x: Math.min(...boxes.map(({ min }) => min.x)) - edge, y: Math.min(...boxes.map(({ min }) => min.y)) - edge },
    max: { x: Math.max(...boxes.map(({ max }) => max.x)) + edge, y: Math.max(...boxes.map(({ max }) => max.y)) + edge },
  };
}

function textsOf(lines: readonly Line[], centre: Point, turn: number): readonly Text[] {
  return lines.map((line, i) => {
    const down = step * (i - (lines.length - 1) / 2) + line.height / 2;
    const at = turn === 0 ? { x: centre.x, y: centre.y - down } : { x: centre.x + down, y: centre.y };
    return write(at, line.text, { height: line.height, bold: line.bold, anchor: "middle", turn });
  });
}
