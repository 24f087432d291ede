import { type ZodType, z } from "zod";
import { directionAtEnd, directionAtStart } from "../geometry/arc.js";
import { areaOf, edgeLength } from "../geometry/measure.js";
import type { Point, Profile, Vertex } from "../geometry/profile.js";
import { pushSegments, type Segment } from "../geometry/segment.js";
import { againstTheClock } from "../geometry/shapes.js";
import { samePoint, tolerance } from "../geometry/tolerance.js";
import { sharedPlaces } from "../geometry/touching.js";
import type { Door } from "./door.js";
import { type FindingDef, mm, type Quantity, text } from "./finding.js";
import { cornersTogether, noArea, outlineCrosses, roundBesideBow, roundTooLarge, sameSide } from "./outlineFindings.js";
import { refuse } from "./refusal.js";

/** A corner as it is written; `bulge` bows the side that follows it, and `side` names that side. */
export type OutlineCorner = {
  readonly at: readonly [number, number];
  readonly round?: number | undefined;
  readonly bulge?: number | undefined;
  readonly side?: string | undefined;
};

/** Least area that an outline encloses, mm2: one millimetre square. */
const leastArea = 1;
const mostCorners = 400;

/** What is wrong with an outline, and at which corner and key. */
type Fault = {
  readonly def: FindingDef;
  readonly path: readonly (string | number)[];
  readonly facts?: Readonly<Record<string, Quantity>>;
};

/** Corners with their rounding and bows; gives the profile of `outlineOf`. `side`: what may be the name of a side. */
export function cornersSchema(door: Door, side: ZodType<string>): ZodType<Profile> {
  const corner = z.strictObject({
    at: door.point().describe("Where the corner lies: [x, y]."),
    round: door.length({ min: 0, max: 5000 }).optional().describe("Radius that rounds this corner off."),
    bulge: door
      .number({ min: -1, max: 1 })
      .optional()
      .describe("Bows the side that follows: its rise over half its length. Positive turns left, 1 is a half circle."),
    side: side.optional().describe("Name of the side that follows this corner."),
  });
  return outlined(z.array(corner).min(3).max(mostCorners));
}

/** Bare places: [[x, y], [x, y], ...]; gives the profile of `outlineOf`. */
export function placesSchema(door: Door): ZodType<Profile> {
  const places = z.array(door.point()).min(3).max(mostCorners);
  return outlined(places.transform((points) => points.map((at) => ({ at }))));
}

function outlined(corners: ZodType<readonly OutlineCorner[]>): ZodType<Profile> {
  return corners.transform((list, issues) => {
    const made = outlineOf(list);
    return "fault" in made ? refuse(issues, made.fault.def, made.fault.facts, made.fault.path) : made.profile;
  });
}

/** The names of an outline's sides in order: a rounded corner is none. */
export function sidesOf(profile: Profile): readonly string[] {
  return [...new Set(profile.map((vertex) => vertex.by))].filter((by) => !by.includes("|"));
}

/**
 * The profile of corners in the order in which they were written: counter-clockwise whichever way round they are given,
 * sides named as written or "side.1", "side.2" ..., each rounded corner a tangent arc named after its two sides "a|b".
 * Or the first fault.
 */
export function outlineOf(
  corners: readonly OutlineCorner[],
): { readonly profile: Profile } | { readonly fault: Fault } {
  const sharp = corners.map(({ at: [x, y], bulge, side }, i): Vertex => {
    return { x, y, bulge: bulge ?? 0, by: side ?? `side.${i + 1}` };
  });
  const fault = namesFault(sharp) ?? placesFault(sharp) ?? crossingFault(sharp) ?? areaFault(sharp);
  if (fault !== undefined) return { fault };
  const cuts = corners.map((corner, i) => cutBack(sharp, i, corner.round ?? 0));
  const tooRound = roundFault(corners, sharp, cuts);
  if (tooRound !== undefined) return { fault: tooRound };
  const round = rounded(sharp, cuts);
  return { profile: areaOf(round) < 0 ? againstTheClock(round) : round };
}

function namesFault(sharp: Profile): Fault | undefined {
  const i = sharp.findIndex(({ by }, at) => sharp.findIndex((other) => other.by === by) < at);
  return i < 0 ? undefined : { def: sameSide, path: [i, "side"], facts: { found: text(sharp[i]!.by) } };
}

function placesFault(sharp: Profile): Fault | undefined {
  const i = sharp.findIndex((a, at) => samePoint(a, next(sharp, at)));
  return i < 0 ? undefined : { def: cornersTogether, path: [(i + 1) % sharp.length] };
}

