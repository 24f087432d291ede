import { expect, it } from "vitest";
import { runDamaged, tableOf } from "../damage/run.js";

it("gives a finding or a plan for each of 100 damaged copies of the starter, never a throw, never a hang", async () => {
  const copies = await runDamaged("templates/estate-cargo.yaml", 1, 100, false);
  console.log(tableOf(copies));
  expect(copies.filter(({ stack }) => stack !== undefined)).toEqual([]);
  expect(copies).toHaveLength(100);
  expect(copies.filter(({ valid }) => valid).length).toBeGreaterThanOrEqual(34);
}, 240_000);
