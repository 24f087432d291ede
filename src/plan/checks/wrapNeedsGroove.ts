import { arcOf, directionAtStart } from "../../geometry/arc.js";
import { nearestOn, nearestOnPath } from "../../geometry/distance.js";
import { eachEdge } from "../../geometry/measure.js";
import type { Point, Profile, Vertex } from "../../geometry/profile.js";
import { type Finding, type FindingDef, mm, raise, text } from "../../input/finding.js";
import type { Check } from "../../model/build.js";
import type { Part } from "../../model/part.js";
import { rules } from "../../shop/rules.js";
import { nameOf } from "../standing.js";

export const wrapWithoutGroove: FindingDef = {
  code: "wrap-without-groove",
  severity: "warning",
  words: "the covering of {part} wraps {wrap} on to the back at {edges}, and nothing there takes its cut end",
  next: "give it `back: groove` or `back: rebate`",
  explain:
    "A covering that goes round to the back needs a clean end: a shallow groove at the wrap line, where the knife runs and the cut end lies, or a rebate from the edge to it.",
};

export const backTooDeep: FindingDef = {
  code: "back-too-deep",
  severity: "error",
  words: "the groove or rebate on the back of {part} is {depth} deep in {thickness} board, where {most} is the most",
  next: "make it shallower, or use a thicker board",
  explain: "A groove or rebate for a covering's end is never deeper than a third of the board, or the edge breaks off.",
};

export const wrapNeedsGroove: Check = {
  name: "wrapped edges",
  findings: [wrapWithoutGroove, backTooDeep],
  run(_job, _shop, plan) {
    return plan.built.parts.flatMap((part) => [...bareWraps(part), ...tooDeep(part)]);
  },
};

function bareWraps(part: Part): readonly Finding[] {
  const bare = Object.entries(part.edges).filter(([by, { finish }]) => {
    return finish.kind === "wrapped" && finish.wrap > 0 && !hasRebate(part, by) && !hasGroove(part, by, finish.wrap);
  });
  const wraps = bare.map(([, { finish }]) => (finish.kind === "wrapped" ? finish.wrap : 0));
  if (bare.length === 0) return [];
  const edges = bare.map(([by]) => by);
  const facts = { part: text(nameOf(part)), edges: text(edges.join(", ")), wrap: mm(Math.max(...wraps)) };
  return [raise(wrapWithoutGroove, { at: part.from, on: [part.id], facts })];
}

function tooDeep(part: Part): readonly Finding[] {
  const wrapped = Object.values(part.edges).some(({ finish }) => finish.kind === "wrapped" && finish.wrap > 0);
  const most = part.thickness * rules.backDepth.value;
  return part.features.flatMap(({ id, from, side, cut }) => {
    const onBack = cut.kind === "groove" || (cut.kind === "edge" && cut.form === "rebate");
    if (!wrapped || !onBack || side !== "back" || cut.depth <= most + 1e-9) return [];
    const facts = {
      part: text(nameOf(part)),
      depth: mm(cut.depth),
      thickness: mm(part.thickness),
      most: mm(most),
    };
    return [raise(backTooDeep, { at: from, on: [part.id, id], facts })];
  });
}

function hasRebate(part: Part, by: string): boolean {
  return part.features.some(
    ({ side, cut }) => side === "back" && cut.kind === "edge" && cut.form === "rebate" && cut.along.includes(by),
  );
}

/** Whether a groove on the back follows the wrap line along at least half of an edge: it may stop at holes and joints. */
function hasGroove(part: Part, by: string, wrap: number): boolean {
  const points = wrapLine(part, by, wrap);
  const reached = points.filter((point) =>
    part.features.some(({ side, cut }) => {
      if (side !== "back" || cut.kind !== "groove") return false;
      const near = cut.closed ? nearestOn(cut.path, point) : nearestOnPath(cut.path, point);
      return near !== undefined && near.distance <= cut.width;
    }),
  );
  return points.length === 0 || reached.length * 2 >= points.length;
}

const samples = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9];

/** Points of the line that lies `wrap` inward of the edges with this name. */
function wrapLine({ profile }: Part, by: string, wrap: number): readonly Point[] {
  const loops = [profile.outer, ...profile.holes];
  return loops.flatMap((loop, i) => edgesNamed(loop, by).flatMap(([a, b]) => inward(a, b, i === 0 ? wrap : -wrap)));
}

function edgesNamed(loop: Profile, by: string): readonly (readonly [Vertex, Vertex])[] {
  const edges: [Vertex, Vertex][] = [];
  eachEdge(loop, (a, b) => {
    if (a.by === by) edges.push([a, b]);
  });
  return edges;
}

/** Points beside an edge, to its left by `distance`; none beside an arc that is too tight to have such a line. */
function inward(a: Vertex, b: Vertex, distance: number): readonly Point[] {
  if (a.bulge === 0) {
    const along = directionAtStart(a, b);
    return samples.map((t) => ({
      x: a.x + (b.x - a.x) * t - along.y * distance,
      y: a.y + (b.y - a.y) * t + along.x * distance,
    }));
  }
  const { center, radius, start, sweep } = arcOf(a, b);
  const moved = radius - Math.sign(sweep) * distance;
  if (moved <= 0) return [];
  return samples.map((t) => {
    const angle = start + sweep * t;
    return { x: center.x + moved * Math.cos(angle), y: center.y + moved * Math.sin(angle) };
  });
}
