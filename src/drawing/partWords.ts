import type { Build } from "../model/build.js";
import type { Part } from "../model/part.js";
import { type Block, oneLine, paragraph, rule, tableHead, tableRow } from "./blocks.js";
import type { Callout } from "./callouts.js";
import { holeRows } from "./holeTable.js";
import { notesOf } from "./notes.js";
import { namesOf, partName } from "./partName.js";
import { inRuns } from "./runs.js";
import type { SameParts } from "./sameParts.js";
import type { SeenFrom } from "./view.js";

/** The column of words beside a part's view: which part, how many, of what, what is cut into it, what to mind. */
export function partWords(
  { first, parts }: SameParts,
  from: SeenFrom,
  callouts: readonly Callout[],
  tabled: boolean,
  build: Build,
  cautions: readonly string[],
  width: number,
): readonly Block[] {
  const numbers = inRuns(parts.map(({ number }) => number));
  const off = parts.length === 1 ? "1 off" : `${parts.length} off: ${numbers}`;
  return [
    oneLine(`${first.number}  ${parts.length === 1 ? partName(first) : namesOf(parts)}`, width, {
      height: 5,
      bold: true,
    }),
    paragraph(off, width, { height: 3.5, bold: true }),
    ...notesOf(first, parts.length, build).map((note) => paragraph(note, width)),
    rule(width),
    ...calloutRows(callouts, first, width),
    ...(tabled ? holeRows(first, callouts, from, width, build.job.show) : []),
    ...(cautions.length === 0 ? [] : [rule(width)]),
    ...cautions.map((words) => paragraph(words, width, { bold: true })),
  ];
}

function calloutRows(callouts: readonly Callout[], part: Part, width: number): readonly Block[] {
  const later = Object.values(part.edges).some(({ bevel, flush }) => bevel !== 0 || flush > 0);
  if (callouts.length === 0) return [paragraph(later ? "No holes" : "Outline only: no holes, no other work", width)];
  const columns = [
    { title: "", width: 7 },
    { title: "off", width: 10, align: "right" as const },
    { title: "size", width: width * 0.26 },
    { title: "what", width: width * 0.74 - 17 },
  ];
  return [
    tableHead(columns),
    ...callouts.map(({ letter, features, size, words }) =>
      tableRow(columns, [letter, `${features.length}`, size, words]),
    ),
  ];
}
