import type { Build, NestedSheet } from "../model/build.js";
import { remainderOf } from "../nest/remainder.js";
import { setBlocks } from "./blocks.js";
import { overallHeightDepth, overallWidthDepth } from "./dimensions/overall.js";
import { type Draft, roomsOf, spilledPages } from "./draft.js";
import { factorOf, largestScale, scaleWords } from "./scale.js";
import { pageSizeFor } from "./sheetFrame.js";
import { drawSheet } from "./sheetView.js";
import { sheetWords } from "./sheetWords.js";
import { overallSize } from "./sizes.js";
import { write } from "./textBox.js";

/** Height kept for the words over a sheet, mm of paper. */
const heading = 8;
/** What the view over a sheet shows: only a machine has a zero. */
function seenFrom(sheet: NestedSheet, { process }: Build): string {
  const machined = process.parts.some(
    ({ part, method }) => method === "cnc" && sheet.placed.some((placed) => placed.part === part),
  );
  return machined ? "Seen from above, as it lies on the machine; zero at the lower left corner" : "Seen from above";
}

/** The pages of a nested sheet: how its parts lie, and a list of them; more if the list spills. */
export function sheetPages(sheet: NestedSheet, build: Build): readonly Draft[] {
  const { show } = build.job;
  const { parts } = build.plan.built;
  const size = pageSizeFor(show, "large");
  const { view, column } = roomsOf(size);
  const beside = overallHeightDepth(overallSize(sheet.width, show), Number.POSITIVE_INFINITY);
  const free = {
    width: view.max.x - view.min.x - beside,
    height: view.max.y - view.min.y - heading - overallWidthDepth,
  };
  const scale = largestScale(sheet.length, sheet.width, free);
  const factor = factorOf(scale);
  const corner = {
    x: view.min.x + (free.width - sheet.length * factor) / 2,
    y: view.min.y + (free.height - sheet.width * factor) / 2,
  };
  const lying = sheet.placed.flatMap((placed) => {
    const part = parts.find(({ id }) => id === placed.part);
    return part ? [{ part, placed }] : [];
  });
  const left = remainderOf({ ...sheet, placed: lying.map(({ placed }) => placed) }, parts, build.process, build.shop)
    .rectangles[0];
  const draft = {
    title: `Sheet ${sheet.sheet}`,
    documentType: "sheet layout",
    numberTail: sheet.sheet,
    scale: scaleWords(scale),
    size,
  };
  const words = setBlocks(sheetWords(sheet, lying, left, build, column.max.x - column.min.x), column);
  const items = [
    write({ x: view.min.x, y: view.max.y - 4 }, seenFrom(sheet, build), { height: 3.5 }),
    ...drawSheet(sheet, lying, left, { corner, scale: factor }, show),
    ...words.items,
  ];
  return [{ ...draft, items }, ...spilledPages(words.rest, draft)];
}
