import { calloutsOf } from "../../drawing/callouts.js";
import { edgeName } from "../../drawing/edgeName.js";
import { purposeOf } from "../../drawing/purpose.js";
import { inRuns } from "../../drawing/runs.js";
import { degrees, toolSize } from "../../drawing/sizes.js";
import type { Show } from "../../input/show.js";
import type { PartProcess } from "../../model/build.js";
import { nameWithin } from "../../model/ids.js";
import type { Axis } from "../../model/joint.js";
import type { Cut, Feature, Part, Side } from "../../model/part.js";
import { layerOf, sinkLayer } from "./layers.js";
import { isOversize } from "./partShapes.js";

/** The table beside a drawing: one row for features that are cut alike. */
export const featureColumns = ["feature", "layer", "size", "depth", "side", "tool", "for"] as const;
export type Row = readonly string[];

/** What an R12 file cannot say by itself: how deep, from which side and with what each thing is cut. */
export function featureRows(
  part: Part,
  process: PartProcess | undefined,
  axes: readonly Axis[],
  show: Show,
): readonly Row[] {
  return [
    outlineRow(part, process, show),
    ...calloutsOf(part, axes, show).flatMap(({ features, size }) =>
      cutAlike(features, process).flatMap((alike) => rowsOf(part, alike, size, process, axes, show)),
    ),
  ];
}

/** Features that share a size may still lie on other layers, in other edges, or be cut with another tool. */
function cutAlike(features: readonly Feature[], process: PartProcess | undefined): readonly (readonly Feature[])[] {
  const groups = new Map<string, Feature[]>();
  for (const feature of features) {
    const key = JSON.stringify([layersOf(feature), sideWords(feature.side), toolsFor([feature], process)]);
    groups.set(key, [...(groups.get(key) ?? []), feature]);
  }
  return [...groups.values()];
}

function outlineRow(part: Part, process: PartProcess | undefined, show: Show): Row {
  const oversize = isOversize(part);
  const makers = part.features.filter(({ cut }) => cut.kind === "outline" || cut.kind === "notch");
  return [
    makers.map(({ id }) => nameWithin(part.id, id)).join(", "),
    oversize ? "BLANK, OUTLINE-LATER" : "OUTLINE",
    "",
    through(part, show),
    "",
    toolsFor(makers, process),
    oversize ? "cut to the blank; to the outline when assembled" : "",
  ];
}

/** How many places stand on one line. */
const placesOnLine = 4;

function rowsOf(
  part: Part,
  features: readonly Feature[],
  size: string,
  process: PartProcess | undefined,
  axes: readonly Axis[],
  show: Show,
): readonly Row[] {
  const [first] = features;
  const { cut, side } = first!;
  const row = [
    inRuns(features.map(({ id }) => nameWithin(part.id, id))),
    layersOf(first!),
    features.length > 1 ? `${features.length} x ${size}` : size,
    depthOf(cut, part, show),
    sideWords(side),
    toolsFor(features, process),
    [...sinkWords(cut, show), ...belowFace(cut, show), ...purposeOf(first!, axes)].join(", "),
  ];
  const places = edgePlaces(features, show);
  const lines = Array.from({ length: Math.ceil(places.length / placesOnLine) }, (_, i) =>
    places.slice(i * placesOnLine, (i + 1) * placesOnLine).join(" "),
  );
  return [row, ...lines.map((line, i) => ["", "", "", "", "", "", `${i === 0 ? "at " : ""}${line}`])];
}

function layersOf(feature: Feature): string {
  if (typeof feature.side === "object") return "not drawn";
  const sunk = feature.cut.kind === "hole" && feature.cut.sink !== undefined;
  return sunk ? `${layerOf(feature)}, ${sinkLayer(feature)}` : layerOf(feature);
}

function sideWords(side: Side): string {
  return typeof side === "object" ? `edge ${edgeName(side.edge)}` : side;
}

function depthOf(cut: Cut, part: Part, show: Show): string {
  switch (cut.kind) {
    case "outline":
    case "notch":
    case "opening":
      return through(part, show);
    case "pocket":
    case "groove":
    case "edge":
      return toolSize(cut.depth, show);
    case "hole":
      return cut.depth === "through" ? through(part, show) : toolSize(cut.depth, show);
    case "mark":
      return "";
  }
}

function through(part: Part, show: Show): string {
  return `through ${toolSize(part.thickness, show)}`;
}

function sinkWords(cut: Cut, show: Show): readonly string[] {
  if (cut.kind !== "hole" || cut.sink === undefined) return [];
  const { d, depth, angle } = cut.sink;
  const size = `⌀${toolSize(d, show)}`;
  return [
    angle > 0 ? `countersunk ${size} at ${degrees(angle)}` : `counterbored ${size}, ${toolSize(depth, show)} deep`,
  ];
}

function belowFace(cut: Cut, show: Show): readonly string[] {
  return cut.kind === "hole" && cut.below !== undefined ? [`${toolSize(cut.below, show)} below the face`] : [];
}

/** Where holes enter an edge: they are not drawn, so their places are told, in the frame of the drawing. */
function edgePlaces(features: readonly Feature[], show: Show): readonly string[] {
  return features.flatMap(({ cut, side }) =>
    cut.kind === "hole" && typeof side === "object"
      ? [`(${toolSize(cut.at.x, show)}, ${toolSize(cut.at.y, show)})`]
      : [],
  );
}

function toolsFor(features: readonly Feature[], process: PartProcess | undefined): string {
  const ids = new Set(features.map(({ id }) => id));
  const works = process?.work.filter(({ feature }) => ids.has(feature)) ?? [];
  const tools = works.flatMap(({ by, tool }) => (by === "saw" ? "saw" : (tool ?? [])));
  return [...new Set(tools)].join(", ");
}
