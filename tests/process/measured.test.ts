import { describe, expect, it } from "vitest";
import { wordsOf } from "../../src/input/words.js";
import type { Layout } from "../../src/model/build.js";
import { sheetsMeasured, sheetThicker } from "../../src/process/measured.js";
import { sampleJob } from "../fixtures/jobAndShop.js";
import { panel, planOf } from "./benchParts.js";

const job = sampleJob({ unit: "mm" });
const part = panel();
const laid = (measured?: number): Layout => ({
  of: "",
  left: [],
  bounds: [],
  sheets: [
    {
      sheet: "box 1",
      board: part.board,
      length: 2440,
      width: 1220,
      trim: 5,
      ...(measured === undefined ? {} : { measured }),
      placed: [{ part: part.id, x: 5, y: 5, turn: 0, backUp: false }],
    },
  ],
});
const told = (measured?: number) => sheetsMeasured(job, planOf([part]), laid(measured));

describe("a sheet that measures another thickness than its parts are made for", () => {
  it("is told before anything is cut: 18.4 for parts made for 18.0, with the skin that cuts through it would leave", () => {
    const [finding] = told(18.4);
    expect(finding).toMatchObject({ code: "sheet-thicker", severity: "error", on: ["box 1"] });
    // 0.4 thicker, and 0.3 of it the cutter goes into the spoilboard anyway
    expect(finding!.facts["skin"]!.value).toBeCloseTo(0.1, 9);
    const { words, next } = wordsOf(finding!, sheetThicker, { unit: "mm" });
    expect(words).toContain("sheet box 1 measures 18.4 mm, 0.4 mm more than the 18 mm");
    expect(words).toContain("a skin of 0.1 mm");
    expect(next).toContain("measured: 18.4 mm");
  });

  it("leaves no skin where the cutter reaches through all the same, though the joints do not fit", () => {
    const [finding] = told(18.25);
    expect(finding!.facts["skin"]).toBeUndefined();
    expect(wordsOf(finding!, sheetThicker, { unit: "mm" }).words).not.toContain("skin");
  });

  it("is told where it is thinner too, and not where nobody measured or joints still fit", () => {
    expect(told(17.7).map(({ code }) => code)).toEqual(["sheet-thinner"]);
    expect([told(), told(18.2), told(17.8)]).toEqual([[], [], []]);
  });
});
