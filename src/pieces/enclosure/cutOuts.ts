import { fillet, relieve } from "../../geometry/corners.js";
import { compose, inverse, place } from "../../geometry/frame.js";
import { extentsOf } from "../../geometry/measure.js";
import type { Extents, Point, Profile } from "../../geometry/profile.js";
import { circle, rectangle } from "../../geometry/shapes.js";
import { tolerance } from "../../geometry/tolerance.js";
import { below, type Finding, mm, raise, text } from "../../input/finding.js";
import { axisId, featureId, partId } from "../../model/ids.js";
import type { Axis } from "../../model/joint.js";
import type { Around, Mount } from "../../model/piece.js";
import { rules } from "../../shop/rules.js";
import { driverScrewsOf, pilotDepth } from "../common/driverScrews.js";
import { snap, stepOf } from "../common/method.js";
import type { Draft } from "../common/part.js";
import { type FaceName, faceFrame } from "./faces.js";
import { terminalOffFace } from "./findings.js";
import type { EnclosureSpec } from "./schema.js";
import { airBehind, cutOutOf, driverPoint, frameOn, pointOn, type Shape } from "./shape.js";

/** How far another piece lifts the driver off its face, mm: a ring under its frame. */
export function liftOf(around: Around): number {
  return Math.max(0, ...around.asks.map((ask) => (ask.kind === "lift driver" ? ask.lift : 0)));
}

/** The driver's cut-out and the pilots of its screws, on the face that it sits in. */
export function driverDrafts(spec: EnclosureSpec, shape: Shape, around: Around): readonly Draft[] {
  const cutOut = cutOutOf(spec, around);
  const driver = spec.driver && around.job.drivers[spec.driver.is];
  if (spec.driver === undefined || driver === undefined || cutOut === undefined) return [];
  const from = [below(around.origin, "driver")];
  const centre = toPanel(spec.driver.in, driverPoint(spec, shape.block), shape);
  const opening: Draft = {
    name: "opening.driver",
    from,
    filledBy: `driver ${spec.driver.is}`,
    cut: { kind: "opening", corner: "bit", region: { outer: circle(centre, cutOut / 2, "opening.driver"), holes: [] } },
  };
  const screws = driverScrewsOf(driver, around.shop);
  const reach = (screws?.reach ?? 0) - liftOf(around);
  if (screws === undefined || reach <= 0) return [opening];
  const pilots = screws.points.map(
    (point, index): Draft => ({
      name: `driver.${index + 1}`,
      from,
      axis: axisId(around.id, `driver.${index + 1}`),
      cut: {
        kind: "hole",
        at: { x: centre.x + point.x, y: centre.y + point.y },
        d: screws.row.pilot,
        depth: pilotDepth(reach, shape.thickness),
      },
    }),
  );
  return [opening, ...pilots];
}

/** The axes of the driver's screws, box frame: the ray starts on top of the driver's flange, where the heads lie. */
export function driverAxes(spec: EnclosureSpec, shape: Shape, around: Around): readonly Axis[] {
  const driver = spec.driver && around.job.drivers[spec.driver.is];
  const screws = driver && driverScrewsOf(driver, around.shop);
  if (spec.driver === undefined || screws === undefined) return [];
  const { in: face } = spec.driver;
  const centre = driverPoint(spec, shape.block);
  const part = partId(around.id, face);
  const lift = liftOf(around);
  const heads = lift + (driver?.flange ?? 0);
  return screws.points.map((point, index) => ({
    id: axisId(around.id, `driver.${index + 1}`),
    from: [below(around.origin, "driver")],
    ray: lifted(face, { x: centre.x + point.x, y: centre.y + point.y }, heads, shape),
    fastener: `${screws.name} screw`,
    stack:
      screws.reach > lift ? [{ part, feature: featureId(part, `driver.${index + 1}`), role: "pilot" as const }] : [],
  }));
}

/** Where the driver sits, in the vehicle. */
export function mountsOf(spec: EnclosureSpec, shape: Shape, around: Around): readonly Mount[] {
  if (spec.driver === undefined || around.job.drivers[spec.driver.is] === undefined) return [];
  const at = lifted(spec.driver.in, driverPoint(spec, shape.block), liftOf(around), shape);
  return [
    { driver: spec.driver.is, piece: around.id, at: compose(shape.stands, at), from: [below(around.origin, "driver")] },
  ];
}

/** The terminal's cut-out: a round hole, or a rectangle with corners that a bit can cut. */
export function terminalDrafts(spec: EnclosureSpec, shape: Shape, around: Around): readonly Draft[] {
  if (spec.terminal === undefined) return [];
  const { in: face, hole, corners } = spec.terminal;
  const centre = toPanel(face, pointOn(face, spec.terminal.at, shape.block), shape);
  const step = stepOf(spec, around);
  const outer =
    typeof hole === "number"
      ? circle(centre, snap(hole, step) / 2, "opening.terminal")
      : terminalRectangle(centre, snap(hole[0], step), snap(hole[1], step), corners ?? "round");
  return [
    {
      name: "opening.terminal",
      from: [below(around.origin, "terminal")],
      filledBy: "terminal",
      cut: { kind: "opening", corner: corners === "relieved" ? "relief" : "bit", region: { outer, holes: [] } },
    },
  ];
}

/** A finding for every cut-out that runs over a neighbouring panel instead of opening into the air. */
export function cutOutFindings(spec: EnclosureSpec, shape: Shape, around: Around): readonly Finding[] {
  const cutOuts = [
    ["driver", spec.driver?.in, driverDrafts(spec, shape, around)[0]] as const,
    ["terminal", spec.terminal?.in, terminalDrafts(spec, shape, around)[0]] as const,
  ];
  return cutOuts.flatMap(([what, face, draft]) => {
    if (face === undefined || draft?.cut.kind !== "opening") return [];
    const out = beyond(extentsOf(draft.cut.region.outer), airBehind(face, shape));
    if (out <= tolerance.samePoint) return [];
    const facts = { what: text(`${what} cut-out`), face: text(face), out: mm(out) };
    return [raise(terminalOffFace, { at: [below(around.origin, what)], on: [partId(around.id, face)], facts })];
  });
}

function beyond(inner: Extents, outer: Extents): number {
  return Math.max(
    outer.min.x - inner.min.x,
    outer.min.y - inner.min.y,
    inner.max.x - outer.max.x,
    inner.max.y - outer.max.y,
  );
}

function terminalRectangle(centre: Point, width: number, height: number, corners: "round" | "relieved"): Profile {
  const sharp = rectangle(
    centre.x - width / 2,
    centre.y - height / 2,
    centre.x + width / 2,
    centre.y + height / 2,
    "opening.terminal",
  );
  const radius = Math.min(rules.openingCorner.value, width / 4, height / 4);
  return corners === "relieved" ? relieve(sharp, radius, "diagonal", "outside").profile : fillet(sharp, radius).profile;
}

function lifted(face: FaceName, point: Point, lift: number, shape: Shape) {
  return compose(frameOn(face, point, shape.block), { origin: [0, 0, lift], quat: [0, 0, 0, 1] });
}

/** A point of a face of the outside block, in the axes of the panel that makes it. */
export function toPanel(face: FaceName, point: Point, shape: Shape): Point {
  const at = place(
    inverse(faceFrame(face, shape.spans[face])),
    place(faceFrame(face, shape.block), [point.x, point.y, 0]),
  );
  return { x: at[0], y: at[1] };
}
