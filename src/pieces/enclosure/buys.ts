import type { Built } from "../../model/piece.js";
import type { Thread } from "./backing/blocks.js";
import type { JointScrew } from "./joints/jointScrews.js";
import type { Seat } from "./mounting/seats.js";
import { terminalsOf } from "./mounting/terminal.js";
import type { EnclosureSpec } from "./schema.js";

/** What to buy for the box besides its boards. */
export function buysOf(
  spec: EnclosureSpec,
  seats: readonly Seat[],
  screws: readonly JointScrew[],
  threads: readonly Thread[],
  rounds: readonly string[],
): Built["buys"] {
  return [
    ...counted(screws.map(({ choice }) => choice.name)),
    ...counted(threads.map((thread) => `${thread.ask.insert} threaded insert`).sort()),
    ...counted(seats.map(({ driver, is }) => driver.name ?? `driver ${is}`)),
    ...counted(seats.flatMap(({ screws: own }) => own?.points.map(() => `${own.name} screw`) ?? [])),
    ...counted(rounds),
    ...counted(terminalsOf(spec).map((terminal) => terminalName(terminal.spec.hole))),
    ...(["straps", "bolts", "brackets"] as const).flatMap((kind) => {
      const held = spec["held by"]?.[kind];
      return held ? [{ item: `hold-down ${kind.slice(0, -1)}, rated for the box`, count: held }] : [];
    }),
  ];
}

function terminalName(hole: number | readonly [number, number]): string {
  return typeof hole === "number" ? `terminal for a ${hole} mm hole` : `terminal for a ${hole[0]} x ${hole[1]} mm hole`;
}

/** Things of one name, with how many there are, in the order in which each first came. */
function counted(items: readonly string[]): readonly { readonly item: string; readonly count: number }[] {
  return [...new Set(items)].map((item) => ({ item, count: items.filter((other) => other === item).length }));
}
