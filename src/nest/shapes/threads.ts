import { isMainThread, parentPort, Worker, workerData } from "node:worker_threads";
import { type Lane, type Round, roundsOf } from "./lanes.js";
import type { StripLayout, StripOrder } from "./strip.js";

/** A lane in a thread of its own. This file is both ends of it: the thread starts here too. */
export function laneInThread(order: StripOrder, seed: number): Lane {
  const worker = new Worker(new URL(import.meta.url), { workerData: { order, seed } });
  const run = (round: Round) =>
    new Promise<StripLayout>((resolve, reject) => {
      worker.once("message", (layout: StripLayout) => {
        worker.off("error", reject);
        resolve(layout);
      });
      worker.once("error", reject);
      worker.postMessage(round);
    });
  return { run, end: () => void worker.terminate() };
}

if (!isMainThread && parentPort !== null) {
  const { order, seed }: { order: StripOrder; seed: number } = workerData;
  const runRound = roundsOf(order, seed);
  const port = parentPort;
  port.on("message", (round: Round) => port.postMessage(runRound(round)));
}
