import type { Point } from "../geometry/profile.js";
import type { PartId } from "../model/ids.js";
import type { WorkKind } from "../model/program.js";
import type { Cut, Tool } from "./bench.js";
import { type Stop, shortWay } from "./route.js";

/** What the order needs to know of a part: how deep it lies within openings of others, and whether it is small. */
export type Standing = { readonly level: number; readonly small: boolean };

/**
 * The order of the work on a sheet:
 *
 * 1. Pins, drilling, sinking, then all that does not go through, while the sheet still lies firm.
 * 2. Openings, then outlines; parts that lie in openings of others before those.
 * 3. In each step one tool after the other, beginning with the one in the spindle and ending with the one that the next
 *    step takes; small parts first, before the sheet around them is weak; short ways between.
 */
export function inOrder(cuts: readonly Cut[], standing: ReadonlyMap<PartId, Standing>): readonly Cut[] {
  const deepest = Math.max(0, ...[...standing.values()].map(({ level }) => level));
  const stepOf = ({ operation }: Cut) =>
    stepOfWork(operation.kind, deepest - (standing.get(operation.part!)?.level ?? 0));
  const steps = [...groups(cuts, stepOf)].sort(([a], [b]) => a - b).map(([, group]) => group);
  const ordered: Cut[] = [];
  let at: Point = { x: 0, y: 0 };
  steps.forEach((step, i) => {
    const next = new Set(steps[i + 1]?.map(({ tool }) => tool.name) ?? []);
    for (const tool of toolOrder(step, ordered[ordered.length - 1]?.tool, next)) {
      const own = step.filter((cut) => cut.tool.name === tool);
      for (const set of [own.filter(isSmall), own.filter((cut) => !isSmall(cut))]) {
        const stops = set.map(stopOf);
        for (const k of shortWay(stops, at)) {
          ordered.push(set[k]!);
          at = stops[k]!.end;
        }
      }
    }
  });
  return ordered;

  function isSmall({ operation }: Cut): boolean {
    const throughAll = operation.kind === "inside" || operation.kind === "outside";
    return throughAll && (standing.get(operation.part!)?.small ?? false);
  }
}

const firm: readonly WorkKind[] = ["pin", "drill", "sink", "pocket"];

/** Work that leaves the sheet firm has no order among itself beyond drilling before sinking. */
function stepOfWork(kind: WorkKind, outward: number): number {
  if (kind === "inside") return firm.length + 2 * outward;
  if (kind === "outside") return firm.length + 2 * outward + 1;
  const step = firm.indexOf(kind);
  return step < 0 ? firm.length - 1 : step;
}

/** The tools of a step: the one in the spindle first, one that is wanted next last, between them in the order of work. */
function toolOrder(step: readonly Cut[], inSpindle: Tool | undefined, next: ReadonlySet<string>): readonly string[] {
  const names = [...new Set(step.map(({ tool }) => tool.name))];
  const first = names.filter((name) => name === inSpindle?.name);
  const last = names.filter((name) => next.has(name) && !first.includes(name)).slice(0, 1);
  return [...first, ...names.filter((name) => !first.includes(name) && !last.includes(name)), ...last];
}

function stopOf({ operation: { moves } }: Cut): Stop {
  const [first, last] = [moves[0]!.to, moves[moves.length - 1]!.to];
  return { start: { x: first[0], y: first[1] }, end: { x: last[0], y: last[1] } };
}

function groups<T, K>(items: readonly T[], keyOf: (item: T) => K): Map<K, T[]> {
  const found = new Map<K, T[]>();
  for (const item of items) {
    const key = keyOf(item);
    const group = found.get(key);
    if (group) group.push(item);
    else found.set(key, [item]);
  }
  return found;
}
