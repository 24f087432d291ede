import { describe, expect, it } from "vitest";
import { type Label, overlap, placeLabels, type Segment } from "../../../src/drawing/dimensions/labels.js";
import type { Text } from "../../../src/drawing/page.js";
import { boxOf } from "../../../src/drawing/textBox.js";

const room = { min: { x: 0, y: 0 }, max: { x: 100, y: 100 } };
const label = (text: string, x: number, y: number): Label => ({ text, at: { x, y }, clear: 1, tip: "none" });
const texts = (labels: readonly Label[], lines: readonly Segment[] = [], taken = [] as ReturnType<typeof boxOf>[]) =>
  placeLabels(labels, room, taken, lines).filter((item): item is Text => item.kind === "text");

describe("labels in a view", () => {
  it("never lie over one another, however many want the same place", () => {
    const placed = texts(Array.from({ length: 12 }, (_, i) => label(`A${i}`, 50, 50))).map(boxOf);
    placed.forEach((a, i) => {
      for (const b of placed.slice(i + 1)) expect(overlap(a, b, 0)).toBe(false);
    });
  });

  it("keep off words that stand already, and inside the room", () => {
    const taken = [{ min: { x: 0, y: 0 }, max: { x: 100, y: 49 } }];
    const [placed] = texts([label("A", 50, 48)], [], taken).map(boxOf);
    expect(placed!.min.y).toBeGreaterThanOrEqual(49);
    const [corner] = texts([label("corner", 0, 0)]).map(boxOf);
    expect(corner!.min.x).toBeGreaterThanOrEqual(0);
    expect(corner!.min.y).toBeGreaterThanOrEqual(0);
  });

  it("would rather stand where no line runs", () => {
    const line: Segment = [
      { x: 0, y: 52 },
      { x: 100, y: 52 },
    ];
    const [placed] = texts([label("A", 50, 49)], [line]).map(boxOf);
    expect(placed!.max.y < 52 || placed!.min.y > 52).toBe(true);
  });

  it("point at their place with an arrow when asked to", () => {
    const items = placeLabels([{ ...label("R60", 50, 50), clear: 0, tip: "arrow", always: true }], room, [], []);
    const head = items.find((item) => item.kind === "fill" && item.grey === 0);
    expect(head?.kind === "fill" && head.paths[0]![0]).toMatchObject({ x: 50, y: 50 });
  });
});
