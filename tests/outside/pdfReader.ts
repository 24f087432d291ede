import { getDocument, OPS } from "pdfjs-dist/legacy/build/pdf.mjs";

// Drawings read back through pdfjs-dist, which knows nothing of the code that wrote them. All in mm of paper, y up.

export type ReadText = { readonly text: string; readonly x: number; readonly y: number; readonly width: number };
export type ReadBox = { readonly minX: number; readonly minY: number; readonly maxX: number; readonly maxY: number };
export type ReadPage = {
  readonly width: number;
  readonly height: number;
  readonly texts: readonly ReadText[];
  /** The extents of everything that was stroked in one go, with the width of its line. */
  readonly strokes: readonly (ReadBox & { readonly lineWidth: number })[];
};

const mm = 25.4 / 72;

type Matrix = readonly [number, number, number, number, number, number];

export async function readPdf(bytes: Uint8Array): Promise<{ pages: ReadPage[]; info: Record<string, unknown> }> {
  const task = getDocument({ data: Uint8Array.from(bytes), useSystemFonts: false, verbosity: 0 });
  const document = await task.promise;
  const info = (await document.getMetadata()).info as Record<string, unknown>;
  const pages: ReadPage[] = [];
  for (let n = 1; n <= document.numPages; n++) {
    const page = await document.getPage(n);
    const [, , width, height] = page.view as [number, number, number, number];
    const content = await page.getTextContent();
    const texts = content.items.flatMap((item) =>
      "str" in item && item.str.trim() !== ""
        ? [{ text: item.str, x: item.transform[4] * mm, y: item.transform[5] * mm, width: item.width * mm }]
        : [],
    );
    const operators = await page.getOperatorList();
    pages.push({ width: width * mm, height: height * mm, texts, strokes: strokesOf(operators) });
  }
  await task.destroy();
  return { pages, info };
}

/** Follows the transforms and line widths and takes the extents that the reader itself computed of each stroked path. */
function strokesOf({ fnArray, argsArray }: { fnArray: number[]; argsArray: unknown[] }): ReadPage["strokes"] {
  const strokes: (ReadBox & { lineWidth: number })[] = [];
  let state: { matrix: Matrix; lineWidth: number } = { matrix: [1, 0, 0, 1, 0, 0], lineWidth: 1 };
  const saved: (typeof state)[] = [];
  fnArray.forEach((operator, i) => {
    const args = argsArray[i];
    if (operator === OPS.save) saved.push(state);
    else if (operator === OPS.restore) state = saved.pop()!;
    else if (operator === OPS.transform) state = { ...state, matrix: times(state.matrix, args as Matrix) };
    else if (operator === OPS.setLineWidth) state = { ...state, lineWidth: (args as [number])[0] };
    else if (operator === OPS.constructPath) {
      const [paint, , extents] = args as [number, unknown, ArrayLike<number>];
      if (paint === OPS.stroke || paint === OPS.closeStroke) strokes.push(boxOnPaper(state, extents));
    }
  });
  return strokes;
}

function boxOnPaper({ matrix, lineWidth }: { matrix: Matrix; lineWidth: number }, extents: ArrayLike<number>) {
  const [ax, ay] = carried(matrix, extents[0]!, extents[1]!);
  const [bx, by] = carried(matrix, extents[2]!, extents[3]!);
  return {
    minX: Math.min(ax, bx) * mm,
    minY: Math.min(ay, by) * mm,
    maxX: Math.max(ax, bx) * mm,
    maxY: Math.max(ay, by) * mm,
    lineWidth: lineWidth * Math.hypot(matrix[0], matrix[1]) * mm,
  };
}

function carried(m: Matrix, x: number, y: number): readonly [number, number] {
  return [m[0] * x + m[2] * y + m[4], m[1] * x + m[3] * y + m[5]];
}

function times(m: Matrix, n: Matrix): Matrix {
  const [a, b] = carried([m[0], m[1], m[2], m[3], 0, 0], n[0], n[1]);
  const [c, d] = carried([m[0], m[1], m[2], m[3], 0, 0], n[2], n[3]);
  const [e, f] = carried(m, n[4], n[5]);
  return [a, b, c, d, e, f];
}
