import { type Finding, type FindingDef, litres, raise, text } from "../../input/finding.js";
import type { Check, Plan } from "../../model/build.js";
import type { Job } from "../../model/job.js";
import type { Air } from "../../model/piece.js";
import { netLitres } from "../../model/volume.js";
import { partOf } from "../standing.js";
import { type Chamber, chambersOf, closedAirOf } from "./common/air.js";

export const volumeOff: FindingDef = {
  code: "volume-off",
  severity: "warning",
  words: "{air} reaches {reached} net where {wanted} is wanted: {off} {way}",
  next: "change an outside size, or give the volume that will do",
  explain:
    "The net volume is the air inside less what stands in it: driver, blocks, braces, terminal. More than two hundredths off, and more than one step of the free size explains, is worth a look; the ear hears it only past about a tenth.",
};

export const volumeOutsideWants: FindingDef = {
  code: "volume-outside-wants",
  severity: "warning",
  words: "{air} gives {driver} {reached} net, and it wants {least} to {most}",
  next: "make the box larger or smaller, or choose a driver that wants this volume",
  explain:
    "The driver's maker gives the volumes it is made for, of a closed box and of one with a port. Outside them the bass booms or falls off early.",
};

export const volumeInDoubt: FindingDef = {
  code: "volume-in-doubt",
  severity: "error",
  words: "the volume of {air} is in doubt: {formula} by its sizes, {measured} measured on its parts",
  next: "report this: it is a mistake in the program, not in the job",
  explain:
    "The volume is worked out twice, by a formula and by measuring the hollow that the parts leave. For flat panels the two agree to a millionth; where they do not, one of them is wrong.",
};

/** Off by less than this share of the volume wanted is as good as it gets (common practice, no source). */
const near = 0.02;
/** Formula and solids of a flat box agree to this share of the volume; where chords stand for arcs, to the other. */
const agree = { flat: 1e-6, curved: 1e-4 };

export const netVolume: Check = {
  name: "net volume",
  findings: [volumeOff, volumeOutsideWants, volumeInDoubt],
  async run(job, shop, plan) {
    const { air } = plan.built;
    if (air.length === 0) return [];
    const step = Math.max(shop.saw.step, shop.router.step);
    return [
      ...air.flatMap((chamber) => againstWanted(chamber, plan, step)),
      ...air.flatMap((chamber) => againstDriver(chamber, job, plan)),
      ...(await Promise.all(chambersOf(plan).map(againstSolids))).flat(),
    ];
  },
};

function againstWanted(air: Air, plan: Plan, step: number): readonly Finding[] {
  const wanted = air.wantedL;
  if (wanted === undefined) return [];
  const reached = netLitres(air);
  const off = reached - wanted;
  if (Math.abs(off) <= Math.max(near * wanted, stepOf(air, plan, step))) return [];
  const facts = {
    air: text(air.name),
    reached: litres(reached),
    wanted: litres(wanted),
    off: litres(Math.abs(off)),
    way: text(off > 0 ? "too much" : "too little"),
  };
  return [raise(volumeOff, { at: air.from, on: air.walls, facts })];
}

/** What one step of the piece's free size does to its gross volume, L; 0 where no size is free. */
function stepOf(air: Air, plan: Plan, step: number): number {
  const piece = pieceOf(air, plan);
  const size = plan.sizes.find(([id]) => id === piece)?.[1];
  const gross = air.terms[0]?.litres ?? 0;
  return size === undefined || size <= 0 ? 0 : (gross * step) / size;
}

function againstDriver(air: Air, job: Job, plan: Plan): readonly Finding[] {
  const piece = pieceOf(air, plan);
  const behind = plan.built.mounts.filter((mount) => mount.piece === piece && (mount.air ?? air.name) === air.name);
  return behind.flatMap((mount) => {
    const wants = job.drivers[mount.driver]?.wants?.[air.ported ? "ported" : "closed"];
    if (wants === undefined) return [];
    const reached = netLitres(air) / behind.filter(({ driver }) => driver === mount.driver).length;
    const [least, most] = wants;
    if (reached >= least && reached <= most) return [];
    const facts = {
      air: text(air.name),
      driver: text(mount.driver),
      reached: litres(reached),
      least: litres(least),
      most: litres(most),
    };
    return [raise(volumeOutsideWants, { at: [...air.from, ...mount.from], on: [mount.piece], facts })];
  });
}

/** Only what the parts show is compared: a driver's displacement is a figure from its sheet. */
async function againstSolids(chamber: Chamber): Promise<readonly Finding[]> {
  const { air } = chamber;
  const measured = await closedAirOf(chamber);
  // Not closed even with its holes stopped: that is for another check to say.
  if (measured === undefined) return [];
  const formula = air.terms.reduce((sum, { litres, shaped }) => sum + (shaped ? litres : 0), 0);
  const curved = chamber.others.some(({ part }) => part.profile.holes.flat().some(({ bulge }) => bulge !== 0));
  if (Math.abs(measured / 1e6 - formula) <= (curved ? agree.curved : agree.flat) * formula) return [];
  const facts = { air: text(air.name), formula: litres(formula), measured: litres(measured / 1e6) };
  return [raise(volumeInDoubt, { at: air.from, on: air.walls, facts })];
}

function pieceOf(air: Air, plan: Plan) {
  const wall = air.walls[0];
  return wall === undefined ? undefined : partOf(plan, wall)?.piece;
}
