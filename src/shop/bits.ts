import type { Bit } from "../model/shop.js";

const inch = 25.4;
const practice = "common practice, no source";

function straight(d: number, cuttingLength: number, shank: number): Bit {
  return { kind: "straight", d, flutes: 2, "cutting length": cuttingLength, shank, source: practice };
}

/** The part that cuts upward is about as long as the bit is wide. */
function compression(d: number, cuttingLength: number, shank: number): Bit {
  return { kind: "compression", d, flutes: 2, "cutting length": cuttingLength, shank, "up-cut": d, source: practice };
}

/** The bearing is as wide as the bit: what it runs along is what is cut. */
function flushTrim(d: number, cuttingLength: number, shank: number): Bit {
  return { kind: "flush trim", d, flutes: 2, "cutting length": cuttingLength, shank, bearing: d, source: practice };
}

/** `d` of a round-over bit is twice the radius that it leaves; its bearing runs along the edge below. */
function roundOver(radius: number): Bit {
  return { kind: "round-over", d: 2 * radius, flutes: 2, bearing: (3 * inch) / 8, source: practice };
}

/** A cone that ends in a point: as long as its slope reaches. */
function cone(kind: "chamfer" | "v", d: number, degrees: number): Bit {
  const angle = (degrees * Math.PI) / 180;
  const slope = d / 2 / Math.tan(angle / 2);
  return { kind, d, flutes: 2, "cutting length": slope, angle, source: practice };
}

function drill(d: number): Bit {
  return { kind: "drill", d, source: practice };
}

/** Router bits and drills by the name a fabricator types, mm. */
export const bits: Readonly<Record<string, Bit>> = {
  "3 straight": straight(3, 12, 6),
  "4 straight": straight(4, 15, 6),
  "5 straight": straight(5, 17, 6),
  "6 straight": straight(6, 25, 6),
  "8 straight": straight(8, 32, 8),
  "10 straight": straight(10, 35, 8),
  "12 straight": straight(12, 40, 12),
  "16 straight": straight(16, 40, 12),
  "20 straight": straight(20, 40, 12),
  "1/8 straight": straight(inch / 8, inch / 2, inch / 4),
  "3/16 straight": straight((3 * inch) / 16, (5 * inch) / 8, inch / 4),
  "1/4 straight": straight(inch / 4, inch, inch / 4),
  "3/8 straight": straight((3 * inch) / 8, 1.25 * inch, inch / 2),
  "1/2 straight": straight(inch / 2, 1.5 * inch, inch / 2),
  "3/4 straight": straight((3 * inch) / 4, 1.5 * inch, inch / 2),
  "6 compression": compression(6, 25, 6),
  "8 compression": compression(8, 32, 8),
  "1/4 compression": compression(inch / 4, inch, inch / 4),
  "3/8 compression": compression((3 * inch) / 8, 1.25 * inch, (3 * inch) / 8),
  "1/4 flush trim": flushTrim(inch / 4, inch, inch / 4),
  "1/2 flush trim": flushTrim(inch / 2, 1.5 * inch, inch / 2),
  "3 round-over": roundOver(3),
  "6 round-over": roundOver(6),
  "10 round-over": roundOver(10),
  "1/8 round-over": roundOver(inch / 8),
  "1/4 round-over": roundOver(inch / 4),
  "3/8 round-over": roundOver((3 * inch) / 8),
  "45 chamfer": cone("chamfer", 25, 90),
  "45 bearing chamfer": { ...cone("chamfer", 32, 90), "cutting length": 11, bearing: 10 },
  "60 v": cone("v", 6, 60),
  "90 v": cone("v", 12, 90),
  "2 drill": drill(2),
  "2.3 drill": drill(2.3),
  "2.5 drill": drill(2.5),
  "3 drill": drill(3),
  "3.5 drill": drill(3.5),
  "4 drill": drill(4),
  "4.5 drill": drill(4.5),
  "5 drill": drill(5),
  "5.5 drill": drill(5.5),
  "6 drill": drill(6),
  "6.6 drill": drill(6.6),
  "7 drill": drill(7),
  "7.5 drill": drill(7.5),
  "8 drill": drill(8),
  "9 drill": drill(9),
  "10 drill": drill(10),
  "11.5 drill": drill(11.5),
};
