import { turn } from "../../geometry/frame.js";
import { pointInProfile } from "../../geometry/inside.js";
import { cornersOf } from "../../geometry/solids-apart.js";
import { tolerance } from "../../geometry/tolerance.js";
import { type Finding, type FindingDef, mm, raise, text } from "../../input/finding.js";
import type { Check } from "../../model/build.js";
import type { Job } from "../../model/job.js";
import type { Axis } from "../../model/joint.js";
import { type Standing, standingParts } from "../standing.js";
import { fastenerOf, tipOf } from "./common/fastener.js";

export const screwIntoZone: FindingDef = {
  code: "screw-into-zone",
  severity: "error",
  words: "{fastener} ({axis}) comes out {below} below what it holds, above {zone}: nothing may be screwed there",
  next: "move it out of {zone}, take a shorter one, or hold the piece without screws there",
  explain:
    "Under a no-screw zone lies what a screw or drill must never meet: a tank, fuel or brake lines, wiring, a battery. Look underneath before any screw goes into a floor. Follow local codes and have licensed or qualified people do the work where the law asks for it.",
};

export const noScrews: Check = {
  name: "no-screw zones",
  findings: [screwIntoZone],
  run(job, shop, plan) {
    const parts = standingParts(plan);
    return plan.built.axes.flatMap((axis) => {
      const { length } = fastenerOf(axis.fastener, shop);
      return length === undefined ? [] : belowParts(axis, length, job, parts);
    });
  },
};

/** How far a fastener that runs downwards comes out below the lowest part it holds, or below the floor. */
function belowParts(axis: Axis, length: number, job: Job, parts: readonly Standing[]): readonly Finding[] {
  const down = turn(axis.ray.quat, [0, 0, 1])[2];
  if (down < tolerance.smooth) return [];
  const held = parts.filter(({ part }) => axis.stack.some((place) => place.part === part.id));
  const lowest = Math.min(...held.flatMap(cornersOf).map(([, , z]) => z));
  const tip = tipOf(axis.ray, length);
  const leaves = Number.isFinite(lowest) ? Math.max(lowest, 0) : 0;
  const below = leaves - tip[2];
  if (below <= tolerance.contact) return [];
  // where it leaves the parts, and where it ends: a slanting screw may enter the zone below
  const exit = tipOf(axis.ray, length - below / down);
  return Object.entries(job.space["no screws"]).flatMap(([zone, { outline }]) => {
    if (![exit, tip].some(([x, y]) => pointInProfile(outline, { x, y }))) return [];
    const facts = { fastener: text(axis.fastener), axis: text(axis.id), below: mm(below), zone: text(zone) };
    const at = [...axis.from, { file: job.file, path: ["space", "no screws", zone] }];
    return [raise(screwIntoZone, { at, on: [axis.id], facts })];
  });
}
