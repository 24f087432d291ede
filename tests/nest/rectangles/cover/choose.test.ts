import { describe, expect, it } from "vitest";
import { randomFrom } from "../../../../src/nest/random.js";
import { choose } from "../../../../src/nest/rectangles/cover/choose.js";
import type { Pattern } from "../../../../src/nest/rectangles/cover/pool.js";
import { emptySheet } from "../../../../src/nest/rectangles/cutTree.js";

const pattern = (...kinds: number[]): Pattern => ({ tree: emptySheet(1, 1), kinds });

describe("choosing patterns", () => {
  it("gives the fullest back where two others do better together", () => {
    // the first holds most and leaves 4 and 5, which lie together on none
    const patterns = [pattern(0, 1, 2, 3), pattern(0, 1, 4), pattern(2, 3, 5)];
    const { chosen, lost } = choose(patterns, [1, 1, 1, 1, 1, 1], [1, 1, 1, 1, 1, 1], 2, 50, randomFrom(1));
    expect(lost).toBe(0);
    expect(chosen).toEqual(expect.arrayContaining([patterns[1], patterns[2]]));
  });

  it("takes one pattern as often as what is in it is wanted", () => {
    const { chosen, missing } = choose([pattern(0, 0, 1)], [6, 3], [0.4, 0.2], 3, 10, randomFrom(1));
    expect(chosen).toHaveLength(3);
    expect(missing).toEqual([0, 0]);
  });

  it("takes no more than it may, and says what is missing", () => {
    const { chosen, missing } = choose([pattern(0), pattern(1)], [1, 1], [0.9, 0.8], 1, 10, randomFrom(1));
    expect(chosen).toHaveLength(1);
    expect(missing).toEqual([0, 1]);
  });

  it("counts nothing twice that lies in a pattern more often than it is wanted", () => {
    // once 0 is laid, three more of it are worth less than the one 1
    const patterns = [pattern(0, 0, 0, 0), pattern(0, 1)];
    const { chosen } = choose(patterns, [1, 1], [0.5, 0.3], 1, 0, randomFrom(1));
    expect(chosen).toEqual([patterns[1]]);
  });
});
