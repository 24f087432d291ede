import { loadSolids, type SolidKernel } from "../../geometry/solids.js";
import { tolerance } from "../../geometry/tolerance.js";
import { type Finding, type FindingDef, list, mm, raise, text } from "../../input/finding.js";
import type { Check } from "../../model/build.js";
import { featureName } from "../../model/ids.js";
import { nameOf, type Standing } from "../standing.js";
import { airIn, type Chamber, chambersOf, closedAirOf, type Leak } from "./common/air.js";

export const airLeaks: FindingDef = {
  code: "air-leaks",
  severity: "error",
  words: "air leaks from {air} through {feature} in {part}",
  next: "put something in it that closes it, or take it out",
  explain:
    "A closed box must be closed: every hole through its walls is taken up by a driver, a terminal or a fastener. A hole that nothing fills whistles, and the box no longer has the volume it was made for.",
};

export const jointGapes: FindingDef = {
  code: "joint-gapes",
  severity: "error",
  words: "{air} is not closed: {parts} falls short of its neighbour by {gap}",
  next: "make it longer by that much, or move the panel that it should meet",
  explain:
    "The panels round the air must meet. Here they do once the panels named are made longer by the gap given, so that is where the air gets out.",
};

export const sideMissing: FindingDef = {
  code: "side-missing",
  severity: "error",
  words: "{air} is not closed: a side is missing, or stands more than {most} from its neighbours",
  next: "check that all of {walls} are there and meet",
  explain:
    "The parts named round this air do not shut it in, and no small gap explains it: most likely a panel is missing or stands in the wrong place.",
};

/** Wider than this and it is not a gap between two panels but a panel that is not there, mm. */
const widestGap = 4;
/** Fine enough for a gap that is to be told, mm. */
const gapStep = 0.05;

export const insideClosed: Check = {
  name: "the inside is closed",
  findings: [airLeaks, jointGapes, sideMissing],
  async run(_job, _shop, plan) {
    return (await Promise.all(chambersOf(plan).map(openingsOf))).flat();
  },
};

async function openingsOf(chamber: Chamber): Promise<readonly Finding[]> {
  const { leaks } = chamber;
  const closed = (await closedAirOf(chamber)) !== undefined;
  if (closed && leaks.length === 0) return [];
  const kernel = await loadSolids();
  if (!closed) return [gapOf(kernel, chamber)];
  // another part may stand over a hole and close it
  return leaks
    .filter((leak) => airIn(kernel, chamber, { open: [leak] }) === undefined)
    .map((leak) => leakFinding(chamber, leak));
}

function leakFinding({ air }: Chamber, { part, features }: Leak): Finding {
  const open = features.filter((feature) => feature.filledBy === undefined && feature.axis === undefined);
  return raise(airLeaks, {
    at: [...open.flatMap((feature) => feature.from), ...(open.length === 0 ? part.from : [])],
    on: [part.id, ...open.map((feature) => feature.id)],
    facts: {
      air: text(air.name),
      part: text(nameOf(part)),
      feature: text(open.map((feature) => featureName(feature.id)).join(", ") || "a hole"),
    },
  });
}

/** Grows the walls until the air is shut in; then asks which one wall's growth alone shuts it. */
function gapOf(kernel: SolidKernel, chamber: Chamber): Finding {
  const { air, walls } = chamber;
  const shut = (margin: (wall: Standing) => number) => airIn(kernel, chamber, { margin }) !== undefined;
  const names = (some: readonly Standing[]) => list(some.map(({ part }) => nameOf(part)));
  if (!shut(() => widestGap)) {
    const facts = {
      air: text(air.name),
      walls: text(walls.map(({ part }) => nameOf(part)).join(", ")),
      most: mm(widestGap),
    };
    return raise(sideMissing, { at: air.from, on: air.walls, facts });
  }
  const gap = leastOf((margin) => shut(() => margin));
  const short = walls.filter((wall) => shut((other) => (other === wall ? gap : tolerance.seam)));
  const named = short.length > 0 ? short : walls;
  return raise(jointGapes, {
    at: [...air.from, ...named.flatMap(({ part }) => part.from)],
    on: named.map(({ part }) => part.id),
    facts: { air: text(air.name), parts: names(named), gap: mm(gap) },
  });
}

/** The least margin that will do, to `gapStep`, known that `widestGap` does. */
function leastOf(does: (margin: number) => boolean): number {
  let [little, enough] = [0, widestGap / gapStep];
  while (enough - little > 1) {
    const half = Math.floor((little + enough) / 2);
    if (does(half * gapStep)) enough = half;
    else little = half;
  }
  return enough * gapStep;
}
