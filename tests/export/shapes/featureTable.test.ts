import { describe, expect, it } from "vitest";
import { featureRows } from "../../../src/export/shapes/featureTable.js";
import { featureId } from "../../../src/model/ids.js";
import type { Feature, Part } from "../../../src/model/part.js";
import { sampleBuild, samplePart } from "../../fixtures/build.js";

const { process, plan } = sampleBuild();
const rows = (part: Part, unit: "mm" | "in" = "mm") =>
  featureRows(
    part,
    process.parts.find((each) => each.part === part.id),
    plan.built.axes,
    unit === "mm" ? { unit } : { unit, denominator: 16 },
  ).map((row) => row.join(" / "));

function withFeatures(part: Part, features: readonly Feature[]): Part {
  return { ...part, features: [...part.features, ...features] };
}

function holeIn(part: Part, name: string, more: Partial<Feature>): Feature {
  const cut = { kind: "hole", at: { x: 50, y: 50 }, d: 2.3, depth: 33 } as const;
  return { id: featureId(part.id, name), from: [], side: "face", cut, stage: "sheet", ...more };
}

describe("the table beside a drawing", () => {
  it("has a row for features that are cut alike, with depth, side and tool", () => {
    expect(rows(samplePart("B1"))).toEqual([
      "outline / OUTLINE /  / through 18.2 /  / straight-6 / ",
      "opening.driver / OPENING / ⌀233 / through 18.2 / face / straight-6 / for driver ten",
      "pilot.1 to 8 / HOLE / 8 x ⌀2.3 / through 18.2 / face / drill-2.3 / for driver ten",
      "insert.1 to 6 / HOLE-BLIND-FACE / 6 x ⌀9 / 14 / face / straight-6 / threaded insert for M6 x 25 button black",
      "screw.1 to 4 / HOLE / 4 x ⌀4.5 / through 18.2 / face / drill-4.5 / clearance for 4.0 x 50 screw",
    ]);
  });

  it("gives depths in millimetres too where the job shows inches", () => {
    expect(rows(samplePart("P1"), "in").join("\n")).toContain('GROOVE-BACK / 4 mm (5/32") wide / 2 mm (5/64") / back');
  });

  it("keeps holes into different edges apart, each with its places", () => {
    const wall = samplePart("B3");
    const bottom = holeIn(wall, "pilot.3", {
      side: { edge: "bottom" },
      cut: { kind: "hole", at: { x: 210, y: 0 }, d: 2.3, depth: 33, below: 9.1 },
    });
    const told = rows(withFeatures(wall, [bottom])).join("\n");
    expect(told).toContain("pilot.1, pilot.2 / not drawn / 2 x ⌀2.3 / 33 / edge top / drill-2.3");
    expect(told).toContain("pilot.3 / not drawn / ⌀2.3 / 33 / edge bottom");
    expect(told).toContain("at (105, 113.6) (315, 113.6)");
    expect(told).toContain("at (210, 0)");
  });

  it("tells of countersinks and counterbores, and names the layer of their mouth", () => {
    const board = samplePart("B2");
    const sunk = holeIn(board, "screw.1", {
      cut: {
        kind: "hole",
        at: { x: 50, y: 50 },
        d: 4.5,
        depth: "through",
        sink: { d: 8, depth: 1.75, angle: Math.PI / 2 },
      },
    });
    const bored = holeIn(board, "bolt.1", {
      side: "back",
      cut: { kind: "hole", at: { x: 90, y: 50 }, d: 7, depth: "through", sink: { d: 11, depth: 6.5, angle: 0 } },
    });
    const told = rows(withFeatures(board, [sunk, bored])).join("\n");
    expect(told).toContain("screw.1 / HOLE, SINK-FACE / ⌀4.5 / through 18.2 / face /  / countersunk ⌀8 at 90°");
    expect(told).toContain("bolt.1 / HOLE, SINK-BACK / ⌀7 / through 18.2 / back /  / counterbored ⌀11, 6.5 deep");
  });

  it("says of bench work that the machine must leave it", () => {
    expect(rows(samplePart("R1")).join("\n")).toContain("chamfer.outside / EDGE-WORK-FACE-LATER / 8 × 45° / 8 / face");
  });
});
