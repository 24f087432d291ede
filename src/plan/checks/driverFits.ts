import { nearestOn } from "../../geometry/distance.js";
import { compose, type Frame, inverse, turn } from "../../geometry/frame.js";
import { pointInProfile } from "../../geometry/inside.js";
import { loadSolids, type SolidKernel } from "../../geometry/solids.js";
import { separation } from "../../geometry/solids-apart.js";
import { tolerance } from "../../geometry/tolerance.js";
import { type Finding, type FindingDef, mm, raise, text } from "../../input/finding.js";
import type { Check } from "../../model/build.js";
import type { Driver } from "../../model/job.js";
import type { Mount } from "../../model/piece.js";
import { rowOf } from "../../shop/lookups.js";
import { type Body, blockOfBody, boardOf, bodiesOf, bodyOf, gapBehind } from "../solids.js";
import { nameOf, type Standing, standingParts } from "../standing.js";
import { passesFreely } from "./common/level.js";

export const frameOffFace: FindingDef = {
  code: "frame-off-face",
  severity: "error",
  words: "the frame of {driver}, {frame} wide, hangs {over} over the edge of {part}",
  next: "move the driver inwards, or make that face larger",
  explain: "The driver's frame must stand on board all round, or it can be neither sealed nor screwed.",
};

export const frameHits: FindingDef = {
  code: "frame-hits",
  severity: "error",
  words: "the frame of {driver} runs {deep} into {part}",
  next: "open {part} wider over the driver, or move it away",
  explain: "The rim of the driver's frame, as high as its data sheet says, must be clear of everything but its seat.",
};

export const basketHits: FindingDef = {
  code: "basket-hits",
  severity: "error",
  words: "the basket of {driver} runs {deep} into {part} at its side",
  next: "move the driver away from {part}, or make the box larger there",
  explain:
    "Behind its cut-out a driver narrows to its magnet. The check takes a cone from the cut-out to the magnet's whole disc; a basket may be fuller than that, so measure where it is near.",
};

export const magnetHits: FindingDef = {
  code: "magnet-hits",
  severity: "error",
  words: "{driver} is too deep: its magnet and {gap} of air behind it need {missing} more than {part} leaves",
  next: "make the box deeper by {missing}, raise the driver on a ring, or choose a shallower one",
  explain:
    "The whole disc of the magnet is checked, not its centre, against every part behind it, and with it the gap that air needs to move: more behind a vented pole than behind a closed one.",
};

export const magnetGapShort: FindingDef = {
  code: "magnet-gap-short",
  severity: "warning",
  words: "the magnet of {driver} goes in, but has {left} of air to {part} where {gap} is usual",
  next: "make the box deeper by {missing}, or raise the driver on a ring",
  explain: "A magnet close to a wall is short of air to cool by, and a vented pole blows against it and whistles.",
};

export const travelHits: FindingDef = {
  code: "travel-hits",
  severity: "error",
  words: "the cone of {driver} moves {missing} too far out for {part}",
  next: "open {part} over the driver, or lift it by {missing}",
  explain:
    "In front of the flange a driver needs room for its surround at rest and for its cone's way outward. What lies there is struck at full volume.",
};

/** A basket is taken for a plain cone, so less than this is no finding, mm. */
const basketGuess = 0.5;

export const driverFits: Check = {
  name: "drivers against the parts",
  findings: [frameOffFace, frameHits, basketHits, magnetHits, magnetGapShort, travelHits],
  async run(job, _shop, plan) {
    const mounts = plan.built.mounts;
    if (mounts.length === 0) return [];
    const parts = standingParts(plan);
    const kernel = await loadSolids();
    return mounts.flatMap((mount) => {
      const driver = rowOf(job.drivers, mount.driver);
      return driver === undefined ? [] : kernel.within(() => fitOf({ kernel, mount, driver, parts }));
    });
  },
};

type Fit = {
  readonly kernel: SolidKernel;
  readonly mount: Mount;
  readonly driver: Driver;
  readonly parts: readonly Standing[];
};

/** A part that a body runs into: how deep, and what they share, measured along the driver's axis. */
type Hit = {
  readonly part: Standing;
  readonly depth: number;
  readonly low: number;
  readonly high: number;
  /** They would come free sideways sooner than along the axis. */
  readonly sideways: boolean;
};

function fitOf(fit: Fit): readonly Finding[] {
  return [...seatOf(fit), ...aroundFrame(fit), ...behind(fit), ...inFront(fit)];
}

function aroundFrame(fit: Fit): readonly Finding[] {
  return hitsOf(fit, bodiesOf(fit.driver).frame).map(({ part, depth }) =>
    about(fit, frameHits, part, { deep: mm(depth) }),
  );
}

