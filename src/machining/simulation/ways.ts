import type { Fault, Step } from "./reader.js";
import type { Room } from "./stock.js";

/** Rounding of a program's last digit, mm. */
const rounding = 0.003;

/** What the machine must never do, whatever the part: rapid through the work, off the bed, down with a standing bit. */
export function faultsOfWays(steps: readonly Step[], room: Room): readonly Fault[] {
  const faults = steps.flatMap((step) => wordsFor(step, room).map((words) => ({ line: step.line, words })));
  return [...faults, ...offTheBed(steps, room)];
}

/** The sheet may lie anywhere on the bed, as long as it and all ways over it do. */
function offTheBed(steps: readonly Step[], { length, width, bed }: Room): readonly Fault[] {
  const reach = (axis: 0 | 1, sheet: number) => {
    const places = steps.map(({ to }) => to[axis]).filter((value) => !Number.isNaN(value));
    return places.reduce((a, b) => Math.max(a, b), sheet) - places.reduce((a, b) => Math.min(a, b), 0);
  };
  const off = reach(0, length) > bed.length + rounding || reach(1, width) > bed.width + rounding;
  return off ? [{ line: 0, words: "the ways over the sheet are wider than the bed" }] : [];
}

function wordsFor({ rapid, from, to, rpm }: Step, room: Room): readonly string[] {
  const { top, safe, travel, below, thickness } = room;
  const height = Math.min(from[2], to[2]) - top;
  const over = !Object.is(to[0], from[0]) || !Object.is(to[1], from[1]);
  const said: string[] = [];
  if (rapid && over && !(height > safe - rounding)) said.push("a rapid move below the safe height");
  if (rapid && to[2] < from[2] && to[2] < top) said.push("a rapid move down into the sheet");
  if (!rapid && height < 0 && rpm === 0) said.push("cuts while the spindle stands");
  if (to[2] - top < -thickness - below - rounding) said.push("too deep below the sheet");
  if (to[2] - top + thickness + below > travel) said.push("higher than the spindle goes");
  return said;
}
