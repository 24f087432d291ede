import { nearestOn } from "../geometry/distance.js";
import { pointInProfile, pointInRegion } from "../geometry/inside.js";
import { extentsOf } from "../geometry/measure.js";
import { widen } from "../geometry/offset.js";
import type { Point, Profile } from "../geometry/profile.js";
import { circle } from "../geometry/shapes.js";
import { raise, text } from "../input/finding.js";
import type { Feature, Cut as PartCut } from "../model/part.js";
import type { Move } from "../model/program.js";
import { nameOf } from "../plan/standing.js";
import type { Bench, Done, Lying, Tool } from "./bench.js";
import { cannot } from "./faults.js";
import { numberLeft } from "./findings.js";
import { hasSigns, textStrokes, textWidth } from "./glyphs.js";
import { approach, endOf, line, rise, slowFrom } from "./moves.js";
import { paceOf } from "./speeds.js";

type Mark = Extract<PartCut, { kind: "mark" }>;

/** Engraved signs, mm: common practice, no source. `deep`: of a stroke; `off`: from anything that is cut. */
const sign = { height: 10, deep: 0.5, off: 3 } as const;

/**
 * Engraves a text in plain strokes, upright as the sheet lies, its middle where the job has it; where something is cut
 * there, at the nearest place where nothing is. Without such a place only a note is left.
 */
export function engrave(bench: Bench, lying: Lying, feature: Feature, tool: Tool, mark: Mark): Done {
  if (tool.bit.kind !== "v" && tool.bit.kind !== "chamfer") return cannot(lying, feature, tool, "it ends in no point");
  const middle = hasSigns(mark.text)
    ? roomFor(lying, lying.to.point(mark.at), textWidth(mark.text, sign.height))
    : undefined;
  if (middle === undefined) {
    const facts = { part: text(nameOf(lying.part)), text: text(mark.text) };
    const finding = raise(numberLeft, { at: feature.from, on: [lying.part.id, feature.id], facts });
    return { cuts: [], findings: [finding], withheld: [feature.id] };
  }
  const corner = { x: middle.x - textWidth(mark.text, sign.height) / 2, y: middle.y - sign.height / 2 };
  const moves = textStrokes(mark.text, sign.height).flatMap((stroke) => strokeMoves(bench, tool, stroke, corner));
  const operation = { kind: "engrave", part: lying.part.id, feature: feature.id, moves, floor: -sign.deep } as const;
  return { cuts: [{ tool, operation }], findings: [], withheld: [] };
}

function strokeMoves(bench: Bench, tool: Tool, stroke: readonly Point[], corner: Point): readonly Move[] {
  const pace = paceOf(bench.cnc, tool.speeds, tool.d, sign.deep);
  const [first, ...rest] = stroke.map((p) => ({ x: p.x + corner.x, y: p.y + corner.y }));
  const moves = [
    ...approach(first!, slowFrom, bench.safe, pace),
    line(first!, -sign.deep, pace.plunge, "plunge"),
    ...rest.map((p) => line(p, -sign.deep, pace.feed, "cut")),
  ];
  return [...moves, rise(endOf(moves), bench.safe)];
}

/** How far about the wanted place is looked for one with room, in steps of this, mm. */
const look = { step: 8, rings: 60 } as const;

/** The middle of a clear strip this wide, nearest to the place wanted. */
function roomFor(lying: Lying, wanted: Point, width: number): Point | undefined {
  const cut = cutLoops(lying);
  const { min, max } = extentsOf(lying.profile);
  const isInside = (p: Point) => p.x > min.x && p.x < max.x && p.y > min.y && p.y < max.y;
  for (let ring = 0; ring <= look.rings; ring++) {
    const found = placesRound(wanted, ring)
      .filter(isInside)
      .find((p) => isClear(lying, cut, p, width));
    if (found) return found;
  }
  return undefined;
}

function placesRound({ x, y }: Point, ring: number): readonly Point[] {
  const at = (i: number, j: number) => ({ x: x + i * look.step, y: y + j * look.step });
  if (ring === 0) return [at(0, 0)];
  const along = Array.from({ length: 2 * ring }, (_, i) => i - ring);
  return along.flatMap((i) => [at(i, -ring), at(ring, i), at(-i, ring), at(-ring, -i)]);
}

/** Whether the strip's own places keep off everything that is cut: looked at on a raster finer than what it keeps off. */
function isClear(lying: Lying, cut: readonly Profile[], middle: Point, width: number): boolean {
  const edges = [lying.profile.outer, ...lying.profile.holes];
  const columns = Math.ceil(width / sign.off);
  const rows = Math.ceil(sign.height / sign.off);
  for (let i = 0; i <= columns; i++) {
    for (let j = 0; j <= rows; j++) {
      const p = {
        x: middle.x - width / 2 + (width * i) / columns,
        y: middle.y - sign.height / 2 + (sign.height * j) / rows,
      };
      if (!pointInRegion(lying.profile, p) || edges.some((loop) => nearestOn(loop, p)!.distance < sign.off))
        return false;
      if (cut.some((loop) => pointInProfile(loop, p) || nearestOn(loop, p)!.distance < sign.off)) return false;
    }
  }
  return true;
}

/** The loops of what else is cut into the side that lies up. */
function cutLoops(lying: Lying): readonly Profile[] {
  return lying.part.features.flatMap(({ cut, side }) => {
    if (side !== lying.up && !(cut.kind === "hole" && cut.depth === "through")) return [];
    if (cut.kind === "pocket") return [lying.to.region(cut.region).outer];
    if (cut.kind === "hole") {
      return [circle(lying.to.point(cut.at), Math.max(cut.d, cut.sink?.d ?? 0) / 2, "")];
    }
    if (cut.kind === "groove") return widen(lying.to.path(cut.path), cut.width / 2).map((region) => region.outer);
    return [];
  });
}
