import type { LineKind } from "./page.js";

/** Width and dash pattern of a line, mm: drawn, gap, drawn, gap ... An empty pattern is a continuous line. */
export type LineStyle = { readonly width: number; readonly dashes: readonly number[] };

/**
 * Wide to narrow is 2 to 1, the pair 0.5 and 0.25 for small sheets (ISO 128, common practice); frame 0.7 (ISO 5457, from
 * memory). Dashes: ISO 128 gives 12 widths drawn and 3 open for a dash, 24 for a long dash, half a width for a dot (from
 * memory); the dots are drawn longer here, so that they live through a cheap printer.
 */
export const lineStyles: Readonly<Record<LineKind, LineStyle>> = {
  frame: { width: 0.7, dashes: [] },
  visible: { width: 0.5, dashes: [] },
  narrow: { width: 0.25, dashes: [] },
  hidden: { width: 0.25, dashes: [2.4, 0.9] },
  centre: { width: 0.25, dashes: [6, 0.9, 0.5, 0.9] },
  phantom: { width: 0.25, dashes: [6, 0.9, 0.5, 0.9, 0.5, 0.9] },
  covered: { width: 0.7, dashes: [5, 1.4, 0.7, 1.4] },
};
