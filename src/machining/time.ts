import { edgeLength } from "../geometry/measure.js";
import type { Move, Run } from "../model/program.js";
import type { Cnc } from "../model/shop.js";

/** What a change of tool takes, s: common practice, no source. */
const changeSeconds: Readonly<Record<Cnc["controller"]["tools"], number>> = { change: 20, pause: 120, file: 120 };

/**
 * How long the runs of a setup take, s: lengths by their feeds, and a change for each tool. An estimate: a machine slows
 * down in corners and on short ways, which nobody wrote down.
 */
export function secondsOf(runs: readonly Run[], cnc: Cnc): number {
  let seconds = runs.length * changeSeconds[cnc.controller.tools];
  let last: Move | undefined;
  for (const move of runs.flatMap((run) => run.operations.flatMap(({ moves }) => moves))) {
    const feed = move.feed === "rapid" ? cnc.rapid : move.feed;
    if (last) seconds += (lengthOf(last, move) / feed) * 60;
    last = move;
  }
  return Math.round(seconds);
}

function lengthOf({ to: from }: Move, { to, bulge }: Move): number {
  const plan = edgeLength({ x: from[0], y: from[1], bulge, by: "" }, { x: to[0], y: to[1] });
  return Math.hypot(plan, to[2] - from[2]);
}
