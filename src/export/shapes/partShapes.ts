import { areaOf, eachEdge } from "../../geometry/measure.js";
import type { Path, Profile } from "../../geometry/profile.js";
import { nameWithin } from "../../model/ids.js";
import type { Cut, Feature, Part } from "../../model/part.js";
import { goesThrough, layerOf, sinkLayer } from "./layers.js";
import type { Shape } from "./shape.js";

/** Blank and finished outline count as one where their areas differ by less, mm2: a hair over the longest edge. */
const sameArea = 0.01;

/**
 * A part in its own frame, seen from the face. What goes through is drawn from the derived profile, so that cut-outs
 * which run into each other are one line; what does not, from the features. Holes drilled into an edge cannot be seen
 * here: they stand in the table alone.
 */
export function partShapes(part: Part): readonly Shape[] {
  const { profile } = part;
  const oversize = isOversize(part);
  return [
    ...(oversize ? [loop("BLANK", part.blank.outer)] : []),
    loop(oversize ? "OUTLINE-LATER" : "OUTLINE", profile.outer),
    ...profile.holes.map((hole) => loop(holeLayer(part, hole), hole)),
    ...part.features.flatMap((feature) => [...inBoard(part, feature), ...mouth(feature)]),
  ];
}

/** Whether the blank is cut larger than the finished part, at its outline. */
export function isOversize(part: Part): boolean {
  return Math.abs(areaOf(part.blank.outer) - areaOf(part.profile.outer)) > sameArea;
}

/** An opening that several features made is cut at the machine if any of them is. */
function holeLayer(part: Part, hole: Profile): string {
  const names = new Set(hole.flatMap((vertex) => vertex.by.split("|")));
  const makers = part.features.filter(({ id, cut }) => names.has(nameWithin(part.id, id)) && goesThrough(cut));
  const maker = makers.find(({ stage }) => stage === "sheet") ?? makers[0];
  if (maker === undefined) return "OPENING";
  const layer = layerOf(maker);
  return makers.length > 1 || maker.cut.kind !== "hole" ? layer.replace(/^(OUTLINE|HOLE)/, "OPENING") : layer;
}

/** What does not go through. */
function inBoard(part: Part, feature: Feature): readonly Shape[] {
  const { cut, side } = feature;
  if (typeof side === "object" || goesThrough(cut)) return [];
  const layer = layerOf(feature);
  switch (cut.kind) {
    case "pocket":
      return [cut.region.outer, ...cut.region.holes].map((profile) => loop(layer, profile));
    case "groove":
      return [cut.closed ? loop(layer, cut.path) : { kind: "chain", layer, path: cut.path }];
    case "hole":
      return [{ kind: "round", layer, at: cut.at, d: cut.d }];
    case "edge":
      return edgesAlong(part, cut).map((run) =>
        run.closed ? loop(layer, run.path) : { kind: "chain", layer, path: run.path },
      );
    case "mark":
      return [{ kind: "words", layer, at: cut.at, height: 5, text: cut.text }];
    default:
      return [];
  }
}

/** Where a countersink or counterbore meets the surface. */
function mouth(feature: Feature): readonly Shape[] {
  const { cut, side } = feature;
  if (cut.kind !== "hole" || cut.sink === undefined || typeof side === "object") return [];
  return [{ kind: "round", layer: sinkLayer(feature), at: cut.at, d: cut.sink.d }];
}

function loop(layer: string, profile: Profile): Shape {
  return { kind: "loop", layer, profile };
}

type Run = { readonly path: Path; readonly closed: boolean };

/** The edges that a rebate, chamfer or round-over runs along, joined where one follows another. */
function edgesAlong(part: Part, cut: Extract<Cut, { kind: "edge" }>): readonly Run[] {
  const wanted = new Set(cut.along);
  return [part.profile.outer, ...part.profile.holes].flatMap((profile) => runsIn(profile, wanted));
}

function runsIn(profile: Profile, wanted: ReadonlySet<string>): readonly Run[] {
  const start = profile.findIndex((vertex) => !wanted.has(vertex.by));
  if (start < 0) return [{ path: profile, closed: true }];
  const runs: Path[] = [];
  let run: Path = [];
  eachEdge([...profile.slice(start), ...profile.slice(0, start)], (a, b) => {
    if (wanted.has(a.by)) run = [...(run.length > 0 ? run.slice(0, -1) : []), a, { ...b, bulge: 0 }];
    else if (run.length > 0) {
      runs.push(run);
      run = [];
    }
  });
  return [...runs, ...(run.length > 0 ? [run] : [])].map((path) => ({ path, closed: false }));
}
