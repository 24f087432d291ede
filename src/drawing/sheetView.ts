import { intersection } from "../geometry/boolean.js";
import { extentsOf } from "../geometry/measure.js";
import { offsetProfile } from "../geometry/offset.js";
import type { Extents, Point, Profile, Region } from "../geometry/profile.js";
import { rectangle as profileOf } from "../geometry/shapes.js";
import type { Show } from "../input/show.js";
import type { NestedSheet, Placed } from "../model/build.js";
import type { Part } from "../model/part.js";
import type { Rectangle } from "../nest/clearRectangle.js";
import { toSheet } from "../nest/placed.js";
import type { Remainder } from "../nest/remainder.js";
import { goingOn } from "../nest/rests.js";
import { boardOf } from "../shop/clearArea.js";
import { overallHeight, overallWidth } from "./dimensions/overall.js";
import { hatch } from "./hatch.js";
import type { Item, Stroke, Text } from "./page.js";
import { partName } from "./partName.js";
import { boxAt, filledBox, rectangle } from "./shapes.js";
import { sheetTag, tagBeside } from "./sheetTag.js";
import { overallSize, runningSize } from "./sizes.js";
import { boxOf, textWidth, write } from "./textBox.js";

/** A part and where it lies. */
export type Lying = { readonly part: Part; readonly placed: Placed };

/** A sheet on paper: its zero corner, and mm of paper for 1 mm. */
export type Laid = { readonly corner: Point; readonly scale: number };

/** Greys, apart from each other on a poor printer too: what is cut away, and what is kept clear. */
const waste = 0.88;
const kept = 0.62;
/** Between the lines over what is left, mm of paper. */
const hatching = 4;

/**
 * A nested sheet: parts white on grey, what is left over hatched with its rectangles dashed and their sizes, zones darker,
 * the trim, the sheet's own size. What goes on to the machine is white within dashes.
 */
export function drawSheet(
  sheet: NestedSheet,
  lying: readonly Lying[],
  rest: Remainder,
  laid: Laid,
  show: Show,
): readonly Item[] {
  const board = onPaper(laid, boardOf(sheet));
  const box = boxAt(laid.corner.x, laid.corner.y, sheet.length * laid.scale, sheet.width * laid.scale);
  const parts = lying.map((each) => regionOnPaper(each, laid));
  const left = [
    ...goingOn(sheet).flatMap((each) => pieceLines(each, `goes on: ${each.goesOn}`, laid, show)),
    ...rest.rectangles.flatMap((each) => pieceLines(each, "left over", laid, show)),
  ];
  const tags = lying.map((each, i) => tagOf(each, parts, i, show));
  const zones = (sheet.zones ?? []).flatMap((zone) => zoneLines(onPaper(laid, zone), board));
  const beside: Item[] = [];
  for (const [i, { part }] of lying.entries()) {
    if (tags[i]) continue;
    const taken = [...left, ...tags.flatMap((tag) => tag ?? []), ...zones, ...beside].flatMap(takenBy);
    beside.push(...tagBeside(part.number, parts[i]!, othersOf(parts, i), taken, box));
  }
  return [
    { kind: "fill", paths: [board], grey: waste },
    ...goingOn(sheet).map((each) => filledBox(boxOnPaper(each, laid), 1)),
    ...rest.regions.flatMap((region) => hatch(regionOn(region, laid), hatching)),
    ...left,
    ...zones,
    ...parts.flatMap(drawBlank),
    stroke(board, "visible"),
    ...trimLines(sheet, laid),
    ...tags.flatMap((tag) => tag ?? []),
    ...beside,
    ...overallWidth(box, box.max.y, overallSize(sheet.length, show)),
    ...overallHeight(box, box.max.x, overallSize(sheet.width, show), 1),
  ];
}

/** Where further words would not be read: over other words, and on what is dark. */
function takenBy(item: Item): readonly Extents[] {
  if (item.kind === "text") return [boxOf(item)];
  return item.kind === "fill" && item.grey === kept
    ? [extentsOf(item.paths[0]!.map((bend) => ({ ...bend, by: "" })))]
    : [];
}

