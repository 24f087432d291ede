import type { Method } from "../model/shop.js";

/** How a part is cut, as it is called at the bench. */
export const methodWords: Readonly<Record<Method, string>> = {
  saw: "table saw",
  hand: "hand router",
  cnc: "CNC router",
};
