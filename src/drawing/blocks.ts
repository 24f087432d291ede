import type { Extents, Point } from "../geometry/profile.js";
import type { Item, Text } from "./page.js";
import { lineThrough } from "./shapes.js";
import { lineSpacing, shorten, wrapText, write } from "./textBox.js";

/** Something of a known height that is set from its upper left corner: a paragraph, a row of a table. */
export type Block = { readonly height: number; readonly draw: (corner: Point) => readonly Item[] };

export type Column = { readonly title: string; readonly width: number; readonly align?: "right" };
export type Cell = string;

type Style = Partial<Pick<Text, "height" | "bold">>;

/** A paragraph in lines no wider than `width`; `after` is left below it, mm. */
export function paragraph(text: string, width: number, style: Style = {}, after = 1): Block {
  const { height = 2.5, bold = false } = style;
  const lines = wrapText(text, width, height, bold);
  const step = height * lineSpacing;
  return {
    height: lines.length * step + after,
    draw: ({ x, y }) => lines.map((line, i) => write({ x, y: y - height * 1.2 - i * step }, line, { height, bold })),
  };
}

/** A narrow rule with some room above and below. */
export function rule(width: number): Block {
  return {
    height: 3,
    draw: ({ x, y }) => [
      lineThrough(
        [
          { x, y: y - 1 },
          { x: x + width, y: y - 1 },
        ],
        "narrow",
      ),
    ],
  };
}

/** A table's head; set it again where the table goes on in another column. */
export function tableHead(columns: readonly Column[]): Block {
  const row = tableRow(
    columns,
    columns.map(({ title }) => title),
    { bold: true },
  );
  const width = columns.reduce((sum, column) => sum + column.width, 0);
  return {
    height: row.height + 0.6,
    draw: ({ x, y }) => {
      const base = y - row.height + 0.2;
      return [
        ...row.draw({ x, y }),
        lineThrough(
          [
            { x, y: base },
            { x: x + width, y: base },
          ],
          "narrow",
        ),
      ];
    },
  };
}

/** One row of a table: long cells run over several lines. */
export function tableRow(columns: readonly Column[], cells: readonly Cell[], style: Style = {}): Block {
  const { height = 2.5, bold = false } = style;
  const gap = 2.5;
  const wrapped = columns.map(({ width }, i) => wrapText(cells[i] ?? "", width - gap, height, bold));
  const step = height * lineSpacing;
  const lines = Math.max(1, ...wrapped.map((each) => each.length));
  const lefts = columns.map((_, i) => columns.slice(0, i).reduce((sum, column) => sum + column.width, 0));
  return {
    height: lines * step + 0.8,
    draw: ({ x, y }) =>
      wrapped.flatMap((cell, i) => {
        const { align, width } = columns[i]!;
        const at = align === "right" ? x + lefts[i]! + width - gap : x + lefts[i]!;
        const anchor = align === "right" ? ("end" as const) : ("start" as const);
        return cell.map((line, k) => write({ x: at, y: y - height * 1.3 - k * step }, line, { height, bold, anchor }));
      }),
  };
}

/** Blocks that stay on one page. */
export function stacked(blocks: readonly Block[]): Block {
  return {
    height: blocks.reduce((sum, { height }) => sum + height, 0),
    draw: ({ x, y }) => {
      let top = y;
      return blocks.flatMap((block) => {
        const items = block.draw({ x, y: top });
        top -= block.height;
        return items;
      });
    },
  };
}

/** A line that is cut short, for where only one line has room. */
export function oneLine(text: string, width: number, style: Style = {}): Block {
  const { height = 2.5, bold = false } = style;
  return paragraph(shorten(text, width, height, bold), width, style);
}

/** Sets blocks from the top of a box down. `rest`: those that did not fit; the first one always goes in. */
export function setBlocks(
  blocks: readonly Block[],
  box: Extents,
): { readonly items: readonly Item[]; readonly rest: readonly Block[]; readonly bottom: number } {
  const items: Item[] = [];
  let y = box.max.y;
  for (const [index, block] of blocks.entries()) {
    if (index > 0 && y - block.height < box.min.y) return { items, rest: blocks.slice(index), bottom: y };
    items.push(...block.draw({ x: box.min.x, y }));
    y -= block.height;
  }
  return { items, rest: [], bottom: y };
}
