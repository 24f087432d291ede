import { distanceBetween } from "../../geometry/distance.js";
import { identity } from "../../geometry/frame.js";
import { type Block, loadSolids, type SolidKernel, type SolidRef } from "../../geometry/solids.js";
import { blockAround, cornersOf, separation } from "../../geometry/solids-apart.js";
import { tolerance } from "../../geometry/tolerance.js";
import { type Finding, type FindingDef, mm, raise, text } from "../../input/finding.js";
import type { Check, Plan } from "../../model/build.js";
import type { Job, Obstacle } from "../../model/job.js";
import { blockOfObstacle, finishedBlock, finishedOf, finishedRegion, obstacleOf } from "../solids.js";
import { nameOf, type Standing, standingParts } from "../standing.js";
import { airIn, type Chamber, chambersOf } from "./common/air.js";
import { groupsOf } from "./common/groups.js";
import { seenLevel } from "./common/level.js";
import { tightCorners } from "./common/tightCorners.js";

export const foulsObstacle: FindingDef = {
  code: "fouls-obstacle",
  severity: "error",
  words: "{part} runs {deep} into {obstacle}, coming from {side}",
  next: "move the part away, notch it round {obstacle}, or measure the obstacle again",
  explain: "An obstacle stays in the vehicle, so nothing else may stand in its place.",
};

export const obstacleTooNear: FindingDef = {
  code: "obstacle-too-near",
  severity: "error",
  words: "{part} comes within {reached} of {obstacle}, from {side}, where {clear} is wanted",
  next: "move it away by {missing}, or give the obstacle a smaller `clear`",
  explain:
    "Each obstacle says how far to keep away from it on every side: for movement, for fingers, for what may be fitted later. A part, with its covering on, comes closer.",
};

export const closedRoundObstacle: FindingDef = {
  code: "closed-round-obstacle",
  severity: "error",
  words: "{piece} closes round {obstacle}: it would stand in the air inside",
  next: "move the box off {obstacle}, or make it smaller",
  explain: "An obstacle stays in the vehicle. No board of the box touches this one, for it lies wholly inside.",
};

export const clearOfObstacles: Check = {
  name: "clear of obstacles",
  findings: [foulsObstacle, obstacleTooNear, closedRoundObstacle],
  async run(job, _shop, plan) {
    const parts = standingParts(plan);
    const near = Object.entries(job.space.obstacles).flatMap(([name, obstacle]) =>
      parts.filter((part) => mayFoul(job, part, obstacle)).map((part) => ({ name, obstacle, part })),
    );
    const within = boxesRound(job, plan);
    if (near.length === 0 && within.length === 0) return [];
    const kernel = await loadSolids();
    const met = near.map(({ name, obstacle, part }) => ({
      name,
      piece: part.part.piece,
      found: kernel.within(() => obstacleFindings(kernel, job, part, name, obstacle)),
    }));
    // what stands in a wall too is told there
    const hidden = within.filter(({ name, chamber }) => {
      const own = met.filter((each) => each.name === name && each.piece === pieceOf(chamber));
      return own.every(({ found }) => found.every(({ code }) => code !== foulsObstacle.code));
    });
    return [...met.flatMap(({ found }) => found), ...hidden.flatMap((each) => closedRound(kernel, job, each))];
  },
};

const pieceOf = ({ walls }: Chamber) => walls[0]!.part.piece;

type Within = { readonly name: string; readonly obstacle: Obstacle; readonly chamber: Chamber };

/** Every obstacle that the block round a box's walls holds, with one chamber of that box. */
function boxesRound(job: Job, plan: Plan): readonly Within[] {
  const boxes = groupsOf(chambersOf(plan), pieceOf).map(([chamber]) => chamber!);
  return boxes.flatMap((chamber) => {
    const { min, max } = blockAround(chamber.walls.flatMap(cornersOf));
    return Object.entries(job.space.obstacles).flatMap(([name, obstacle]): Within[] => {
      const { block } = blockOfObstacle(obstacle, 0);
      const held = [0, 1, 2].every((i) => block.min[i]! > min[i]! && block.max[i]! < max[i]!);
      return held ? [{ name, obstacle, chamber }] : [];
    });
  });
}

