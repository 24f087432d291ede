import { z } from "zod";
import { identity } from "../../src/geometry/frame.js";
import { below } from "../../src/input/finding.js";
import { pieceId } from "../../src/model/ids.js";
import type { Job } from "../../src/model/job.js";
import type { Built, PieceKind } from "../../src/model/piece.js";
import { sampleJob, sampleShop } from "../fixtures/jobAndShop.js";

/** A piece of no shape: a volume that grows with its size, and asks that grow with the size of what it leans on. */
export type Toy = {
  readonly kind: "toy";
  readonly leans?: readonly string[];
  readonly wantedL?: number;
  /** Litres for a size, mm, and what the asks of others take. */
  readonly litres?: (size: number, asks: number) => number;
  /** How many things it asks of each piece it leans on, by that piece's offered size. */
  readonly asks?: (size: number) => number;
  readonly mute?: boolean;
};

const empty: Built = { parts: [], joints: [], axes: [], mounts: [], air: [], steps: [], buys: [] };

export const toyLimits = { min: 100, max: 900, step: 0.5, aim: "volume" } as const;

/** The toy offers its size as the height of a plane, so that others can read it. */
export const toy: PieceKind<Toy> = {
  kind: "toy",
  schema: () => z.any(),
  findings: [],
  refs: (spec, at) => (spec.leans ?? []).map((name, i) => ({ kind: "piece", name, at: below(at, "leans", i) })),
  free: (spec, around) =>
    spec.wantedL === undefined ? undefined : { from: below(around.origin, "size"), ...toyLimits },
  offer: (spec, size) => ({
    value: spec.mute
      ? undefined
      : { stands: identity, planes: { top: { origin: [0, 0, size], quat: [0, 0, 0, 1] } }, outlines: {}, drivers: {} },
    findings: [],
  }),
  ask: (spec, _size, around) => ({
    value: (spec.leans ?? []).flatMap((name) => {
      const height = around.offers.get(pieceId(name))?.planes["top"]?.origin[2] ?? 0;
      return Array.from({ length: spec.asks?.(height) ?? 0 }, () => ({
        kind: "lift driver" as const,
        of: pieceId(name),
        by: around.id,
        from: [],
        driver: "driver",
        seated: "toy:seated",
        lift: 1,
      }));
    }),
    findings: [],
  }),
  miss: (spec, size, around) => (spec.wantedL ?? 0) - (spec.litres?.(size, around.asks.length) ?? 0),
  build: () => ({ value: empty, findings: [] }),
};

/** A job of toys, by name. */
export function toyJob(pieces: Readonly<Record<string, Omit<Toy, "kind">>>): Job {
  const specs = Object.entries(pieces).map(([name, toySpec]) => [name, { kind: "toy", ...toySpec }]);
  return { ...sampleJob({ unit: "mm" }), pieces: Object.fromEntries(specs) };
}

export const toyShop = sampleShop;
