import { expect, it } from "vitest";
import { oracle } from "../geometry/support/oracle.js";
import { proveBooleans, proveOffsets, proveSharpOffsets } from "../geometry/support/proof.js";

// The whole proof, every question asked with chords of 1e-4. The default suite asks the first thousand.

it("moves 10,000 workshop shapes as the polygon library does, without one fault", () => {
  const { tried, faults } = proveOffsets(0, 10_000, oracle.chord);
  console.log(tried);
  expect(faults).toEqual([]);
});

it("joins, cuts and intersects 10,000 pairs as the polygon library does, without one fault", () => {
  const { tried, faults } = proveBooleans(0, 10_000, oracle.chord);
  console.log(tried);
  expect(faults).toEqual([]);
});

it("moves the straight-edged ones among 10,000 with sharp corners, without one fault", () => {
  const { tried, faults } = proveSharpOffsets(0, 10_000, oracle.chord);
  console.log(tried);
  expect(faults).toEqual([]);
});
