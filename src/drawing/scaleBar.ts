import type { Point } from "../geometry/profile.js";
import type { Item } from "./page.js";
import { boxAt, filledBox, rectangle } from "./shapes.js";
import { write } from "./textBox.js";

/** What the bars take, mm. */
export const scaleBarHeight = 15;

const inch = 25.4;
const thick = 2;

/** A bar of 100 mm over one of 4 in, and what to do where they measure wrong. `at`: the lower left corner. */
export function scaleBar(at: Point): readonly Item[] {
  const low = { x: at.x, y: at.y + 1 };
  const high = { x: at.x, y: at.y + 6 };
  const words = at.x + 4 * inch + 2.5;
  return [
    ...bar(high, 10, 10),
    ...bar(low, inch / 2, 8),
    write({ x: words, y: high.y }, "100 mm"),
    write({ x: words, y: low.y }, "4 in"),
    write({ x: at.x, y: at.y + 10.5 }, "Measure these bars: if they are wrong, do not scale from this sheet."),
  ];
}

/** Every other step is filled; the outline is the whole length. */
function bar(at: Point, step: number, steps: number): readonly Item[] {
  const filled = Array.from({ length: steps / 2 }, (_, i) =>
    filledBox(boxAt(at.x + 2 * i * step, at.y, step, thick), 0),
  );
  return [...filled, rectangle(boxAt(at.x, at.y, step * steps, thick), "narrow")];
}
