import type { NestedSheet, Process } from "../../model/build.js";
import type { Part } from "../../model/part.js";
import type { BevelCut, RipCut, RipList } from "../../model/rip.js";
import { bevelledSides, inTurn, partBevels } from "./bevels.js";
import { fromRack } from "./cutDown.js";
import { inOrder } from "./inOrder.js";
import type { Sawing } from "./sawing.js";
import { laidOn, withStripBevels } from "./stripBevels.js";

/**
 * The rip list of a layout; undefined where nothing is sawn. First the sheets, with the bevels that are cut along strips;
 * then those of the parts that are cut free.
 */
export function ripListOf(
  sheets: readonly NestedSheet[],
  parts: readonly Part[],
  process: Process,
  sawing: Sawing,
): RipList | undefined {
  const laid = laidOn(sheets, parts, process);
  const { cuts, bevels: ofStrips } = inOrder(
    sheets.map((sheet) => {
      const sawn = sheet.sawn && withStripBevels(sheet.sawn, laid, sawing);
      return { sheet: sheet.sheet, sawn: fromRack({ ...sheet, ...(sawn && { sawn }) }, sawing) };
    }),
  );
  const placed = new Set(sheets.flatMap((sheet) => sheet.placed.map(({ part }) => part)));
  const here = parts.filter(({ id }) => placed.has(id));
  const first = cuts.length + ofStrips.length + 1;
  const ofParts = inTurn(partBevels(here, process, sawing, ofStrips)).map((bevel, i) => ({
    ...bevel,
    number: first + i,
  }));
  const bevels = withThinEdges([...ofStrips, ...ofParts], here);
  return cuts.length + bevels.length > 0 ? { cuts, bevels } : undefined;
}

/** How often fence, stop block or line is set in a list. */
export const settingsOf = (cuts: readonly Pick<RipCut, "fresh">[]): number => cuts.filter(({ fresh }) => fresh).length;

/** Where the side at the fence is bevelled the other way before, its thin edge lies at the table. */
function withThinEdges(bevels: readonly BevelCut[], parts: readonly Part[]): readonly BevelCut[] {
  const before: BevelCut["edges"][number][] = [];
  return bevels.map((bevel) => {
    const thin = bevel.edges.some(({ part: id, edge }) => {
      const sides = bevelledSides(parts.find((part) => part.id === id)!);
      const own = sides.find((side) => side.edge === edge)!;
      const opposite = sides.find(({ i }) => i === (own.i + 2) % 4);
      const isCut = before.some((each) => each.part === id && each.edge === opposite?.edge);
      return isCut && opposite !== undefined && opposite.bevel * own.bevel < 0;
    });
    before.push(...bevel.edges);
    return thin ? { ...bevel, thin } : bevel;
  });
}
