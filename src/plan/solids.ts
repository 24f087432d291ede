import { compose, type Frame, identity, place, shifted, type Vector } from "../geometry/frame.js";
import { extentsOf } from "../geometry/measure.js";
import { lineWithLine } from "../geometry/meet.js";
import { offsetProfile } from "../geometry/offset.js";
import type { Point, Profile, Region } from "../geometry/profile.js";
import { polygon, rectangle } from "../geometry/shapes.js";
import type { Block, SolidKernel, SolidRef } from "../geometry/solids.js";
import { cornersOf, type StandingBlock } from "../geometry/solids-apart.js";
import { sureOffset } from "../geometry/sure.js";
import { tolerance } from "../geometry/tolerance.js";
import { featureName } from "../model/ids.js";
import type { Driver, Job, Obstacle } from "../model/job.js";
import { onceFor } from "../model/once.js";
import type { Cut, Feature, Part } from "../model/part.js";
import { rules } from "../shop/rules.js";
import { bevelWedges, facesOf, isBevelled, squareOutline } from "./bevels.js";
import type { Standing } from "./standing.js";

/**
 * The board of a part as it stands: its profile with openings and holes that go through, less its pockets, straight
 * rebates and grooves, and what its bevels take off. Chamfers and blind holes are left in: nothing that fits or leaks
 * turns on them.
 */
export function boardOf(kernel: SolidKernel, standing: Standing): SolidRef {
  const { part, at } = standing;
  const board = kernel.extrude({ ...part.profile, outer: squareOutline(part) }, part.thickness, at);
  const sunk = part.features.flatMap((feature) => sunkIn(part, feature).map((each) => sinkOf(kernel, each, part, at)));
  const taken = [...sunk, ...bevelWedges(kernel, standing)];
  return taken.length === 0 ? board : kernel.difference(board, taken);
}

/** The board with its coverings on, as laid: every covered edge and side grown by its own covering, bevels as they are. */
export function finishedOf(kernel: SolidKernel, job: Job, standing: Standing): SolidRef {
  const { part, at } = standing;
  const { face, back } = coveringOn(job, part);
  if (!isBevelled(part)) {
    return kernel.extrude(finishedRegion(part), part.thickness + face + back, compose(at, shifted(0, 0, face)));
  }
  const [front, behind] = facesOf(part).map((outer) => ({ outer, holes: part.profile.holes })) as [Region, Region];
  return kernel.union([
    boardOf(kernel, standing),
    kernel.extrude(front, face, compose(at, shifted(0, 0, face))),
    kernel.extrude(behind, back, compose(at, shifted(0, 0, -part.thickness))),
  ]);
}

/** Places that hold the part with its coverings on between them: the corners of its block, or of both its bevelled faces. */
export function finishedCorners(job: Job, standing: Standing): readonly Vector[] {
  const { part, at } = standing;
  if (!isBevelled(part)) return cornersOf(finishedBlock(job, standing));
  const { face, back } = coveringOn(job, part);
  return facesOf(part).flatMap((outline, i) =>
    outline.map(({ x, y }) => place(at, [x, y, i === 0 ? face : -part.thickness - back])),
  );
}

/** The block round the part with its coverings on. */
export function finishedBlock(job: Job, { part, at, block }: Standing): StandingBlock {
  const { min, max } = extentsOf(finishedRegion(part).outer);
  const { face, back } = coveringOn(job, part);
  return { block: { min: [min.x, min.y, block.min[2] - back], max: [max.x, max.y, block.max[2] + face] }, at };
}

/** What one measures with the covering on: outline moved out, openings moved in, by each edge's covering as laid. A part
 *  with bevels counts as wide as the wider of its faces. */
export const finishedRegion = onceFor((part: Part): Region => {
  const covering = (by: string) => coveringOnEdge(part, by);
  if (isBevelled(part)) return { ...part.profile, outer: squareOutline(part) };
  if (!Object.values(part.edges).some((edge) => edge.finish.kind === "wrapped")) return part.profile;
  const most = Math.max(...Object.keys(part.edges).map(covering));
  // in doubt, as if covered all round: what fits then fits
  const [finished] = sureOffset(part.profile, covering).value ?? sureOffset(part.profile, most).value ?? [];
  return finished ?? part.profile;
});

/** Thickness of the covering as laid on an edge of the profile, mm; 0 where it is bare. */
export function coveringOnEdge(part: Part, by: string): number {
  const finish = part.edges[by]?.finish;
  return finish?.kind === "wrapped" ? finish.loose : 0;
}

