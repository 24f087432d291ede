import { nearestOn } from "../../geometry/distance.js";
import { compose, type Frame, inverse, place, type Vector } from "../../geometry/frame.js";
import { pointInRegion } from "../../geometry/inside.js";
import { tolerance } from "../../geometry/tolerance.js";
import { type Finding, type FindingDef, radians, raise, text } from "../../input/finding.js";
import type { Check } from "../../model/build.js";
import type { Axis } from "../../model/joint.js";
import type { Mount } from "../../model/piece.js";
import type { Shop } from "../../model/shop.js";
import { nameOf, type Standing, standingParts } from "../standing.js";
import { fixesDriver } from "./common/driverFixing.js";
import { fastenerOf } from "./common/fastener.js";

export const screwMeetsBehind: FindingDef = {
  code: "screw-meets-behind",
  severity: "error",
  words: "screws of {driver} ({screws}) come out behind their panel and into {part}",
  next: "[turn the driver by {turn} more with `turned`, ]take shorter screws, or move {part} or the driver",
  explain:
    "A driver's screw that is longer than its panel is thick comes out behind it. A brace, a divider or a batten that stands there is split by it, or pushed off its glue.",
};

export const screwsBehind: Check = {
  name: "drivers' screws against what stands behind",
  findings: [screwMeetsBehind],
  run(job, shop, plan) {
    const parts = standingParts(plan);
    return plan.built.mounts.flatMap((mount) => {
      const only = { ...plan, built: { ...plan.built, mounts: [mount] } };
      const axes = plan.built.axes.filter((axis) => fixesDriver(axis, job, only));
      return meetingOf(mount, axes, parts, shop);
    });
  },
};

function meetingOf(mount: Mount, axes: readonly Axis[], parts: readonly Standing[], shop: Shop): readonly Finding[] {
  const passed = new Set(axes.flatMap(({ stack }) => stack.map(({ part }) => part)));
  const behind = parts.filter(({ part }) => part.piece === mount.piece && !passed.has(part.id));
  const meets = (axis: Axis, part: Standing, turn: number) =>
    runsInto(turned(axis.ray, mount.at, turn), axis, part, shop);
  const met = behind.filter((part) => axes.some((axis) => meets(axis, part, 0)));
  const free = turns.find((turn) => !axes.some((axis) => behind.some((part) => meets(axis, part, turn))));
  return met.map((part) => {
    const own = axes.filter((axis) => meets(axis, part, 0));
    const facts = {
      driver: text(mount.driver),
      screws: text(own[0]!.fastener),
      part: text(nameOf(part.part)),
      ...(free === undefined ? {} : { turn: radians(free) }),
    };
    return raise(screwMeetsBehind, {
      at: [...mount.from, ...part.part.from],
      on: [part.part.id, ...own.map(({ id }) => id)],
      facts,
    });
  });
}

/** Turns that are tried, the least first: half a turn by degrees, rad. */
const turns = Array.from({ length: 180 }, (_, i) => ((i + 1) * Math.PI) / 180);

/** A ray turned with its driver, against the clock as one sees it. */
function turned(ray: Frame, about: Frame, angle: number): Frame {
  if (angle === 0) return ray;
  const spin: Frame = { origin: [0, 0, 0], quat: [0, 0, Math.sin(angle / 2), Math.cos(angle / 2)] };
  return compose(about, compose(spin, compose(inverse(about), ray)));
}

/** How closely a screw is followed, mm. */
const every = 1;

function runsInto(ray: Frame, { fastener }: Axis, { part, at }: Standing, shop: Shop): boolean {
  const { length = 0, d = 0 } = fastenerOf(fastener, shop);
  const seen = compose(inverse(at), ray);
  const near = Math.max(0, d / 2 - tolerance.contact);
  // what lies just before its tip is not met
  const deep = Math.max(0, length - near);
  const count = Math.max(1, Math.ceil(deep / every));
  const places = Array.from({ length: count + 1 }, (_, i) => place(seen, [0, 0, (-deep * i) / count]));
  return places.some((point) => touches(point, near, part));
}

/** Whether a board comes this near to a point. */
function touches([x, y, z]: Vector, near: number, { thickness, profile }: Standing["part"]): boolean {
  if (z > near || z < -thickness - near) return false;
  if (pointInRegion(profile, { x, y })) return true;
  return [profile.outer, ...profile.holes].some((loop) => (nearestOn(loop, { x, y })?.distance ?? near + 1) <= near);
}
