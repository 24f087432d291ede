import { usualOptions } from "../flow/build.js";
import type { NestTask } from "../nest/nest.js";
import { searchInLanes } from "../nest/search.js";
import { laneInThread } from "../nest/threads.js";
import type { JobOptions, Searching } from "./buildFile.js";
import { counted } from "./summary.js";
import type { Terminal } from "./terminal.js";

/** How long the searches of a run may take, and what became of them. */
export type TimedSearch = {
  readonly search: Searching;
  /** Iterations that each search got, in their order: with these the same is found again. */
  readonly iterations: number[];
};

/** The least time between two lines of progress, s. */
const between = 5;

/**
 * Searches in two threads, each board and way of cutting for its share of so many seconds, with progress on the error
 * stream. `now`: seconds; `stopped`: whether the run was asked to end with what it has.
 */
export function timedSearch(
  terminal: Pick<Terminal, "err">,
  seconds: number,
  { seed = usualOptions.seed }: Pick<JobOptions, "seed">,
  now: () => number,
  stopped: () => boolean,
): TimedSearch {
  const begun = now();
  const iterations: number[] = [];
  const search = async (task: NestTask) => {
    const end = begun + (seconds * (task.nth + 1)) / task.of;
    let told = now();
    const found = await searchInLanes(
      { ...task.order, seed, iterations: Number.MAX_SAFE_INTEGER },
      (order, laneSeed) => laneInThread("sheets", order, laneSeed),
      (progress) => {
        if (now() - told >= between) {
          told = now();
          const sheets = counted(progress.found.result.sheets.length, "sheet");
          const left = Math.max(0, Math.round(end - told));
          terminal.err(`${task.board}, ${task.byMachine ? "by machine" : "at the bench"}: ${sheets}, ${left} s to go`);
        }
        return !stopped() && now() < end;
      },
    );
    iterations.push(found.iterations);
    return found.result;
  };
  return { search, iterations };
}
