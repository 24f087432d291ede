import { describe, expect, it } from "vitest";
import { findingDefs } from "../../src/cli/findingDefs.js";
import { reportOf } from "../../src/cli/report.js";
import { painter } from "../../src/cli/terminal.js";
import { travel } from "./road.js";

/** A job of one box; what it is told with the first block of the report: place, found, next. */
const head = `version: 1
title: Bad input
units: mm
boards:
  box: {stock: mdf-18, measured: 18.2}
space:
  outline:
    - {at: [0, 0], side: rear}
    - {at: [1200, 0], side: right}
    - {at: [1200, 900], side: front}
    - {at: [0, 900], side: left}
  height: 600
  opening: {side: rear, width: 1100, height: 600}
drivers:
  ten: {frame: 262, cut-out: 233, bolts: {circle: 248, holes: 8, screw: 4.0 x 25}, flange: 7, depth: 96, magnet: 150}
pieces:
  box:
    kind: enclosure
    board: box
    stands: {x: 20, y: 20}
    held by: {straps: 2, to: floor rings}
`;

async function told(box: string): Promise<string> {
  const { findings, locate } = await travel({ job: head + box }, "plan");
  const reading = { defs: findingDefs, show: { unit: "mm" } as const, locate };
  return reportOf(findings, reading, painter(false));
}

const sideOf = (...corners: readonly string[]) =>
  ["    outside:", "      side:", ...corners.map((corner) => `        - ${corner}`), "      width: 600", ""].join("\n");

const bad: readonly (readonly [what: string, box: string, ...says: string[]])[] = [
  [
    "a profile that crosses itself",
    sideOf("{at: [0, 0]}", "{at: [400, 0]}", "{at: [0, 300]}", "{at: [400, 300]}"),
    ":27:11  pieces.box.outside.side[3]",
    "meets side.2 at 200 mm, 150 mm",
    "next   check the order of the corners",
  ],
  [
    "a rake that leaves no inside",
    sideOf(
      "{at: [0, 0], side: bottom}",
      "{at: [60, 0], side: rake}",
      "{at: [10, 400], side: top}",
      "{at: [0, 400], side: back}",
    ),
    ":24:9  pieces.box.outside.side",
    "nothing is left of top of box inside its neighbours: it is 10 mm long outside",
    "next   make the profile larger there",
  ],
  [
    "walls thicker than the profile",
    sideOf(
      "{at: [0, 0], side: bottom}",
      "{at: [400, 0], side: front}",
      "{at: [400, 30], side: top}",
      "{at: [0, 30], side: back}",
    ),
    "nothing is left of front of box inside its neighbours: it is 30 mm long outside, and their boards take 36.4 mm of it",
  ],
  [
    "walls thicker than a square box",
    "    outside: {width: 400, depth: 60, height: 300}\n",
    ":22:34  pieces.box.outside.depth",
    "the depth of 60 mm leaves 23.6 mm inside with 18.2 mm board",
    "next   make it 66.4 mm or more",
  ],
  [
    "a free size with no solution",
    "    net: 200 L\n    outside: {width: free, depth: 300, height: 200}\n",
    ":23:22  pieces.box.outside.width",
    "at its most of 1200 mm the box is 149.82 L short",
    "next   make another outside size larger, or want 149.82 L less",
  ],
  [
    "a free size whose least is too much",
    "    net: 1 L\n    outside: {width: free, depth: 600, height: 400}\n",
    "at its least of 66.5 mm the box is 5.17 L over",
    "next   make another outside size smaller, or want 5.17 L more",
  ],
  [
    "a driver wider than its baffle",
    "    outside: {width: 500, depth: 200, height: 200}\n    driver: {is: ten, in: top}\n",
    ":23:13  pieces.box.driver",
    "the driver cut-out measures 233 mm, and the inside of the top only 163.6 mm that way",
    "next   make the box 69.4 mm larger there",
  ],
  [
    "drivers that touch",
    `    outside: {width: 600, depth: 400, height: 300}
    drivers:
      - {is: ten, in: top, at: [180, 200]}
      - {is: ten, in: top, at: [400, 200]}
`,
    ":24:9  pieces.box.drivers[0]",
    "driver 1 (ten) and driver 2 (ten) stand 220 mm apart on top, where they need 262 mm",
    "next   move them 42 mm further apart",
    ":25:9  pieces.box.drivers[1]",
  ],
  [
    "the largest size where the least finds no room",
    "    outside: {width: largest, depth: 300, height: 700}\n",
    ":22:22  pieces.box.outside.width",
    "even at the least width it can have, 66.5 mm, it meets the height of the space",
    "next   move it, make another of its sizes smaller",
  ],
  [
    "a word for a size that is none",
    "    outside: {width: larges, depth: 300, height: 300}\n",
    ":22:22  pieces.box.outside.width",
    "did you mean largest?",
  ],
];

describe("a box that cannot be built is told where, what and the way out", () => {
  it.each(bad)("%s", async (_what, box, ...says) => {
    const report = await told(box);
    for (const words of says) expect(report).toContain(words);
    // no advice that says nothing
    expect(report).not.toMatch(/use +a value/);
  });
});
