import { calloutsOf } from "../../drawing/callouts.js";
import { purposeOf } from "../../drawing/purpose.js";
import { toolSize } from "../../drawing/sizes.js";
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
    ...calloutsOf(part, axes, show).map(({ features, size }) => row(part, features, size, process, axes, show)),
  ];
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
    toolsFor(part, makers, process),
    oversize ? "cut to the blank; to the outline when assembled" : "",
  ];
}

function row(
  part: Part,
  features: readonly Feature[],
  size: string,
  process: PartProcess | undefined,
  axes: readonly Axis[],
  show: Show,
): Row {
  const [first] = features;
  const { cut, side } = first!;
  return [
    namesOf(part, features),
    layersOf(first!),
    features.length > 1 ? `${features.length} x ${size}` : size,
    depthOf(cut, part, show),
    sideWords(side),
    toolsFor(part, features, process),
    [...edgePlaces(features, show), ...purposeOf(first!, axes)].join(", "),
  ];
}

function layersOf(feature: Feature): string {
  if (typeof feature.side === "object") return "not drawn";
  const sunk = feature.cut.kind === "hole" && feature.cut.sink !== undefined;
  return sunk ? `${layerOf(feature)}, ${sinkLayer(feature)}` : layerOf(feature);
}

function sideWords(side: Side): string {
  return typeof side === "object" ? `edge ${side.edge}` : side;
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

/** Where holes enter an edge: they are not drawn, so their places are told, in the frame of the drawing. */
function edgePlaces(features: readonly Feature[], show: Show): readonly string[] {
  return features.flatMap(({ cut, side }) => {
    if (cut.kind !== "hole" || typeof side === "string") return [];
    const below = cut.below === undefined ? "" : `, ${toolSize(cut.below, show)} below the face`;
    return [`at (${toolSize(cut.at.x, show)}, ${toolSize(cut.at.y, show)})${below}`];
  });
}

function toolsFor(part: Part, features: readonly Feature[], process: PartProcess | undefined): string {
  const tools = features.map(({ id }) => process?.tool[nameWithin(part.id, id)] ?? "");
  return [...new Set(tools)].filter((tool) => tool !== "").join(", ");
}

/** "pilot.1 to pilot.8" for a run of eight, else every name. */
function namesOf(part: Part, features: readonly Feature[]): string {
  const names = features.map(({ id }) => nameWithin(part.id, id));
  if (names.length < 3) return names.join(", ");
  const stem = names[0]!.replace(/\d+$/, "");
  const first = Number(names[0]!.slice(stem.length));
  const runs = names.every((name, i) => name === `${stem}${first + i}`);
  return runs ? `${names[0]} to ${names.at(-1)}` : names.join(", ");
}
