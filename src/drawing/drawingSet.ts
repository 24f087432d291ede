import type { Build } from "../model/build.js";
import { cautionPages, type PrintedCaution } from "./cautionPage.js";
import { finishPage } from "./draft.js";
import { listPages } from "./listPage.js";
import type { Page } from "./page.js";
import { partPages } from "./partPage.js";
import { sameParts } from "./sameParts.js";
import { sheetPages } from "./sheetPage.js";

/** `all` stand on the first sheet; `onParts` are short sentences repeated on the page of each part. */
export type DrawnCautions = { readonly all: readonly PrintedCaution[]; readonly onParts: readonly string[] };

/** All drawings of a job: cautions, cut list, a page or two for each kind of part, a page for each sheet. */
export function drawingsOf(build: Build, cautions: DrawnCautions): readonly Page[] {
  const drafts = [
    ...cautionPages(build, cautions.all),
    ...listPages(build),
    ...sameParts(build.plan.built.parts).flatMap((same) => partPages(same, build, cautions.onParts)),
    ...build.layout.sheets.flatMap((sheet) => sheetPages(sheet, build)),
  ];
  return drafts.map((draft, i) => finishPage(draft, i + 1, drafts.length, build));
}
