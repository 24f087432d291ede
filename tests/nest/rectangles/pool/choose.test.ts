import { describe, expect, it } from "vitest";
import { randomFrom } from "../../../../src/nest/random.js";
import { emptySheet } from "../../../../src/nest/rectangles/cutTree.js";
import { choose } from "../../../../src/nest/rectangles/pool/choose.js";
import type { Found } from "../../../../src/nest/rectangles/pool/found.js";

const found = (...kinds: number[]): Found => ({
  tree: emptySheet(1, 1),
  kinds,
});

describe("choosing sheets", () => {
  it("gives the fullest back where two others do better together", () => {
    // the first holds most and leaves 4 and 5, which lie together on none
    const finds = [found(0, 1, 2, 3), found(0, 1, 4), found(2, 3, 5)];
    const { chosen, lost } = choose(finds, [1, 1, 1, 1, 1, 1], [1, 1, 1, 1, 1, 1], 2, 50, randomFrom(1));
    expect(lost).toBe(0);
    expect(chosen).toEqual(expect.arrayContaining([finds[1], finds[2]]));
  });

  it("takes one as often as what is in it is wanted", () => {
    const { chosen, missing } = choose([found(0, 0, 1)], [6, 3], [0.4, 0.2], 3, 10, randomFrom(1));
    expect(chosen).toHaveLength(3);
    expect(missing).toEqual([0, 0]);
  });

  it("takes no more than it may, and says what is missing", () => {
    const { chosen, missing } = choose([found(0), found(1)], [1, 1], [0.9, 0.8], 1, 10, randomFrom(1));
    expect(chosen).toHaveLength(1);
    expect(missing).toEqual([0, 1]);
  });

  it("counts nothing twice that lies in one more often than it is wanted", () => {
    // once 0 is laid, three more of it are worth less than the one 1
    const finds = [found(0, 0, 0, 0), found(0, 1)];
    const { chosen } = choose(finds, [1, 1], [0.5, 0.3], 1, 0, randomFrom(1));
    expect(chosen).toEqual([finds[1]]);
  });
});