/** Thickness of the coverings as laid on the two sides of a part, mm. */
export function coveringOn(job: Job, { coverings }: Part): { readonly face: number; readonly back: number } {
  const thick = (name: string | undefined) => (name === undefined ? 0 : (job.coverings[name]?.thick ?? 0));
  return { face: thick(coverings.face), back: thick(coverings.back) };
}

/**
 * A part as a wall round air: grown in its own plane by `margin`, mm, bevels and all, and every opening closed but the
 * leaks named. Panels in exact contact do not close an air space (a turned box leaks through its seams), and a wall's
 * plane is the one direction in which it may grow without taking air: its edges end in other panels or outside.
 */
export function wallOf(kernel: SolidKernel, standing: Standing, margin: number, open: readonly Profile[]): SolidRef {
  const grow = (outline: Profile) => offsetProfile(outline, margin, { corners: "sharp" })[0] ?? outline;
  const { part, at } = standing;
  const grown: Part = {
    ...part,
    profile: { outer: grow(part.profile.outer), holes: open },
    blank: { ...part.blank, outer: grow(part.blank.outer) },
  };
  const board = kernel.extrude({ outer: squareOutline(grown), holes: open }, part.thickness, at);
  const wedges = bevelWedges(kernel, { ...standing, part: grown });
  return wedges.length === 0 ? board : kernel.difference(board, wedges);
}

/** The features that made a hole of the profile. */
export function makersOf(part: Part, hole: Profile): readonly Feature[] {
  const names = new Set(hole.flatMap(({ by }) => by.split("|")));
  return part.features.filter(({ id }) => names.has(featureName(id)));
}

/** Something goes into it and closes it: a driver, a terminal, a bolt. */
export function isFilled(feature: Feature): boolean {
  return feature.filledBy !== undefined || feature.axis !== undefined;
}

/** A round body about a driver's axis: `d` wide at height `from`, `dTo` wide at `to`, mm above its mounting plane. */
export type Body = { readonly d: number; readonly dTo: number; readonly from: number; readonly to: number };

/** Room behind a magnet for air to move, mm: more where its pole is vented. */
export function gapBehind(driver: Driver): number {
  return (driver.vented === true ? rules.ventedMagnetGap : rules.magnetGap).value;
}

/**
 * The bodies of a driver that its data sheet gives enough figures for: the rim of its frame; its basket, narrowing from
 * the cut-out to the magnet; the whole disc of its magnet with the air gap behind; what its cone sweeps in front.
 */
export function bodiesOf(driver: Driver) {
  const { frame, flange, depth, magnet, travel, "cut-out": cutOut, "stands proud": proud } = driver;
  const rim = flange ?? 0;
  const round = (d: number, from: number, to: number): Body => ({ d, dTo: d, from, to });
  const behind = depth !== undefined && magnet !== undefined;
  return {
    frame: frame !== undefined && flange !== undefined ? round(frame, 0, flange) : undefined,
    basket: behind ? { d: cutOut, dTo: magnet, from: 0, to: -depth } : undefined,
    magnet: behind ? round(magnet, 0, -depth - gapBehind(driver)) : undefined,
    travel: travel !== undefined ? round(cutOut, rim, rim + (proud ?? 0) + travel) : undefined,
  };
}

export function bodyOf(kernel: SolidKernel, { d, dTo, from, to }: Body, at: Frame): SolidRef {
  return kernel.cone(d, dTo, from, to, at);
}

/** The block round a body. */
export function blockOfBody({ d, dTo, from, to }: Body, at: Frame): StandingBlock {
  const r = Math.max(d, dTo) / 2;
  return { block: { min: [-r, -r, Math.min(from, to)], max: [r, r, Math.max(from, to)] }, at };
}

/** An obstacle with room to keep clear of it: `clear` mm more on every side, above and below, round at its corners. */
export function obstacleOf(kernel: SolidKernel, { outline, bottom, top }: Obstacle, clear: number): SolidRef {
  const grown = clear > 0 ? sureOffset({ outer: outline, holes: [] }, clear) : { value: [{ outer: outline }] };
  const outer = grown.value?.[0]?.outer ?? aroundOf(outline, clear);
  return kernel.extrude({ outer, holes: [] }, top - bottom + 2 * clear, shifted(0, 0, top + clear));
}

/** The rectangle that surely holds a profile and its clearance. */
function aroundOf(profile: Profile, clear: number): Profile {
  const { min, max } = extentsOf(profile);
  return rectangle(min.x - clear, min.y - clear, max.x + clear, max.y + clear, profile[0]?.by ?? "");
}

/** The block round an obstacle and its clearance, vehicle frame. */
export function blockOfObstacle({ outline, bottom, top }: Obstacle, clear: number): StandingBlock {
  const { min, max } = extentsOf(outline);
  const block: Block = {
    min: [min.x - clear, min.y - clear, bottom - clear],
    max: [max.x + clear, max.y + clear, top + clear],
  };
  return { block, at: identity };
}

