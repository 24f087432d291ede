import type { Exporter } from "../../model/build.js";
import { buyCsv } from "./buyCsv.js";
import { cutListCsv } from "./cutListCsv.js";

/** Lists for a spreadsheet. */
export const csvExporter: Exporter = {
  format: "csv",
  write: (build) => [
    { path: "cut-list.csv", bytes: cutListCsv(build) },
    { path: "buy.csv", bytes: buyCsv(build) },
  ],
};
