import { loadSolids, type SolidKernel } from "../../geometry/solids.js";
import { tolerance } from "../../geometry/tolerance.js";
import { type Finding, type FindingDef, mm, raise, text } from "../../input/finding.js";
import type { Check } from "../../model/build.js";
import type { Driver, Job } from "../../model/job.js";
import type { Mount, Tube } from "../../model/piece.js";
import { rowOf } from "../../shop/lookups.js";
import { type Body, blockOfBody, boardOf, bodiesOf, bodyOf } from "../solids.js";
import { nameOf, type Standing, standingParts } from "../standing.js";
import { areNear, type Hit, hitOf, isNear, type Round, roundsOf, solidOf } from "./common/rounds.js";

export const tubeHitsPart: FindingDef = {
  code: "tube-hits-part",
  severity: "error",
  words: "{tube} runs {deep} into {part}",
  next: "move it away by that much, or bend it another way",
  explain:
    "The tube of a port and a dowel need their place for themselves. The outside of the tube is checked, flares and all; an elbow is taken for short straight pieces.",
};

export const tubeHitsDriver: FindingDef = {
  code: "tube-hits-driver",
  severity: "error",
  words: "{tube} runs {deep} into the {what} of {driver}",
  next: "move it away, bend it another way, or choose a shallower driver",
  explain:
    "Behind its cut-out a driver takes a cone down to its magnet, and behind the magnet the air that it needs. A tube or a dowel in there cannot be put in, or the magnet is short of air.",
};

export const tubesMeet: FindingDef = {
  code: "tubes-meet",
  severity: "error",
  words: "{tube} and {other} run {deep} into each other",
  next: "move one of them away by that much, or bend it another way",
  explain: "Two tubes, or a tube and a dowel, cannot be in one place.",
};

export const portTooLong: FindingDef = {
  code: "port-too-long",
  severity: "error",
  words: "{tube} is {long} long, and runs into {part} after {most}",
  next: "[make it {best} or shorter, ]bend it with an `elbow`, make the box larger there, or put it in another face",
  explain:
    "A port needs at least its own diameter between its end and what lies before it, or the air cannot get round it (common practice, no source).",
};

export const portEndNear: FindingDef = {
  code: "port-end-near",
  severity: "warning",
  words: "{tube} ends {room} before {what}, where its diameter of {d} is usual",
  next: "[make it {best} or shorter, ]bend it with an `elbow`, or make the box larger there",
  explain:
    "A port needs at least its own diameter between its end and what lies before it, or the air cannot get round it (common practice, no source).",
};

/** A basket is taken for a plain cone, so less than this is no finding, mm. */
const basketGuess = 0.5;

export const tubesFit: Check = {
  name: "ports and dowels against what stands in the box",
  findings: [tubeHitsPart, tubeHitsDriver, tubesMeet, portTooLong, portEndNear],
  async run(job, _shop, plan) {
    const tubes = plan.built.tubes ?? [];
    if (tubes.length === 0) return [];
    const kernel = await loadSolids();
    const parts = standingParts(plan);
    return tubes.flatMap((tube, i) => {
      const others = tubes.filter((other) => other !== tube);
      const through = tube.through ?? [];
      const before = parts.filter(({ part }) => !through.includes(part.id));
      const scene = { kernel, job, tube, parts: before, mounts: plan.built.mounts, others, later: tubes.slice(i + 1) };
      return kernel.within(() => fitOf(scene));
    });
  },
};

type Scene = {
  readonly kernel: SolidKernel;
  readonly job: Job;
  readonly tube: Tube;
  readonly parts: readonly Standing[];
  readonly mounts: readonly Mount[];
  readonly others: readonly Tube[];
  /** Those that have not been held against it yet. */
  readonly later: readonly Tube[];
};

function fitOf(scene: Scene): readonly Finding[] {
  const rounds = roundsOf(scene.tube);
  const ahead = againstParts(scene, rounds);
  const found = [...ahead, ...againstDrivers(scene, rounds), ...againstTubes(scene, rounds)];
  return ahead.some(({ code }) => code === portTooLong.code) ? found : [...found, ...beforeEnd(scene)];
}

function againstParts(scene: Scene, rounds: readonly Round[]): readonly Finding[] {
  const { kernel, tube, parts } = scene;
  const near = parts.filter((part) => isNear(part, rounds));
  if (near.length === 0) return [];
  const solid = solidOf(kernel, rounds);
  const hits = near.flatMap((part) => hitOf(kernel, solid, boardOf(kernel, part), [rounds[0]!.at, part.at], part));
  // of what it runs into head on, the first alone: the rest lies behind
  const [first] = hits.flatMap((hit) => headOn(kernel, tube, hit)).sort((a, b) => a.most - b.most);
  const beside = hits.filter((hit) => headOn(kernel, tube, hit).length === 0);
  return [
    ...(first === undefined ? [] : [tooLong(tube, first.hit.what, first.most)]),
    ...beside.map(({ what, depth }) =>
      about(tube, tubeHitsPart, what, { part: text(nameOf(what.part)), deep: mm(depth) }),
    ),
  ];
}

