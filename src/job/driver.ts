import { z } from "zod";
import type { Door } from "../input/door.js";
import { type FindingDef, mm } from "../input/finding.js";
import { refuse } from "../input/refusal.js";
import type { Driver } from "../model/job.js";
import { words } from "./names.js";

export const cutOutTooLarge: FindingDef = {
  code: "cut-out-too-large",
  severity: "error",
  words: "the cut-out, {found}, is not smaller than the frame, {frame}",
  next: "check both on the data sheet, or measure them",
  explain:
    "A driver hangs by its frame, so the frame is always wider than the hole. One of the two is not what it should be.",
};

export const boltCircleAway: FindingDef = {
  code: "bolt-circle-away",
  severity: "error",
  words: "the bolt circle, {found}, does not lie between cut-out and frame",
  next: "give the circle's diameter: more than {least}[ and less than {most}]",
  explain:
    "The screws of a driver go through its frame into the board round the cut-out. A circle that lies elsewhere is most likely a radius, or another driver's.",
};

const across = { min: 20, max: 700 };

/** A driver's data sheet. Only the cut-out must be known: a sheet may lack everything else. */
export function driverSchema(door: Door) {
  const height = { min: 0, max: 100 };
  const q = { min: 0.05, max: 20 };
  return z
    .strictObject({
      name: words(80).optional().describe("Maker and type, as it is to stand in the lists."),
      "cut-out": door.length(across).describe("Diameter of the hole it goes into."),
      frame: door.length(across).optional().describe("Outside diameter of the frame."),
      bolts: z
        .strictObject({
          circle: door.length(across).describe("Diameter of the circle the screws stand on."),
          holes: door.count({ min: 2, max: 24 }).describe("How many screws."),
          screw: words(40).optional().describe("The screw, such as 4.0 x 25."),
          start: door
            .angle({ min: -2 * Math.PI, max: 2 * Math.PI })
            .optional()
            .describe("Where the first one stands."),
        })
        .optional(),
      flange: door.length(height).optional().describe("Height of the frame's edge, gasket included."),
      depth: door.length({ min: 5, max: 600 }).optional().describe("From under the frame to the back of the magnet."),
      magnet: door.length({ min: 5, max: 500 }).optional().describe("Diameter of the magnet."),
      vented: z.boolean().optional().describe("true where the magnet has a vent at its back."),
      "stands proud": door.length(height).optional().describe("How far the surround stands above the frame at rest."),
      travel: door.length(height).optional().describe("How far the cone moves outward from rest."),
      displaces: door.volume({ min: 0, max: 60 }).optional().describe("What the driver takes from the box's volume."),
      mass: door.mass({ min: 0.05, max: 100 }).optional().describe("Weight."),
      wants: z
        .strictObject({
          closed: door.volumes({ min: 0.2, max: 2000 }).optional().describe("Net volumes the maker asks for, closed."),
          ported: door.volumes({ min: 0.2, max: 2000 }).optional().describe("And with a port, by its net volume too."),
        })
        .optional(),
      data: z
        .strictObject({
          fs: door.frequency({ min: 5, max: 30_000 }).optional(),
          qts: door.number(q).optional(),
          qes: door.number(q).optional(),
          vas: door.volume({ min: 0.01, max: 5000 }).optional(),
          xmax: door.length(height).optional(),
          sd: door.area({ min: 50, max: 400_000 }).optional(),
          power: door.power({ min: 1, max: 20_000 }).optional(),
          ohm: door.resistance({ min: 0.1, max: 100 }).optional(),
        })
        .optional(),
    })
    .superRefine((sheet, issues) => {
      const { "cut-out": cutOut, frame, bolts } = sheet;
      if (frame !== undefined && cutOut >= frame) {
        refuse(issues, cutOutTooLarge, { found: mm(cutOut), frame: mm(frame) }, ["cut-out"]);
      } else if (bolts !== undefined && (bolts.circle <= cutOut || (frame !== undefined && bolts.circle >= frame))) {
        const limits = { least: mm(cutOut), ...(frame !== undefined && { most: mm(frame) }) };
        refuse(issues, boltCircleAway, { found: mm(bolts.circle), ...limits }, ["bolts", "circle"]);
      }
    })
    .transform(({ mass: massKg, ...sheet }): Driver => ({ ...sheet, ...(massKg !== undefined && { massKg }) }));
}