function behind(fit: Fit): readonly Finding[] {
  const { basket, magnet } = bodiesOf(fit.driver);
  if (magnet === undefined) return [];
  const gap = gapBehind(fit.driver);
  const deep = hitsOf(fit, magnet).filter((hit) => !hit.sideways);
  const beside = hitsOf(fit, basket).filter(
    (hit) => hit.depth > basketGuess && !deep.some(({ part }) => part === hit.part),
  );
  return [
    ...deep.map(({ part, high }) => {
      const missing = high - magnet.to;
      const facts = { gap: mm(gap), missing: mm(missing), left: mm(Math.max(0, gap - missing)) };
      return about(fit, missing < gap ? magnetGapShort : magnetHits, part, facts);
    }),
    ...beside.map(({ part, depth }) => about(fit, basketHits, part, { deep: mm(depth) })),
  ];
}

function inFront(fit: Fit): readonly Finding[] {
  const { travel } = bodiesOf(fit.driver);
  if (travel === undefined) return [];
  return hitsOf(fit, travel).map(({ part, low }) => about(fit, travelHits, part, { missing: mm(travel.to - low) }));
}

function about({ mount, driver }: Fit, def: FindingDef, { part }: Standing, facts: Finding["facts"]): Finding {
  return raise(def, {
    at: [...mount.from, ...part.from],
    // In the driver's own box the whole box is wrong; another piece's part may be changed by itself.
    on: part.piece === mount.piece ? [part.id, mount.piece] : [part.id],
    facts: {
      driver: text(mount.driver),
      part: text(nameOf(part)),
      ...(driver.frame === undefined ? {} : { frame: mm(driver.frame) }),
      ...facts,
    },
  });
}

/** The parts that a body of the driver runs into. */
function hitsOf({ kernel, mount, parts }: Fit, body: Body | undefined): readonly Hit[] {
  if (body === undefined) return [];
  const block = blockOfBody(body, mount.at);
  return parts
    .filter((part) => separation(part, block) < -tolerance.contact && !passesFreely(part, body, mount.at))
    .flatMap((part) => kernel.within(() => hitOf(kernel, mount.at, body, part)));
}

function hitOf(kernel: SolidKernel, at: Frame, body: Body, part: Standing): readonly Hit[] {
  const solid = bodyOf(kernel, body, at);
  const board = boardOf(kernel, part);
  const { volume, depth } = kernel.overlap(solid, board, [at, part.at]);
  if (volume <= tolerance.overlapVolume || depth <= tolerance.contact) return [];
  const { min, max } = kernel.extentsOf(kernel.intersection(solid, board), at)!;
  const across = Math.min(max[0] - min[0], max[1] - min[1]);
  return [{ part, depth, low: min[2], high: max[2], sideways: across < max[2] - min[2] }];
}

/** The frame's disc must lie on board: on one part, or on several whose surfaces run on flush. */
function seatOf(fit: Fit): readonly Finding[] {
  const { kernel, mount, driver, parts } = fit;
  const { frame } = driver;
  if (frame === undefined) return [];
  const seats = parts.filter((part) => liesUnder(part, mount.at));
  const reach = seats.map((part) => ({ part, room: roomRound(part, mount.at) })).sort((a, b) => b.room - a.room)[0];
  if (reach !== undefined && reach.room >= frame / 2 - tolerance.contact) return [];
  const bare = kernel.within(() => {
    const disc = bodyOf(kernel, { d: frame, dTo: frame, from: -1, to: 0 }, mount.at);
    const boards = parts
      .filter((part) => separation(part, blockOfBody({ d: frame, dTo: frame, from: -1, to: 0 }, mount.at)) < 0)
      .map(({ part, at }) => kernel.extrude({ outer: part.profile.outer, holes: [] }, part.thickness, at));
    return kernel.volumeOf(kernel.difference(disc, boards));
  });
  if (bare <= tolerance.overlapVolume) return [];
  const under = reach?.part ?? parts.find(({ part }) => part.piece === mount.piece);
  if (under === undefined) return [];
  return [about(fit, frameOffFace, under, { over: mm(frame / 2 - (reach?.room ?? 0)) })];
}

/** Whether a part's board lies square under a driver's axis, just below its mounting plane. */
function liesUnder({ part, at, block }: Standing, mount: Frame): boolean {
  const seen = compose(inverse(at), mount);
  const out = turn(seen.quat, [0, 0, 1])[2];
  if (Math.abs(out) < 1 - 1e-9) return false;
  const below = seen.origin[2] - out * 0.5;
  return (
    below > block.min[2] &&
    below < block.max[2] &&
    pointInProfile(part.profile.outer, { x: seen.origin[0], y: seen.origin[1] })
  );
}

/** From a driver's axis to the nearest edge of the board under it, mm. */
function roomRound({ part, at }: Standing, mount: Frame): number {
  const [x, y] = compose(inverse(at), mount).origin;
  return nearestOn(part.profile.outer, { x, y })?.distance ?? 0;
}
