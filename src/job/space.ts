import { type ZodType, z } from "zod";
import { areaOf } from "../geometry/measure.js";
import type { Profile } from "../geometry/profile.js";
import { rectangle } from "../geometry/shapes.js";
import type { Door } from "../input/door.js";
import { type FindingDef, list, text } from "../input/finding.js";
import { nearest } from "../input/nearest.js";
import { cornersSchema, placesSchema, sidesOf } from "../input/outline.js";
import { noArea, noHeight } from "../input/outlineFindings.js";
import { refuse } from "../input/refusal.js";
import type { Obstacle, Space } from "../model/job.js";
import { name, words } from "./names.js";

export const unknownSide: FindingDef = {
  code: "unknown-side",
  severity: "error",
  words: "the space has no side called {found}[; did you mean {nearest}?]",
  next: "use {allowed}, or name a side with side: at the corner before it",
  explain: "A side has the name that its first corner gives it with side:, or side.1, side.2 and so on in their order.",
};

const height = { min: -2000, max: 5000 };
const sideNames = ["side.1", "side.2", "side.3", "side.4"] as const;

/** Something in the vehicle that parts keep away from: a block from corner to corner, or an outline between heights. */
export function obstacleSchema(door: Door): ZodType<Obstacle> {
  const corner = () => z.tuple([door.length(reach), door.length(reach), door.length(height)]);
  const common = {
    clear: door.length({ min: 0, max: 500 }).optional().describe("How far parts keep away from it."),
    is: words(40).optional().describe("What it is, such as battery: drawings then show the caution that goes with it."),
  };
  const block = z
    .strictObject({
      from: corner().describe("One corner: [x, y, z]."),
      to: corner().describe("The opposite one."),
      ...common,
    })
    .transform(({ from, to, clear, is }, issues): Obstacle => {
      const outline = rectangle(from[0], from[1], to[0], to[1], sideNames);
      if (areaOf(outline) <= 0) return refuse(issues, noArea, {}, ["to"]);
      if (from[2] === to[2]) return refuse(issues, noHeight, {}, ["to", 2]);
      return obstacle(outline, Math.min(from[2], to[2]), Math.max(from[2], to[2]), clear, is);
    });
  const shape = z
    .strictObject({
      outline: placesSchema(door).describe("Its corners seen from above: [[x, y], [x, y], ...]."),
      bottom: door.length(height),
      top: door.length(height),
      ...common,
    })
    .transform(({ outline, bottom, top, clear, is }, issues): Obstacle => {
      return top <= bottom ? refuse(issues, noHeight, {}, ["top"]) : obstacle(outline, bottom, top, clear, is);
    });
  return z.union([block, shape]);
}

const reach = { min: -20_000, max: 20_000 };

function obstacle(outline: Profile, bottom: number, top: number, clear: number | undefined, is: string | undefined) {
  return { outline, bottom, top, clear: clear ?? 0, ...(is !== undefined && { is }) };
}

function zoneSchema(door: Door): ZodType<{ readonly outline: Profile }> {
  const rectangular = z
    .strictObject({
      from: door.point().describe("One corner: [x, y]."),
      to: door.point().describe("The opposite one."),
    })
    .transform(({ from, to }, issues) => {
      const outline = rectangle(from[0], from[1], to[0], to[1], sideNames);
      return areaOf(outline) <= 0 ? refuse(issues, noArea, {}, ["to"]) : { outline };
    });
  return z.union([rectangular, z.strictObject({ outline: placesSchema(door) })]);
}

function lineSchema(door: Door) {
  return z.union([z.strictObject({ x: door.length(reach) }), z.strictObject({ y: door.length(reach) })]);
}

/** What was measured in the vehicle. `obstacles` are read by the schema that is handed in. */
export function spaceSchema(door: Door, obstacles: ZodType<Readonly<Record<string, Obstacle>>>): ZodType<Space> {
  return z
    .strictObject({
      datum: words(200).optional().describe("What all sizes are measured from, in words."),
      outline: cornersSchema(door, name()).describe("Corners of the floor seen from above: x to the right, y forward."),
      height: door.length({ min: 20, max: 5000 }).optional().describe("Height that is free above the floor."),
      obstacles: obstacles.describe("What stays in the vehicle, by name."),
      lines: z.record(name(), lineSchema(door)).nullish().describe("Reference lines across the vehicle, by name."),
      opening: z
        .strictObject({
          side: words(40).optional().describe("The side of the outline that is loaded from."),
          width: door.length({ min: 50, max: 5000 }),
          height: door.length({ min: 50, max: 5000 }),
        })
        .optional()
        .describe("The opening everything has to come through."),
      "no screws": z
        .record(name(), zoneSchema(door))
        .nullish()
        .describe("Where no screw may go into the floor, by name: tank, lines, wiring."),
    })
    .transform(({ lines, "no screws": zones, ...space }, issues): Space => {
      const sides = sidesOf(space.outline);
      const side = space.opening?.side;
      if (side !== undefined && !sides.includes(side)) {
        const close = nearest(side, sides);
        const facts = { found: text(side), allowed: list(sides), ...(close && { nearest: text(close) }) };
        return refuse(issues, unknownSide, facts, ["opening", "side"]);
      }
      return { ...space, sides, lines: lines ?? {}, "no screws": zones ?? {} };
    });
}
