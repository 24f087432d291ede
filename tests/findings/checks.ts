import { runChecks } from "../../src/plan/checks/checks.js";
import type { Change } from "../pieces/planned.js";
import { pairs } from "../plan/checks/codes.js";
import type { Scene } from "../plan/checks/fixture.js";
import { box, boxAlone, cover, coverAlone, plate, space, ten } from "./changes.js";
import { tubePairs } from "./ports.js";
import { type CallPair, pairUpTo, type Table } from "./road.js";

const checks = pairUpTo("checks");

/** The check on a plan that was made by hand, for what the pieces never plan. */
function sketched(code: string, why: string): CallPair {
  const pair = pairs.find((each) => each.code === code)!;
  const found = ({ job, shop, plan }: Scene) => runChecks(job, shop, plan);
  return { why, raises: () => found(pair.raises()), spares: () => found(pair.short()) };
}

const alone = (...changes: readonly Change[]) => [...boxAlone, ...changes];
const standing = box("stands", { x: 200, y: 30 });
/** A 60 x 30 panel, its corner there: 12.1 thick, in a space 1040 x 860 and 420 high. */
const lying = (x: number, y: number, z: number) => coverAlone({ lies: { x, y, z } });
/** A 60 x 60 panel beside, above or under the driver, whose axis stands at x 520, y 240 and its seat at 150. */
const beside = (x: number, z: number) => alone(cover({ outline: "60 x 60", lies: { x, y: 210, z } }));
/** A low box, so that its walls have short edges. */
const low = (height: number) =>
  alone(
    box("driver", undefined),
    box("terminal", undefined),
    standing,
    box("outside", { width: 500, depth: 420, height }),
  );
const pegs = (apart: number) =>
  coverAlone({ holes: { one: { at: [20, 15], across: 5 }, two: { at: [20 + apart, 15], across: 5 } } });
const terminal = (height: number) => alone(box("terminal.corners", "round"), box("terminal.hole", `78 x ${height}`));
const screwed = (length: number) =>
  alone(ten("bolts.screw", `4.0 x ${length}`), space("no screws.fuel tank.from", [300, 30]));

