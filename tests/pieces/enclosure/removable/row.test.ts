import { describe, expect, it } from "vitest";
import { alongRow } from "../../../../src/pieces/enclosure/removable/row.js";

describe("a row of bolts", () => {
  it("begins and ends 25 in, and is spaced evenly at no more than asked", () => {
    expect(alongRow(350, 150, 13.5)).toEqual([25, 125 + 50, 325]);
    expect(alongRow(350.2, 150, 13.5)).toHaveLength(4);
  });

  it("has one bolt in its middle where two have no room, and none where its insert has none", () => {
    expect(alongRow(74, 150, 13.5)).toEqual([37]);
    expect(alongRow(26.9, 150, 13.5)).toEqual([]);
  });
});
