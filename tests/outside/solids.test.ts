import { describe, expect, it } from "vitest";
import { identity } from "../../src/geometry/frame.js";
import { polygon } from "../../src/geometry/shapes.js";
import { loadSolids } from "../../src/geometry/solids.js";
import { fitsThrough } from "../../src/geometry/throughOpening.js";

const solids = await loadSolids();

describe("solids against classical results", () => {
  it("two equal round bars crossing at right angles share 16 r3 / 3 (Archimedes, The Method; from memory)", () => {
    const r = 60;
    const across = { origin: [0, 0, 0], quat: [Math.SQRT1_2, 0, 0, Math.SQRT1_2] } as const;
    const shared = solids.within(() =>
      solids.volumeOf(
        solids.intersection(solids.cylinder(2 * r, -100, 100, identity), solids.cylinder(2 * r, -100, 100, across)),
      ),
    );
    expect(Math.abs(shared / ((16 * r ** 3) / 3) - 1)).toBeLessThan(5e-4);
  });

  it("a cone is a third of the cylinder around it (Euclid XII.10)", () => {
    const [cone, bar] = solids.within(() => [
      solids.volumeOf(solids.cone(200, 0.0001, 0, 90, identity)),
      solids.volumeOf(solids.cylinder(200, 0, 90, identity)),
    ]);
    expect(cone! / bar!).toBeCloseTo(1 / 3, 6);
  });

  it("a regular six-sided prism holds 3 sqrt(3) / 2 a2 h (mensuration, any handbook)", () => {
    const corners = Array.from({ length: 6 }, (_, i) => ({
      x: 80 * Math.cos((i * Math.PI) / 3),
      y: 80 * Math.sin((i * Math.PI) / 3),
    }));
    const volume = solids.within(() =>
      solids.volumeOf(solids.extrude({ outer: polygon(corners, "side"), holes: [] }, 25, identity)),
    );
    expect(volume).toBeCloseTo(((3 * Math.sqrt(3)) / 2) * 80 ** 2 * 25, 6);
  });
});

describe("a rectangle through an opening, against trying every turn", () => {
  /** Its shadow on both sides of the opening, at steps of a twentieth of a degree. */
  function fitsSomehow(p: number, q: number, width: number, height: number, spare: number): boolean {
    for (let i = 0; i <= 1800; i++) {
      const angle = (i * Math.PI) / 3600;
      const [c, s] = [Math.cos(angle), Math.sin(angle)];
      if (p * c + q * s <= width + spare && p * s + q * c <= height + spare) return true;
    }
    return false;
  }

  it("agrees over a grid of sizes (condition of W. B. Carver, 1957)", () => {
    for (let p = 40; p <= 1300; p += 63) {
      for (let q = 10; q <= p; q += 47) {
        const fits = fitsThrough(p, q, 980, 690);
        expect(fitsThrough(q, p, 690, 980)).toBe(fits);
        // the steps miss the best turn by a little, so the trial gets 1 mm to spare one way or the other
        if (fits) expect(fitsSomehow(p, q, 980, 690, 1)).toBe(true);
        else expect(fitsSomehow(p, q, 980, 690, -1)).toBe(false);
      }
    }
  });

  it("knows a board longer than the opening is wide that goes through aslant", () => {
    // the opening's diagonal is 1198.5
    expect(fitsThrough(1150, 12, 980, 690)).toBe(true);
    expect(fitsThrough(1199, 12, 980, 690)).toBe(false);
    expect(fitsThrough(981, 689, 980, 690)).toBe(false);
  });
});
