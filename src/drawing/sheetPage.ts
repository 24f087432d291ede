import type { Extents } from "../geometry/profile.js";
import type { Show } from "../input/show.js";
import type { Build, NestedSheet } from "../model/build.js";
import { remainderOf } from "../nest/remainder.js";
import { setBlocks } from "./blocks.js";
import { overallHeightDepth, overallWidthDepth } from "./dimensions/overall.js";
import { type Draft, roomsOf, spilledPages } from "./draft.js";
import type { PageSize } from "./page.js";
import { factorOf, largestScale, scaleWords } from "./scale.js";
import { scaleBarHeight } from "./scaleBar.js";
import { insideFrame, pageSizeFor } from "./sheetFrame.js";
import { drawSheet } from "./sheetView.js";
import { sheetList, sheetWords } from "./sheetWords.js";
import { overallSize } from "./sizes.js";
import { titleBlockHeight } from "./titleBlock.js";

const gap = 3;

/** What the view of a sheet shows: only a machine has a zero. */
function seenFrom(sheet: NestedSheet, { process }: Build): string {
  const machined = process.parts.some(
    ({ part, method }) => method === "cnc" && sheet.placed.some((placed) => placed.part === part),
  );
  return machined ? "Seen from above, as it lies on the machine; zero at the lower left corner" : "Seen from above";
}

/** A page that a small printer takes: the sheet over its whole width, words below it beside the title block. */
function roomsUnder(size: PageSize): { readonly view: Extents; readonly words: readonly Extents[] } {
  const { min, max } = insideFrame(size);
  const low = min.y + titleBlockHeight;
  const right = roomsOf(size).column.min.x - 2 * gap;
  const middle = (min.x + right) / 2;
  const words = (from: number, to: number): Extents => ({
    min: { x: from + gap, y: min.y + scaleBarHeight },
    max: { x: to - gap, y: low - 1 },
  });
  return {
    view: { min: { x: min.x + gap, y: low + gap }, max: { x: max.x - gap, y: max.y - 1 } },
    words: [words(min.x, middle), words(middle, right + gap)],
  };
}

/** Scales of sheets: those of ISO 5455, and between them what lets a common sheet fill the page. */
const between = (show: Show) => (show.unit === "mm" ? [12.5, 15] : [12, 15]);

/** The pages of a nested sheet: how its parts lie and what is left of it, then a list of them. */
export function sheetPages(sheet: NestedSheet, build: Build): readonly Draft[] {
  const { show } = build.job;
  const { parts } = build.plan.built;
  const size = pageSizeFor(show, "small");
  const { view, words } = roomsUnder(size);
  const beside = overallHeightDepth(overallSize(sheet.width, show), Number.POSITIVE_INFINITY);
  const free = { width: view.max.x - view.min.x - beside, height: view.max.y - view.min.y - overallWidthDepth };
  const scale = largestScale(sheet.length, sheet.width, free, between(show));
  const factor = factorOf(scale);
  const corner = {
    x: view.min.x + (free.width - sheet.length * factor) / 2,
    y: view.min.y + (free.height - sheet.width * factor) / 2,
  };
  const lying = sheet.placed.flatMap((placed) => {
    const part = parts.find(({ id }) => id === placed.part);
    return part ? [{ part, placed }] : [];
  });
  const rest = remainderOf(sheet, parts, build.process, build.shop);
  const draft = {
    title: `Sheet ${sheet.sheet}`,
    documentType: "sheet layout",
    numberTail: sheet.sheet,
    scale: scaleWords(scale),
    size,
  };
  const [left, right] = words;
  const width = left!.max.x - left!.min.x;
  const told = sheetWords(sheet, lying, rest, build, seenFrom(sheet, build), width);
  const first = setBlocks(told, left!);
  const second = setBlocks(first.rest, right!);
  const { column } = roomsOf(size);
  const wide = column.min.x - 2 * gap - roomsOf(size).view.min.x;
  const items = [...drawSheet(sheet, lying, rest, { corner, scale: factor }, show), ...first.items, ...second.items];
  return [{ ...draft, items }, ...spilledPages([...second.rest, ...sheetList(lying, wide, show)], draft)];
}
