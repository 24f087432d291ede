import { type Finding, type FindingDef, mm, type Origin, raise, text } from "../../input/finding.js";
import type { Check, Plan } from "../../model/build.js";
import type { Driver, Job } from "../../model/job.js";
import type { Shop } from "../../model/shop.js";
import { rowOf } from "../../shop/lookups.js";
import { rules } from "../../shop/rules.js";
import { fastenerOf } from "./common/fastener.js";

export const driverFiguresMissing: FindingDef = {
  code: "driver-figures-missing",
  severity: "note",
  words: "the data sheet of {driver} does not give: {figures}; what turns on them is not checked",
  next: "measure the driver and add it under drivers",
  explain:
    "A driver's room behind and in front, its seat and its screws are checked only as far as its figures are known. What is not given is not guessed.",
};

export const cutOutOverFrame: FindingDef = {
  code: "cut-out-over-frame",
  severity: "error",
  words: "the cut-out of {driver}, {cutOut}, is as wide as its frame, {frame}",
  next: "measure both again: the frame must cover the edge of the cut-out",
  explain: "The driver stands on the board round its cut-out. If the hole is as wide as the frame it falls through.",
};

export const magnetOverCutOut: FindingDef = {
  code: "magnet-over-cut-out",
  severity: "error",
  words: "the magnet of {driver}, {magnet}, does not pass its cut-out, {cutOut}",
  next: "measure both again",
  explain: "The driver goes in from the front, magnet first.",
};

export const boltsNearCutOut: FindingDef = {
  code: "bolts-near-cut-out",
  severity: "warning",
  words: "the screws of {driver} leave {web} of board to the cut-out, where {least} is the least",
  next: "check bolt circle and cut-out, or fix the driver to a ring with a smaller cut-out",
  explain: "A pilot too near the edge of the cut-out breaks out when the screw goes in.",
};

export const boltsNearRim: FindingDef = {
  code: "bolts-near-rim",
  severity: "warning",
  words: "the bolt circle of {driver}, {circle}, runs through the rim of its frame, {frame}",
  next: "check both figures: the holes must lie inside the frame",
  explain:
    "Bolt circle and hole together are as wide as the frame: one of the figures is most likely for another driver.",
};

/** Figures by which a driver's fit is judged, by their keys in the job file. */
const figures = [
  "frame",
  "flange",
  "depth",
  "magnet",
  "stands proud",
  "travel",
  "bolts",
] as const satisfies readonly (keyof Driver)[];

export const driverData: Check = {
  name: "driver data sheets",
  findings: [driverFiguresMissing, cutOutOverFrame, magnetOverCutOut, boltsNearCutOut, boltsNearRim],
  run(job, shop, plan) {
    return [...new Set(plan.built.mounts.map((mount) => mount.driver))].flatMap((name) => {
      const driver = rowOf(job.drivers, name);
      return driver === undefined ? [] : sheetFindings(name, driver, job, shop, plan);
    });
  },
};

function sheetFindings(name: string, driver: Driver, job: Job, shop: Shop, plan: Plan): readonly Finding[] {
  const at = [{ file: job.file, path: ["drivers", name] }];
  const on = plan.built.mounts.filter((mount) => mount.driver === name).map((mount) => mount.piece);
  const missing = figures.filter((figure) => driver[figure] === undefined);
  const note = raise(driverFiguresMissing, {
    at,
    on,
    facts: { driver: text(name), figures: text(missing.join(", ")) },
  });
  return [...(missing.length === 0 ? [] : [note]), ...sizes(name, driver, at), ...boltCircle(name, driver, shop, at)];
}

function sizes(name: string, driver: Driver, at: readonly Origin[]): readonly Finding[] {
  const { frame, magnet, "cut-out": cutOut } = driver;
  const found: Finding[] = [];
  if (frame !== undefined && cutOut >= frame) {
    found.push(raise(cutOutOverFrame, { at, facts: { driver: text(name), cutOut: mm(cutOut), frame: mm(frame) } }));
  }
  if (magnet !== undefined && magnet > cutOut) {
    found.push(raise(magnetOverCutOut, { at, facts: { driver: text(name), cutOut: mm(cutOut), magnet: mm(magnet) } }));
  }
  return found;
}

function boltCircle(name: string, driver: Driver, shop: Shop, at: readonly Origin[]): readonly Finding[] {
  const { frame, bolts, "cut-out": cutOut } = driver;
  if (bolts?.screw === undefined) return [];
  const { d, pilot } = fastenerOf(bolts.screw, shop);
  const found: Finding[] = [];
  const web = (bolts.circle - cutOut - (pilot ?? d ?? 0)) / 2;
  if (web < rules.web.value) {
    const facts = { driver: text(name), web: mm(Math.max(0, web)), least: mm(rules.web.value) };
    found.push(raise(boltsNearCutOut, { at, facts }));
  }
  if (frame !== undefined && bolts.circle >= frame - (d ?? 0)) {
    const facts = { driver: text(name), circle: mm(bolts.circle), frame: mm(frame) };
    found.push(raise(boltsNearRim, { at, facts }));
  }
  return found;
}
