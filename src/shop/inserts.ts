import type { ThreadedInsert } from "../model/shop.js";

const inch = 25.4;
// Makers differ: the hole on the bag of inserts at hand comes first.
const practice = "common practice, no source";
const magazine = "woodworking magazine's published table, partly unreadable; common practice";

/** Threaded inserts by thread and length. `hole` is what is drilled in MDF, mm. */
export const inserts: Readonly<Record<string, ThreadedInsert>> = {
  "M4 x 10": { thread: "M4", hole: 6, length: 10, source: practice },
  "M5 x 10": { thread: "M5", hole: 7.5, length: 10, source: practice },
  "M5 x 12": { thread: "M5", hole: 7.5, length: 12, source: practice },
  "M6 x 12": { thread: "M6", hole: 9, length: 12, source: practice },
  "M6 x 15": { thread: "M6", hole: 9, length: 15, source: practice },
  "M8 x 15": { thread: "M8", hole: 11.5, length: 15, source: practice },
  "M8 x 18": { thread: "M8", hole: 11.5, length: 18, source: practice },
  "#8-32 x 3/8": { thread: "#8-32", hole: inch / 4, length: (3 * inch) / 8, source: practice },
  "#8-32 x 1/2": { thread: "#8-32", hole: inch / 4, length: inch / 2, source: practice },
  "#10-24 x 1/2": { thread: "#10-24", hole: (5 * inch) / 16, length: inch / 2, source: practice },
  "1/4-20 x 1/2": { thread: "1/4-20", hole: (3 * inch) / 8, length: inch / 2, source: magazine },
  "1/4-20 x 3/4": { thread: "1/4-20", hole: (3 * inch) / 8, length: (3 * inch) / 4, source: magazine },
  "5/16-18 x 3/4": { thread: "5/16-18", hole: inch / 2, length: (3 * inch) / 4, source: magazine },
  "5/16-18 x 1": { thread: "5/16-18", hole: inch / 2, length: inch, source: magazine },
};
