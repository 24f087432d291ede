import { extentsOf } from "../geometry/measure.js";
import type { Extents, Point, Profile, Region } from "../geometry/profile.js";
import { rectangle as profileOf } from "../geometry/shapes.js";
import type { Show } from "../input/show.js";
import type { NestedSheet, Placed } from "../model/build.js";
import type { Part } from "../model/part.js";
import type { Rectangle } from "../nest/clearRectangle.js";
import { toSheet } from "../nest/placed.js";
import { overallHeight, overallWidth } from "./dimensions/overall.js";
import type { Item } from "./page.js";
import { partName } from "./partName.js";
import { boxAt, filledBox, rectangle } from "./shapes.js";
import { sheetTag } from "./sheetTag.js";
import { overallSize, runningSize } from "./sizes.js";

/** A part and where it lies. */
export type Lying = { readonly part: Part; readonly placed: Placed };

/** A sheet on paper: its zero corner, and mm of paper for 1 mm. */
export type Laid = { readonly corner: Point; readonly scale: number };

const waste = 0.88;

/** A nested sheet: parts white on grey, the trim, what is left over as one piece, the sheet's own size. */
export function drawSheet(
  sheet: NestedSheet,
  lying: readonly Lying[],
  left: Rectangle | undefined,
  laid: Laid,
  show: Show,
): readonly Item[] {
  const outline = onPaper(laid, 0, 0, sheet.length, sheet.width);
  const { trim } = sheet;
  const usable = onPaper(laid, trim, trim, sheet.length - 2 * trim, sheet.width - 2 * trim);
  return [
    filledBox(outline, waste),
    ...(left ? remainderLines(left, laid, show) : []),
    ...lying.flatMap((each) => drawBlank(each, laid)),
    rectangle(outline, "visible"),
    ...(trim > 0 ? [rectangle(usable, "phantom")] : []),
    ...lying.flatMap((each) => tagOf(each, lying, laid, show)),
    ...overallWidth(outline, outline.max.y, overallSize(sheet.length, show)),
    ...overallHeight(outline, outline.max.x, overallSize(sheet.width, show), 1),
  ];
}

function onPaper({ corner, scale }: Laid, x: number, y: number, length: number, width: number): Extents {
  return boxAt(corner.x + x * scale, corner.y + y * scale, length * scale, width * scale);
}

/** The largest piece that stays whole, dashed, with its size where that has room. */
function remainderLines({ x, y, length, width }: Rectangle, laid: Laid, show: Show): readonly Item[] {
  const box = onPaper(laid, x, y, length, width);
  const region = profileOf(box.min.x, box.min.y, box.max.x, box.max.y, "left over");
  const words = {
    number: "left over",
    name: "",
    size: `${runningSize(length, show)} × ${runningSize(width, show)}`,
    lies: "",
  };
  return [rectangle(box, "hidden"), ...sheetTag(words, { outer: region, holes: [] }, [])];
}

/** The blank in white on the grey sheet, with what goes through it. */
function drawBlank(each: Lying, laid: Laid): readonly Item[] {
  const { outer, holes } = regionOnPaper(each, laid);
  return [
    { kind: "fill", paths: [outer, ...holes], grey: 1 },
    { kind: "stroke", path: outer, closed: true, line: "visible" },
    ...holes.map((path): Item => ({ kind: "stroke", path, closed: true, line: "narrow" })),
  ];
}

function regionOnPaper({ part, placed }: Lying, { corner, scale }: Laid): Region {
  const { outer, holes } = toSheet(part, placed).region({ outer: part.blank.outer, holes: part.profile.holes });
  const drawn = (profile: Profile): Profile =>
    profile.map((v) => ({ ...v, x: corner.x + v.x * scale, y: corner.y + v.y * scale }));
  return { outer: drawn(outer), holes: holes.map(drawn) };
}

/** The part's tag, on the part. */
function tagOf({ part, placed }: Lying, lying: readonly Lying[], laid: Laid, show: Show): readonly Item[] {
  const { min, max } = extentsOf(part.blank.outer);
  const words = {
    number: part.number,
    name: partName(part),
    size: `${runningSize(max.x - min.x, show)} × ${runningSize(max.y - min.y, show)}`,
    lies: placed.backUp ? "back up" : "",
  };
  const others = lying.filter((other) => other.part !== part).map((other) => regionOnPaper(other, laid));
  return sheetTag(words, regionOnPaper({ part, placed }, laid), others);
}
