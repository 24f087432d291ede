import type { Fault, Step } from "./reader.js";
import type { Room } from "./stock.js";

/** Rounding of a program's last digit, mm. */
const rounding = 0.003;

/** What the machine must never do, whatever the part: rapid through the work, off the bed, down with a standing bit. */
export function faultsOfWays(steps: readonly Step[], room: Room): readonly Fault[] {
  return steps.flatMap((step) => wordsFor(step, room).map((words) => ({ line: step.line, words })));
}

function wordsFor({ rapid, from, to, rpm }: Step, room: Room): readonly string[] {
  const { bed, top, safe, travel, below, thickness } = room;
  const height = Math.min(from[2], to[2]) - top;
  const over = !Object.is(to[0], from[0]) || !Object.is(to[1], from[1]);
  const said: string[] = [];
  if (rapid && over && !(height > safe - rounding)) said.push("a rapid move below the safe height");
  if (rapid && to[2] < from[2] && to[2] < top) said.push("a rapid move down into the sheet");
  if (!rapid && height < 0 && rpm === 0) said.push("cuts while the spindle stands");
  if (to[0] < bed.x0 || to[0] > bed.x1 || to[1] < bed.y0 || to[1] > bed.y1) said.push("a move off the bed");
  if (to[2] - top < -thickness - below - rounding) said.push("too deep below the sheet");
  if (to[2] - top + thickness + below > travel) said.push("higher than the spindle goes");
  return said;
}
