import { type Finding, type FindingDef, mm, raise, text } from "../input/finding.js";
import type { NestedSheet } from "../model/build.js";
import type { Job } from "../model/job.js";
import type { Cnc } from "../model/shop.js";

export const sheetOverMachine: FindingDef = {
  code: "sheet-over-machine",
  severity: "warning",
  words: "sheet {sheet} ({length} x {width}) is larger than the machine's bed, {bed length} x {bed width}",
  next: "cut the sheet down first and give the pieces as offcuts, or list a smaller sheet size",
  explain:
    "A sheet that overhangs the bed must be supported and moved along in steps, which loses the zero it was set to. The " +
    "layout is made for the whole sheet.",
};

/** The finding for a sheet that the machine's bed does not take whole, whichever way round. */
export function overMachine({ file }: Job, sheet: NestedSheet, bed: Cnc | undefined): readonly Finding[] {
  if (!bed) return [];
  const fits = (length: number, width: number) => length <= bed.length && width <= bed.width;
  if (fits(sheet.length, sheet.width) || fits(sheet.width, sheet.length)) return [];
  const at = [{ file, path: ["boards", sheet.board] }];
  const facts = {
    sheet: text(sheet.sheet),
    length: mm(sheet.length),
    width: mm(sheet.width),
    "bed length": mm(bed.length),
    "bed width": mm(bed.width),
  };
  return [raise(sheetOverMachine, { at, on: sheet.placed.map((placed) => placed.part), facts })];
}