/** What is taken out of one side of a board, with a floor: a pocket, a rebate along a straight edge, a straight groove. */
type Sunk = { readonly region: Region; readonly depth: number; readonly side: "face" | "back" };

function sunkIn(part: Part, { cut, side }: Feature): readonly Sunk[] {
  if (typeof side !== "string") return [];
  if (cut.kind === "pocket") return [{ region: cut.region, depth: cut.depth, side }];
  if (cut.kind === "groove" && !cut.closed) {
    const half = cut.width / 2;
    return cut.path.slice(1).map((b, i) => {
      const a = cut.path[i]!;
      const strip = polygon([...beside(a, b, -half), ...beside(b, a, -half)], a.by);
      return { region: { outer: strip, holes: [] }, depth: cut.depth, side };
    });
  }
  return cut.kind === "edge" && cut.form === "rebate"
    ? rebatesOf(part, cut, side).map((region) => ({ region, depth: cut.depth, side }))
    : [];
}

/**
 * The strips of a rebate, from beyond the edge, so that no two faces lie in one plane. In a corner that goes in, sharp or
 * rounded, a strip runs on to where its inner side meets that of the next edge's rebate: the bit goes round there.
 */
function rebatesOf(part: Part, cut: Extract<Cut, { kind: "edge" }>, side: "face" | "back"): readonly Region[] {
  const { outer } = part.profile;
  const straight = outer.flatMap((a, i) => (a.bulge === 0 ? [[a, outer[(i + 1) % outer.length]!] as const] : []));
  const n = straight.length;
  return straight.flatMap(([a, b], i) => {
    if (!cut.along.includes(a.by)) return [];
    const length = Math.hypot(b.x - a.x, b.y - a.y) || 1;
    const corner = (end: 0 | 1, deep: number): Point => {
      const other = straight[(i + (end === 0 ? n - 1 : 1)) % n]!;
      const own = beside(a, b, deep);
      const turn = end === 0 ? turnOf(other, [a, b]) : turnOf([a, b], other);
      if (turn < -tolerance.smooth) {
        const [c, d] = beside(...other, deep === 0 ? 0 : rebateAt(part, other[0].by, side));
        return lineWithLine(...own, c, d)[0] ?? own[end];
      }
      // out at the end, where the back may stand out farther than the face
      const back = Math.max(0, -part.thickness * Math.tan(part.edges[other[0].by]?.bevel ?? 0));
      const out = ((end === 0 ? -1 : 1) * (back + beyond)) / length;
      return { x: own[end].x + (b.x - a.x) * out, y: own[end].y + (b.y - a.y) * out };
    };
    const [out, outTo] = beside(a, b, -beyond);
    const loop = [out, outTo, corner(1, 0), corner(1, cut.width), corner(0, cut.width), corner(0, 0)];
    return [{ outer: polygon(loop, a.by), holes: [] }];
  });
}

/** Both ends of an edge moved to its left, mm. */
function beside(a: Point, b: Point, distance: number): readonly [Point, Point] {
  const length = Math.hypot(b.x - a.x, b.y - a.y) || 1;
  const [x, y] = [(-(b.y - a.y) / length) * distance, ((b.x - a.x) / length) * distance];
  return [
    { x: a.x + x, y: a.y + y },
    { x: b.x + x, y: b.y + y },
  ];
}

/** How far one edge turns to the next, as a sine: below 0 where the corner between them goes in. */
function turnOf([a, b]: readonly [Point, Point], [c, d]: readonly [Point, Point]): number {
  const lengths = Math.hypot(b.x - a.x, b.y - a.y) * Math.hypot(d.x - c.x, d.y - c.y) || 1;
  return ((b.x - a.x) * (d.y - c.y) - (b.y - a.y) * (d.x - c.x)) / lengths;
}

/** How wide an edge is rebated on this side, mm; 0 where it is not. */
function rebateAt({ features }: Part, edge: string, on: "face" | "back"): number {
  const widths = features.map(({ cut, side }) =>
    side === on && cut.kind === "edge" && cut.form === "rebate" && cut.along.includes(edge) ? cut.width : 0,
  );
  return Math.max(0, ...widths);
}

/** mm of nothing beyond the board, so that no two faces lie in one plane. */
const beyond = 1;

function sinkOf(kernel: SolidKernel, { region, depth, side }: Sunk, part: Part, at: Frame): SolidRef {
  const from = side === "face" ? beyond : depth - part.thickness;
  return kernel.extrude(region, depth + beyond, compose(at, shifted(0, 0, from)));
}
