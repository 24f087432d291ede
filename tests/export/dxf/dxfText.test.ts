import { describe, expect, it } from "vitest";
import { dxfText } from "../../../src/export/dxf/dxfText.js";

describe("text in a DXF file", () => {
  it.each([
    ["a line break cannot end the value", "lid\r\n  0\r\nEOF", "lid 0 EOF"],
    ["control codes of TEXT are broken up", "50%%c and 100%", "50% %c and 100%"],
    ["a long run of them too", "%%%%d", "% % % %d"],
    ["so are the format's own escapes", "\\U+0041 \\M+1234 C:\\Users", "\\ U+0041 \\ M+1234 C:\\Users"],
    ["and caret codes", "^J", "^ J"],
    ["our own signs become the format's", "⌀9, 45°, 6 × 2", "%%c9, 45%%d, 6 x 2"],
    ["accents fall off", "Größe é Ångström Łódź", "Grosse e Angstrom Lodz"],
    ["other letters are written by number", "Ωλ", "\\U+03A9\\U+03BB"],
    ["what has no four-digit number is a question mark", "a😀b\ud800c", "a?b?c"],
    ["marks that turn the reading direction go", "a\u202eb\u200fc", "a b c"],
  ])("%s", (_, text, written) => {
    expect(dxfText(text).replace(/ +/g, " ")).toBe(written);
  });

  it("is cut before 250 bytes, never within a sign", () => {
    const written = dxfText("Ω".repeat(100));
    expect(written.length).toBeLessThanOrEqual(250);
    expect(written).toMatch(/^(\\U\+03A9)+$/);
  });
});
