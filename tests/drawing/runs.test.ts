import { expect, it } from "vitest";
import { edgeName } from "../../src/drawing/edgeName.js";
import { partName } from "../../src/drawing/partName.js";
import { inRuns } from "../../src/drawing/runs.js";
import { pieceId } from "../../src/model/ids.js";

it("names that count up are told by the first and the last, two alone by themselves", () => {
  expect(inRuns(["7", "8", "9", "10", "11", "12"])).toBe("7 to 12");
  expect(inRuns(["5", "6"])).toBe("5, 6");
  expect(inRuns(["B3", "B4", "B5", "H1", "pilot.1"])).toBe("B3 to 5, H1, pilot.1");
  expect(inRuns(["outline", "notch"])).toBe("outline, notch");
});

it("edges and parts are named in words, without the dots and bars of their ids", () => {
  expect(edgeName("notch.auxiliary battery")).toBe("notch auxiliary battery");
  expect(edgeName("front|left")).toBe("front/left");
  expect(partName({ piece: pieceId("box"), role: "block.2" })).toBe("box block 2");
  expect(partName({ piece: pieceId("ring"), role: "ring" })).toBe("ring");
});
