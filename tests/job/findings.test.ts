import { describe, expect, it } from "vitest";
import type { FindingDef } from "../../src/input/finding.js";
import { inputFindings } from "../../src/input/inputFindings.js";
import { textFileFindings } from "../../src/input/textFile.js";
import { wordsOf } from "../../src/input/words.js";
import { acceptedUnreadable } from "../../src/job/acceptedLayout.js";
import { unknownCovering, withShop } from "../../src/job/coverings.js";
import { jobFindings } from "../../src/job/findings.js";
import { parseJob } from "../../src/job/parse.js";
import { starterShop } from "../../src/shop/starter.js";
import { jobText, type sound, testKinds } from "./jobText.js";

type Job = Partial<typeof sound> | string;

const strip = (keys: string) => ({ pieces: `pieces: {rail: {kind: strip, board: box, wide: 60, ${keys}}}` });
const driver = (keys: string) => ({ drivers: `drivers: {ten: {cut-out: 233, ${keys}}}` });
const corners = (list: string) => ({ outline: `  outline: ${list}` });
const block = (to: string) => ({ space: `  obstacles: {battery: {from: [0, 0, 0], to: ${to}}}` });
const deep = (levels: number) => `${"[".repeat(levels)}${"]".repeat(levels)}`;
const bomb = (rows: number) =>
  Array.from({ length: rows }, (_, i) => `k${i}: &k${i} [${Array(10).fill(i === 0 ? "1" : `*k${i - 1}`)}]`).join("\n");

/** For each code a job that raises it, and one just short of it. */
const cases: Readonly<Record<string, readonly [raises: Job, justShort: Job]>> = {
  "empty-file": ["# nothing yet\n", {}],
  "not-a-map": ["- job\n", {}],
  "not-plain-text": [{ title: "title: a\u0007b" }, { title: "title: a\u00e4b" }],
  "duplicate-key": [{ title: "title: a\ntitle: b" }, { title: "title: a\nreference: b" }],
  "forbidden-key": [{ more: "constructor: 1" }, {}],
  "tab-indent": [{ outline: "\toutline: []" }, {}],
  "unknown-alias": [{ title: "title: *name" }, { title: "title: '*name'" }],
  "too-much-repeated": [bomb(9), bomb(3)],
  "too-deep": [`a: ${deep(32)}`, `a: ${deep(31)}`],
  "several-documents": [`${jobText()}---\na: 1\n`, `---\n${jobText()}`],
  "unreadable-yaml": [{ title: "title: a: b" }, { title: "title: a:b" }],
  "missing-version": [{ version: "" }, {}],
  "unknown-version": [{ version: "version: 2" }, {}],
  "unknown-key": [{ more: "titel: x" }, {}],
  "missing-key": [{ title: "" }, {}],
  "nothing-written": [
    { drivers: "drivers:\n  ten:\n    cut-out: 233\n    name: #8 special" },
    { drivers: "drivers:\n  ten:\n    cut-out: 233\n    name: '#8 special'" },
  ],
  "wrong-type": [{ title: "title: 2024" }, { title: "title: '2024'" }],
  "not-one-of": [{ more: "show: in 1/10" }, { more: "show: in 1/16" }],
  "too-small": [strip("screws: 1"), strip("screws: 2")],
  "too-large": [strip("screws: 21"), strip("screws: 20")],
  "too-few": [corners("[{at: [0, 0]}, {at: [1, 1]}]"), {}],
  "too-many": [strip("note: a2345678901"), strip("note: a234567890")],
  "does-not-fit": [strip("code: ABC"), strip("code: abc")],
  "not-a-length": [strip("place: [0, 3/4]"), strip("place: [0, 3/4in]")],
  "not-a-volume": [driver("displaces: 1.4"), driver("displaces: 1.4 L")],
  "not-an-angle": [strip("tilt: 45 gon"), strip("tilt: 45 deg")],
  "not-a-mass": [driver("mass: 5"), driver("mass: 5 kg")],
  "not-a-frequency": [driver("data: {fs: low}"), driver("data: {fs: 31}")],
  "not-an-area": [driver("data: {sd: 346}"), driver("data: {sd: 346 cm2}")],
  "not-a-power": [driver("data: {power: 350 VA}"), driver("data: {power: 350 W}")],
  "not-a-resistance": [driver("data: {ohm: 4 W}"), driver("data: {ohm: 4}")],
  "not-a-number": [driver("data: {qts: high}"), driver("data: {qts: 0.52}")],
  "not-a-whole-number": [driver("bolts: {circle: 248, holes: 8.5}"), driver("bolts: {circle: 248, holes: 8}")],
  "not-a-size": [strip("hole: 78"), strip("hole: 78 x 54")],
  "out-of-range": [strip("hole: 78 x 301"), strip("hole: 78 x 300")],
  "bad-name": [{ boards: "boards: {box: {stock: mdf-18}, 'a/b': {stock: mdf-12}}" }, {}],
  "names-alike": [
    { boards: "boards: {box: {stock: mdf-18}, Box: {stock: mdf-12}}" },
    { boards: "boards: {box: {stock: mdf-18}, boxy: {stock: mdf-12}}" },
  ],
  "unknown-kind": [{ pieces: "pieces: {rail: {kind: stripe, board: box, wide: 60}}" }, {}],
  "no-pieces": [{ pieces: "pieces:" }, {}],
  "same-side": [
    corners("[{at: [0, 0], side: rear}, {at: [1000, 0], side: rear}, {at: [0, 800]}]"),
    corners("[{at: [0, 0], side: rear}, {at: [1000, 0], side: front}, {at: [0, 800]}]"),
  ],
  "corners-together": [
    corners("[{at: [0, 0]}, {at: [1000, 0]}, {at: [0, 800]}, {at: [0, 0]}]"),
    corners("[{at: [0, 0]}, {at: [1000, 0]}, {at: [0, 800]}, {at: [0, 1]}]"),
  ],
  "outline-crosses": [
    corners("[{at: [0, 0]}, {at: [1000, 0]}, {at: [0, 800]}, {at: [1000, 800]}]"),
    corners("[{at: [0, 0]}, {at: [1000, 0]}, {at: [501, 400]}, {at: [1000, 800]}, {at: [0, 800]}, {at: [499, 400]}]"),
  ],
  "no-area": [block("[0, 180, 200]"), block("[1, 180, 200]")],
  "no-height": [block("[10, 180, 0]"), block("[10, 180, 1]")],
  "round-too-large": [
    corners("[{at: [0, 0]}, {at: [100, 0], round: 50.1}, {at: [100, 80], round: 30}, {at: [0, 80]}]"),
    corners("[{at: [0, 0]}, {at: [100, 0], round: 50}, {at: [100, 80], round: 30}, {at: [0, 80]}]"),
  ],
  "round-beside-bow": [
    corners("[{at: [0, 0], bulge: 0.1}, {at: [1000, 0], round: 60}, {at: [0, 800]}]"),
    corners("[{at: [0, 0], bulge: 0.1}, {at: [1000, 0]}, {at: [0, 800]}]"),
  ],
  "unknown-side": [
    { space: "  opening: {side: side.5, width: 900, height: 600}" },
    { space: "  opening: {side: side.4, width: 900, height: 600}" },
  ],
  "cut-out-too-large": [driver("frame: 233"), driver("frame: 233.1")],
  "bolt-circle-away": [
    driver("frame: 262, bolts: {circle: 262, holes: 8}"),
    driver("frame: 262, bolts: {circle: 261.9, holes: 8}"),
  ],
};

