import { areaOfRegion, extentsOf } from "../geometry/measure.js";
import type { Extents, Profile, Region } from "../geometry/profile.js";
import { formatNumber } from "../input/number.js";
import type { Show } from "../input/show.js";
import type { Build, NestedSheet, Placed } from "../model/build.js";
import type { Part } from "../model/part.js";
import { toSheet } from "../nest/placed.js";
import { type Block, type Column, oneLine, paragraph, rule, setBlocks, tableHead, tableRow } from "./blocks.js";
import { overallHeight, overallWidth } from "./dimensions/overall.js";
import { type Draft, type Rooms, roomsOf, spilledPages } from "./draft.js";
import type { Item } from "./page.js";
import { partName } from "./partName.js";
import { factorOf, largestScale, scaleWords } from "./scale.js";
import { boxAt, filledBox, rectangle } from "./shapes.js";
import { pageSizeFor } from "./sheetFrame.js";
import { sheetTag } from "./sheetTag.js";
import { degrees, overallSize, runningSize, sizePair, toolSize } from "./sizes.js";
import { write } from "./textBox.js";

type Lying = { readonly part: Part; readonly placed: Placed };
/** A sheet on paper: its corner and mm of paper for 1 mm. */
type Laid = { readonly corner: { readonly x: number; readonly y: number }; readonly scale: number };

const heading = 8;
const forSizes = 10;

/** The pages of a nested sheet: how its parts lie, and a list of them. */
export function sheetPages(sheet: NestedSheet, build: Build): readonly Draft[] {
  const { show } = build.job;
  const size = pageSizeFor(show, "large");
  const rooms = roomsOf(size);
  const free = {
    width: rooms.view.max.x - rooms.view.min.x - forSizes,
    height: rooms.view.max.y - rooms.view.min.y - heading - forSizes,
  };
  const scale = largestScale(sheet.length, sheet.width, free);
  const factor = factorOf(scale);
  const laid = {
    corner: {
      x: rooms.view.min.x + (free.width - sheet.length * factor) / 2,
      y: rooms.view.min.y + (free.height - sheet.width * factor) / 2,
    },
    scale: factor,
  };
  const lying = sheet.placed.flatMap((placed) => {
    const part = build.plan.built.parts.find(({ id }) => id === placed.part);
    return part ? [{ part, placed }] : [];
  });
  const draft = {
    title: `Sheet ${sheet.sheet}`,
    documentType: "sheet layout",
    numberTail: sheet.sheet,
    scale: scaleWords(scale),
    size,
  };
  const { items, rest } = setBlocks(columnBlocks(sheet, lying, build, rooms), rooms.column);
  return [
    { ...draft, items: [...drawSheet(sheet, lying, laid, build, rooms), ...items] },
    ...spilledPages(rest, draft),
  ];
}

function drawSheet(
  sheet: NestedSheet,
  lying: readonly Lying[],
  laid: Laid,
  { job }: Build,
  rooms: Rooms,
): readonly Item[] {
  const { corner, scale } = laid;
  const outline = boxAt(corner.x, corner.y, sheet.length * scale, sheet.width * scale);
  const trim = sheet.trim * scale;
  const usable = boxAt(
    corner.x + trim,
    corner.y + trim,
    (sheet.length - 2 * sheet.trim) * scale,
    (sheet.width - 2 * sheet.trim) * scale,
  );
  return [
    write(
      { x: rooms.view.min.x, y: rooms.view.max.y - 4 },
      "Seen from above, as it lies on the machine; zero at the lower left corner",
      { height: 3.5 },
    ),
    filledBox(outline, 0.88),
    ...lying.flatMap((each) => drawBlank(each, laid)),
    rectangle(outline, "visible"),
    ...(sheet.trim > 0 ? [rectangle(usable, "phantom")] : []),
    ...lying.flatMap((each) => tagOf(each, laid, job.show)),
    ...overallWidth(outline, outline.max.y, overallSize(sheet.length, job.show)),
    ...overallHeight(outline, outline.max.x, overallSize(sheet.width, job.show), 1),
  ];
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
  const onPaper = (profile: Profile): Profile =>
    profile.map((v) => ({ ...v, x: corner.x + v.x * scale, y: corner.y + v.y * scale }));
  return { outer: onPaper(outer), holes: holes.map(onPaper) };
}

/** The part's tag, on the part. */
function tagOf({ part, placed }: Lying, laid: Laid, show: Show): readonly Item[] {
  const { min, max } = extentsOf(part.blank.outer);
  const words = {
    number: part.number,
    name: partName(part),
    size: `${runningSize(max.x - min.x, show)} × ${runningSize(max.y - min.y, show)}`,
    lies: placed.backUp ? "back up" : "",
  };
  return sheetTag(words, regionOnPaper({ part, placed }, laid));
}

function columnBlocks(sheet: NestedSheet, lying: readonly Lying[], build: Build, { column }: Rooms): readonly Block[] {
  const { job, shop } = build;
  const width = column.max.x - column.min.x;
  const stock = job.boards[sheet.board]?.stock ?? "";
  const columns: readonly Column[] = [
    { title: "no.", width: width * 0.12 },
    { title: "part", width: width * 0.4 },
    { title: "size", width: width * 0.28 },
    { title: "lies", width: width * 0.2 },
  ];
  return [
    oneLine(`Sheet ${sheet.sheet}`, width, { height: 5, bold: true }),
    paragraph(`${shop.boards[stock]?.material ?? stock} (board ${sheet.board}, ${stock})`, width, { height: 3.5 }),
    paragraph(sheet.offcut === undefined ? "Sheet to buy" : `Offcut ${sheet.offcut} from the rack`, width, {
      height: 3.5,
    }),
    paragraph(
      `${sizePair(sheet.length, sheet.width, job.show)}, ${toolSize(sheet.trim, job.show)} left free all round`,
      width,
    ),
    ...remainder(sheet, lying, job.show).map((words) => paragraph(words, width)),
    rule(width),
    tableHead(columns),
    ...lying.map(({ part, placed }) => tableRow(columns, partCells(part, placed, job.show))),
  ];
}

function partCells(part: Part, placed: Placed, show: Show): readonly string[] {
  const { min, max } = extentsOf(part.blank.outer);
  const lies = [placed.turn === 0 ? "" : `turned ${degrees(placed.turn)}`, placed.backUp ? "back up" : ""];
  return [
    part.number,
    partName(part),
    `${runningSize(max.x - min.x, show)} × ${runningSize(max.y - min.y, show)}`,
    lies.filter(Boolean).join(", ") || "face up",
  ];
}

/** How much of the sheet the parts take, and the strips beyond them that stay whole. */
function remainder(sheet: NestedSheet, lying: readonly Lying[], show: Show): readonly string[] {
  const boxes = lying.map(({ part, placed }): Extents => extentsOf(toSheet(part, placed).region(part.blank).outer));
  const used = lying.reduce((sum, { part }) => sum + areaOfRegion(part.blank), 0);
  const right = sheet.length - Math.max(0, ...boxes.map(({ max }) => max.x));
  const top = sheet.width - Math.max(0, ...boxes.map(({ max }) => max.y));
  return [
    `Parts take ${formatNumber((100 * used) / (sheet.length * sheet.width), 0)} % of the sheet`,
    `Free beyond the parts: ${overallSize(right, show)} at the right end, ${overallSize(top, show)} along the top, less the cut`,
  ];
}
