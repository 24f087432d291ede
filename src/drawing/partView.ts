import { extentsOf, isCircle } from "../geometry/measure.js";
import type { Extents, Point } from "../geometry/profile.js";
import { tessellatePath } from "../geometry/tessellate.js";
import type { Build } from "../model/build.js";
import type { Part } from "../model/part.js";
import type { Callout } from "./callouts.js";
import { datumOf } from "./datum.js";
import { placeLabels, type Segment } from "./dimensions/labels.js";
import { drawLane } from "./dimensions/lanes.js";
import { overallHeight, overallWidth } from "./dimensions/overall.js";
import { bevelLines, coveredLines } from "./edgeLines.js";
import { featureLines, partLines, patternLines, roundCrosses } from "./featureLines.js";
import type { Item, Text } from "./page.js";
import { partLabels } from "./partLabels.js";
import type { PartLayout } from "./partLayout.js";
import { arrowHead, boxAt, filledCircle, lineThrough, polar } from "./shapes.js";
import { overallSize } from "./sizes.js";
import { sunkTints } from "./sunk.js";
import { boxOf, write } from "./textBox.js";
import { boxToPaper, type SeenFrom, toPaper } from "./view.js";

/** How far round the outline words may stand, mm of paper. */
const around = 8;

/** Half the width of the dot that marks the datum, mm of paper. */
const dotSize = 0.9;
/** Arcs are followed this closely when words are kept off them, mm of paper. */
const chord = 0.3;

/** What stands over a view: the side one looks at, the way the grain runs, where positions are measured from. */
export function viewHeading(part: Part, from: SeenFrom, room: Extents): readonly Item[] {
  const datum = datumOf(part).is === "corner" ? "the corner" : "the middle";
  const words = from === "face" ? "Seen from the face" : "Seen from the back, turned over";
  return [
    write({ x: room.min.x, y: room.max.y - 4 }, words, { height: 3.5 }),
    ...grainArrow(part, from, { x: room.min.x + 72, y: room.max.y - 3 }),
    write({ x: room.max.x, y: room.max.y - 4 }, `● all positions from ${datum}`, { anchor: "end" }),
  ];
}

function grainArrow({ grain }: Part, from: SeenFrom, at: Point): readonly Item[] {
  if (grain === undefined) return [];
  const angle = from === "back" ? Math.PI - grain : grain;
  const ends = [polar(at, 4, angle), polar(at, 4, angle + Math.PI)] as const;
  return [
    lineThrough(ends, "narrow"),
    arrowHead(ends[0], angle),
    arrowHead(ends[1], angle + Math.PI),
    write({ x: at.x + 6, y: at.y - 1 }, "grain"),
  ];
}

/** A part in its view with all that stands round it: its lines, then its sizes, then words where there is room. */
export function drawPart(part: Part, callouts: readonly Callout[], layout: PartLayout, build: Build): readonly Item[] {
  const { show } = build.job;
  const { view, box, lanes } = layout;
  const tints = sunkTints(part, view);
  const cuts = [
    ...featureLines(part, view, build.plan.built.axes),
    ...partLines(part, view),
    ...roundCrosses(part, view),
    ...bevelLines(part, view),
    ...coveredLines(part, view),
    ...patternLines(callouts, view),
  ];
  const sizes = [...lanes.flatMap((lane) => drawLane(lane, view, box, show)), ...overallSizes(part, layout, build)];
  const dot = toPaper(view, datumOf(part).at);
  const labels = placeLabels(
    partLabels(part, callouts, view, layout.tabled, show),
    {
      min: { x: box.min.x - around, y: box.min.y - around },
      max: { x: box.max.x + around, y: box.max.y + around },
    },
    [boxAt(dot.x - dotSize, dot.y - dotSize, 2 * dotSize, 2 * dotSize), ...sizes.filter(isText).map(boxOf)],
    [...cuts, ...sizes].flatMap(segmentsOf),
  );
  return [...tints, ...cuts, ...sizes, filledCircle(dot, dotSize, 0), ...labels];
}

function overallSizes(part: Part, { view, box, depths }: PartLayout, { job }: Build): readonly Item[] {
  const { min, max } = extentsOf(part.profile.outer);
  const outline = boxToPaper(view, { min, max });
  const width = overallSize(max.x - min.x, job.show);
  const above = box.max.y + depths.above;
  if (isCircle(part.profile.outer)) return overallWidth(outline, above, `⌀${width}`);
  const out = view.from === "face" ? 1 : -1;
  const beside = out === 1 ? box.max.x + depths.right : box.min.x - depths.left;
  return [
    ...overallWidth(outline, above, width),
    ...overallHeight(outline, beside, overallSize(max.y - min.y, job.show), out),
  ];
}

function isText(item: Item): item is Text {
  return item.kind === "text";
}

/** Lines as straight pieces, for keeping words off them. */
export function segmentsOf(item: Item): readonly Segment[] {
  if (item.kind !== "stroke") return [];
  const path = [...item.path, ...(item.closed ? item.path.slice(0, 1) : [])].map((bend) => ({ ...bend, by: "" }));
  const points = tessellatePath(path, chord);
  return points.slice(1).map((point, i) => [points[i]!, point] as const);
}
