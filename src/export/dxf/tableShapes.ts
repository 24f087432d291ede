import type { Extents, Point } from "../../geometry/profile.js";
import { type Shape, widthOfWords } from "../shapes/shape.js";

/** Lines of text, then tables of them, set beside a drawing. The first row of a table names its columns. */
export type Beside = { readonly lines: readonly string[]; readonly table: readonly (readonly string[])[] };

/** Sets text to the right of `drawn`, from its top down, mm. */
export function besideShapes(drawn: Extents, blocks: readonly Beside[]): readonly Shape[] {
  const height = heightFor(drawn);
  const columns = widthsOf(
    blocks.flatMap(({ table }) => table),
    height,
  );
  const at = (row: number): Point => ({ x: drawn.max.x + 6 * height, y: drawn.max.y - height - row * 1.8 * height });
  const rows = blocks.flatMap(({ lines, table }) => [...lines.map((line) => [line]), ...table, []]);
  return rows.flatMap((cells, row) => wordsOf(cells, at(row), columns, height));
}

/** Readable on the whole drawing, and no larger than needed on a small part. */
export function heightFor({ min, max }: Extents): number {
  return Math.min(8, Math.max(2.5, Math.max(max.x - min.x, max.y - min.y) / 120));
}

function widthsOf(rows: readonly (readonly string[])[], height: number): readonly number[] {
  const count = Math.max(0, ...rows.map((row) => row.length));
  return Array.from({ length: count }, (_, i) =>
    Math.max(...rows.map((row) => widthOfWords(row[i] ?? "", height) + 2 * height)),
  );
}

function wordsOf(cells: readonly string[], at: Point, columns: readonly number[], height: number): readonly Shape[] {
  let { x } = at;
  return cells.flatMap((text, i): readonly Shape[] => {
    const cell: Shape = { kind: "words", layer: "TABLE", at: { x, y: at.y }, height, text };
    x += columns[i] ?? 0;
    return text === "" ? [] : [cell];
  });
}
