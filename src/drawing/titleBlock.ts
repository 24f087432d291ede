import type { Extents } from "../geometry/profile.js";
import type { Show } from "../input/show.js";
import type { Build } from "../model/build.js";
import type { Item } from "./page.js";
import { boxAt, lineThrough, rectangle } from "./shapes.js";
import { shorten, write } from "./textBox.js";

/** What the title block says of one sheet; what is the same for all comes from the job. */
export type TitleWords = {
  readonly title: string;
  readonly documentType: string;
  /** Last part of the identification number: "B3", "sheet 1". */
  readonly numberTail: string;
  readonly sheet: number;
  readonly sheets: number;
  readonly scale?: string;
  readonly show?: Show;
};

type Field = { readonly name: string; readonly words: string; readonly share: number; readonly strong?: boolean };

const rowHeight = 8.4;
const rows = 6;

/** What the title block takes, mm. */
export const titleBlockHeight = rows * rowHeight;

/**
 * Fields after ISO 7200 (owner, number, date, sheet, title, approval, creator, document type), and the build's hash, so
 * that a stale sheet is noticed. Bottom right of the frame, at most 180 mm wide (from memory).
 */
export function titleBlock(box: Extents, build: Build, words: TitleWords): readonly Item[] {
  const { job, shop } = build;
  const number = [job.reference, words.numberTail].filter(Boolean).join("-");
  const lines: readonly (readonly Field[])[] = [
    [{ name: "title", words: words.title, share: 1, strong: true }],
    [{ name: "job", words: job.title, share: 1 }],
    [
      { name: "workshop", words: shop.name ?? "", share: 0.5 },
      { name: "customer", words: job.customer ?? "", share: 0.5 },
    ],
    [
      { name: "document", words: words.documentType, share: 0.36 },
      { name: "number", words: number, share: 0.36 },
      { name: "date", words: job.date ?? "", share: 0.28 },
    ],
    [
      { name: "scale", words: words.scale ?? "none", share: 0.36 },
      { name: "sizes in", words: (words.show ?? job.show).unit === "mm" ? "mm" : "inches [mm]", share: 0.36 },
      { name: "sheet", words: `${words.sheet} of ${words.sheets}`, share: 0.28, strong: true },
    ],
    [
      { name: "build", words: build.hash, share: 0.36 },
      { name: "made with", words: "Bafflewright", share: 0.36 },
      { name: "approved", words: "", share: 0.28 },
    ],
  ];
  return [rectangle(box, "visible"), ...lines.flatMap((line, row) => drawRow(line, row, box))];
}

function drawRow(line: readonly Field[], row: number, box: Extents): readonly Item[] {
  const width = box.max.x - box.min.x;
  const top = box.max.y - row * rowHeight;
  const under = lineThrough(
    [
      { x: box.min.x, y: top },
      { x: box.max.x, y: top },
    ],
    "narrow",
  );
  const lefts = line.map((_, i) => box.min.x + width * line.slice(0, i).reduce((sum, field) => sum + field.share, 0));
  const fields = line.flatMap((field, i) =>
    drawField(field, boxAt(lefts[i]!, top - rowHeight, width * field.share, rowHeight)),
  );
  const walls = lefts.slice(1).map((x) =>
    lineThrough(
      [
        { x, y: top },
        { x, y: top - rowHeight },
      ],
      "narrow",
    ),
  );
  return [...(row === 0 ? [] : [under]), ...walls, ...fields];
}

function drawField({ name, words, strong }: Field, box: Extents): readonly Item[] {
  const x = box.min.x + 1.2;
  const room = box.max.x - box.min.x - 2.4;
  const height = strong ? 3 : 2.5;
  return [
    write({ x, y: box.max.y - 2.7 }, shorten(name, room, 1.8), { height: 1.8 }),
    write({ x, y: box.min.y + 1.5 }, shorten(words, room, height, strong), { height, bold: strong ?? false }),
  ];
}
