import { turn } from "../../geometry/frame.js";
import { pointInProfile } from "../../geometry/inside.js";
import { tolerance } from "../../geometry/tolerance.js";
import { type Finding, type FindingDef, mm, raise, text } from "../../input/finding.js";
import type { Check } from "../../model/build.js";
import type { Job } from "../../model/job.js";
import type { Axis } from "../../model/joint.js";
import { fastenerOf, tipOf } from "./common/fastener.js";

export const screwIntoZone: FindingDef = {
  code: "screw-into-zone",
  severity: "error",
  words: "{fastener} goes {deep} into the floor above {zone}: nothing may be screwed there",
  next: "move it out of {zone}, take a shorter one, or hold the piece without screws there",
  explain:
    "Under a no-screw zone lies what a screw or drill must never meet: a tank, fuel or brake lines, wiring, a battery. Look underneath before any screw goes into a floor. Follow local codes and have licensed or qualified people do the work where the law asks for it.",
};

export const noScrews: Check = {
  name: "no-screw zones",
  findings: [screwIntoZone],
  run(job, shop, plan) {
    return plan.built.axes.flatMap((axis) => {
      const { length } = fastenerOf(axis.fastener, shop);
      return length === undefined ? [] : intoFloor(axis, length, job);
    });
  },
};

/** How far a fastener that runs downwards goes into the floor: one that ends above it, in a box's air, harms nothing. */
function intoFloor(axis: Axis, length: number, job: Job): readonly Finding[] {
  const down = turn(axis.ray.quat, [0, 0, 1])[2];
  if (down < tolerance.smooth) return [];
  const tip = tipOf(axis.ray, length);
  const deep = -tip[2];
  if (deep <= tolerance.contact) return [];
  // where it enters the floor, and where it ends: a slanting screw may enter the zone below
  const entry = tipOf(axis.ray, length - deep / down);
  return Object.entries(job.space["no screws"]).flatMap(([zone, { outline }]) => {
    if (![entry, tip].some(([x, y]) => pointInProfile(outline, { x, y }))) return [];
    const facts = { fastener: text(axis.fastener), deep: mm(deep), zone: text(zone) };
    const at = [...axis.from, { file: job.file, path: ["space", "no screws", zone] }];
    return [raise(screwIntoZone, { at, on: [axis.id], facts })];
  });
}
