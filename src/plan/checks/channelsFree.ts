import type { Frame } from "../../geometry/frame.js";
import { extentsOf } from "../../geometry/measure.js";
import { loadSolids, type SolidKernel, type SolidRef } from "../../geometry/solids.js";
import { type StandingBlock, separation } from "../../geometry/solids-apart.js";
import { tolerance } from "../../geometry/tolerance.js";
import { type Finding, type FindingDef, mm, type Origin, raise, text } from "../../input/finding.js";
import type { Check, Plan } from "../../model/build.js";
import type { Job } from "../../model/job.js";
import type { Channel } from "../../model/piece.js";
import { rowOf } from "../../shop/lookups.js";
import { type Body, blockOfBody, boardOf, bodiesOf, bodyOf } from "../solids.js";
import { nameOf, standingParts } from "../standing.js";
import { hitOf, isNear, roundsOf, solidOf } from "./common/rounds.js";

export const channelEntered: FindingDef = {
  code: "channel-entered",
  severity: "error",
  words: "{what} runs {deep} into the channel of {port}",
  next: "move it away by {deep} or leave it out, or make the port shorter, or let it run along another wall",
  explain:
    "A slot port needs the whole of its gap, and its walls plain: what stands in its air narrows it, so that it hisses and is tuned to another note.",
};

/** A basket is taken for a plain cone, so less than this is no finding, mm. */
const basketGuess = 0.5;

export const channelsFree: Check = {
  name: "what stands in the channels of ports made of panels",
  findings: [channelEntered],
  async run(job, _shop, plan) {
    const channels = plan.built.channels ?? [];
    if (channels.length === 0) return [];
    const kernel = await loadSolids();
    return channels.flatMap((channel) =>
      kernel.within(() => {
        const solid = kernel.extrude(channel.region, channel.thickness, channel.at);
        return thingsIn(kernel, job, plan).flatMap((thing) => enters(kernel, thing, channel, solid));
      }),
    );
  },
};

/** Something that may stand in the air of a box. `guess`: less deep it is no finding, mm. */
type Thing = {
  readonly name: string;
  readonly from: readonly Origin[];
  readonly isNear: (channel: StandingBlock) => boolean;
  readonly at: Frame;
  readonly solid: () => SolidRef;
  readonly guess?: number;
};

function thingsIn(kernel: SolidKernel, job: Job, plan: Plan): readonly Thing[] {
  return [
    ...standingParts(plan).map((standing): Thing => {
      const { part, at } = standing;
      const isClose = (block: StandingBlock) => separation(standing, block) < -tolerance.contact;
      return { name: nameOf(part), from: part.from, isNear: isClose, at, solid: () => boardOf(kernel, standing) };
    }),
    ...(plan.built.tubes ?? []).map((tube): Thing => {
      const rounds = roundsOf(tube);
      const at = rounds[0]!.at;
      const { name, from } = tube;
      return { name, from, isNear: (block) => isNear(block, rounds), at, solid: () => solidOf(kernel, rounds) };
    }),
    ...driversIn(kernel, job, plan),
  ];
}

/** A driver's basket and its magnet; the air behind that it may share with a port. */
function driversIn(kernel: SolidKernel, job: Job, plan: Plan): readonly Thing[] {
  return plan.built.mounts.flatMap(({ driver: name, from, at }) => {
    const driver = rowOf(job.drivers, name);
    const { basket, magnet } = driver === undefined ? {} : bodiesOf(driver);
    if (basket === undefined || magnet === undefined) return [];
    const thing = (what: string, body: Body, guess: number): Thing => ({
      name: `the ${what} of driver ${name}`,
      from,
      isNear: (block) => separation(blockOfBody(body, at), block) < -tolerance.contact,
      at,
      solid: () => bodyOf(kernel, body, at),
      guess,
    });
    return [thing("magnet", { ...magnet, to: basket.to }, 0), thing("basket", basket, basketGuess)];
  });
}

function enters(kernel: SolidKernel, thing: Thing, channel: Channel, air: SolidRef): readonly Finding[] {
  const { min, max } = extentsOf(channel.region.outer);
  const block = { min: [min.x, min.y, -channel.thickness], max: [max.x, max.y, 0] } as const;
  if (!thing.isNear({ block, at: channel.at })) return [];
  return hitOf(kernel, air, thing.solid(), [channel.at, thing.at], thing.name)
    .filter(({ depth }) => depth > (thing.guess ?? 0))
    .map(({ what, depth }) => {
      const facts = { what: text(what), port: text(channel.name), deep: mm(depth) };
      return raise(channelEntered, { at: [...thing.from, ...channel.from], on: [channel.piece], facts });
    });
}
