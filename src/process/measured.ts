import { type Finding, type FindingDef, mm, raise, text } from "../input/finding.js";
import type { Layout, NestedSheet, Plan } from "../model/build.js";
import type { Job } from "../model/job.js";
import type { Part } from "../model/part.js";
import { rules } from "../shop/rules.js";

const explain =
  "Parts, joints and depths are made for the thickness that the job gives its board. A sheet of another batch is often " +
  "some tenths off: joints then stand proud or gape, and where it is thicker a cut through the board leaves a skin.";

export const sheetThicker: FindingDef = {
  code: "sheet-thicker",
  severity: "error",
  words:
    "sheet {sheet} measures {measured}, {off} more than the {made} that its parts are made for[: cuts through the board, made for {made}, would leave a skin of {skin}]; joints would not fit",
  next: "write measured: {measured} at the board in the job, so that everything is made for it, or cut these parts from another sheet",
  explain,
};

export const sheetThinner: FindingDef = {
  ...sheetThicker,
  code: "sheet-thinner",
  words: "sheet {sheet} measures {measured}, {off} less than the {made} that its parts are made for; joints would gape",
};

export const measuredFindings: readonly FindingDef[] = [sheetThicker, sheetThinner];

/** Findings for sheets about to be cut that measure another thickness than the parts on them are made for. */
export function sheetsMeasured(job: Job, plan: Plan, layout: Layout): readonly Finding[] {
  return layout.sheets.flatMap((sheet) => {
    const parts = plan.built.parts.filter(({ id }) => sheet.placed.some(({ part }) => part === id));
    return sheetMeasured(job, sheet, parts);
  });
}

function sheetMeasured(job: Job, sheet: NestedSheet, parts: readonly Part[]): readonly Finding[] {
  const made = parts[0]?.thickness;
  const { measured } = sheet;
  if (made === undefined || measured === undefined) return [];
  const off = measured - made;
  if (Math.abs(off) <= rules.thicknessAgrees.value + 1e-9) return [];
  const skin = off - rules.intoSpoilboard.value;
  const facts = {
    sheet: text(sheet.sheet),
    measured: mm(measured),
    made: mm(made),
    off: mm(Math.abs(off)),
    ...(skin > 1e-9 && { skin: mm(skin) }),
  };
  const at = [{ file: job.file, path: ["boards", sheet.board] }];
  return [raise(off > 0 ? sheetThicker : sheetThinner, { at, on: [sheet.sheet], facts })];
}