function onPaper({ corner, scale }: Laid, profile: Profile): Profile {
  return profile.map((v) => ({ ...v, x: corner.x + v.x * scale, y: corner.y + v.y * scale }));
}

const regionOn = ({ outer, holes }: Region, laid: Laid): Region => ({
  outer: onPaper(laid, outer),
  holes: holes.map((hole) => onPaper(laid, hole)),
});

const stroke = (path: Profile, line: Stroke["line"]): Stroke => ({ kind: "stroke", path, closed: true, line });

/** The edge of what may be used. */
function trimLines(sheet: NestedSheet, laid: Laid): readonly Item[] {
  if (sheet.trim <= 0) return [];
  return offsetProfile(boardOf(sheet), -sheet.trim).map((inner) => stroke(onPaper(laid, inner), "phantom"));
}

/** What parts keep clear of on the board: dark, with what it is where that has room. */
function zoneLines(whole: Profile, board: Profile): readonly Item[] {
  const word = whole[0]?.by ?? "";
  const on = intersection({ outer: whole, holes: [] }, { outer: board, holes: [] });
  return on.flatMap(({ outer }) => zoneOnBoard(outer, word));
}

function zoneOnBoard(zone: Profile, word: string): readonly Item[] {
  const { min, max } = extentsOf(zone);
  const height = 2.5;
  const fits = textWidth(word, height) + 1 < max.x - min.x && height + 1 < max.y - min.y;
  const at = { x: (min.x + max.x) / 2, y: (min.y + max.y) / 2 - height / 2 };
  return [
    { kind: "fill", paths: [zone], grey: kept },
    stroke(zone, "narrow"),
    ...(fits ? [write(at, word, { height, anchor: "middle" })] : []),
  ];
}

const boxOnPaper = ({ x, y, length, width }: Rectangle, { corner, scale }: Laid): Extents =>
  boxAt(corner.x + x * scale, corner.y + y * scale, length * scale, width * scale);

/** A rectangle of what is left, dashed, with its size and what becomes of it on white where that has room. */
function pieceLines(piece: Rectangle, becomes: string, laid: Laid, show: Show): readonly Item[] {
  const box = boxOnPaper(piece, laid);
  const region = { outer: profileOf(box.min.x, box.min.y, box.max.x, box.max.y, "left over"), holes: [] };
  const size = `${runningSize(piece.length, show)} × ${runningSize(piece.width, show)}`;
  const texts = sheetTag({ number: size, name: "", size: becomes, lies: "" }, region, []) ?? [];
  return [rectangle(box, "hidden"), ...texts.map((text) => filledBox(boxOf(text), 1)), ...texts];
}

/** The blank in white on the grey sheet, with what goes through it. */
function drawBlank({ outer, holes }: Region): readonly Item[] {
  return [
    { kind: "fill", paths: [outer, ...holes], grey: 1 },
    stroke(outer, "visible"),
    ...holes.map((path) => stroke(path, "narrow")),
  ];
}

function regionOnPaper({ part, placed }: Lying, laid: Laid): Region {
  return regionOn(toSheet(part, placed).region({ outer: part.blank.outer, holes: part.profile.holes }), laid);
}

/** The part's tag, on the part; none where it has no room for its number. */
function tagOf({ part, placed }: Lying, parts: readonly Region[], i: number, show: Show): readonly Text[] | undefined {
  const { min, max } = extentsOf(part.blank.outer);
  const words = {
    number: part.number,
    name: partName(part),
    size: `${runningSize(max.x - min.x, show)} × ${runningSize(max.y - min.y, show)}`,
    lies: placed.backUp ? "back up" : "",
  };
  return sheetTag(words, parts[i]!, othersOf(parts, i));
}

const othersOf = (parts: readonly Region[], i: number): readonly Region[] => parts.filter((_, k) => k !== i);
