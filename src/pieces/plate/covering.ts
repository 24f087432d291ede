import type { Covering, Job } from "../../model/job.js";
import type { Edge } from "../../model/part.js";
import type { Shop } from "../../model/shop.js";
import { rules } from "../../shop/rules.js";
import type { PlateSpec } from "./schema.js";

/** The covering of a plate, with what its shop row adds. */
export type PlateCovering = Covering & {
  readonly name: string;
  readonly wrap: number;
  readonly back: "groove" | "rebate" | "none";
  readonly reveal: number;
  /** Whether it goes over an edge of this name: over a joining arc "a|b" where it goes over either side. */
  readonly over: (edge: string) => boolean;
};

export function coveringOf(spec: PlateSpec, job: Job, shop: Shop): PlateCovering | undefined {
  const covered = spec.covered;
  const covering = covered && job.coverings[covered.with];
  if (covered === undefined || covering === undefined) return undefined;
  const stock = shop.coverings[covering.stock];
  const edges = covered.edges ?? "all";
  const named = (side: string) => edges === "all" || edges.includes(side) || edges.includes(side.split(".")[0] ?? side);
  return {
    ...covering,
    name: covered.with,
    wrap: covered.wrap ?? stock?.wrap ?? rules.wrap.value,
    back: covered.back ?? "groove",
    reveal: stock?.reveal ?? rules.reveal.value,
    over: (edge) => edge.split("|").some((side) => named(side) && spec.sides?.[side]?.bare !== true),
  };
}

/** What the covering adds to an edge of this name, mm: nothing where it is bare. */
export function addedAt(edge: string, covering: PlateCovering | undefined): number {
  return covering?.over(edge) ? covering.thick : 0;
}

export function edgeOf(edge: string, covering: PlateCovering | undefined, against: Edge["against"]): Edge {
  const finish: Edge["finish"] = covering?.over(edge)
    ? {
        kind: "wrapped",
        covering: covering.name,
        loose: covering.thick,
        clamped: covering.clamped,
        wrap: covering.wrap,
      }
    : { kind: "bare" };
  return { bevel: 0, flush: 0, finish, ...(against ? { against } : {}) };
}
