import type { Extents } from "../geometry/profile.js";
import type { Build } from "../model/build.js";
import { type RipStep, ripSteps } from "../nest/saw/ripSteps.js";
import { type Block, paragraph, rule, setBlocks } from "./blocks.js";
import { type Draft, roomsOf, spilledPages } from "./draft.js";
import type { Item } from "./page.js";
import { counted } from "./partName.js";
import { ripPicture } from "./ripView.js";
import {
  bevelWords,
  mindWords,
  offWords,
  pieceWords,
  type RipTalk,
  restWords,
  ripTalk,
  sawWords,
  settingWords,
  wayWords,
} from "./ripWords.js";
import { boxAt, rectangle } from "./shapes.js";
import { pageSizeFor } from "./sheetFrame.js";
import { shorten, write } from "./textBox.js";

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
  const perPage = grid.across * grid.down;
  const pages = Array.from({ length: Math.ceil(steps.length / perPage) }, (_, i) =>
    steps.slice(i * perPage, (i + 1) * perPage),
  );
  const draft = { title: "Rip list", documentType: "rip list", numberTail: "C", show: talk.show, size };
  const words = setBlocks(
    besideBlocks(build, steps, cautions, talk, rooms.column.max.x - rooms.column.min.x),
    rooms.column,
  );
  const drawn = (pages.length === 0 ? [[]] : pages).map((page, i) => ({
    ...draft,
    title: i === 0 ? draft.title : `${draft.title}, continued`,
    items: [...(i === 0 ? words.items : []), ...stepsOnPage(page, rooms.view, talk)],
  }));
  return [...drawn, ...spilledPages(words.rest, draft)];
}

function stepsOnPage(steps: readonly RipStep[], { min, max }: Extents, talk: RipTalk): readonly Item[] {
  const width = (max.x - min.x - (grid.across - 1) * gap) / grid.across;
  const height = (max.y - min.y - (grid.down - 1) * gap) / grid.down;
  return steps.flatMap((step, i) => {
    const x = min.x + (i % grid.across) * (width + gap);
    const y = max.y - Math.floor(i / grid.across) * (height + gap) - height;
    return stepItems(step, boxAt(x, y, width, height), talk);
  });
}

/** The setting in large, what goes in, the picture, what comes off and what remains. */
function stepItems(step: RipStep, box: Extents, talk: RipTalk): readonly Item[] {
  const { min, max } = box;
  const width = max.x - min.x - 4;
  const line = (y: number, text: string, height: number, bold = false): Item =>
    write({ x: min.x + 2, y }, shorten(text, width, height, bold), { height, bold });
  const mind = mindWords(step).join("; ");
  const [below, texts] = [
    mind === "" ? 10.5 : 15,
    [`off ${offWords(step, talk)}`, `rest ${restWords(step.rest, talk)}`],
  ];
  return [
    rectangle(box, "narrow"),
    line(max.y - 5, `${numbersOf(step)}   ${settingWords(step, talk)}`, 3.5, step.fresh),
    line(max.y - 10, `${sawWords(step)}, ${wayWords(step)} ${pieceWords(step.piece, talk)}`, 2.5),
    ...ripPicture(step, { min: { x: min.x + 2, y: min.y + below }, max: { x: max.x - 2, y: max.y - 12.5 } }, talk),
    ...texts.map((text, i) => line(min.y + below - 4.5 - 4.3 * i, text, 2.5)),
    ...(mind === "" ? [] : [line(min.y + 1.7, mind, 2.5, true)]),
  ];
}

function numbersOf({ cuts }: RipStep): string {
  const first = cuts[0]!.number;
  return cuts.length === 1 ? `${first}` : `${first} to ${cuts.at(-1)!.number}`;
}

/** What holds for all of it, and the bevels, beside the pictures. */
function besideBlocks(
  build: Build,
  steps: readonly RipStep[],
  cautions: readonly string[],
  talk: RipTalk,
  width: number,
): readonly Block[] {
  const { cuts, bevels } = build.layout.rips!;
  const settings = counted(cuts.filter(({ fresh }) => fresh).length, "setting");
  const lines = [
    "Cut by cut in this order. Pencil on each piece: the number of its cut and a for what comes off, b for the rest.",
    "What comes off lies at the fence or stop block, with its reference edge against it. Sizes are of what comes off; the blade is beyond.",
    "Pictures show the piece as it lay on its sheet: the dark bar is the fence, the short one the stop block; a chain line marks the edge one measures from. Along a grey edge only as much comes off as makes it straight and square; a pale bar under an odd piece is the fence of the sled.",
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
    ...(bevels.length === 0
      ? []
      : [
          paragraph(
            "Bevels, when the parts are cut: the blade leans away from the fence",
            width,
            { height: 3, bold: true },
            1.5,
          ),
          ...bevels.map((bevel) => paragraph(`${bevel.number}. ${bevelWords(bevel, talk)}`, width, { height: 3 }, 1)),
          rule(width),
        ]),
    ...cautions.map((words) => paragraph(words, width, { bold: true })),
  ];
}
