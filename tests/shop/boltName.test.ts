import { expect, it } from "vitest";
import { boltName } from "../../src/shop/boltName.js";

it("puts the length behind the thread, in the thread's own unit", () => {
  expect(boltName("M6 button black", "M6", 20)).toBe("M6 x 20 button black");
  expect(boltName("1/4-20 button", "1/4-20", 25.4)).toBe("1/4-20 x 1 button");
  expect(boltName("1/4-20 button", "1/4-20", 31.75)).toBe("1/4-20 x 1 1/4 button");
  expect(boltName("trim bolt", "M5", 16)).toBe("M5 x 16 trim bolt");
});
