import { mirrored, mirroredPath, mirrorRegion } from "../geometry/transform.js";
import type { Cut, Part } from "../model/part.js";
import { fits } from "./fits.js";
import { motions } from "./motion.js";
import { differ } from "./near.js";

/**
 * Whether two parts are cut alike: "same" where one, turned on the bench without turning it over, is the other in
 * outline, features, edges, coverings and grain; "opposite hand" where it is the other's mirror image. A part that is
 * its own mirror image is the same, never the opposite. Names, joints and fasteners do not count.
 */
export function alike(a: Part, b: Part): "same" | "opposite hand" | undefined {
  if (a.board !== b.board || differ(a.thickness, b.thickness)) return undefined;
  if (a.coverings.face !== b.coverings.face || a.coverings.back !== b.coverings.back) return undefined;
  if (a.features.length !== b.features.length) return undefined;
  if (motions(a, b).some((motion) => fits(a, b, motion))) return "same";
  const other = mirrorPart(a);
  return motions(other, b).some((motion) => fits(other, b, motion)) ? "opposite hand" : undefined;
}

function mirrorPart(part: Part): Part {
  return {
    ...part,
    profile: mirrorRegion(part.profile),
    features: part.features.map((feature) => ({ ...feature, cut: mirrorCut(feature.cut) })),
    ...(part.grain === undefined ? {} : { grain: Math.PI - part.grain }),
  };
}

function mirrorCut(cut: Cut): Cut {
  switch (cut.kind) {
    case "outline":
    case "notch":
    case "opening":
    case "pocket":
      return { ...cut, region: mirrorRegion(cut.region) };
    case "groove":
      return { ...cut, path: cut.closed ? mirrored(cut.path) : mirroredPath(cut.path) };
    case "hole":
    case "mark":
      return { ...cut, at: { x: 0 - cut.at.x, y: cut.at.y } };
    case "edge":
      return cut;
  }
}
