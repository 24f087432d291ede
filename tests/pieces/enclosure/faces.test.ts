import { describe, expect, it } from "vitest";
import { place, turn } from "../../../src/geometry/frame.js";
import { faceFrame, faceNames, faceSize, faces, type Span } from "../../../src/pieces/enclosure/faces.js";

const block: Span = { min: [0, 0, 0], max: [500, 400, 150] };

describe("faces of a box", () => {
  it.each(faceNames)("%s looks out of the box, with its corner at the lower left", (name) => {
    const frame = faceFrame(name, block);
    const out = turn(frame.quat, [0, 0, 1]);
    const { axis, end } = faces[name];
    expect(out[axis]).toBeCloseTo(end === "max" ? 1 : -1, 12);
    const { width, height } = faceSize(name, block);
    for (const corner of [place(frame, [0, 0, 0]), place(frame, [width, height, 0])]) {
      corner.forEach((c, i) => {
        expect(c).toBeGreaterThanOrEqual(block.min[i]! - 1e-9);
        expect(c).toBeLessThanOrEqual(block.max[i]! + 1e-9);
      });
    }
  });

  it.each(faceNames)("%s names the neighbour at each of its edges", (name) => {
    const frame = faceFrame(name, block);
    const { width, height } = faceSize(name, block);
    const middles = [
      [width / 2, 0],
      [width, height / 2],
      [width / 2, height],
      [0, height / 2],
    ] as const;
    middles.forEach(([x, y], index) => {
      const neighbour = faces[faces[name].edges[index]!];
      const at = place(frame, [x, y, 0]);
      expect(at[neighbour.axis]).toBeCloseTo(block[neighbour.end][neighbour.axis], 9);
    });
  });
});
