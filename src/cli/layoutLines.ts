import { formatNumber } from "../input/number.js";
import { showQuantity } from "../input/show.js";
import type { Build, NestedSheet, Placed } from "../model/build.js";
import type { BoardId } from "../model/ids.js";
import { isBought } from "../nest/bought.js";
import { rackOf } from "../nest/rack.js";
import { type Remainder, remainderOf } from "../nest/remainder.js";
import { goingOn } from "../nest/rests.js";
import { yieldOf } from "../nest/yield.js";
import { offcutLine } from "../shop/stockText.js";
import { counted, row, sheetLines, sheetSize } from "./summary.js";

/**
 * Sheets to buy and whether fewer would do, what they cost, how the parts lie on each (the number on the part, its name,
 * where its lower left corner is, its turn), what goes on to the machine, and what is left over for the rack.
 */
export function layoutLines(build: Build): readonly string[] {
  const { layout, plan, process, shop } = build;
  const left = layout.sheets.map((sheet) => ({ sheet, rest: remainderOf(sheet, plan.built.parts, process, shop) }));
  return [
    ...sheetLines(build),
    ...boundLines(build),
    ...costLines(build),
    ...left.flatMap(({ sheet, rest }) => ["", ...linesOfSheet(build, sheet, rest)]),
    ...rackLines(build, left),
  ];
}

/** "3 of box, proven fewest", "3 of box, at least 2". */
function boundLines({ layout: { bounds, sheets } }: Build): readonly string[] {
  const bought = (board: BoardId) => sheets.filter((sheet) => sheet.board === board && isBought(sheet)).length;
  return bounds.map(({ board, count, why }) => {
    const n = bought(board);
    if (n === 0) return row("", `none of ${board}`);
    return row(
      "",
      n <= count ? `${n} of ${board}, proven fewest: ${why}` : `${n} of ${board}, at least ${count}: ${why}`,
    );
  });
}

/** What the parts take of all that is cut into, and what has to be bought, where the shop file has every price. */
function costLines({ layout, plan, shop }: Build): readonly string[] {
  const { share } = yieldOf(layout, plan.built.parts);
  const bought = layout.sheets.filter(isBought);
  const total = bought.reduce((sum, { price }) => sum + (price ?? 0), 0);
  const priced = bought.length > 0 && bought.every(({ price }) => price !== undefined);
  return [
    ...(layout.sheets.length === 0
      ? []
      : [row("yield", `parts take ${formatNumber(100 * share, 0)} % of what is cut into`)]),
    ...(priced
      ? [row("cost", `${total.toFixed(2)}${shop.currency === undefined ? "" : ` ${shop.currency}`} for the sheets`)]
      : []),
  ];
}

function linesOfSheet(build: Build, sheet: NestedSheet, rest: Remainder): readonly string[] {
  const { show, boards } = build.job;
  const sizes = rest.rectangles.map((each) => sheetSize(each, show));
  const goesOn = goingOn(sheet).map((piece) => row("goes on", `${sheetSize(piece, show)} as ${piece.goesOn}`));
  const nothing = goesOn.length > 0 ? "nothing else worth keeping" : "nothing worth keeping";
  return [
    `${sheet.sheet}  ${boards[sheet.board]?.stock ?? sheet.board} ${sheetSize(sheet, show)}  ${counted(sheet.placed.length, "part")}`,
    ...sheet.placed.map((placed) => placedLine(build, placed)),
    ...goesOn,
    row("left", sizes.length === 0 ? nothing : sizes.join("; ")),
  ];
}

function placedLine({ plan, job: { show } }: Build, placed: Placed): string {
  const number = plan.built.parts.find((part) => part.id === placed.part)?.number ?? "";
  const length = (value: number) => showQuantity({ unit: "mm", value }, show);
  const turn = placed.turn === 0 ? "" : `, turned ${showQuantity({ unit: "rad", value: placed.turn }, show)}`;
  return row(
    number,
    `${placed.part}  at ${length(placed.x)}, ${length(placed.y)}${turn}${placed.backUp ? ", back up" : ""}`,
  );
}

/** What is left over as rows of the shop file, by stock. */
function rackLines(
  { job }: Build,
  left: readonly { readonly sheet: NestedSheet; readonly rest: Remainder }[],
): readonly string[] {
  const rows = left.map(({ sheet, rest }) => ({
    stock: job.boards[sheet.board]?.stock ?? sheet.board,
    lines: rackOf(sheet, rest).rectangles.map((offcut) => `    ${offcutLine(offcut)}`),
  }));
  return [...new Set(rows.map(({ stock }) => stock))].flatMap((stock) => {
    const lines = rows.filter((each) => each.stock === stock).flatMap((each) => each.lines);
    return lines.length === 0 ? [] : ["", `for the rack, once it is cut: under offcuts of ${stock}`, ...lines];
  });
}
