import type { Screw } from "../model/shop.js";

const inch = 25.4;
const cone = (degrees: number) => (degrees * Math.PI) / 180;
const metricSource = "root diameters from memory; heads, pilots and clearance: common practice, no source";
const inchSource = "ASME B18.6.1, open fastener tables; root and clearance from memory; pilot by 85 to 95 % of root";

// Parallel chipboard screws. The pilot in MDF is 85 to 95 % of the root (MDF makers' published advice on screwing);
// the head is twice the diameter.
function chipboard(d: number, root: number, pilot: number, lengths: readonly number[]): Screw {
  return { d, root, head: { d: 2 * d, angle: cone(90) }, pilot, clearance: d + 0.5, lengths, source: metricSource };
}

/** Major diameter, root, head and clearance in inches; pilot in mm. */
function gauge(
  d: number,
  root: number,
  head: number,
  clearance: number,
  pilot: number,
  lengths: readonly number[],
): Screw {
  return {
    d: d * inch,
    root: root * inch,
    head: { d: head * inch, angle: cone(82) },
    pilot,
    clearance: clearance * inch,
    lengths: lengths.map((length) => length * inch),
    source: inchSource,
  };
}

/** Countersunk screws by diameter or gauge; `lengths` are what is on the shelf, mm. */
export const screws: Readonly<Record<string, Screw>> = {
  "3.5": chipboard(3.5, 2.2, 2, [16, 20, 25, 30, 35, 40, 45, 50]),
  "4.0": chipboard(4, 2.5, 2.3, [16, 20, 25, 30, 35, 40, 45, 50, 60, 70]),
  "4.5": chipboard(4.5, 2.7, 2.5, [20, 25, 30, 35, 40, 45, 50, 60, 70, 80]),
  "5.0": chipboard(5, 3.2, 3, [25, 30, 35, 40, 45, 50, 60, 70, 80]),
  "#6": gauge(0.142, 0.113, 0.279, 0.17, 2.6, [0.5, 0.625, 0.75, 1, 1.25, 1.5, 1.75, 2]),
  "#8": gauge(0.168, 0.131, 0.332, 0.196, 3, [0.5, 0.625, 0.75, 1, 1.25, 1.5, 1.75, 2, 2.5, 3]),
  "#10": gauge(0.194, 0.152, 0.385, 0.221, 3.5, [0.75, 1, 1.25, 1.5, 1.75, 2, 2.5, 3]),
};
