import { extentsOf, isCircle } from "../geometry/measure.js";
import type { Extents } from "../geometry/profile.js";
import { tessellatePath } from "../geometry/tessellate.js";
import type { Build } from "../model/build.js";
import type { Part } from "../model/part.js";
import { type Block, oneLine, paragraph, rule, setBlocks, tableHead, tableRow } from "./blocks.js";
import { type Callout, calloutsOf } from "./callouts.js";
import { datumOf } from "./datum.js";
import { placeLabels, type Segment } from "./dimensions/labels.js";
import { drawLane } from "./dimensions/lanes.js";
import { overallHeight, overallWidth } from "./dimensions/overall.js";
import { type Draft, type Rooms, roomsOf } from "./draft.js";
import { featureLines, partLines, patternLines } from "./featureLines.js";
import { holeRows } from "./holeTable.js";
import { notesOf } from "./notes.js";
import type { Item } from "./page.js";
import { partLabels } from "./partLabels.js";
import { layOutPart, type PartLayout } from "./partLayout.js";
import type { SameParts } from "./sameParts.js";
import { factorOf, scaleWords } from "./scale.js";
import { filledCircle } from "./shapes.js";
import { pageSizeFor } from "./sheetFrame.js";
import { overallSize } from "./sizes.js";
import { boxOf, write } from "./textBox.js";
import { boxToPaper, type SeenFrom, toPaper } from "./view.js";

/** Below this scale a part goes on the larger sheet. */
const smallest = 1 / 5;

/** The pages of a part: one as seen from the face, one from the back where work is done there; more if words spill. */
export function partPages(same: SameParts, build: Build, cautions: readonly string[]): readonly Draft[] {
  const { first } = same;
  const callouts = calloutsOf(first, build.plan.built.axes, build.job.show);
  const back = first.features.some(({ side }) => side === "back");
  const sides: readonly SeenFrom[] = back ? ["face", "back"] : ["face"];
  return sides.flatMap((from) => sidePages(same, from, callouts, build, cautions));
}

function sidePages(
  same: SameParts,
  from: SeenFrom,
  callouts: readonly Callout[],
  build: Build,
  cautions: readonly string[],
): readonly Draft[] {
  const { show } = build.job;
  const part = same.first;
  const small = pageSizeFor(show, "small");
  const onSmall = layOutPart(part, from, callouts, roomsOf(small).view, show);
  const large = factorOf(onSmall.scale) < smallest;
  const size = large ? pageSizeFor(show, "large") : small;
  const rooms = roomsOf(size);
  const layout = large ? layOutPart(part, from, callouts, rooms.view, show) : onSmall;
  const draft = {
    title: `${part.number}  ${part.piece} / ${part.role}${from === "back" ? ", back" : ""}`,
    documentType: "part drawing",
    numberTail: part.number,
    scale: scaleWords(layout.scale),
    size,
  };
  const blocks = columnBlocks(same, from, callouts, layout, build, cautions, rooms);
  const { items, rest } = setBlocks(blocks, rooms.column);
  const view = [...heading(part, from, rooms), ...drawPart(part, callouts, layout, build)];
  return [{ ...draft, items: [...view, ...items] }, ...spilled(rest, draft, rooms)];
}

/** What found no room in the column goes on further pages, in the wide room. */
function spilled(blocks: readonly Block[], draft: Omit<Draft, "items">, rooms: Rooms): readonly Draft[] {
  if (blocks.length === 0) return [];
  const { items, rest } = setBlocks(blocks, rooms.view);
  return [{ ...draft, title: `${draft.title}, continued`, items }, ...spilled(rest, draft, rooms)];
}

function heading(part: Part, from: SeenFrom, { view }: Rooms): readonly Item[] {
  const datum = datumOf(part).is === "corner" ? "the corner" : "the middle";
  const words = from === "face" ? "Seen from the face" : "Seen from the back, turned over left to right";
  return [
    write({ x: view.min.x, y: view.max.y - 4 }, words, { height: 3.5 }),
    write({ x: view.max.x, y: view.max.y - 4 }, `● all positions from ${datum} with the dot`, { anchor: "end" }),
  ];
}

