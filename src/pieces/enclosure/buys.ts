import type { Around, Built } from "../../model/piece.js";
import { driverScrewsOf } from "../common/driverScrews.js";
import type { Thread } from "./blocks.js";
import type { EnclosureSpec } from "./schema.js";

/** What to buy for the box besides its boards. */
export function buysOf(
  spec: EnclosureSpec,
  around: Around,
  screws: number,
  screw: string | undefined,
  threads: readonly Thread[],
): Built["buys"] {
  const driver = spec.driver && around.job.drivers[spec.driver.is];
  const driverScrews = driver && driverScrewsOf(driver, around.shop);
  const inserts = [...new Set(threads.map((thread) => thread.ask.insert))].sort();
  return [
    ...(screw ? [{ item: screw, count: screws }] : []),
    ...inserts.map((insert) => ({
      item: `${insert} threaded insert`,
      count: threads.filter((thread) => thread.ask.insert === insert).length,
    })),
    ...(driver ? [{ item: driver.name ?? `driver ${spec.driver?.is}`, count: 1 }] : []),
    ...(driverScrews ? [{ item: `${driverScrews.name} screw`, count: driverScrews.points.length }] : []),
    ...(spec.terminal ? [{ item: terminalName(spec.terminal.hole), count: 1 }] : []),
    ...(["straps", "bolts", "brackets"] as const).flatMap((kind) => {
      const held = spec["held by"]?.[kind];
      return held ? [{ item: `hold-down ${kind.slice(0, -1)}, rated for the box`, count: held }] : [];
    }),
  ];
}

function terminalName(hole: number | readonly [number, number]): string {
  return typeof hole === "number" ? `terminal for a ${hole} mm hole` : `terminal for a ${hole[0]} x ${hole[1]} mm hole`;
}
