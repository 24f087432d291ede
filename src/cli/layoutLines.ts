import { showQuantity } from "../input/show.js";
import type { Build, Placed } from "../model/build.js";
import { counted, row, sheetLines, sheetSize } from "./summary.js";

/** How the parts lie, sheet by sheet: the number on the part, its name, where its lower left corner is, its turn. */
export function layoutLines(build: Build): readonly string[] {
  const { layout, job } = build;
  const sheets = layout.sheets.flatMap((sheet) => [
    "",
    `${sheet.sheet}  ${job.boards[sheet.board]?.stock ?? sheet.board} ${sheetSize(sheet, job.show)}  ${counted(sheet.placed.length, "part")}`,
    ...sheet.placed.map((placed) => placedLine(build, placed)),
  ]);
  const bounds = layout.bounds.map((bound) =>
    row("", `no layout needs fewer than ${bound.count} of ${bound.board}: ${bound.why}`),
  );
  return [...sheetLines(build), ...bounds, ...sheets];
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
