import { namesOf } from "../../drawing/partName.js";
import { toolSize } from "../../drawing/sizes.js";
import type { Show } from "../../input/show.js";
import { cautionsFor, cautionWords } from "../../lists/cautions.js";
import { type CutRow, cutListOf, type Size } from "../../lists/cutList.js";
import { sizeShown } from "../../lists/sizeShown.js";
import type { Build } from "../../model/build.js";
import type { Part } from "../../model/part.js";
import { bevelsOf, jointsOf, outlinesOf } from "./assembly.js";
import { type Cell, csvBytes } from "./csv.js";

type Column = { readonly head: string; readonly cell: (row: CutRow, build: Build) => Cell };

/** Sizes twice: as read at the bench, and to the micron for a machine; with the joints these put the parts together. */
const columns: readonly Column[] = [
  { head: "numbers", cell: (row) => row.numbers.join(" ") },
  { head: "quantity", cell: (row) => row.quantity },
  { head: "parts", cell: (row, build) => namesOf(partsIn(row, build)) },
  { head: "board", cell: (row) => row.board },
  { head: "material", cell: (row) => `${row.material}, ${row.stock}` },
  { head: "thickness", cell: (row, { job }) => thickness(row.thickness, job.show) },
  ...shownSize("as cut", (row) => row.asCut),
  ...shownSize("blank", (row) => row.blank),
  ...shownSize("finished", (row) => row.finished),
  { head: "grain", cell: (row) => (row.grain ? "along the length" : "") },
  { head: "method", cell: (row) => row.method ?? "" },
  { head: "why", cell: (row) => row.why },
  { head: "edges", cell: (row) => row.edges.join(" | ") },
  { head: "sheets", cell: (row) => (row.sheets.length > 0 ? row.sheets.join("; ") : "on no sheet") },
  { head: "notes", cell: (row) => row.notes.join("; ") },
  { head: "thickness mm", cell: (row) => row.thickness },
  ...exactSize("as cut", (row) => row.asCut),
  ...exactSize("blank", (row) => row.blank),
  ...exactSize("finished", (row) => row.finished),
  { head: "outline mm", cell: (row, build) => outlinesOf(partsIn(row, build)) },
  { head: "bevels deg", cell: (row, build) => bevelsOf(partsIn(row, build)) },
  { head: "joints mm", cell: (row, build) => jointsOf(partsIn(row, build), build) },
  { head: "build", cell: (_row, { hash }) => hash },
];

function partsIn(row: CutRow, { plan }: Build): readonly Part[] {
  return plan.built.parts.filter(({ id }) => row.parts.includes(id));
}

/** The nearest fraction is no help for a thickness: in an inch job millimetres stand beside it. */
function thickness(mm: number, show: Show): string {
  return show.unit === "mm" ? `${toolSize(mm, show)} mm` : toolSize(mm, show);
}

function shownSize(name: string, size: (row: CutRow) => Size): readonly Column[] {
  return (["length", "width"] as const).map((way) => ({
    head: `${name} ${way}`,
    cell: (row, build) => sizeShown(size(row)[way], row.method, build),
  }));
}

function exactSize(name: string, size: (row: CutRow) => Size): readonly Column[] {
  return (["length", "width"] as const).map((way) => ({ head: `${name} ${way} mm`, cell: (row) => size(row)[way] }));
}

/** The cut list; below it, a row for each caution, in the columns "numbers" and "notes". */
export function cutListCsv(build: Build): Uint8Array {
  const heads = columns.map(({ head }) => head);
  const rows = cutListOf(build).map((row) => columns.map(({ cell }) => cell(row, build)));
  const cautions = cautionsFor(build, "cut list").map((caution) =>
    heads.map((head) => ({ numbers: "caution", notes: cautionWords(caution), build: build.hash })[head]),
  );
  return csvBytes([heads, ...rows, ...cautions]);
}
