import { rectangle } from "../../geometry/shapes.js";
import { all, below, count, type Finding, mm, type Outcome, raise, text } from "../../input/finding.js";
import type { Around, Offer, PieceKind } from "../../model/piece.js";
import { rules } from "../../shop/rules.js";
import { buildBox } from "./build.js";
import { faceFrame, faceNames, faceSize, faces } from "./faces.js";
import * as say from "./findings.js";
import { freeSize, referencesOf } from "./references.js";
import { type EnclosureSpec, enclosureSchema, sizeNames } from "./schema.js";
import { driverPoint, frameOn, type Shape, shapeOf } from "./shape.js";
import { missingVolume } from "./volume.js";

/** A closed box of six butt-jointed panels with one driver, a terminal, and threads for what is bolted to it. */
export const enclosure: PieceKind<EnclosureSpec> = {
  kind: "enclosure",
  schema: enclosureSchema,
  findings: say.enclosureFindings,
  refs: referencesOf,
  free: freeSize,
  offer: offerBox,
  ask: () => ({ value: [], findings: [] }),
  miss: missingVolume,
  build: buildBox,
};

/** Its six faces as planes and outlines, and the driver's place on one of them. */
function offerBox(spec: EnclosureSpec, size: number, around: Around): Outcome<Offer> {
  const wrong = specFindings(spec, around);
  if (wrong.length > 0) return { value: undefined, findings: wrong };
  const shape = shapeOf(spec, size, around);
  const tight = roomFindings(shape, around);
  if (tight.length > 0) return { value: undefined, findings: tight };
  const planes = faceNames.map((name) => [name, faceFrame(name, shape.block)] as const);
  const outlines = faceNames.map((name) => {
    const { width, height } = faceSize(name, shape.block);
    return [name, { outer: rectangle(0, 0, width, height, faces[name].edges), holes: [] }] as const;
  });
  const value: Offer = {
    stands: shape.stands,
    planes: Object.fromEntries(planes),
    outlines: Object.fromEntries(outlines),
    drivers: driverOffer(spec, shape),
  };
  return { value, findings: [] };
}

function driverOffer(spec: EnclosureSpec, { block }: Shape): Offer["drivers"] {
  if (spec.driver === undefined) return {};
  const { is, in: plane } = spec.driver;
  return { driver: { is, plane, at: frameOn(plane, driverPoint(spec, block), block) } };
}

/** What is wrong with the description itself, whatever the size. */
function specFindings(spec: EnclosureSpec, { origin }: Around): readonly Finding[] {
  const findings: Finding[] = [];
  const [free, second] = sizeNames.filter((key) => spec.outside[key] === "free");
  if (second !== undefined) {
    const found = count(sizeNames.filter((key) => spec.outside[key] === "free").length);
    findings.push(raise(say.oneFreeSize, { at: [below(origin, "outside", second)], facts: { found } }));
  } else if (free !== undefined && spec.net === undefined) {
    findings.push(raise(say.freeNeedsNet, { at: [below(origin, "outside", free)], facts: { size: text(free) } }));
  }
  const missing = faceNames.filter((name) => spec.laps && !spec.laps.includes(name));
  if (missing.length > 0) {
    findings.push(raise(say.lapsTwice, { at: [below(origin, "laps")], facts: { missing: all(missing) } }));
  }
  if (spec.stands?.["line up"] && !spec.driver) {
    findings.push(raise(say.lineUpNeedsDriver, { at: [below(origin, "stands", "line up")] }));
  }
  return findings;
}

function roomFindings({ outside, thickness }: Shape, { origin, id }: Around): readonly Finding[] {
  const least = 2 * thickness + rules.leastInside.value;
  return sizeNames.flatMap((key, axis) => {
    const found = outside[axis] ?? 0;
    if (found >= least) return [];
    const facts = {
      size: text(key),
      found: mm(found),
      left: mm(found - 2 * thickness),
      thickness: mm(thickness),
      least: mm(least),
    };
    return [raise(say.boxTooSmall, { at: [below(origin, "outside", key)], on: [id], facts })];
  });
}