/** The walls close in the air round a corner of the obstacle. */
function closedRound(kernel: SolidKernel, job: Job, { name, obstacle, chamber }: Within): readonly Finding[] {
  const [corner] = obstacle.outline;
  const inside = [corner!.x, corner!.y, (obstacle.bottom + obstacle.top) / 2] as const;
  if (airIn(kernel, { ...chamber, inside }) === undefined) return [];
  const { piece, from } = chamber.walls[0]!.part;
  const at = [...from, { file: job.file, path: ["space", "obstacles", name] }];
  return [raise(closedRoundObstacle, { at, on: [piece], facts: { piece: text(piece), obstacle: text(name) } })];
}

/** Whether the part's block reaches the obstacle's clearance, and its outline does not tell that it is clear. */
function mayFoul(job: Job, part: Standing, obstacle: Obstacle): boolean {
  const gap = separation(finishedBlock(job, part), blockOfObstacle(obstacle, obstacle.clear));
  return gap < -tolerance.contact && !levelClear(part, obstacle);
}

/** A level part that keeps the obstacle's clearance in plan. One that touches is left to the solids. */
function levelClear({ part, at }: Standing, { outline, clear }: Obstacle): boolean {
  const seen = seenLevel(finishedRegion(part), at, identity);
  const room = seen === undefined ? 0 : distanceBetween(seen, { outer: outline, holes: [] });
  return room > 0 && room >= clear - tolerance.contact;
}

function obstacleFindings(
  kernel: SolidKernel,
  job: Job,
  standing: Standing,
  name: string,
  obstacle: Obstacle,
): readonly Finding[] {
  const solid = finishedOf(kernel, job, standing);
  const at = [...standing.part.from, { file: job.file, path: ["space", "obstacles", name] }];
  const facts = { part: text(nameOf(standing.part)), obstacle: text(name) };
  const hit = intrusion(kernel, solid, obstacleOf(kernel, obstacle, 0), standing);
  if (hit !== undefined) {
    const side = text(sideOf(hit.shared, obstacle));
    return [raise(foulsObstacle, { at, on: [standing.part.id], facts: { ...facts, deep: mm(hit.depth), side } })];
  }
  const near = intrusion(kernel, solid, obstacleOf(kernel, obstacle, obstacle.clear), standing);
  if (near === undefined || isTightCorner(job, standing, name, near.depth)) return [];
  return [
    raise(obstacleTooNear, {
      at,
      on: [standing.part.id],
      facts: {
        ...facts,
        side: text(sideOf(near.shared, obstacle)),
        clear: mm(obstacle.clear),
        reached: mm(Math.max(0, obstacle.clear - near.depth)),
        missing: mm(near.depth),
      },
    }),
  ];
}

function intrusion(kernel: SolidKernel, solid: SolidRef, obstacle: SolidRef, { at }: Standing) {
  const { volume, depth } = kernel.overlap(solid, obstacle, [at, identity]);
  if (volume <= tolerance.overlapVolume || depth <= tolerance.contact) return undefined;
  return { depth, shared: kernel.extentsOf(kernel.intersection(solid, obstacle))! };
}

/** A rounded notch that keeps its sides and only fills the corners: told by the notch's own check. */
function isTightCorner(job: Job, standing: Standing, name: string, depth: number): boolean {
  return tightCorners(job, standing).some(
    ({ obstacle, clear, reached }) => obstacle === name && depth <= clear - reached + tolerance.contact,
  );
}

/** From where a part comes at an obstacle: along the axis on which they share least. */
function sideOf({ min, max }: Block, { outline, bottom, top }: Obstacle): string {
  const xs = outline.map(({ x }) => x);
  const ys = outline.map(({ y }) => y);
  const middle = [(Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...ys) + Math.max(...ys)) / 2, (bottom + top) / 2];
  const shared = [0, 1, 2].map((i) => max[i]! - min[i]!);
  const axis = shared.indexOf(Math.min(...shared));
  const names = [
    ["the left", "the right"],
    ["the rear", "the front"],
    ["below", "above"],
  ] as const;
  return names[axis]![(min[axis]! + max[axis]!) / 2 < middle[axis]! ? 0 : 1];
}