/** The view with all that stands round it. */
function drawPart(part: Part, callouts: readonly Callout[], layout: PartLayout, build: Build): readonly Item[] {
  const { show } = build.job;
  const { view, box, lanes } = layout;
  const cuts = [
    ...partLines(part, view),
    ...featureLines(part, view, build.plan.built.axes),
    ...patternLines(callouts, view),
  ];
  const sizes = [...lanes.flatMap((lane) => drawLane(lane, view, box, show)), ...overall(part, layout, build)];
  const dot = filledCircle(toPaper(view, datumOf(part).at), 0.9, 0);
  const around: Extents = {
    min: { x: box.min.x - 8, y: box.min.y - 8 },
    max: { x: box.max.x + 8, y: box.max.y + 8 },
  };
  const taken = sizes.filter((item) => item.kind === "text").map(boxOf);
  const labels = placeLabels(
    partLabels(part, callouts, view, layout.tabled, show),
    around,
    taken,
    [...cuts, ...sizes].flatMap(segmentsOf),
  );
  return [...cuts, ...sizes, dot, ...labels];
}

function overall(part: Part, { view, box, depths }: PartLayout, build: Build): readonly Item[] {
  const { show } = build.job;
  const extents = extentsOf(part.profile.outer);
  const outline = boxToPaper(view, extents);
  const round = isCircle(part.profile.outer);
  const width = overallSize(extents.max.x - extents.min.x, show);
  const across = overallWidth(outline, box.max.y + depths.above, round ? `⌀${width}` : width);
  if (round) return across;
  const out = view.from === "face" ? 1 : -1;
  const start = out === 1 ? box.max.x + depths.right : box.min.x - depths.left;
  return [...across, ...overallHeight(outline, start, overallSize(extents.max.y - extents.min.y, show), out)];
}

/** Lines as straight pieces, for keeping words off them. */
function segmentsOf(item: Item): readonly Segment[] {
  if (item.kind !== "stroke") return [];
  const path = [...item.path, ...(item.closed ? item.path.slice(0, 1) : [])].map((bend) => ({ ...bend, by: "" }));
  const points = tessellatePath(path, 0.2);
  return points.slice(1).map((point, i) => [points[i]!, point] as const);
}

function columnBlocks(
  same: SameParts,
  from: SeenFrom,
  callouts: readonly Callout[],
  layout: PartLayout,
  build: Build,
  cautions: readonly string[],
  { column }: Rooms,
): readonly Block[] {
  const width = column.max.x - column.min.x;
  const { first, parts } = same;
  const others = parts.slice(1).map(({ number }) => number);
  const off = parts.length === 1 ? "1 off" : `${parts.length} off: ${[first.number, ...others].join(", ")}`;
  return [
    oneLine(`${first.number}  ${first.piece} / ${first.role}`, width, { height: 5, bold: true }),
    paragraph(off, width, { height: 3.5, bold: true }),
    ...notesOf(same, build).map((note) => paragraph(note, width)),
    rule(width),
    ...calloutRows(callouts, width),
    ...(layout.tabled ? holeRows(first, callouts, from, width, build.job.show) : []),
    ...(cautions.length === 0
      ? []
      : [rule(width), ...cautions.map((words) => paragraph(words, width, { bold: true }))]),
  ];
}

function calloutRows(callouts: readonly Callout[], width: number): readonly Block[] {
  if (callouts.length === 0) return [paragraph("Outline only: no holes, no other work", width)];
  const columns = [
    { title: "", width: 7 },
    { title: "off", width: 8, align: "right" as const },
    { title: "size", width: width * 0.3 },
    { title: "what", width: width * 0.7 - 15 },
  ];
  return [
    tableHead(columns),
    ...callouts.map(({ letter, features, size, words }) =>
      tableRow(columns, [letter, `${features.length}`, size, words]),
    ),
  ];
}