/** Where the last straight run of a port meets a part that stands across it: after how much of its length. */
function headOn(kernel: SolidKernel, { end }: Tube, hit: Hit<Standing>) {
  if (end === undefined) return [];
  const { min, max } = kernel.extentsOf(hit.shared, end.at)!;
  const across = Math.min(max[0] - min[0], max[1] - min[1]);
  const inRun = min[2] > -end.run - tolerance.contact && across >= max[2] - min[2];
  return inRun ? [{ hit, most: end.long + min[2] }] : [];
}

function tooLong(tube: Tube, part: Standing, most: number): Finding {
  const { long, d } = tube.end!;
  const facts = { long: mm(long), part: text(nameOf(part.part)), most: mm(most), ...best(tube, most - d) };
  return about(tube, portTooLong, part, facts);
}

/** A length that would do; none where nothing of the last straight run would be left of it. */
function best({ end }: Tube, length: number): Finding["facts"] {
  return end !== undefined && length > end.long - end.run ? { best: mm(length) } : {};
}

function againstDrivers(scene: Scene, rounds: readonly Round[]): readonly Finding[] {
  const { kernel, tube } = scene;
  return drivers(scene).flatMap(({ mount, driver }) => {
    const { basket, magnet } = bodiesOf(driver);
    const hits = (body: Body | undefined, what: string, guess: number) =>
      body === undefined || !isNear(blockOfBody(body, mount.at), rounds)
        ? []
        : hitOf(
            kernel,
            solidOf(kernel, rounds),
            bodyOf(kernel, body, mount.at),
            [mount.at, rounds[0]!.at],
            what,
          ).filter(({ depth }) => depth > guess);
    const [hit] = [
      ...hits(magnet, "magnet, or the air behind it,", tolerance.contact),
      ...hits(basket, "basket", basketGuess),
    ];
    if (hit === undefined) return [];
    const facts = { tube: text(tube.name), deep: mm(hit.depth), what: text(hit.what), driver: text(mount.driver) };
    return [raise(tubeHitsDriver, { at: [...tube.from, ...mount.from], on: [tube.piece], facts })];
  });
}

function drivers({ job, mounts }: Scene): readonly { readonly mount: Mount; readonly driver: Driver }[] {
  return mounts.flatMap((mount) => {
    const driver = rowOf(job.drivers, mount.driver);
    return driver === undefined ? [] : [{ mount, driver }];
  });
}

function againstTubes({ kernel, tube, later }: Scene, rounds: readonly Round[]): readonly Finding[] {
  return later.flatMap((other) => {
    const theirs = roundsOf(other);
    if (!areNear(rounds, theirs)) return [];
    const along = [rounds[0]!.at, theirs[0]!.at];
    return hitOf(kernel, solidOf(kernel, rounds), solidOf(kernel, theirs), along, other).map(({ depth }) => {
      const facts = { tube: text(tube.name), other: text(other.name), deep: mm(depth) };
      return raise(tubesMeet, { at: [...tube.from, ...other.from], on: [tube.piece], facts });
    });
  });
}

/** Before the end of a port as much is to be free as it is wide. */
function beforeEnd(scene: Scene): readonly Finding[] {
  const { kernel, tube, parts, others } = scene;
  const { end } = tube;
  if (end === undefined) return [];
  const before: Round = { at: end.at, body: { d: end.d, dTo: end.d, from: 0, to: end.d } };
  const solid = solidOf(kernel, [before]);
  const hits = [
    ...parts
      .filter((part) => isNear(part, [before]))
      .flatMap((part) => hitOf(kernel, solid, boardOf(kernel, part), [end.at, part.at], nameOf(part.part))),
    ...drivers(scene).flatMap(({ mount, driver }) =>
      [bodiesOf(driver).basket, bodiesOf(driver).magnet].flatMap((body) =>
        body && isNear(blockOfBody(body, mount.at), [before])
          ? hitOf(kernel, solid, bodyOf(kernel, body, mount.at), [end.at, mount.at], `driver ${mount.driver}`)
          : [],
      ),
    ),
    ...others
      .filter((other) => areNear([before], roundsOf(other)))
      .flatMap((other) => hitOf(kernel, solid, solidOf(kernel, roundsOf(other)), [end.at], other.name)),
  ];
  const [nearest] = hits
    .map(({ what, shared }) => ({ what, room: kernel.extentsOf(shared, end.at)!.min[2] }))
    .sort((a, b) => a.room - b.room);
  if (nearest === undefined || nearest.room >= end.d - tolerance.contact) return [];
  const room = Math.max(0, nearest.room);
  const facts = { tube: text(tube.name), room: mm(room), what: text(nearest.what), d: mm(end.d) };
  const shorter = best(tube, end.long - (end.d - room));
  return [raise(portEndNear, { at: tube.from, on: [tube.piece], facts: { ...facts, ...shorter } })];
}

function about(tube: Tube, def: FindingDef, { part }: Standing, facts: Finding["facts"]): Finding {
  return raise(def, { at: [...tube.from, ...part.from], on: [tube.piece], facts: { tube: text(tube.name), ...facts } });
}
