import type { Change } from "../pieces/planned.js";
import { cut, feature, opening, panel, rounded } from "../process/benchParts.js";
import { cover, coverAlone, without } from "./changes.js";
import { pairUpTo, type Table } from "./road.js";

const process = pairUpTo("process");
const nest = pairUpTo("nest");
const window = (round: number) => ({ openings: { window: { at: [30, 15], size: "30 x 10", round } } });
/** The same of the box's board, 18.2 thick. */
const thick = (round: number): readonly Change[] => [
  ...without("box", "ring", "plate", "sill strip"),
  cover({ board: "box", ...window(round) }),
];
const peg = (across: number, more: object = {}) =>
  coverAlone({ holes: { peg: { at: [20, 15], across, deep: 5 } }, ...more });
const sized = (length: number, width: number, more: object = {}) =>
  coverAlone({ outline: `${length} x ${width}`, ...more });
const two: readonly Change[] = [
  ...coverAlone({}),
  [["pieces", "lid"], { kind: "panel", board: "plate", outline: "60 x 30" }],
];
const offcut = (length: number) => `boards: {mdf-12: {sheets: [], offcuts: [{name: A, length: ${length}, width: 30}]}}`;
const sawn = { "cut by": "saw" };
const offcutWide = (length: number) =>
  `boards: {mdf-12: {sheets: [], offcuts: [{name: A, length: ${length}, width: 60}]}}`;
const bevelled = { "cut by": "saw", bevels: { near: { angle: "45deg" } } };
const bevelledEnd = { "cut by": "saw", bevels: { left: { angle: "45deg" } } };
const fence = "saw: {longest rip: 627.9}";
const sled = (reach: number) => `track saw: none\nsaw: {longest rip: 1300, longest cross-cut: ${reach}}`;
const measured = (thick: number) =>
  `boards: {mdf-12: {sheets: [], offcuts: [{name: A, length: 90, width: 60, measured: ${thick}}]}}`;
const odd = (more: string) =>
  `boards: {mdf-12: {offcuts: [{name: A, outline: [{at: [0, 0]}, {at: [600, 0]}, {at: [0, 400]}], ${more}}]}}`;
const clamped = (size: string) =>
  `cnc: {clamps: [{at: [0, 0], size: ${size}}]}\nboards: {mdf-12: {offcuts: [{name: A, length: 100, width: 100}]}}`;
const bed = (length: number) =>
  `cnc: {length: ${length}, width: 1220}\nboards: {mdf-12: {sheets: [{length: 2440, width: 1220}]}}`;
const twoSides = {
  holes: { in: { at: [10, 15], across: 10, deep: 5 }, out: { at: [45, 15], across: 10, deep: 5, from: "back" } },
};
/** No bit that goes into 8 mm but one, as long as this; the board is 12.1 thick. */
const without8 = (length: number) => {
  const short = ["4", "5", "6", "8", "1/8", "3/16", "1/4"].map((d) => `${d} straight: none`);
  const long = ["6", "8", "1/4"].map((d) => `${d} compression: none`);
  return `{${[...short, ...long].join(", ")}, 8 drill: {cutting length: ${length}}}`;
};
const saw = "track saw: none\nsaw: {longest rip: 640}";
const left = (round: number) =>
  cut(panel([feature("window", opening(rounded(50, 50, 78, 54, round, "window"), "bit"), { stage: "bench" })]), "hand")
    .findings;

