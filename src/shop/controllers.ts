import type { Controller } from "../model/shop.js";

const source = "common practice, no source";
const changes: Controller = {
  units: "mm",
  decimals: 4,
  tools: "change",
  circles: "whole",
  arcs: "centre",
  chord: 0.01,
  dwell: "seconds",
  end: "M30",
  source,
};
const pauses: Controller = { ...changes, tools: "pause", circles: "halves" };

/** Controllers by their habits; whose they are does not matter. Four decimals in mm are as fine as five in inches. */
export const controllers = {
  "changes tools": changes,
  "changes tools, inch": { ...changes, units: "inch", decimals: 5 },
  "pauses for tools": pauses,
  "pauses for tools, inch": { ...pauses, units: "inch", decimals: 5 },
  "a file a tool": { ...pauses, tools: "file" },
  "lines only": { ...pauses, arcs: "lines" },
} as const satisfies Readonly<Record<string, Controller>>;

export type ControllerName = keyof typeof controllers;
