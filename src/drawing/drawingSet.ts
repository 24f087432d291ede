import type { Build } from "../model/build.js";
import { cautionPages, type PrintedCaution } from "./cautionPage.js";
import { finishPage } from "./draft.js";
import { handPages } from "./handPage.js";
import { type ListedParts, listPages } from "./listPage.js";
import { orderPages, type PrintedStep } from "./orderPage.js";
import type { Page } from "./page.js";
import { partPages } from "./partPage.js";
import { ripPages } from "./ripPage.js";
import type { SameParts } from "./sameParts.js";
import { sheetPages } from "./sheetPage.js";

/**
 * What the drawings take from the lists, so that both say the same: the rows of the cut list, one drawing for each; the
 * cautions of the first sheet; short sentences that every part's page repeats.
 */
export type FromLists = {
  readonly rows: readonly ListedParts[];
  readonly cautions: readonly PrintedCaution[];
  /** What is done at the bench, in order. */
  readonly steps: readonly PrintedStep[];
  readonly onParts: readonly string[];
  /** The same of the pages for hand routing. */
  readonly onRouting: readonly string[];
};

/** All drawings of a job: cautions, cut list, a page or two for each kind of part, hand routing, a page for each sheet, the order of work. */
export function drawingsOf(build: Build, lists: FromLists): readonly Page[] {
  const kinds = lists.rows.flatMap((row) => sameParts(row, build));
  const drafts = [
    ...cautionPages(build, lists.cautions),
    ...listPages(lists.rows, build),
    ...kinds.flatMap((same) => partPages(same, build, lists.onParts)),
    ...handPages(kinds, build, lists.onRouting),
    ...ripPages(build, lists.onRouting),
    ...build.layout.sheets.flatMap((sheet) => sheetPages(sheet, build)),
    ...orderPages(lists.steps, build, lists.cautions[0]?.closing ?? ""),
  ];
  return drafts.map((draft, i) => finishPage(draft, i + 1, drafts.length, build));
}

function sameParts(row: ListedParts, { plan }: Build): readonly SameParts[] {
  const parts = row.parts.flatMap((id) => plan.built.parts.find((part) => part.id === id) ?? []);
  return parts.slice(0, 1).map((first) => ({ first, parts }));
}
