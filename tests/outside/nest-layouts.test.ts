import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { type StripInstance, type StripPlacement, stripFaults } from "../../src/nest/shapes/stripFaults.js";

// Published layouts for strips, against our own checker. Sources stand in each file: A. M. Gomes and J. F. Oliveira,
// "Solving irregular strip packing problems by hybridising simulated annealing and linear programming", EJOR 171(3),
// 2006; J. A. Bennell and X. Song, "A beam search implementation for the irregular shape packing problem", Journal of
// Heuristics 16, 2010. The data (ESICUP, CC0) are not copied into this repository; NEST_DATA names the folder that has
// them, or they lie beside it. Without them these checks are skipped.

const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))));
const data = process.env["NEST_DATA"] ?? join(root, "..", "shared", "benchmarks", "irregular");
const layouts = join(data, "layouts");

type PublishedLayout = {
  readonly instance: string;
  readonly length: number;
  readonly placements: readonly StripPlacement[];
};

const read = <T>(path: string): T => JSON.parse(readFileSync(path, "utf8"));
const files = existsSync(layouts) ? readdirSync(layouts).filter((name) => name.endsWith(".json")) : [];

describe.skipIf(files.length === 0)("published layouts for strips", () => {
  for (const file of files) {
    const layout = read<PublishedLayout>(join(layouts, file));
    const instance = read<StripInstance>(join(data, `${layout.instance}.json`));

    it(`${layout.instance}: are sound`, () => {
      // lengths are stated to three decimals
      expect(stripFaults(instance, layout.placements, layout.length + 0.0005)).toEqual([]);
    });

    it(`${layout.instance}: are not, with any one part pushed by half a hundredth of its size into a neighbour`, () => {
      for (const [i] of layout.placements.entries()) {
        const faults = pushes(instance, layout.placements, i).map((pushed) =>
          stripFaults(instance, pushed, layout.length + instance.stripHeight).filter((fault) =>
            fault.endsWith("overlap"),
          ),
        );
        expect(faults.some((each) => each.length > 0)).toBe(true);
      }
    });
  }
});

/** The layout with one part pushed towards each other part near it, one after the other. */
function pushes(instance: StripInstance, placements: readonly StripPlacement[], i: number): StripPlacement[][] {
  const { polygon } = instance.items.find((item) => item.id === placements[i]!.id)!;
  const xs = polygon.map(([x]) => x);
  const ys = polygon.map(([, y]) => y);
  const by = 0.005 * Math.max(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys));
  return Array.from({ length: 8 }, (_, way) => {
    const angle = (way * Math.PI) / 4;
    return placements.map((one, k) =>
      k === i ? { ...one, x: one.x + by * Math.cos(angle), y: one.y + by * Math.sin(angle) } : one,
    );
  });
}
