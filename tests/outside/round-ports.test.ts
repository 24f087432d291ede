import { describe, expect, it } from "vitest";
import { type BoxSpec, planBox } from "../property/boxes.js";

// Whole boxes with a port of tube, worked by hand. 500 x 600 x 400 outside, of 18.2 board; mm, pi = 3.14159265.
//   inside  463.6 x 563.6 x 363.6 = 261284.96 x 363.6 = 95003211.5 mm3

const boxWith = (port: object): BoxSpec => ({
  kind: "enclosure",
  board: "thick",
  outside: { width: 500, depth: 600, height: 400 },
  stands: { x: 100, y: 100 },
  "round ports": [{ in: "front", outside: 90, ...port }],
  "held by": { straps: 2, to: "rings" },
  "cut by": "cnc",
});

function airOf(port: object) {
  const { plan, findings } = planBox(boxWith(port));
  expect(findings.filter(({ severity }) => severity === "error")).toEqual([]);
  const [air] = plan.built.air;
  const litresOf = (what: string) => air!.terms.find((term) => term.what === what)?.litres;
  return { plan, air: air!, port: litresOf("port 1"), net: air!.terms.reduce((sum, { litres }) => sum + litres, 0) };
}

describe("a box with a flared port", () => {
  // Tube 90 outside, 200 long from the outside of the front, both ends widened to 140 over 25: quarter circles of 25.
  // The inner flare is a cylinder of radius 70 less a quarter disc turned about the axis (Pappus and Guldin):
  //   cylinder         pi x 70 x 70 x 25         = 122500 pi = 384845.1
  //   quarter disc     pi x 25 x 25 / 4          = 490.874, its centroid 4 x 25 / (3 pi) = 10.6103 from its corner
  //   turned           2 pi x (70 - 10.6103) x 490.874 = 183172.7
  //   inner flare      384845.1 - 183172.7       = 201672.4
  // Of the outer flare 18.2 stand in the front; 6.8 from the tube on are inside. There the radius is 70 - y with
  // y2 = 625 - x2, and the sum of (70 - y)2 from 0 to 6.8 is 70 x 70 x 6.8 - 140 A + B with
  //   A, under the circle   (6.8 x 24.0574 + 625 x asin 0.272) / 2 = (163.591 + 172.169) / 2 = 167.880
  //   B                     625 x 6.8 - 6.8 x 6.8 x 6.8 / 3        = 4250 - 104.811          = 4145.19
  //   all                   33320 - 23503.2 + 4145.19 = 13962.0,   x pi                      = 43862.9
  // Tube between:           pi x 45 x 45 x (200 - 50) = 303750 pi                            = 954258.8
  //   port                  201672.4 + 43862.9 + 954258.8 = 1199794 mm3
  //   net                   95003211.5 - 1199794          = 93803417 mm3
  const flare = { mouth: 140, long: 25 };
  const made = airOf({ long: 200, flares: { outer: flare, inner: flare } });

  it("loses 1.1998 L to it and holds 93.8034 L", () => {
    expect(made.port).toBeCloseTo(-1.199794, 5);
    expect(made.net).toBeCloseTo(93.803417, 4);
  });

  it("has a hole of 140 for it, since the flare has to pass, and no leak", () => {
    const front = made.plan.built.parts.find(({ role }) => role === "front")!;
    const [hole] = front.features.filter(({ filledBy }) => filledBy === "port");
    const outline = hole?.cut.kind === "opening" ? hole.cut.region.outer : [];
    expect(Math.abs(outline[1]!.x - outline[0]!.x)).toBeCloseTo(140, 9);
    expect(made.air.ported).toBe(true);
  });
});

describe("a box with a bent port", () => {
  // Tube 90 outside, straight 120 from the outside of the front, a quarter turn of 80 on its middle, 60 more:
  //   middle     120 + 80 x pi / 2 + 60 = 305.6637
  //   inside     305.6637 - 18.2        = 287.4637
  //   port       x pi x 45 x 45 = 6361.7251 (Pappus and Guldin) = 1828765 mm3
  //   net        95003211.5 - 1828765   = 93174446 mm3
  const made = airOf({ long: 305.6637, elbow: { after: 120, radius: 80, to: "up" } });

  it("loses 1.8288 L to it and holds 93.1744 L", () => {
    expect(made.port).toBeCloseTo(-1.828765, 5);
    expect(made.net).toBeCloseTo(93.174446, 4);
  });

  it("has its end 200 behind the outside of the front and 140 above the port's middle", () => {
    // 120 and the radius of 80 back; the radius and 60 up. The middle lies at 200 of the box's 400, the front at 600.
    const [x, y, z] = made.plan.built.tubes![0]!.end!.at.origin;
    expect(x).toBeCloseTo(100 + 250, 3);
    expect(y).toBeCloseTo(100 + 600 - 200, 3);
    expect(z).toBeCloseTo(200 + 140, 3);
  });

  it("is bought as two tubes and an elbow", () => {
    expect(made.plan.built.buys.map(({ item }) => item).filter((item) => item.startsWith("port"))).toEqual([
      "port tube 90 mm outside, cut to 120 mm",
      "port tube 90 mm outside, cut to 60 mm",
      "port elbow 90 degrees, 90 mm outside, middle line of radius 80 mm",
    ]);
  });
});
