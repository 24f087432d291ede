import { circle, rectangle } from "../../src/geometry/shapes.js";
import type { Finding } from "../../src/input/finding.js";
import { couponOf } from "../../src/machining/coupon.js";
import type { Cut } from "../../src/model/part.js";
import { starterShop } from "../../src/shop/starter.js";
import { all, byKind, programFor, shaped } from "../machining/setting.js";
import { feature, opening, panel, rounded } from "../process/benchParts.js";
import { coverAlone } from "./changes.js";
import { pairUpTo, type Table } from "./road.js";

const nest = pairUpTo("nest");
const cover = coverAlone({});
const roomy = coverAlone({ outline: "400 x 300" });
const shops = (raises: string, spares: string) => ({ raises, spares });
const bit = (name: string, key: string) => (value: number) => `bits: {${name}: {${key}: ${value}}}`;
const halfInch = bit("1/2 straight", "cutting length");
const machine = (key: string) => (value: number) => `cnc: {${key}: ${value}}`;
const fastest = (most: number) => `cnc: {feed: {least: 200, most: ${most}}}`;
const thin = (measured: number) => [...cover, [["boards", "plate", "measured"], measured] as const];

const windowRound = (radius: number) =>
  programFor([panel([feature("window", opening(rounded(100, 80, 120, 90, radius, "window")))])], all("12 straight"));
const crossed = (x: number) =>
  programFor(
    [
      panel([
        feature(
          "window",
          opening([
            { x: 100, y: 80, bulge: 0, by: "window" },
            { x: 200, y: 80, bulge: 0, by: "window" },
            { x, y: 150, bulge: 0, by: "window" },
            { x: 200, y: 160, bulge: 0, by: "window" },
            { x: 100, y: 160, bulge: 0, by: "window" },
          ]),
        ),
      ]),
    ],
    all("6 straight"),
  );
const groove = (width: number) => {
  const path = [
    { x: 50, y: 50, bulge: 0, by: "groove" },
    { x: 300, y: 50, bulge: 0, by: "groove" },
  ];
  const cut: Cut = { kind: "groove", path, closed: false, width, depth: 4 };
  return programFor([panel([feature("groove", cut)])], byKind("12 straight", { groove: "6 straight" }));
};
const numbered = (width: number) => {
  const region = { outer: rectangle(0, 0, 200, width, "outline"), holes: [] };
  const mark = feature("mark", { kind: "mark", text: "L1", at: { x: 100, y: width / 2 } });
  return programFor([shaped(region, [mark])], byKind("12 straight", { mark: "60 v" }));
};
const measured = (thickness: number) =>
  programFor([panel([feature("hole", opening(circle({ x: 200, y: 150 }, 60, "hole")))])], all("12 straight"), {
    job: { boards: { box: { stock: "mdf-18", measured: thickness } } },
  });

const turning = (most: number) =>
  programFor([panel()], all("slow"), { bits: { slow: { kind: "straight", d: 12, "most rpm": most } } });

const calls = (why: string, raises: () => { findings: readonly Finding[] }, spares: typeof raises) => ({
  why,
  raises: () => raises().findings,
  spares: () => spares().findings,
});

/** What the making of the program finds. */
export const machiningTable: Table = {
  "bit-does-not-go-in": calls(
    "cutting takes a bit that goes into every corner",
    () => windowRound(5.9),
    () => windowRound(6),
  ),
  "path-in-doubt": calls(
    "parts whose edges cross are withheld before",
    () => crossed(90),
    () => crossed(110),
  ),
  // the plate's board is 12.1 thick, and 0.3 goes into the spoilboard
  "edges-too-short": nest("pieces.cover.outline", cover, cover, shops(halfInch(12.3), halfInch(12.4))),
  "no-turning-speed": calls(
    "cutting holds back parts whose bit is marked so",
    () => turning(5999),
    () => turning(6000),
  ),
  // half the chart's 0.57 at 6000 1/min and 2 flutes asks for 3429; nine tenths of it are 3086
  "chip-too-thin": nest("boards.plate", cover, cover, shops(fastest(3080), fastest(3095))),
  "not-at-the-machine": calls(
    "cutting takes a bit no wider than a groove",
    () => groove(5.9),
    () => groove(6),
  ),
  "sink-left": nest(
    "pieces.box.board",
    [],
    [],
    shops("bits: {90 v: none, 45 chamfer: none}", "bits: {45 chamfer: none}"),
  ),
  // a tab and half the bit on both sides want 8 + 12.7, and the next corners keep off by as much as the bit
  "no-room-for-tabs": nest("pieces.cover", cover, coverAlone({ outline: "60 x 40" })),
  "tab-over-sheet": nest("boards.plate", thin(1.5), thin(1.6)),
  // 10 above the sheet, 12.1 of it, and 0.3: a part with room for tabs is cut through
  "travel-too-short": nest("cnc", roomy, roomy, shops(machine("travel")(22.3), machine("travel")(22.4))),
  // 5 of trim, less half the bit, 6.35, and the lead, 1.5
  "path-off-bed": nest("cnc", cover, cover, shops(machine("length")(2442.8), machine("length")(2442.9))),
  "number-left": calls(
    "no kind of piece marks its parts",
    () => numbered(15),
    () => numbered(17),
  ),
  "no-coupon": calls(
    "it is asked for by name, not by a job",
    () => couponOf(starterShop(), "5 drill"),
    () => couponOf(starterShop(), "5 straight"),
  ),
  "thickness-changed": calls(
    "a build plans with the thickness that it cuts",
    () => measured(18.4),
    () => measured(18),
  ),
};
