import type { Extents } from "../geometry/profile.js";
import type { Show } from "../input/show.js";
import type { Build } from "../model/build.js";
import { type Block, setBlocks } from "./blocks.js";
import type { Item, Page, PageSize } from "./page.js";
import { scaleBar, scaleBarHeight } from "./scaleBar.js";
import { boxAt } from "./shapes.js";
import { frameLines, insideFrame } from "./sheetFrame.js";
import { plainText } from "./textBox.js";
import { titleBlock, titleBlockHeight } from "./titleBlock.js";

/** A page before it knows how many there are: what fills it, and what its title block is to say. */
export type Draft = {
  readonly title: string;
  readonly documentType: string;
  readonly numberTail: string;
  readonly scale?: string;
  /** How this page's sizes are shown, where not as the job says. */
  readonly show?: Show;
  readonly size: PageSize;
  readonly items: readonly Item[];
};

/** The rooms of a page: a view with the scale bars under it, and a column of words with the title block under it. */
export type Rooms = { readonly view: Extents; readonly column: Extents };

const gap = 3;

/** `column`: the width of the column of words, mm; the title block has it too. */
export function roomsOf(size: PageSize): Rooms {
  const inside = insideFrame(size);
  const left = inside.max.x - columnWidth(size);
  return {
    view: {
      min: { x: inside.min.x + gap, y: inside.min.y + scaleBarHeight + 2 },
      max: { x: left - gap, y: inside.max.y - gap },
    },
    column: {
      min: { x: left + gap, y: inside.min.y + titleBlockHeight + gap },
      max: { x: inside.max.x - gap, y: inside.max.y - gap },
    },
  };
}

function columnWidth(size: PageSize): number {
  return size.width > 300 ? 130 : 98;
}

/** The finished page: frame, title block and scale bars round the draft. */
export function finishPage(draft: Draft, sheet: number, sheets: number, build: Build): Page {
  const inside = insideFrame(draft.size);
  const width = columnWidth(draft.size);
  const block = boxAt(inside.max.x - width, inside.min.y, width, titleBlockHeight);
  return {
    title: plainText(draft.title),
    size: draft.size,
    items: [
      ...frameLines(draft.size),
      ...draft.items,
      ...titleBlock(block, build, { ...draft, sheet, sheets }),
      ...scaleBar({ x: inside.min.x + gap, y: inside.min.y + 1 }),
    ],
  };
}

/** What found no room in the column goes on further pages, in the wide room. */
export function spilledPages(blocks: readonly Block[], draft: Omit<Draft, "items">): readonly Draft[] {
  if (blocks.length === 0) return [];
  const { items, rest } = setBlocks(blocks, roomsOf(draft.size).view);
  return [{ ...draft, title: `${draft.title}, continued`, items }, ...spilledPages(rest, draft)];
}
