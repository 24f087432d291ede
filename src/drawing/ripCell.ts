import type { Extents } from "../geometry/profile.js";
import type { BevelCut } from "../model/rip.js";
import type { RipStep } from "../nest/saw/ripSteps.js";
import { bevelPicture } from "./bevelView.js";
import type { Item } from "./page.js";
import { ripPicture } from "./ripView.js";
import {
  bevelMinds,
  bevelSetting,
  bevelTakes,
  bevelWords,
  mindWords,
  offWords,
  pieceWords,
  type RipTalk,
  restWords,
  sawWords,
  settingWords,
  wayWords,
} from "./ripWords.js";
import { rectangle } from "./shapes.js";
import { shorten, textWidth, wrapText, write } from "./textBox.js";

/** A step as it is drawn in its box. */
export type Cell = (box: Extents) => readonly Item[];

/** A step of the list: the setting in large, what goes in, the picture, what comes off and what remains. */
export const stepCell =
  (step: RipStep, talk: RipTalk): Cell =>
  (box) => {
    const head = `${numbersOf(step)}   ${settingWords(step, talk)}`;
    const take = `${sawWords(step)}, ${wayWords(step)} ${pieceWords(step.piece, talk)}`;
    const below = [`off ${offWords(step, talk)}`, `rest ${restWords(step.rest, talk)}`];
    return cellItems(box, { head, fresh: step.fresh, take, below, mind: mindWords(step, talk) }, (room) =>
      ripPicture(step, room, talk),
    );
  };

/** A bevel: the setting, the part or the strip, and how it lies. */
export const bevelCell =
  (bevel: BevelCut, talk: RipTalk): Cell =>
  (box) => {
    const head = `${bevel.number}   ${bevelSetting(bevel, talk)}`;
    const take = `${sawWords(bevel)}, bevel ${bevelTakes(bevel, talk)}`;
    const below = bevelWords(bevel, talk);
    return cellItems(box, { head, fresh: bevel.fresh, take, below, mind: bevelMinds(bevel) }, (room) =>
      bevelPicture(bevel, room),
    );
  };

type CellWords = {
  readonly head: string;
  readonly fresh: boolean;
  readonly take: string;
  readonly below: readonly string[];
  readonly mind: readonly string[];
};

/** Lines of at most so many that a sentence may take below the picture, and what it is to mind. */
const most = { below: 2, mind: 3 };
const step = 4.3;

function cellItems(box: Extents, words: CellWords, pictureIn: Cell): readonly Item[] {
  const { min, max } = box;
  const width = max.x - min.x - 4;
  const line = (y: number, text: string, height: number, bold = false): Item =>
    write({ x: min.x + 2, y }, shorten(text, width, height, bold), { height, bold });
  const lines = [
    ...words.below.flatMap((text) => linesOf(text, most.below, width).map((each) => ({ text: each, bold: false }))),
    ...linesOf(words.mind.join("; "), most.mind, width, true).map((each) => ({ text: each, bold: true })),
  ];
  const below = lines.length * step + 1.9;
  return [
    rectangle(box, "narrow"),
    line(max.y - 5, words.head, textWidth(words.head, 3.5, words.fresh) <= width ? 3.5 : 2.8, words.fresh),
    line(max.y - 10, words.take, 2.5),
    ...pictureIn({ min: { x: min.x + 2, y: min.y + below }, max: { x: max.x - 2, y: max.y - 12.5 } }),
    ...lines.map(({ text, bold }, i) => line(min.y + below - 0.2 - step * (i + 1), text, 2.5, bold)),
  ];
}

/** A sentence in lines, what is too long for them joined in the last, which is shortened. */
function linesOf(text: string, count: number, width: number, bold = false): readonly string[] {
  if (text === "") return [];
  const lines = wrapText(text, width, 2.5, bold);
  return lines.length <= count ? lines : [...lines.slice(0, count - 1), lines.slice(count - 1).join(" ")];
}

function numbersOf({ cuts }: RipStep): string {
  const first = cuts[0]!.number;
  return cuts.length === 1 ? `${first}` : `${first} to ${cuts.at(-1)!.number}`;
}
