import { type Change, estate } from "../pieces/planned.js";
import { edited, pairUpTo, type Table } from "./road.js";

const read = pairUpTo("read");
const deep = (levels: number) => `${estate}note: ${"[".repeat(levels)}${"]".repeat(levels)}\n`;
/** Rows that each repeat the one before ten times over. */
const repeats = (rows: number) =>
  estate +
  Array.from({ length: rows }, (_, i) => `k${i}: &k${i} [${Array(10).fill(i === 0 ? "1" : `*k${i - 1}`)}]\n`).join("");
const ten = (key: string, value: unknown): Change[] => [[["drivers", "ten", ...key.split(".")], value]];
const box = (key: string, value: unknown): Change[] => [[["pieces", "box", ...key.split(".")], value]];
const plate = (key: string, value: unknown): Change[] => [[["pieces", "plate", ...key.split(".")], value]];

/** What any typed file can be refused for: by its text, by its keys, by its values. */
export const textTable: Table = {
  "empty-file": read("# nothing yet", "# nothing yet\n", "version: 1\n"),
  "not-a-map": read("- job", "- job\n", "job: 1\n"),
  "not-plain-text": read(
    "\u0007 cargo",
    edited("title: Cargo", "title: \u0007 cargo"),
    edited("title: Cargo", "title: \u00e4 cargo"),
  ),
  "duplicate-key": read(
    "customer: Demonstration",
    edited("reference: DEMO-001", "customer: twice"),
    edited("reference: DEMO-001", "reference: twice"),
  ),
  "forbidden-key": read(
    "__proto__: 1",
    edited("reference: DEMO-001", "__proto__: 1"),
    edited("reference: DEMO-001", "reference: __proto__"),
  ),
  "tab-indent": read("\tbox:   {", edited("  box:   {", "\tbox:   {"), estate),
  "unknown-alias": read(
    "*name",
    edited("title: Cargo floor and woofer box, estate car", "title: *name"),
    edited("title: Cargo floor and woofer box, estate car", "title: '*name'"),
  ),
  "too-much-repeated": read("# An invented", repeats(6), repeats(5)),
  "too-deep": read("[]", deep(32), deep(31)),
  "several-documents": read("---", `${estate}---\na: 1\n`, `---\n${estate}`),
  "unreadable-yaml": read("a: b", edited("title: Cargo", "title: a: b"), edited("title: Cargo", "title: a:b")),
  "missing-version": read("title", [[["version"], undefined]], []),
  "unknown-version": read("version", [[["version"], 2]], [[["version"], 1]]),
  "unknown-key": read("titel", [[["titel"], "x"]], [[["title"], "x"]]),
  "missing-key": read("title", [[["title"], undefined]], []),
  "nothing-written": read(
    "drivers.ten.name",
    edited("name: 10 in", "name: #10 in"),
    edited("name: 10 in shallow woofer, invented", "name: '#10 in shallow woofer'"),
  ),
  "wrong-type": read("title", [[["title"], 2024]], [[["title"], "2024"]]),
  "not-one-of": read("show", [[["show"], "in 1/10"]], [[["show"], "in 1/16"]]),
  "too-small": read("pieces.plate.bolted.count", plate("bolted.count", 1), plate("bolted.count", 2)),
  "too-large": read("pieces.plate.bolted.count", plate("bolted.count", 61), plate("bolted.count", 60)),
  "too-few": read(
    "pieces.box.laps",
    box("laps", ["top", "bottom", "front", "rear"]),
    box("laps", ["top", "bottom", "front", "rear", "left"]),
  ),
  "too-many": read("title", [[["title"], "x".repeat(101)]], [[["title"], "x".repeat(100)]]),
  "does-not-fit": read("pieces.plate.height", plate("height", "on top of box"), plate("height", "top of box")),
  "not-a-length": read("pieces.box.outside.height", box("outside.height", "15/2"), box("outside.height", "5 15/16in")),
  "not-a-volume": read("drivers.ten.displaces", ten("displaces", 1.4), ten("displaces", "1.4 L")),
  "not-an-angle": read("drivers.ten.bolts.start", ten("bolts.start", "22.5 gon"), ten("bolts.start", "22.5 deg")),
  "not-a-mass": read("drivers.ten.mass", ten("mass", 3.2), ten("mass", "3.2 kg")),
  "not-a-frequency": read("drivers.ten.data.fs", ten("data.fs", "31 s"), ten("data.fs", "31 Hz")),
  "not-an-area": read("drivers.ten.data.sd", ten("data.sd", 346), ten("data.sd", "346 cm2")),
  "not-a-power": read("drivers.ten.data.power", ten("data.power", "350 VA"), ten("data.power", "350 W")),
  "not-a-resistance": read("drivers.ten.data.ohm", ten("data.ohm", "4 W"), ten("data.ohm", "4 ohm")),
  "not-a-number": read("drivers.ten.data.qts", ten("data.qts", "0.52 or so"), ten("data.qts", 0.52)),
  "not-a-whole-number": read("drivers.ten.bolts.holes", ten("bolts.holes", 8.5), ten("bolts.holes", 8)),
  "not-a-size": read("pieces.box.terminal.hole", box("terminal.hole", "78 54"), box("terminal.hole", "78 x 54")),
  "out-of-range": read("pieces.box.outside.depth", box("outside.depth", 3001), box("outside.depth", 3000)),
};