function crossingFault(sharp: Profile): Fault | undefined {
  const edges = sharp.map((a, i) => {
    const segments: Segment[] = [];
    pushSegments(segments, a, next(sharp, i), 0);
    return segments;
  });
  for (let j = 1; j < edges.length; j++) {
    for (let i = 0; i < j; i++) {
      const ends = endsInCommon(sharp, i, j);
      const where = edges[i]!.flatMap((s) => edges[j]!.flatMap((t) => meetings(s, t))).find(
        (place) => !ends.some((end) => samePoint(end, place)),
      );
      if (where !== undefined) {
        return { def: outlineCrosses, path: [j], facts: { x: mm(where.x), y: mm(where.y), other: text(sharp[i]!.by) } };
      }
    }
  }
  return undefined;
}

function meetings(s: Segment, t: Segment): readonly Point[] {
  const places: Point[] = [];
  sharedPlaces(s, t, (x, y) => places.push({ x, y }));
  return places;
}

/** The corners that two sides share by rights; i < j. */
function endsInCommon(sharp: Profile, i: number, j: number): readonly Point[] {
  return [...(j === i + 1 ? [sharp[j]!] : []), ...(i === 0 && j === sharp.length - 1 ? [sharp[0]!] : [])];
}

function areaFault(sharp: Profile): Fault | undefined {
  return Math.abs(areaOf(sharp)) < leastArea ? { def: noArea, path: [] } : undefined;
}

/** How far a rounding takes from each side of its corner, and how far it turns there, rad (left is positive). */
type Cut = { readonly length: number; readonly turn: number };

function cutBack(sharp: Profile, i: number, radius: number): Cut {
  const into = directionAtEnd(previous(sharp, i), sharp[i]!);
  const out = directionAtStart(sharp[i]!, next(sharp, i));
  const turn = Math.atan2(into.x * out.y - into.y * out.x, into.x * out.x + into.y * out.y);
  return Math.abs(turn) <= tolerance.smooth
    ? { length: 0, turn }
    : { length: radius * Math.tan(Math.abs(turn) / 2), turn };
}

function roundFault(corners: readonly OutlineCorner[], sharp: Profile, cuts: readonly Cut[]): Fault | undefined {
  const bowed = cuts.findIndex(
    ({ length }, i) => length > 0 && (sharp[i]!.bulge !== 0 || previous(sharp, i).bulge !== 0),
  );
  if (bowed >= 0) return { def: roundBesideBow, path: [bowed, "round"] };
  for (let i = 0; i < cuts.length; i++) {
    const j = (i + 1) % cuts.length;
    const side = edgeLength(sharp[i]!, sharp[j]!);
    if (cuts[i]!.length + cuts[j]!.length <= side + tolerance.samePoint) continue;
    const [large, small] = cuts[i]!.length >= cuts[j]!.length ? [i, j] : [j, i];
    const most = Math.max(0, side - cuts[small]!.length) / Math.tan(Math.abs(cuts[large]!.turn) / 2);
    const facts = { found: mm(corners[large]!.round ?? 0), most: mm(most), side: text(sharp[i]!.by) };
    return { def: roundTooLarge, path: [large, "round"], facts };
  }
  return undefined;
}

/** Each rounded corner gives an arc, tangent to both its sides; bulge is tan(sweep / 4), and the sweep is the turn. */
function rounded(sharp: Profile, cuts: readonly Cut[]): Profile {
  const all = sharp.flatMap((corner, i): Vertex[] => {
    const { length, turn } = cuts[i]!;
    if (length === 0) return [corner];
    const into = directionAtEnd(previous(sharp, i), corner);
    const out = directionAtStart(corner, next(sharp, i));
    const by = `${previous(sharp, i).by}|${corner.by}`;
    return [
      { x: corner.x - into.x * length, y: corner.y - into.y * length, bulge: Math.tan(turn / 4), by },
      { x: corner.x + out.x * length, y: corner.y + out.y * length, bulge: 0, by: corner.by },
    ];
  });
  // Two arcs that use up a side between them meet in one place.
  return all.filter((vertex, i) => !samePoint(vertex, next(all, i)));
}

function next<T>(items: readonly T[], i: number): T {
  return items[(i + 1) % items.length]!;
}

function previous<T>(items: readonly T[], i: number): T {
  return items[(i + items.length - 1) % items.length]!;
}
