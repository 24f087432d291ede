import { hatch } from "../../drawing/hatch.js";
import { runningSize, toolSize } from "../../drawing/sizes.js";
import { offsetProfile } from "../../geometry/offset.js";
import type { Profile } from "../../geometry/profile.js";
import { rectangle } from "../../geometry/shapes.js";
import type { Show } from "../../input/show.js";
import type { Build, NestedSheet, Placed } from "../../model/build.js";
import type { Part } from "../../model/part.js";
import type { Setup } from "../../model/program.js";
import type { Rectangle } from "../../nest/clearRectangle.js";
import { toSheet } from "../../nest/placed.js";
import type { Remainder } from "../../nest/remainder.js";
import { goingOn } from "../../nest/rests.js";
import { turnedOver } from "../../nest/stockFor.js";
import { boardOf, type Usable } from "../../shop/clearArea.js";
import { nameShape } from "./nameShape.js";
import { partShapes } from "./partShapes.js";
import { layOnSheet, type Shape, widthOfWords } from "./shape.js";

/** A part where it lies: its shapes and its name, sheet frame. */
export function partOnSheet(part: Part, placed: Placed): readonly Shape[] {
  const to = toSheet(part, placed);
  return [...partShapes(part).map((shape) => layOnSheet(shape, to)), nameShape(part, to.region(part.profile))];
}

/** The sheet, or an offcut's outline, what is trimmed off it, and what parts keep clear of. */
export function boardShapes(sheet: Usable & Pick<NestedSheet, "zones">): readonly Shape[] {
  const loop = (layer: string) => (profile: Profile) => ({ kind: "loop", layer, profile }) as const;
  const board = boardOf(sheet);
  const within = sheet.trim > 0 ? offsetProfile(board, -sheet.trim) : [];
  return [loop("SHEET")(board), ...within.map(loop("TRIM")), ...(sheet.zones ?? []).map(loop("KEEP-CLEAR"))];
}

/** The sheet of a setup as it lies there: an odd offcut's outline, and what parts keep clear of. */
export function setupBoard({ layout }: Build, setup: Setup): Usable & Pick<NestedSheet, "zones"> {
  const { length, width } = setup;
  const sheet = layout.sheets.find((each) => each.sheet === setup.sheet);
  const lie = (profile: Profile) => (setup.turnedOver ? turnedOver(profile, width) : profile);
  return {
    length,
    width,
    trim: 0,
    ...(sheet?.outline && { outline: lie(sheet.outline) }),
    ...(sheet?.zones && { zones: sheet.zones.map(lie) }),
  };
}

/** Between the lines over what is left, mm of board. */
const hatching = 40;

/**
 * The sheet's own size, and what is left over, hatched, with its rectangles and their sizes, and what goes on to the
 * machine: to be looked at, not cut.
 */
export function restShapes(sheet: NestedSheet, rest: Remainder, show: Show): readonly Shape[] {
  const words = (text: string, x: number, y: number, most: number): Shape => {
    const height = Math.min(24, most / widthOfWords(text, 1));
    return {
      kind: "words",
      layer: "SIZE",
      at: { x: x - widthOfWords(text, height) / 2, y: y - height / 2 },
      height,
      text,
    };
  };
  const size = (length: number, width: number) => `${runningSize(length, show)} x ${runningSize(width, show)}`;
  const piece = ({ x, y, length, width }: Rectangle, text: string): readonly Shape[] => [
    { kind: "loop", layer: "LEFT-OVER-RECTANGLE", profile: rectangle(x, y, x + length, y + width, "left over") },
    words(text, x + length / 2, y + width / 2, 0.9 * length),
  ];
  return [
    words(size(sheet.length, sheet.width), sheet.length / 2, sheet.width + 30, sheet.length),
    ...rest.regions.flatMap((region) => [
      ...[region.outer, ...region.holes].map((profile): Shape => ({ kind: "loop", layer: "LEFT-OVER", profile })),
      ...hatch(region, hatching).map(({ path }): Shape => {
        return { kind: "chain", layer: "LEFT-OVER", path: path.map((bend) => ({ ...bend, by: "" })) };
      }),
    ]),
    ...rest.rectangles.flatMap((each) => piece(each, size(each.length, each.width))),
    ...goingOn(sheet).flatMap((each) => piece(each, `${each.goesOn}: ${size(each.length, each.width)}`)),
  ];
}

export function sheetLines({ job }: Build, sheet: NestedSheet): readonly string[] {
  const size = (mm: number) => toolSize(mm, job.show);
  return [
    `sheet ${sheet.sheet}, board ${sheet.board}, ${size(sheet.length)} x ${size(sheet.width)}`,
    ...(sheet.restOf ? [`the rest of sheet ${sheet.restOf.sheet}, as it lay there: saw that first`] : []),
    "zero is the lower left corner of the sheet; x runs along its length",
    ...(sheet.outline ? ["the offcut is of odd form: zero is the lower left corner of its extents"] : []),
    ...(sheet.zones ? ["KEEP-CLEAR: clamps, knots, pins, dowels and holes; nothing is cut there"] : []),
    "where a part lies back up, its BACK layers are cut from above and its FACE layers from below",
  ];
}
