import type { Bush } from "../model/shop.js";

const inch = 25.4;
// Bore and height differ between makers: what is in the drawer comes first.
const source = "outside diameters, bores and heights: common practice, no source";

/** Walls of 1.5 mm. */
function metric(d: number): Bush {
  return { d, bore: d - 3, stands: 8, source };
}

/** Inches. */
function imperial(d: number, bore: number, stands: number): Bush {
  return { d: d * inch, bore: bore * inch, stands: stands * inch, source };
}

/** Guide bushes by outside diameter. */
export const bushes: Readonly<Record<string, Bush>> = {
  "10 bush": metric(10),
  "12 bush": metric(12),
  "16 bush": metric(16),
  "17 bush": metric(17),
  "20 bush": metric(20),
  "24 bush": metric(24),
  "27 bush": metric(27),
  "30 bush": metric(30),
  "40 bush": metric(40),
  "5/16 bush": imperial(5 / 16, 1 / 4, 1 / 4),
  "3/8 bush": imperial(3 / 8, 9 / 32, 3 / 8),
  "7/16 bush": imperial(7 / 16, 11 / 32, 3 / 8),
  "1/2 bush": imperial(1 / 2, 13 / 32, 3 / 8),
  "5/8 bush": imperial(5 / 8, 17 / 32, 3 / 8),
  "3/4 bush": imperial(3 / 4, 21 / 32, 3 / 8),
  "51/64 bush": imperial(51 / 64, 21 / 32, 3 / 8),
  "1 bush": imperial(1, 27 / 32, 3 / 8),
};
