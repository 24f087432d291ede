import { bench, describe } from "vitest";
import { programOf } from "../../src/machining/program.js";
import type { FeatureWork, PartProcess } from "../../src/model/build.js";
import { nestParts } from "../../src/nest/nest.js";
import { starterShop } from "../../src/shop/starter.js";
import { sampleJob } from "../fixtures/jobAndShop.js";
import { planOf } from "../process/benchParts.js";
import { benchParts } from "../property/machiningParts.js";

// The making of the program at 10, 100 and 1,000 parts, nested once outside the clock, the same parts in every run:
//   npx vitest bench --run tests/bench/machining.bench.ts

const shop = starterShop();
const job = { ...sampleJob({ unit: "mm" }), boards: { box: { stock: "mdf-18", measured: 18 } } };
const tools: Readonly<Record<string, string>> = { groove: "6 straight", pocket: "6 straight", hole: "6 straight" };

for (const count of [10, 100, 1000]) {
  const parts = benchParts(count);
  const process = {
    parts: parts.map(
      (part): PartProcess => ({
        part: part.id,
        method: "cnc",
        why: "timed",
        sides: ["face"],
        gap: 14,
        turns: [0, Math.PI / 2],
        work: part.features.map((feature): FeatureWork => {
          const cone = feature.cut.kind === "edge" && feature.cut.form === "chamfer";
          const tool = cone ? "45 chamfer" : (tools[feature.cut.kind] ?? "12 straight");
          return { feature: feature.id, by: "cnc", setup: 1, tool, why: "timed" };
        }),
      }),
    ),
    registration: [],
    hand: { profiles: [], jigs: [] },
  };
  const plan = planOf(parts);
  const layout = nestParts(job, shop, plan, process, { seed: 1, iterations: 1 }).value!;
  describe(`${count} parts`, () => {
    bench("the program", () => void programOf(job, shop, plan, process, layout), {
      time: 0,
      iterations: 2,
      warmupTime: 0,
      warmupIterations: 1,
    });
  });
}
