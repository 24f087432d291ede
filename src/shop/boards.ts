import type { BoardStock, SheetSize } from "../model/shop.js";

const inch = 25.4;
const practice = "common practice, no source";
const lists = "sheet merchants' published size lists";
const plyMaker = "a birch plywood maker's published table of sizes and plies";

const metricSheets: readonly SheetSize[] = [
  { length: 2440, width: 1220, trim: 5, source: lists },
  { length: 2440, width: 1525, trim: 5, source: practice },
  { length: 3050, width: 1525, trim: 5, source: practice },
];

// Sold an inch over the name; the extra inch is there to be trimmed off.
const oversizeSheets: readonly SheetSize[] = [
  { length: 97 * inch, width: 49 * inch, trim: 0.5 * inch, source: practice },
  { length: 97 * inch, width: 61 * inch, trim: 0.5 * inch, source: practice },
  { length: 121 * inch, width: 61 * inch, trim: 0.5 * inch, source: practice },
];

// Length is along the face grain.
const birchSheets: readonly SheetSize[] = [
  { length: 1525, width: 1525, trim: 5, source: "birch plywood merchants' published sizes" },
  { length: 2440, width: 1220, trim: 5, source: "birch plywood merchants' published sizes" },
  { length: 3050, width: 1525, trim: 5, source: "birch plywood merchants' published sizes" },
];

/** 750 kg/m3 lies inside the published ranges for MDF (600 to 880, 680 to 830). */
function mdf(thickness: number, sheets: readonly SheetSize[]): BoardStock {
  return { material: "MDF", thickness, density: 750, grain: false, sheets, offcuts: [], source: practice };
}

/** 680 kg/m3 (640 to 700): common practice, no source. */
function birch(thickness: number): BoardStock {
  return {
    material: "birch plywood",
    thickness,
    density: 680,
    grain: true,
    sheets: birchSheets,
    offcuts: [],
    source: plyMaker,
  };
}

/** Sheet goods by the name a fabricator types. */
export const boards: Readonly<Record<string, BoardStock>> = {
  "mdf-3": mdf(3, metricSheets),
  "mdf-6": mdf(6, metricSheets),
  "mdf-9": mdf(9, metricSheets),
  "mdf-12": mdf(12, metricSheets),
  "mdf-15": mdf(15, metricSheets),
  "mdf-16": mdf(16, metricSheets),
  "mdf-18": mdf(18, metricSheets),
  "mdf-19": mdf(19, metricSheets),
  "mdf-22": mdf(22, metricSheets),
  "mdf-25": mdf(25, metricSheets),
  "mdf-28": mdf(28, metricSheets),
  "mdf-30": mdf(30, metricSheets),
  "mdf-1/8": mdf(inch / 8, oversizeSheets),
  "mdf-1/4": mdf(inch / 4, oversizeSheets),
  "mdf-3/8": mdf((3 * inch) / 8, oversizeSheets),
  "mdf-1/2": mdf(inch / 2, oversizeSheets),
  "mdf-5/8": mdf((5 * inch) / 8, oversizeSheets),
  "mdf-3/4": mdf((3 * inch) / 4, oversizeSheets),
  "mdf-1": mdf(inch, oversizeSheets),
  "birch-4": birch(4),
  "birch-6.5": birch(6.5),
  "birch-9": birch(9),
  "birch-12": birch(12),
  "birch-15": birch(15),
  "birch-18": birch(18),
  "birch-21": birch(21),
  "birch-24": birch(24),
};
