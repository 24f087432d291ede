import { anyOfFirst, firstOnly, inBoth, loopsOf, type Resolved, resolve } from "./boolean.js";
import { selfCrossing } from "./crossing.js";
import { pointInProfile } from "./inside.js";
import { areaOf, areaOfRegion, lengthOf } from "./measure.js";
import { type Distances, type OffsetOptions, resolveOffset } from "./offset.js";
import { type Answer, differenceAt, polygonBoolean, polygonOffset } from "./polygonAnswer.js";
import type { Point, Profile, Region } from "./profile.js";
import { placeWithinSwept } from "./swept.js";
import { tolerance } from "./tolerance.js";
import { turnRegion } from "./transform.js";

/** What is not to be trusted, and where. */
export type Doubt = { readonly what: DoubtKind; readonly at: Point };
export type DoubtKind = "not-a-number" | "no-area" | "crosses-itself" | "hole-outside" | "areas-disagree" | "too-near";

/** A result that was checked by a second method, or the doubt: never a shape that may be wrong. */
export type Sure =
  | { readonly value: Region[]; readonly doubt?: undefined }
  | { readonly value?: undefined; readonly doubt: Doubt };

/**
 * `union` with a guard. Here and below: the area is compared with that of the polygon answer (clipper2-ts, another
 * algorithm by another hand) at a coarse chord, allowing for what the chord can lose; where they differ, at a fine one. On
 * a mismatch, or an arrangement that is not sound, it is tried again on the shapes turned a little; if that does not
 * settle it there is only a doubt.
 * What is no shape is refused first: loops that cross themselves, have no area or hold a NaN, holes outside their outer.
 *
 * Cost: the polygon answer takes about as long again as the result, and the look for self-crossings too.
 */
export function sureUnion(regions: readonly Region[]): Sure {
  return sure(
    regions,
    (turned) => resolve(loopsOf(turned, 0), anyOfFirst),
    (chord) => polygonBoolean("union", regions, [], chord),
  );
}

/** `difference` with a guard. */
export function sureDifference(a: Region, bs: readonly Region[]): Sure {
  return sure(
    [a, ...bs],
    ([first, ...rest]) => resolve([...loopsOf([first!], 0), ...loopsOf(rest, 1)], firstOnly),
    (chord) => polygonBoolean("difference", [a], bs, chord),
  );
}

/** `intersection` with a guard. */
export function sureIntersection(a: Region, b: Region): Sure {
  return sure(
    [a, b],
    ([first, ...rest]) => resolve([...loopsOf([first!], 0), ...loopsOf(rest, 1)], inBoth),
    (chord) => polygonBoolean("intersection", [a], [b], chord),
  );
}

/**
 * `offsetRegion` with a guard. Where the distance differs by edge no polygon offset does the same: the area must then lie
 * between those of the plain offsets by the least and the greatest of the distances, and no place of the boundary in what
 * an edge sweeps.
 */
export function sureOffset(region: Region, distance: Distances, options: OffsetOptions = {}): Sure {
  const odd = [region.outer, ...region.holes]
    .flat()
    .find((v) => !Number.isFinite(typeof distance === "number" ? distance : distance(v.by)));
  if (odd !== undefined) return { doubt: { what: "not-a-number", at: placeOf(odd) } };
  return sure(
    [region],
    ([turned]) => resolveOffset(turned!, distance, options),
    (chord) => polygonOffset(region, distance, options.corners ?? "round", chord),
    (found) => (typeof distance === "number" ? undefined : placeWithinSwept(region, distance, found)),
  );
}

const turns = [0, 0.3] as const; // rad; no shape of the shop stands at it

function sure(
  inputs: readonly Region[],
  find: (inputs: readonly Region[]) => Resolved,
  polygons: (chord: number) => Answer,
  wrongPlace: (found: readonly Region[]) => Point | undefined = () => undefined,
): Sure {
  const faulty = faultOf(inputs);
  if (faulty !== undefined) return { doubt: faulty };
  const answer = polygons(tolerance.guardChord);
  let last: readonly Region[] = [];
  let wrong: Point | undefined;
  for (const turn of turns) {
    const found = find(turn === 0 ? inputs : inputs.map((region) => turnRegion(region, turn)));
    last = turn === 0 ? found.regions : found.regions.map((region) => turnRegion(region, -turn));
    const area = last.reduce((sum, region) => sum + areaOfRegion(region), 0);
    const agrees = isWithin(area, answer) || isWithin(area, polygons(tolerance.guardFineChord));
    wrong = found.sound && agrees ? wrongPlace(last) : undefined;
    if (found.sound && agrees && wrong === undefined) return { value: [...last] };
  }
  if (wrong !== undefined) return { doubt: { what: "too-near", at: wrong } };
  return { doubt: { what: "areas-disagree", at: differenceAt(answer, last) } };
}

function isWithin(area: number, { least, most, allowed }: Answer): boolean {
  return area >= least - allowed && area <= most + allowed;
}

function faultOf(inputs: readonly Region[]): Doubt | undefined {
  for (const { outer, holes } of inputs) {
    for (const loop of [outer, ...holes]) {
      const fault = faultOfLoop(loop);
      if (fault !== undefined) return fault;
    }
    const out = holes.flat().find((v) => !pointInProfile(outer, v));
    if (out !== undefined) return { what: "hole-outside", at: placeOf(out) };
  }
  return undefined;
}

function faultOfLoop(loop: Profile): Doubt | undefined {
  const odd = loop.find((v) => ![v.x, v.y, v.bulge].every(Number.isFinite));
  if (odd !== undefined) return { what: "not-a-number", at: placeOf(odd) };
  const crossing = loop.length < 2 ? undefined : selfCrossing(loop);
  if (crossing !== undefined) return { what: "crosses-itself", at: crossing };
  if (loop.length > 1 && Math.abs(areaOf(loop)) > tolerance.samePoint * lengthOf(loop)) return undefined;
  return { what: "no-area", at: placeOf(loop[0] ?? { x: 0, y: 0 }) };
}

function placeOf({ x, y }: Point): Point {
  return { x, y };
}
