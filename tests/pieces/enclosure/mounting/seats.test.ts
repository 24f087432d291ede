import { describe, expect, it } from "vitest";
import { turn } from "../../../../src/geometry/frame.js";
import { type BoxSpec, planBox } from "../../../property/boxes.js";

const at = (...places: readonly (readonly [number, number])[]) => places.map((place) => ({ at: place }));
const raked = { side: at([0, 0], [320, 0], [220, 400], [0, 400]), width: 900 };
const made = (spec: BoxSpec) =>
  planBox({ kind: "enclosure", board: "thick", "cut by": "cnc", stands: { x: 10, y: 10 }, outside: raked, ...spec })
    .plan.built;
const holesOf = (spec: BoxSpec, role: string) =>
  made(spec)
    .parts.find((part) => part.role === role)!
    .features.filter(({ cut }) => cut.kind === "hole" && cut.depth !== "through" && cut.d === 2.3);

describe("drivers of a box", () => {
  it("sit on any face and look square out of it", () => {
    const [mount] = made({ driver: { is: "six", in: "front" } }).mounts;
    // the front leans by atan(100 / 400): its outward way is (0, cos, sin) of that
    const out = turn(mount!.at.quat, [0, 0, 1]);
    const lean = Math.atan(100 / 400);
    [0, Math.cos(lean), Math.sin(lean)].forEach((c, i) => void expect(out[i]).toBeCloseTo(c, 9));
    // in the middle of the face: half the width, half way up the lean
    [10 + 450, 10 + 270, 200].forEach((c, i) => void expect(mount!.at.origin[i]).toBeCloseTo(c, 9));
  });

  it("are several, each with its opening and its pilots", () => {
    const drivers = [250, 650].map((x) => ({ is: "six", in: "front", at: [x, 200] }));
    const built = made({ drivers });
    expect(built.mounts).toHaveLength(2);
    const front = built.parts.find(({ role }) => role === "front")!;
    expect(front.profile.holes.length).toBeGreaterThanOrEqual(2);
    const names = front.features.map(({ id }) => id.split(":")[1]);
    expect(names).toContain("opening.driver.1");
    expect(names).toContain("driver.2.4");
    expect(built.buys.find(({ item }) => item === "driver six")?.count).toBe(2);
  });

  it("turn on their axis by what the job says", () => {
    const first = (turned?: string) => {
      const [hole] = holesOf({ driver: { is: "six", in: "front", ...(turned ? { turned } : {}) } }, "front");
      return hole!.cut.kind === "hole" ? hole!.cut.at : undefined;
    };
    const [a, b] = [first()!, first("45deg")!];
    // a circle of 155: turned by 45 degrees a hole moves by 155 x sin 22.5
    expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeCloseTo(155 * Math.sin(Math.PI / 8), 6);
  });

  it("sink into a recess as wide as their frame with room to go in, and as deep as their flange", () => {
    const built = made({ driver: { is: "six", in: "front", recess: "frame" } });
    const front = built.parts.find(({ role }) => role === "front")!;
    const pocket = front.features.find(({ cut }) => cut.kind === "pocket")!.cut;
    expect(pocket).toMatchObject({ depth: 5 });
    const plain = made({ driver: { is: "six", in: "front" } }).mounts[0]!.at.origin;
    const sunk = built.mounts[0]!.at.origin;
    expect(Math.hypot(sunk[0] - plain[0], sunk[1] - plain[1], sunk[2] - plain[2])).toBeCloseTo(5, 9);
  });

  it("go through both boards of a double face", () => {
    const built = made({ driver: { is: "six", in: "front" }, panels: { front: { double: "thin" } } });
    const lining = built.parts.find(({ role }) => role === "front lining")!;
    expect(lining.profile.holes).toHaveLength(1);
  });
});
