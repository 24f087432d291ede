import { describe, expect, it } from "vitest";
import { countsOf, inOrder, type Reading, reportOf } from "../../src/cli/report.js";
import { painter } from "../../src/cli/terminal.js";
import { type FindingDef, list, mm, raise, text } from "../../src/input/finding.js";

const unknownStock: FindingDef = {
  code: "unknown-stock",
  severity: "error",
  words: "no board called {found}",
  next: "pick one of these, or add {found} to the shop file",
  explain: "",
};
const thin: FindingDef = { ...unknownStock, code: "thin", severity: "warning", words: "{left} is left", next: "look" };
const lines = new Map([
  ["boards.box.stock", 14],
  ["pieces.ring.stands proud", 40],
]);
const reading: Reading = {
  defs: new Map([unknownStock, thin].map((def) => [def.code, def])),
  show: { unit: "mm" },
  locate: (at) => ({ file: at.file, line: lines.get(at.path.join(".")) ?? 1, column: 12 }),
};
const at = (...path: (string | number)[]) => [{ file: "dash.yaml", path }];
const stock = raise(unknownStock, {
  at: at("boards", "box", "stock"),
  facts: { found: text("mdf19"), allowed: list(["mdf-12", "mdf-18", "mdf-25"]) },
});
const proud = raise(thin, { at: at("pieces", "ring", "stands proud"), facts: { left: mm(2.25) } });
const placeless = raise(thin, { on: ["box/top"], facts: { left: mm(1) } });

describe("a report", () => {
  it("gives place, what was found, what is allowed and what to do, errors first, the counts last", () => {
    expect(reportOf([placeless, proud, stock], reading, painter(false))).toBe(
      [
        "error  dash.yaml:14:12  boards.box.stock  (unknown-stock)",
        "  found  no board called mdf19",
        "  use    mdf-12, mdf-18 or mdf-25",
        "  next   pick one of these, or add mdf19 to the shop file",
        "",
        "warning  dash.yaml:40:12  pieces.ring.stands proud  (thin)",
        "  found  2.3 mm is left",
        "  next   look",
        "",
        "warning  box/top  (thin)",
        "  found  1 mm is left",
        "  next   look",
        "",
        "1 error, 2 warnings",
      ].join("\n"),
    );
  });

  it("shows lengths as the job asks", () => {
    const inches: Reading = { ...reading, show: { unit: "in", denominator: 16 } };
    expect(reportOf([raise(thin, { facts: { left: mm(25.4) } })], inches, painter(false))).toContain('1" is left');
  });

  it("names further places on lines of their own", () => {
    const two = { ...stock, at: [...stock.at, ...proud.at] };
    expect(reportOf([two], reading, painter(false))).toContain("\n  see    dash.yaml:40:12  pieces.ring.stands proud");
  });

  it("is coloured only when it is asked to be", () => {
    expect(reportOf([stock], reading, painter(false))).not.toContain("\u001b");
    expect(reportOf([stock], reading, painter(true))).toContain("\u001b[1;31merror\u001b[0m");
  });

  it("says so when there is nothing to say", () => {
    expect(reportOf([], reading, painter(false))).toBe("no findings");
    expect(countsOf([stock, stock, placeless])).toBe("2 errors, 1 warning");
  });

  it("keeps the order of findings at one place", () => {
    const others = ["a", "b", "c"].map((found) => ({ ...stock, facts: { ...stock.facts, found: text(found) } }));
    expect(inOrder(others, reading)).toEqual(others);
  });
});