/** What cutting and nesting find. */
export const processTable: Table = {
  // the smallest bit is 3 wide
  "corner-too-tight": process("pieces.cover.openings.window", coverAlone(window(1.4)), coverAlone(window(1.5))),
  "corner-left-to-bench": {
    why: "no kind of piece leaves a corner to the bench",
    raises: () => left(1.4),
    spares: () => left(1.5),
  },
  // 5 wide it is 17 long, 6 wide 25
  "bit-too-short": process("pieces.cover.openings.window", thick(2.9), thick(3)),
  // a drill within 0.1 will do: there is one of 2
  "no-bit-fits": process("pieces.cover.holes.peg", peg(1.89), peg(1.9)),
  "tool-to-buy": process("pieces.cover.holes.peg", peg(1.89, { "cut by": "hand" }), peg(1.9, { "cut by": "hand" })),
  "rip-too-wide": process(
    "pieces.cover",
    sized(1600, 640.5, { "cut by": "saw" }),
    sized(1600, 640, { "cut by": "saw" }),
    { raises: saw, spares: saw },
  ),
  // the outline is cut by the 1/2 straight; the spindle turns 6000 at least
  "bit-over-rpm": process("pieces.cover.outline", coverAlone({}), coverAlone({}), {
    raises: "bits: {1/2 straight: {most rpm: 5999}}",
    spares: "bits: {1/2 straight: {most rpm: 6000}}",
  }),
  // made for 12.1
  "sheet-thicker": nest("boards.plate", coverAlone({}), coverAlone({}), {
    raises: measured(12.31),
    spares: measured(12.3),
  }),
  "sheet-thinner": nest("boards.plate", coverAlone({}), coverAlone({}), {
    raises: measured(11.89),
    spares: measured(11.9),
  }),
  // worked from both sides, so that its sheet is turned over on dowels of 8
  "no-pin-bit": process("boards.plate", coverAlone(twoSides), coverAlone(twoSides), {
    raises: `cnc: {second side: pins}\nbits: ${without8(22)}`,
    spares: `cnc: {second side: pins}\nbits: ${without8(22.1)}`,
  }),
  "part-over-machine": process("pieces.cover", sized(1600, 1550.1), sized(1600, 1550)),
  "no-machine": process("version: 1", coverAlone({}), coverAlone({ "cut by": "saw" }), {
    raises: "cnc: none",
    spares: "cnc: none",
  }),
  // the longest sheet is 3050, less 5 of trim at both ends
  "part-over-sheet": nest("pieces.cover", sized(3040.1, 1000), sized(3040, 1000)),
  "board-without-sheets": nest("boards.plate", coverAlone({}), coverAlone({}), {
    raises: "boards: {mdf-12: {sheets: []}}",
    spares: offcut(60),
  }),
  // two of 60, and between them the bit, 12.7, with 2 to spare
  "stock-used-up": nest("boards.plate", two, two, { raises: offcut(134.6), spares: offcut(134.7) }),
  // its blade takes 3.2
  "part-under-kerf": nest("pieces.cover", sized(300, 3, sawn), sized(300, 3.5, sawn)),
  "piece-too-small": nest("pieces.cover", coverAlone(sawn), coverAlone(sawn), {
    raises: offcutWide(299),
    spares: offcutWide(300),
  }),
  "strip-too-narrow": nest("pieces.cover", sized(49, 49, sawn), sized(50, 49, sawn)),
  "cut-over-saw": nest("boards.plate", sized(900, 300, sawn), sized(900, 300, sawn), {
    raises: sled(299),
    spares: sled(300),
  }),
  // along its strip a bevel is cut before the part is; across it the part is fed alone
  "bevel-too-small": nest("pieces.cover", sized(299, 60, bevelledEnd), sized(300, 60, bevelledEnd)),
  // the board's 12.1
  "bevel-takes-all": nest("pieces.cover", sized(300, 12, bevelled), sized(300, 12.5, bevelled)),
  // bevelled by 45 degrees: between fence and blade at the table the board's 12.1 less
  "bevel-over-saw": nest("pieces.cover", sized(1600, 640.5, bevelled), sized(1600, 640, bevelled), {
    raises: `track saw: none\n${fence}`,
    spares: `track saw: none\n${fence}`,
  }),
  "offcut-not-for-saw": nest("boards.mdf-12", coverAlone(sawn), coverAlone(sawn), {
    raises: odd("trim: 0"),
    spares: odd("true edge: side.1"),
  }),
  "board-without-dowels": nest("boards.mdf-12", coverAlone(twoSides), coverAlone(twoSides), {
    raises: `cnc: {second side: pins}\n${odd("trim: 0")}`,
    spares: "cnc: {second side: pins}\nboards: {mdf-12: {offcuts: [{name: A, length: 600, width: 400}]}}",
  }),
  "near-miss": nest("pieces.cover", sized(603, 400), sized(603.1, 400), {
    raises: "boards: {mdf-12: {offcuts: [{name: A, length: 600, width: 400}]}}",
    spares: "boards: {mdf-12: {offcuts: [{name: A, length: 600, width: 400}]}}",
  }),
  "board-under-zones": nest("boards.mdf-12", coverAlone({}), coverAlone({}), {
    raises: clamped("200 x 200"),
    spares: clamped("200 x 199"),
  }),
  "sheet-over-machine": nest("boards.plate", coverAlone({}), coverAlone({}), {
    raises: bed(2439.9),
    spares: bed(2440),
  }),
  "parts-withheld": nest(
    "",
    coverAlone({ lies: { x: 100, y: 600, z: -0.02 } }),
    coverAlone({ lies: { x: 100, y: 600, z: -0.01 } }),
  ),
};
