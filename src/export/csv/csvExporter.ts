import type { Exporter } from "../../model/build.js";
import { buyCsv } from "./buyCsv.js";
import { cutListCsv } from "./cutListCsv.js";
import { handCsv, isRoutedByHand } from "./handCsv.js";
import { ripCsv } from "./ripCsv.js";
import { workCsv } from "./workCsv.js";

/** Lists for a spreadsheet. */
export const csvExporter: Exporter = {
  format: "csv",
  write: (build) => [
    { path: "cut-list.csv", bytes: cutListCsv(build) },
    { path: "buy.csv", bytes: buyCsv(build) },
    { path: "work-list.csv", bytes: workCsv(build) },
    ...(isRoutedByHand(build) ? [{ path: "hand-routing.csv", bytes: handCsv(build) }] : []),
    ...(build.layout.rips ? [{ path: "rip-list.csv", bytes: ripCsv(build) }] : []),
  ],
};