const codesOf = (job: Job) => readJob(job).findings.map((finding) => finding.code);
const readJob = (job: Job) => parseJob(typeof job === "string" ? job : jobText(job), "job.yaml", testKinds);
const defs: readonly FindingDef[] = [...inputFindings, ...jobFindings];

describe("every finding of the job file", () => {
  it("has a case here, but for those of files on the disk, of the shop and of the accepted layout", () => {
    const elsewhere = [...textFileFindings, unknownCovering, acceptedUnreadable].map((def) => def.code);
    expect([...Object.keys(cases), ...elsewhere].sort()).toEqual(defs.map((def) => def.code).sort());
  });

  it.each(Object.entries(cases))(
    "%s is raised, in whole sentences, and not just short of it",
    (code, [raises, short]) => {
      const { findings, locate } = readJob(raises);
      const finding = findings.find((each) => each.code === code);
      expect(findings.map((each) => each.code)).toContain(code);
      const def = defs.find((each) => each.code === code)!;
      expect(finding?.severity).toBe(def.severity);
      expect(locate(finding!.at[0]!).line).toBeGreaterThan(0);
      for (const show of [{ unit: "mm" }, { unit: "in", denominator: 16 }] as const) {
        const { words, next } = wordsOf(finding!, def, show);
        expect(`${words} ${next}`).not.toMatch(/[{}]|undefined|NaN/);
      }
      expect(codesOf(short)).not.toContain(code);
    },
  );

  it("has words, a next step and an explanation for each code, and each code once", () => {
    expect(new Set(defs.map((def) => def.code)).size).toBe(defs.length);
    for (const def of defs) {
      expect(def.code).toMatch(/^[a-z]+[a-z0-9]*(-[a-z0-9]+)*$/);
      expect(def.words.length).toBeGreaterThan(10);
      expect(def.next.length).toBeGreaterThan(10);
      expect(def.explain).toMatch(/\.$/);
    }
  });
});

describe("a covering that says less than it needs", () => {
  const withCovering = (keys: string) => readJob({ coverings: `coverings: {carpet: {${keys}}}` }).value!;

  it("takes thickness and give from the shop's row of its stock", () => {
    const { value } = withShop(withCovering("stock: box-carpet"), starterShop());
    expect(value?.coverings.carpet).toMatchObject({ thick: 3, clamped: 1.5 });
    const own = { ...starterShop().coverings["box-carpet"]!, thick: 4, clamped: 1 };
    const other = withShop(withCovering("stock: box-carpet"), { ...starterShop(), coverings: { "box-carpet": own } });
    expect(other.value?.coverings.carpet).toMatchObject({ thick: 4, clamped: 1 });
  });

  it("keeps what the job says, and lets a thicker one give as much for its thickness", () => {
    const { value } = withShop(withCovering("stock: box-carpet, thick: 3.6"), starterShop());
    expect(value?.coverings.carpet).toMatchObject({ thick: 3.6, clamped: 1.8 });
    const said = withShop(withCovering("stock: box-carpet, thick: 3.5, clamped: 2"), starterShop());
    expect(said.value?.coverings.carpet).toEqual({ stock: "box-carpet", thick: 3.5, clamped: 2 });
  });

  it("is left out with a finding where nobody knows its thickness, and taken where the job gives it", () => {
    const { value, findings } = withShop(withCovering("stock: box-carpt"), starterShop());
    expect(findings).toMatchObject([{ code: unknownCovering.code, facts: { nearest: { value: "box-carpet" } } }]);
    expect(wordsOf(findings[0]!, unknownCovering, { unit: "mm" }).words).toContain("box-carpet");
    expect(value?.coverings).toEqual({});
    expect(value?.unread).toEqual([{ kind: "covering", name: "carpet" }]);
    expect(withShop(withCovering("stock: our own, thick: 2"), starterShop())).toMatchObject({
      findings: [],
      value: { coverings: { carpet: { thick: 2, clamped: 1 } } },
    });
  });
});
