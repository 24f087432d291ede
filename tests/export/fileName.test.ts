import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { safeFileName, uniqueFileNames } from "../../src/export/fileName.js";

describe("names of files", () => {
  it("keeps letters and digits and joins the rest with dashes", () => {
    expect(safeFileName("box/block.2")).toBe("box-block-2");
    expect(safeFileName("Träger links")).toBe("Träger-links");
    expect(safeFileName("короб/верх")).toBe("короб-верх");
  });

  it("never names a device of Windows", () => {
    for (const name of ["CON", "nul", "Aux", "com1", "LPT9", "com¹"]) {
      expect(safeFileName(name)).toMatch(/-$/);
    }
  });

  it("gives a name even to what holds no letter", () => {
    for (const name of ["", "...", "../..", "🚗🚗", "\u202E", "?*<>|"]) expect(safeFileName(name)).toBe("unnamed");
  });

  it("leaves no folder, dot, control or direction mark in any name, and never more than 255 bytes with a suffix", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 120 }), (text) => {
        const name = safeFileName(text);
        expect(name).toMatch(/^[\p{L}\p{M}\p{N}_-]+$/u);
        expect(Buffer.byteLength(`${name}-999.svg`)).toBeLessThanOrEqual(255);
      }),
      { seed: 7, numRuns: 100 },
    );
  });

  it("parts names that differ only in case or in what was replaced", () => {
    expect(uniqueFileNames(["top", "Top", "a/b", "a.b", "Straße", "STRASSE"])).toEqual([
      "top",
      "Top-2",
      "a-b",
      "a-b-2",
      "Straße",
      "STRASSE-2",
    ]);
  });

  it("does not step on a name that already carries a number", () => {
    const names = uniqueFileNames(["a", "A", "a-2", "a"]);
    expect(new Set(names).size).toBe(4);
  });
});
