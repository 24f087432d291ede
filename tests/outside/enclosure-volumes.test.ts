import { describe, expect, it } from "vitest";
import { centreLineLength } from "../../src/acoustics/centreLine.js";
import { driverBodyL } from "../../src/acoustics/driverBody.js";
import { roundPortL } from "../../src/acoustics/roundPort.js";

// What stands in a box, worked by hand. Lengths in mm, pi = 3.14159265.

describe("a driver shaped like a frustum", () => {
  // V = pi h / 3 (R2 + R r + r2), Heron, Metrica II. R 120, r 50, h 100:
  //   R2 + R r + r2 = 14400 + 6000 + 2500 = 22900
  //   x 100 / 3     = 763333.33
  //   x pi          = 2398082.4 mm3 = 2.398 L
  it("of 240 to 100 across and 100 deep takes 2.398 L", () => {
    expect(driverBodyL({ cutOut: 240, depth: 100, magnet: 100 })).toBeCloseTo(2.3980824, 6);
  });

  // The same basket with a magnet 100 across and 30 deep behind it, 130 in all:
  //   magnet  pi x 50 x 50 x 30 = 75000 pi = 235619.4 mm3
  //   sum     2398082.4 + 235619.4         = 2633701.8 mm3 = 2.634 L
  it("with a magnet 30 deep behind it takes 2.634 L", () => {
    expect(driverBodyL({ cutOut: 240, depth: 130, magnet: 100, magnetDepth: 30 })).toBeCloseTo(2.6337018, 6);
  });

  // Hung in a baffle of 18, the first 18 of it take nothing of the air:
  //   across there  240 - 18 x (240 - 100) / 100 = 240 - 25.2 = 214.8, so R = 107.4, and h = 100 - 18 = 82
  //   R2 + R r + r2 = 11534.76 + 5370 + 2500 = 19404.76
  //   x 82 / 3      = 530396.77
  //   x pi          = 1666290.6
  //   and the magnet  + 235619.4 = 1901910.1 mm3 = 1.902 L
  it("in a baffle of 18 takes 1.902 L of the air behind it", () => {
    expect(driverBodyL({ cutOut: 240, depth: 130, magnet: 100, magnetDepth: 30 }, 18)).toBeCloseTo(1.9019101, 6);
  });
});

describe("a port", () => {
  // pi / 4 x 114.3 x 114.3 x 250 = 0.78539816 x 13064.49 x 250 = 2565206.6 mm3
  it("of 114.3 outside and 250 long takes 2.565 L", () => {
    expect(roundPortL({ outside: 114.3, length: 250, flares: [] })).toBeCloseTo(2.565, 3);
  });

  // Tube 110 outside, 250 long in all, both ends flared to 160 across over 25: quarter circles of radius 25.
  // A flare is a cylinder of radius 80 less a quarter disc turned about the axis (second theorem of Pappus and Guldin):
  //   cylinder                pi x 80 x 80 x 25          = 160000 pi = 502654.8
  //   quarter disc            pi x 25 x 25 / 4           = 490.874
  //   its centroid            4 x 25 / (3 pi) = 10.6103 from its corner, which lies at radius 80: 69.3897
  //   turned once round       2 pi x 69.3897 x 490.874   = 214015.2
  //   one flare               502654.8 - 214015.2        = 288639.6
  //   tube between            pi x 55 x 55 x (250 - 50)  = 605000 pi = 1900663.6
  //   all                     1900663.6 + 2 x 288639.6   = 2477942.8 mm3 = 2.478 L
  it("of 110 outside and 250 long, flared to 160 at both ends, takes 2.478 L", () => {
    const flare = { mouth: 160, length: 25 };
    expect(roundPortL({ outside: 110, length: 250, flares: [flare, flare] })).toBeCloseTo(2.4779428, 6);
  });

  // Tube 90 outside, straight 120 and 60 with a quarter turn of radius 80 on its middle between:
  //   middle   120 + 60 + 80 x pi / 2 = 180 + 125.6637 = 305.6637
  //   section  pi x 45 x 45           = 6361.7251
  //   all      305.6637 x 6361.7251   = 1944548 mm3 = 1.945 L (Pappus and Guldin)
  it("of 90 outside with an elbow takes its section times its middle", () => {
    const length = centreLineLength([120, 60], [{ radius: 80, turn: Math.PI / 2 }]);
    expect(length).toBeCloseTo(305.6637, 4);
    expect(roundPortL({ outside: 90, length, flares: [] })).toBeCloseTo(1.944548, 5);
  });
});
