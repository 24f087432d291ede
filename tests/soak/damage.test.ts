import { expect, it } from "vitest";
import { runDamaged, tableOf } from "../damage/run.js";

it("gives findings or files for each of 1000 damaged copies of the starter, never a throw, never a hang", async () => {
  const copies = await runDamaged("templates/estate-cargo.yaml", 1000, 1000, true);
  console.log(tableOf(copies));
  expect(copies.filter(({ stack }) => stack !== undefined)).toEqual([]);
  expect(copies).toHaveLength(1000);
  expect(copies.filter(({ valid }) => valid).length).toBeGreaterThanOrEqual(334);
});
