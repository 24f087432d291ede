import type { Cnc, Method, Router, Saw, TrackSaw } from "../model/shop.js";
import { controllers } from "./controllers.js";

/** How parts are cut where neither job nor piece says. */
export const cutBy: Method = "cnc";

/** `step`: what a fence can be set to and read off, mm. */
export const saw: Saw = {
  kerf: 3.2,
  step: 0.5,
  "longest cross-cut": 650,
  "one person": { length: 2440, width: 650 },
  setting: 0.01,
  source: "full kerf 1/8 in: articles on saw blades; the rest: common practice",
};

export const trackSaw: TrackSaw = {
  kerf: 2.4,
  "longest cut": 3100,
  source: "thin kerf 3/32 in: articles on saw blades; two tracks joined: common practice",
};

export const router: Router = { step: 0.5, source: "common practice, no source" };

/** A light machine whose table takes a standard sheet; a rigid one takes the whole chip, a share of 1. */
export const cnc: Cnc = {
  length: 3100,
  width: 1550,
  clearance: 2,
  travel: 150,
  "safe height": 10,
  zero: "bed",
  feed: { least: 200, most: 10_000 },
  plunge: 2000,
  rapid: 15_000,
  rpm: { least: 6000, most: 24_000 },
  "chip share": 0.5,
  tools: {},
  direction: "climb",
  hold: "tabs",
  "second side": "hand",
  numbers: "none",
  controller: controllers["changes tools"],
  source: "common practice, no source",
};
