import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { comments, message } from "../../../src/export/gcode/comment.js";

describe("comments of a program", () => {
  it("keep letters, digits and plain signs, and write others without their marks", () => {
    expect(comments("part", "Türe 1/2, groß ⌀ 50 × 3")).toEqual(["(part Ture 1/2, gross dia 50 x 3)"]);
  });

  it("let no name end the comment, start a line or give a command", () => {
    expect(comments("part", "top) M3 S9999 (\nG0 Z-50\r% ; ~ ! ? $H \u0018 \u0085")).toEqual([
      "(part top M3 S9999 G0 Z-50 H)",
    ]);
    expect(message("top) M3\nM30")).toBe("(MSG, top M3 M30)");
  });

  it("stay one comment a line, in plain signs, whatever a name holds", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 400 }), (name) => {
        for (const line of [...comments("part", name), message(name)]) {
          expect(line).toMatch(/^\([A-Za-z0-9 .,:+=/'-]*\)$/);
          expect(line.length).toBeLessThanOrEqual(100);
        }
      }),
      { seed: 4, numRuns: 500 },
    );
  });

  it("break long sentences between words and open each line with a word of ours", () => {
    const lines = comments("caution", "word ".repeat(60));
    expect(lines.length).toBeGreaterThan(2);
    for (const line of lines) expect(line).toMatch(/^\(caution (word )*word\)$/);
  });
});
