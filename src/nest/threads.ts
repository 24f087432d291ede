import { isMainThread, parentPort, Worker, workerData } from "node:worker_threads";
import type { Lane } from "./lanes.js";
import { sheetRounds } from "./search.js";
import { stripRounds } from "./shapes/lanes.js";

/** What a thread can be begun with: each takes an order and a seed, and then round after round. */
const works = { sheets: sheetRounds, strip: stripRounds } as const;
type Works = typeof works;
type Rounds<W extends keyof Works> = ReturnType<Works[W]>;

/** Marks our own threads: this module may be loaded in another's. */
const mark = "bafflewright nest lane";

/** A lane in a thread of its own. This file is both ends of it: the thread starts here too. */
export function laneInThread<W extends keyof Works>(
  work: W,
  order: Parameters<Works[W]>[0],
  seed: number,
): Lane<Parameters<Rounds<W>>[0], ReturnType<Rounds<W>>> {
  const worker = new Worker(new URL(import.meta.url), { workerData: { mark, work, order, seed } });
  const run = (round: Parameters<Rounds<W>>[0]) =>
    new Promise<ReturnType<Rounds<W>>>((resolve, reject) => {
      worker.once("message", (found: ReturnType<Rounds<W>>) => {
        worker.off("error", reject);
        resolve(found);
      });
      worker.once("error", reject);
      worker.postMessage(round);
    });
  return { run, end: () => void worker.terminate() };
}

if (!isMainThread && parentPort !== null && workerData?.mark === mark) {
  const begun: { work: keyof Works; order: never; seed: number } = workerData;
  const runRound: (round: never) => unknown = works[begun.work](begun.order, begun.seed);
  const port = parentPort;
  port.on("message", (round) => port.postMessage(runRound(round as never)));
}
