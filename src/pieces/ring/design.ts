import { compose, type Frame, shifted } from "../../geometry/frame.js";
import { below, type Finding, mm, type Outcome, raise, text } from "../../input/finding.js";
import { pieceId } from "../../model/ids.js";
import type { Driver } from "../../model/job.js";
import type { Around } from "../../model/piece.js";
import { rules } from "../../shop/rules.js";
import { snap, stepOf } from "../common/method.js";
import { frameUnknown, noDriverThere, recessTooDeep, ringTooNarrow } from "./findings.js";
import type { RingSpec } from "./schema.js";

/** A ring worked out: diameters as cut, where it stands, and the driver on it. Diameters and depths in mm. */
export type Ring = {
  readonly driver: Driver;
  /** The driver's name in its host, and the host. */
  readonly of: string;
  readonly host: string;
  readonly thickness: number;
  readonly outside: number;
  readonly inside: number;
  readonly recess: { readonly across: number; readonly deep: number } | undefined;
  /** In the vehicle: origin on the ring's axis in its face, z out of the box. */
  readonly stands: Frame;
};

export function ringOf(spec: RingSpec, around: Around): Outcome<Ring> {
  const host = spec.around.driver;
  const offer = around.offers.get(pieceId(host));
  const seat = offer?.drivers["driver"];
  const driver = seat && around.job.drivers[seat.is];
  if (offer?.stands === undefined || seat === undefined || driver === undefined) {
    const at = [below(around.origin, "around", "driver")];
    return {
      value: undefined,
      findings: [raise(noDriverThere, { at, on: [around.id], facts: { piece: text(host) } })],
    };
  }
  const recess = recessOf(spec, driver, seat.is, around);
  if (recess.findings.length > 0) return { value: undefined, findings: recess.findings };
  const { thickness } = around.board(spec.board);
  const step = stepOf(spec, around);
  const ring: Ring = {
    driver,
    of: "driver",
    host,
    thickness,
    outside: snap(spec.outside, step),
    inside: snap(spec.inside ?? driver["cut-out"], step),
    recess: recess.value,
    stands: compose(compose(offer.stands, seat.at), shifted(0, 0, thickness)),
  };
  const findings = webFindings(ring, around);
  return { value: findings.length > 0 ? undefined : ring, findings };
}

/** How far the driver's frame stands above the host's face. */
export function liftOf(ring: Ring): number {
  return ring.thickness - (ring.recess?.deep ?? 0);
}

function recessOf(spec: RingSpec, driver: Driver, name: string, around: Around): Outcome<Ring["recess"]> {
  const step = stepOf(spec, around);
  if (spec.recess === undefined) return { value: undefined, findings: [] };
  if (spec.recess !== "frame") {
    return { value: { across: snap(spec.recess.across, step), deep: spec.recess.deep }, findings: [] };
  }
  const { frame, flange } = driver;
  if (frame !== undefined && flange !== undefined) {
    return { value: { across: snap(frame + 2 * rules.frameClearance.value, step), deep: flange }, findings: [] };
  }
  const facts = { driver: text(name), missing: text(frame === undefined ? "frame" : "flange") };
  const at = [below(around.origin, "recess")];
  return { value: undefined, findings: [raise(frameUnknown, { at, on: [around.id], facts })] };
}

function webFindings(ring: Ring, around: Around): readonly Finding[] {
  const web = rules.web.value;
  const widths = [
    ["outside", "outside", ring.outside, ring.recess ? "recess" : "inside", ring.recess?.across ?? ring.inside],
    ...(ring.recess ? [["recess", "recess", ring.recess.across, "inside", ring.inside] as const] : []),
  ] as const;
  const narrow = widths.flatMap(([key, outer, outside, inner, inside]) => {
    // Noise must not refuse a web that is exactly wide enough.
    if ((outside - inside) / 2 >= web - 1e-9) return [];
    const facts = {
      outer: text(outer),
      outside: mm(outside),
      web: mm((outside - inside) / 2),
      inner: text(inner),
      inside: mm(inside),
      least: mm(inside + 2 * web),
    };
    return [raise(ringTooNarrow, { at: [below(around.origin, key)], on: [around.id], facts })];
  });
  const floor = liftOf(ring);
  if (floor >= rules.tipFloor.value - 1e-9) return narrow;
  const facts = {
    deep: mm(ring.recess?.deep ?? 0),
    thickness: mm(ring.thickness),
    most: mm(ring.thickness - rules.tipFloor.value),
  };
  return [...narrow, raise(recessTooDeep, { at: [below(around.origin, "recess")], on: [around.id], facts })];
}
