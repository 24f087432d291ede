import { describe, expect, it } from "vitest";
import { extentsOf } from "../../src/geometry/measure.js";
import type { Part } from "../../src/model/part.js";
import { facesOf } from "../../src/plan/bevels.js";
import { type BoxSpec, planBox } from "../property/boxes.js";

// Boxes worked by hand with the trigonometry of the right triangle (any school book); no figure below comes from the
// program. Boards are 18.2 thick. Tilts in degrees, sizes in mm.

const t = 18.2;
const deg = 180 / Math.PI;
const tan = (degrees: number) => Math.tan(degrees / deg);

function partsOf(spec: BoxSpec): (role: string) => Part {
  const { plan } = planBox({ kind: "enclosure", board: "thick", "cut by": "cnc", stands: { x: 10, y: 10 }, ...spec });
  return (role) => plan.built.parts.find((part) => part.role === role)!;
}

/** How long face and back are between the edges `one` and `other`, which run across. */
function lengths(part: Part): { readonly face: readonly number[]; readonly back: readonly number[] } {
  const [face, back] = facesOf(part).map((outline) => {
    const { min, max } = extentsOf(outline);
    return [max.x - min.x, max.y - min.y];
  });
  return { face: face!, back: back! };
}

const tilt = (part: Part, edge: string) => (part.edges[edge]?.bevel ?? 0) * deg;

/** What two numbers have in common whichever comes first. */
const sizes = (numbers: readonly number[]) => [...numbers].sort((a, b) => a - b);

function expectSizes(found: readonly number[], wanted: readonly number[]): void {
  const right = sizes(wanted);
  sizes(found).forEach((size, i) => void expect(size).toBeCloseTo(right[i]!, 6));
}

describe("a raked box worked by hand", () => {
  // Seen from the side: bottom 300, back upright 400, top 200, so the front leans 100 in 400: from upright
  //   lean = atan(100 / 400) = 14.036243 degrees, its length sqrt(400^2 + 100^2) = 412.310563.
  // The corner at the bottom opens 90 - 14.036 = 75.964, the one at the top 90 + 14.036 = 104.036 degrees. The front leans,
  // so it runs over both; it is cut in the planes of bottom and top, they on its back, all four edges tilted by the lean.
  const part = partsOf({
    outside: {
      side: [
        { at: [0, 0], side: "bottom" },
        { at: [300, 0], side: "rake" },
        { at: [200, 400], side: "top" },
        { at: [0, 400], side: "back" },
      ],
      width: 600,
    },
  });
  const lean = Math.atan(100 / 400) * deg;
  const width = 600 - 2 * t; // between the cheeks

  it("tilts the blade by the lean, towards the back at a narrow corner and away from it at a wide one", () => {
    expect(lean).toBeCloseTo(14.036243, 6);
    expect(tilt(part("rake"), "bottom")).toBeCloseTo(14.036243, 6); // back smaller
    expect(tilt(part("rake"), "top")).toBeCloseTo(-14.036243, 6); // back larger
    expect(tilt(part("bottom"), "rake")).toBeCloseTo(14.036243, 6);
    expect(tilt(part("top"), "rake")).toBeCloseTo(-14.036243, 6);
    expect(tilt(part("bottom"), "back")).toBe(0);
  });

  it("leaves the raked front as long behind as before: what the narrow corner takes the wide one gives", () => {
    // t tan 14.036243 = 18.2 x 0.25 = 4.55 less at the bottom, 4.55 more at the top
    expect(t * tan(lean)).toBeCloseTo(4.55, 9);
    expectSizes(lengths(part("rake")).face, [width, Math.sqrt(400 ** 2 + 100 ** 2)]);
    expectSizes(lengths(part("rake")).back, [width, Math.sqrt(400 ** 2 + 100 ** 2) - 4.55 + 4.55]);
  });

  it("cuts bottom and top on the back of the front, 18.2 / cos 14.036 in from the outline", () => {
    // along a level line the front is t / cos(lean) = 18.2 x sqrt(1 + 1/16) = 18.760097 thick
    const through = t * Math.sqrt(1 + 1 / 16);
    expect(through).toBeCloseTo(18.7601, 4);
    expectSizes(lengths(part("bottom")).face, [width, 300 - through]);
    expectSizes(lengths(part("bottom")).back, [width, 300 - through - 4.55]);
    expectSizes(lengths(part("top")).face, [width, 200 - through]);
    expectSizes(lengths(part("top")).back, [width, 200 - through + 4.55]);
    // the back stands between bottom and top, square
    expectSizes(lengths(part("back")).face, [width, 400 - 2 * t]);
    expectSizes(lengths(part("back")).back, [width, 400 - 2 * t]);
  });

  it("has the air of the trapezoid that is left", () => {
    // heights 18.2 and 381.8 inside; the front's back lies x = 300 - through - y / 4; the back's inside x = 18.2
    const through = t * Math.sqrt(1 + 1 / 16);
    const wide = (y: number) => 300 - through - y / 4 - t;
    const area = ((wide(t) + wide(400 - t)) / 2) * (400 - 2 * t);
    const { plan } = planBox({
      kind: "enclosure",
      board: "thick",
      "cut by": "cnc",
      outside: {
        side: [
          [0, 0],
          [300, 0],
          [200, 400],
          [0, 400],
        ].map((at) => ({ at })),
        width: 600,
      },
    });
    expect(plan.built.air[0]!.terms[0]!.litres).toBeCloseTo((area * width) / 1e6, 9);
  });
});

