import { type Faces, facesOf, leaves } from "./faces.js";
import { areaOf, eachEdge } from "./measure.js";
import { cutToPieces } from "./pieces.js";
import type { Point, Profile } from "./profile.js";
import { pushSegments, type Segment } from "./segment.js";

/**
 * A place where a closed profile crosses itself; undefined where it does not. Touching itself is no crossing.
 *
 * Where two stretches cross, the four faces around the place have three winding numbers one apart, so that one of them
 * is neither 0 nor 1; a loop that only touches itself has no other. Own derivation.
 */
export function selfCrossing(profile: Profile): Point | undefined {
  const segments: Segment[] = [];
  eachEdge(profile, (a, b) => pushSegments(segments, a, b, 0));
  const faces = facesOf(cutToPieces(segments));
  const inside = areaOf(profile) < 0 ? -1 : 1;
  const astray = faces.winding0.findIndex((w) => w !== 0 && w !== inside);
  return astray < 0 ? undefined : placeOn(faces, astray);
}

/** A place on a face's edge, one where more than two edges meet if there is any. */
function placeOn({ pieces, halfEdges, clockwise, faceOf }: Faces, face: number): Point {
  const around = halfEdges.filter((h) => faceOf[h] === face);
  const busy = around.find((h) => clockwise[clockwise[h]!] !== h) ?? around[0]!;
  const place = leaves(pieces, busy);
  return { x: pieces.xs[place]!, y: pieces.ys[place]! };
}
