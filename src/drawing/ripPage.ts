import type { Extents } from "../geometry/profile.js";
import type { Build } from "../model/build.js";
import type { BevelCut } from "../model/rip.js";
import { type RipStep, ripSteps } from "../nest/saw/ripSteps.js";
import { type Block, paragraph, rule, setBlocks } from "./blocks.js";
import { type Draft, roomsOf, spilledPages } from "./draft.js";
import type { Item } from "./page.js";
import { counted } from "./partName.js";
import { bevelCell, type Cell, stepCell } from "./ripCell.js";
import { ripTalk } from "./ripWords.js";
import { boxAt } from "./shapes.js";
import { pageSizeFor } from "./sheetFrame.js";

/** Steps beside and above one another on a page. */
const grid = { across: 3, down: 4 };
const gap = 3;

/** Pages of the rip list, one picture a step; none where nothing is sawn. */
export function ripPages(build: Build, cautions: readonly string[]): readonly Draft[] {
  const { rips } = build.layout;
  if (!rips) return [];
  const size = pageSizeFor(build.job.show, "large");
  const rooms = roomsOf(size);
  const talk = ripTalk(build);
  const steps = ripSteps(rips.cuts);
  const cells = [
    ...steps.map((step) => ({ number: step.cuts[0]!.number, cell: stepCell(step, talk) })),
    ...rips.bevels.map((bevel) => ({ number: bevel.number, cell: bevelCell(bevel, talk) })),
  ]
    .sort((a, b) => a.number - b.number)
    .map(({ cell }) => cell);
  const perPage = grid.across * grid.down;
  const pages = Array.from({ length: Math.ceil(cells.length / perPage) }, (_, i) =>
    cells.slice(i * perPage, (i + 1) * perPage),
  );
  const draft = { title: "Rip list", documentType: "rip list", numberTail: "C", show: talk.show, size };
  const words = setBlocks(besideBlocks(build, steps, cautions, rooms.column.max.x - rooms.column.min.x), rooms.column);
  const drawn = (pages.length === 0 ? [[]] : pages).map((page, i) => ({
    ...draft,
    title: i === 0 ? draft.title : `${draft.title}, continued`,
    items: [...(i === 0 ? words.items : []), ...cellsOnPage(page, rooms.view)],
  }));
  return [...drawn, ...spilledPages(words.rest, draft)];
}

function cellsOnPage(cells: readonly Cell[], { min, max }: Extents): readonly Item[] {
  const width = (max.x - min.x - (grid.across - 1) * gap) / grid.across;
  const height = (max.y - min.y - (grid.down - 1) * gap) / grid.down;
  return cells.flatMap((cell, i) => {
    const x = min.x + (i % grid.across) * (width + gap);
    const y = max.y - Math.floor(i / grid.across) * (height + gap) - height;
    return cell(boxAt(x, y, width, height));
  });
}

/** What holds for all of it, and the bevels, beside the pictures. */
function besideBlocks(
  build: Build,
  steps: readonly RipStep[],
  cautions: readonly string[],
  width: number,
): readonly Block[] {
  const { cuts, bevels } = build.layout.rips!;
  const settings = counted(cuts.filter(({ fresh }) => fresh).length, "setting");
  const lines = [
    "Cut by cut in this order. Pencil its name on each piece, on the side that lies up: the number of its cut and a for what comes off, b for the rest.",
    "What comes off lies at the fence or stop block, with its reference edge against it. Sizes are of what comes off; the blade is beyond.",
    "Pictures show the piece as it lay on its sheet: the dark bar is the fence, the short one the stop block; a chain line marks the edge one measures from. Along a grey edge only as much comes off as makes it straight and square; a pale bar under an odd piece is the fence of the sled, a dark spot in it a knot.",
    "In bold: set it anew. Not in bold: it stands right already. Cut all of one setting before moving it, so that they come out equal.",
    "The longer side runs along the fence. Keep pieces long and wide until the last cut.",
    "Check the kerf on a test cut and write it into the shop file.",
  ];
  return [
    paragraph("Rip list", width, { height: 5, bold: true }, 2),
    paragraph(
      `${counted(cuts.length, "cut")} in ${counted(steps.length, "step")}, ${settings}`,
      width,
      { height: 3 },
      2,
    ),
    ...lines.map((words) => paragraph(words, width, { height: 3 }, 1.5)),
    rule(width),
    ...(bevels.length === 0 ? [] : bevelBlocks(bevels, width)),
    ...cautions.map((words) => paragraph(words, width, { bold: true })),
  ];
}

/** What holds for all bevels: along strips before these are crossed, and of parts when they are cut. */
function bevelBlocks(bevels: readonly BevelCut[], width: number): readonly Block[] {
  const settings = counted(bevels.filter(({ fresh }) => fresh).length, "setting");
  const onStrips = bevels.some(({ piece }) => piece);
  const onParts = bevels.some(({ piece }) => !piece);
  const when =
    onStrips && onParts
      ? "along strips before they are crossed, and last along parts"
      : onParts
        ? "when the parts are cut"
        : "along strips before they are crossed";
  const lines = [
    "Their pictures show the end of the piece, not to scale: at the table saw the blade leans away from the fence, the smaller side lies down, and the fence is set at the table. Beside the end of a strip is the strip from above, as it lay on its sheet, the side to bevel dark.",
    "Cut a test piece of the same board first: its angle as wanted, and the blade just comes out at the edge of the larger side.",
    ...(onStrips ? ["What comes off a bevelled strip is measured as before: the larger side keeps its size."] : []),
  ];
  return [
    paragraph(`${counted(bevels.length, "bevel")}, ${settings}, ${when}`, width, { bold: true }, 1.5),
    ...lines.map((words) => paragraph(words, width, { height: 3 }, 1.5)),
    rule(width),
  ];
}
