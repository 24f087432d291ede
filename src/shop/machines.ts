import type { Cnc, Method, Router, Saw } from "../model/shop.js";

/** How parts are cut where neither job nor piece says. */
export const cutBy: Method = "cnc";

/** `step`: what a fence can be set to and read off, mm. */
export const saw: Saw = {
  kerf: 3.2,
  step: 0.5,
  source: "full kerf 1/8 in: articles on saw blades; step: common practice",
};

export const router: Router = { step: 0.5, source: "common practice, no source" };

/** The table takes a standard sheet; `clearance` is left between parts beside the bit's own width, mm. */
export const cnc: Cnc = { length: 3100, width: 1550, clearance: 2, source: "common practice, no source" };
