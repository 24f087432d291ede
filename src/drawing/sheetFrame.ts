import type { Extents } from "../geometry/profile.js";
import type { Show } from "../input/show.js";
import type { Item, PageSize } from "./page.js";
import { pageSizes } from "./page.js";
import { rectangle } from "./shapes.js";

/** ISO 5457: 20 mm on the side where the sheet is filed, 10 mm on the others (from memory). */
const filing = 20;
const margin = 10;

export type Format = "small" | "large";

/** Metric sheets for a job in millimetres, American ones for a job in inches. */
export function pageSizeFor(show: Show, format: Format): PageSize {
  if (show.unit === "mm") return format === "small" ? pageSizes.A4 : pageSizes.A3;
  return format === "small" ? pageSizes.Letter : pageSizes.Tabloid;
}

/** The room inside the frame. */
export function insideFrame(size: PageSize): Extents {
  return { min: { x: filing, y: margin }, max: { x: size.width - margin, y: size.height - margin } };
}

export function frameLines(size: PageSize): readonly Item[] {
  return [rectangle(insideFrame(size), "frame")];
}