/** What the checks of a plan find. */
export const checksTable: Table = {
  ...Object.fromEntries(
    Object.entries(tubePairs).map(([code, { at, raises, spares }]) => [code, checks(at, raises, spares)]),
  ),
  // 20 L and a fiftieth more
  "volume-off": checks("pieces.box.net", alone(box("outside.width", 536.7)), alone(box("outside.width", 536.6))),
  "volume-outside-wants": checks(
    "pieces.box.net",
    alone(ten("wants.closed", "20.01 to 24 L")),
    alone(ten("wants.closed", "20 to 24 L")),
  ),
  "volume-in-doubt": sketched("volume-in-doubt", "it tells of a fault of the program"),
  "air-leaks": sketched("air-leaks", "a box makes no hole that nothing fills"),
  "joint-gapes": sketched("joint-gapes", "the panels of a box are taken from one block"),
  // the inside is 113.6 high, and a front cut in two is no part
  "side-missing": checks("pieces.box.net", terminal(113.6), terminal(113.5)),
  // less than 0.01 deep is a touch
  "parts-overlap": checks(
    "pieces.box",
    alone(cover({ lies: { x: 300, y: 40, z: 149.98 } })),
    alone(cover({ lies: { x: 300, y: 40, z: 149.99 } })),
  ),
  "outside-space": checks("pieces.cover", lying(-0.02, 600, 100), lying(-0.01, 600, 100)),
  "above-space": checks("pieces.cover", lying(100, 600, 407.92), lying(100, 600, 407.9)),
  "below-floor": checks("pieces.cover", lying(100, 600, -0.02), lying(100, 600, -0.01)),
  // the battery begins at x 800, and 12 before it
  "fouls-obstacle": checks("pieces.cover", lying(740.1, 600, 100), lying(740, 600, 100)),
  "obstacle-too-near": checks("pieces.cover", lying(728.1, 600, 100), lying(728, 600, 100)),
  // the box stands on the floor, its bottom 18.2 thick
  "closed-round-obstacle": checks(
    "pieces.box",
    alone(space("obstacles.pump", { from: [300, 200, 18.2], to: [320, 220, 80] })),
    alone(space("obstacles.pump", { from: [300, 200, 18.1], to: [320, 220, 80] })),
  ),
  "driver-figures-missing": checks("drivers.ten", alone(ten("travel", undefined)), boxAlone),
  "cut-out-over-frame": sketched("cut-out-over-frame", "a job with such a driver is refused by cut-out-too-large"),
  "magnet-over-cut-out": checks("drivers.ten", alone(ten("magnet", 233.1)), alone(ten("magnet", 233))),
  // 233 of cut-out, a pilot of 2.3 and twice 3 of board: 241.3
  "bolts-near-cut-out": checks("drivers.ten", alone(ten("bolts.circle", 241.2)), alone(ten("bolts.circle", 241.3))),
  "bolts-near-rim": checks("drivers.ten", alone(ten("bolts.circle", 258)), alone(ten("bolts.circle", 257.9))),
  "frame-off-face": checks(
    "pieces.box.driver",
    alone(ten("frame", 300), box("driver.at", [250, 149.8])),
    alone(ten("frame", 300), box("driver.at", [250, 150])),
  ),
  // the frame is 131 in radius: to x 389
  "frame-hits": checks("pieces.box.driver", beside(329.1, 150), beside(329, 150)),
  // 37.9 below its seat the basket is 100.1 in radius, 0.5 of which is a guess
  "basket-hits": checks("pieces.box.driver", beside(360.4, 100), beside(360.3, 100)),
  // 131.8 from the seat to the inside of the bottom
  "magnet-hits": checks("pieces.box.driver", alone(ten("depth", 131.8)), alone(ten("depth", 131.7))),
  "magnet-gap-short": checks("pieces.box.driver", alone(ten("depth", 125.9)), alone(ten("depth", 125.8))),
  // 7 of flange, 9 of surround, 12 of travel over 150
  "travel-hits": checks("pieces.box.driver", beside(490, 177.9), beside(490, 178)),
  "will-not-go-in": checks(
    "pieces.box",
    alone(space("opening", { width: 419.9, height: 150 })),
    alone(space("opening", { width: 420, height: 150 })),
  ),
  "face-thread-near-edge": sketched("face-thread-near-edge", "only drivers are screwed into a face, by their own rule"),
  "face-thread-near-corner": sketched(
    "face-thread-near-corner",
    "only drivers are screwed into a face, by their own rule",
  ),
  // the walls are 36.4 lower than the box: one screw in the middle of 50
  "edge-thread-near-corner": checks("pieces.box.board", low(86.3), low(86.4)),
  "edge-too-thin": checks(
    "pieces.box.board",
    alone([["boards", "box", "measured"], 14.9]),
    alone([["boards", "box", "measured"], 15]),
  ),
  "lap-near-edge": sketched("lap-near-edge", "a box sets its screws over the middle of the board below"),
  "pilot-near-opening": checks(
    "pieces.box.driver",
    alone(ten("bolts.circle", 241.2)),
    alone(ten("bolts.circle", 241.3)),
  ),
  // one and a half times 9
  "insert-near-edge": checks("pieces.plate.bolted", [plate("bolted.set in", 13.4)], [plate("bolted.set in", 13.5)]),
  "insert-in-edge": sketched("insert-in-edge", "a box gives threads in its faces only"),
  "holes-meet": checks("pieces.cover.holes.one", pegs(4.9), pegs(5)),
  // 18.2 of board, 7 of flange: 3 left by a screw of 22.2
  "tip-near-face": checks(
    "pieces.box.driver",
    alone(ten("bolts.screw", "4.0 x 22.3")),
    alone(ten("bolts.screw", "4.0 x 22.2")),
  ),
  "insert-opens-into-air": sketched("insert-opens-into-air", "a box glues a block behind every insert that would"),
  // from the flange's top, 157 over the floor
  "screw-into-zone": checks("pieces.box.driver", screwed(157.1), screwed(157)),
  "wrap-without-groove": checks(
    "pieces.plate",
    [plate("covered.back", "none"), plate("covered.wrap", 0.1)],
    [plate("covered.back", "none"), plate("covered.wrap", 0)],
  ),
  "back-too-deep": sketched("back-too-deep", "a plate never cuts deeper than a third: groove-limited tells of it"),
  // the battery wants 12
  "notch-corner-tight": checks("pieces.plate.notch", [plate("notch.round", 12.1)], [plate("notch.round", 12)]),
  // a face of three times 3.5 is 7.42 wide
  "chamfer-lost": checks(
    "pieces.plate.open over.edge",
    [plate("open over.edge.chamfer", 7.4)],
    [plate("open over.edge.chamfer", 7.5)],
  ),
};