describe("mitred corners worked by hand", () => {
  // A rectangle 400 x 300 in plan with a corner cut off 100 both ways: the cut-off wall is 100 sqrt 2 long, its corners
  // open 135 degrees. A mitre halves the turn of 45: tilt 22.5; each end of a back is short by t tan 22.5 = 7.538687.
  const part = partsOf({
    outside: {
      plan: [
        { at: [0, 0], side: "rear" },
        { at: [400, 0], side: "right" },
        { at: [400, 200], side: "cut" },
        { at: [300, 300], side: "front" },
        { at: [0, 300], side: "left" },
      ],
      height: 350,
    },
  });
  const tall = 350 - 2 * t;

  it("tilt by half the turn, and shorten the back at both ends", () => {
    expect(tilt(part("cut"), "right")).toBeCloseTo(22.5, 9);
    expect(tilt(part("cut"), "front")).toBeCloseTo(22.5, 9);
    expect(t * (Math.SQRT2 - 1)).toBeCloseTo(7.538687, 6); // tan 22.5 = sqrt 2 - 1
    expectSizes(lengths(part("cut")).face, [100 * Math.SQRT2, tall]);
    expectSizes(lengths(part("cut")).back, [100 * Math.SQRT2 - 2 * t * (Math.SQRT2 - 1), tall]);
  });

  it("fold a square box with 45 degrees all round, each back two boards shorter", () => {
    const folded = partsOf({ outside: { width: 500, depth: 420, height: 300 }, joints: { form: "mitre" } });
    for (const [role, sides] of [
      ["top", [500, 420]],
      ["front", [500, 300]],
      ["left", [420, 300]],
    ] as const) {
      expectSizes(lengths(folded(role)).face, sides);
      expectSizes(
        lengths(folded(role)).back,
        sides.map((side) => side - 2 * t),
      );
      for (const edge of Object.values(folded(role).edges)) expect(edge.bevel * deg).toBeCloseTo(45, 9);
    }
  });
});

describe("a stepped box worked by hand", () => {
  // Seen from the side: 540 deep and 330 high, less a step 220 deep and 150 high under its rear; 400 wide, cheeks over
  // the ends, so every wall is 400 - 36.4 = 363.6 wide. Level walls run over upright ones: in the corner that goes in the
  // one over the arch goes on by a board, to the inner side of the step.
  const part = partsOf({
    outside: {
      side: [
        { at: [0, 150], side: "over the arch" },
        { at: [220, 150], side: "step" },
        { at: [220, 0], side: "bottom" },
        { at: [540, 0], side: "front" },
        { at: [540, 330], side: "top" },
        { at: [0, 330], side: "rear" },
      ],
      width: 400,
    },
  });
  const panels: readonly (readonly [string, number])[] = [
    ["over the arch", 220 + t],
    ["step", 150 - t],
    ["bottom", 540 - 220],
    ["front", 330 - 2 * t],
    ["top", 540],
    ["rear", 330 - 150 - 2 * t],
  ];

  it.each(panels)("has %s of its length, square at both ends", (role, length) => {
    expectSizes(lengths(part(role)).face, [length, 400 - 2 * t]);
    expect(Object.values(part(role).edges).every(({ bevel }) => bevel === 0)).toBe(true);
  });

  it("has cheeks of the whole profile", () => {
    expectSizes(lengths(part("left")).face, [540, 330]);
    // a radius of 6 in the corner that goes in: 36 (1 - pi / 4) more than the sharp profile; common practice, no source
    const { outer } = part("left").profile;
    expect(outer.filter(({ bulge }) => bulge !== 0)).toHaveLength(1);
  });

  it("has the air of the whole rectangle inside less what the step takes with its boards round it", () => {
    const { plan } = planBox({
      kind: "enclosure",
      board: "thick",
      "cut by": "cnc",
      outside: {
        side: [
          [0, 150],
          [220, 150],
          [220, 0],
          [540, 0],
          [540, 330],
          [0, 330],
        ].map((at) => ({ at })),
        width: 400,
      },
    });
    const area = (540 - 2 * t) * (330 - 2 * t) - 220 * 150;
    expect(plan.built.air[0]!.terms[0]!.litres).toBeCloseTo((area * (400 - 2 * t)) / 1e6, 9);
  });
});
