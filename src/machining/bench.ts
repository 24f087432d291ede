import type { Region } from "../geometry/profile.js";
import type { Finding } from "../input/finding.js";
import type { FeatureWork } from "../model/build.js";
import type { FeatureId } from "../model/ids.js";
import type { Part } from "../model/part.js";
import type { Operation } from "../model/program.js";
import type { Bit, Cnc } from "../model/shop.js";
import type { ToSheet } from "../nest/placed.js";
import type { Speeds } from "./speeds.js";

/** The machine with a sheet on it: z 0 is the sheet's top, mm. */
export type Bench = {
  readonly cnc: Cnc;
  readonly material: string;
  /** Thickest sheet measured. */
  readonly thickness: number;
  /** z of a cut that goes through. */
  readonly through: number;
  readonly safe: number;
  /** A machine that does not bear the whole chip takes more, shallower passes. */
  readonly light: boolean;
};

/** A bit in the spindle; `d` as measured. */
export type Tool = {
  readonly name: string;
  readonly bit: Bit;
  readonly d: number;
  readonly radius: number;
  readonly speeds: Speeds;
};

/** A part as it lies in a setup, with what is cut of it there. Regions in the setup's frame. */
export type Lying = {
  readonly part: Part;
  readonly up: "face" | "back";
  readonly to: ToSheet;
  readonly profile: Region;
  readonly blank: Region;
  readonly work: readonly FeatureWork[];
};

/** An operation and its tool. */
export type Cut = { readonly tool: Tool; readonly operation: Operation };

/** What came of a feature: what cuts it, what was found, and whether it is left out. */
export type Done = {
  readonly cuts: readonly Cut[];
  readonly findings: readonly Finding[];
  readonly withheld: readonly FeatureId[];
};

export const nothingDone: Done = { cuts: [], findings: [], withheld: [] };

export function together(all: readonly Done[]): Done {
  return {
    cuts: all.flatMap((one) => one.cuts),
    findings: all.flatMap((one) => one.findings),
    withheld: all.flatMap((one) => one.withheld),
  };
}
