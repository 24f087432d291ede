import { all, type Finding, raise, text } from "../../../input/finding.js";
import { partId } from "../../../model/ids.js";
import type { Around } from "../../../model/piece.js";
import { sheetsMeet } from "../chambers/sheetBody.js";
import { blockInWay } from "../findings.js";
import type { Bar } from "../removable/inTheWay.js";
import { runsInto } from "../removable/runsInto.js";
import type { Shape } from "../shape.js";
import { blockRole } from "./blockParts.js";
import { type Block, blockSheets } from "./blocks.js";

/** A finding for every block that has no room behind its panel: a wall, or one of these boards, is there already. */
export function blockFindings(
  blocks: readonly Block[],
  bars: readonly Omit<Bar, "from">[],
  shape: Shape,
  { id }: Around,
): readonly Finding[] {
  return blocks.flatMap((block, index): readonly Finding[] => {
    const sheets = blockSheets(block);
    const wall = sheets.flatMap((sheet) => runsInto(sheet, block.chamber, shape) ?? [])[0];
    const other = wall ?? bars.find((bar) => sheets.some((sheet) => sheetsMeet(sheet, bar.sheet)))?.role;
    if (other === undefined) return [];
    const facts = {
      axes: all(block.threads.map(({ ask }) => ask.axis)),
      face: text(block.face.name),
      other: text(other.replaceAll(".", " ")),
    };
    const at = block.threads.flatMap(({ ask }) => ask.from);
    return [raise(blockInWay, { at, on: [partId(id, blockRole(index, 0))], facts })];
  });
}
