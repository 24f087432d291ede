import { showFor } from "../drawing/handShow.js";
import { showQuantity } from "../input/show.js";
import type { Build } from "../model/build.js";
import type { Method } from "../model/shop.js";

/** A size of a part as it is read at the bench, with its unit: that of the step of the tool it is set at. */
export function sizeShown(mm: number, method: Method | undefined, build: Build): string {
  return showQuantity({ unit: "mm", value: mm }, showFor(method, build));
}
