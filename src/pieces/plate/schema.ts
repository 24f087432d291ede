import { z } from "zod";
import type { Door } from "../../input/door.js";
import { name } from "../../job/names.js";
import { cutBy, rowName } from "../common/keys.js";

/** The keys of a plate: a flat trim board over the surveyed outline. */
export function plateSchema(door: Door) {
  const gap = () => door.length({ min: 0, max: 2000 });
  const notch = () =>
    z.strictObject({
      around: name(),
      round: door.length({ min: 0, max: 300 }).optional(),
      "open to": name().optional(),
    });
  return z.strictObject({
    kind: z.literal("plate"),
    board: name(),
    outline: z.literal("space"),
    height: z.union([z.string().regex(topOf), door.length({ min: -1000, max: 3000 })]),
    gap: gap().optional(),
    sides: z
      .record(
        name(),
        z.strictObject({ gap: gap().optional(), bare: z.boolean().optional(), against: name().optional() }),
      )
      .optional(),
    notch: z.union([notch(), z.array(notch()).max(40)]).optional(),
    "open over": z
      .strictObject({
        driver: name().optional(),
        ring: name().optional(),
        gap: gap().optional(),
        edge: z.strictObject({ chamfer: door.length({ min: 0.5, max: 50 }) }).optional(),
      })
      .optional(),
    covered: z
      .strictObject({
        with: name(),
        edges: z.union([z.literal("all"), z.array(name()).max(80)]).optional(),
        wrap: door.length({ min: 0, max: 300 }).optional(),
        back: z.enum(["groove", "rebate", "none"]).optional(),
      })
      .optional(),
    bolted: z
      .strictObject({
        to: name(),
        with: rowName(),
        insert: rowName().optional(),
        count: z.int().min(2).max(60),
        "set in": door.length({ min: 10, max: 500 }),
      })
      .optional(),
    "cut by": cutBy(),
  });
}

/** "top of box": the plate lies on that piece. */
export const topOf = /^top of \S.*$/;

export type PlateSpec = z.output<ReturnType<typeof plateSchema>>;
export type NotchSpec = Exclude<NonNullable<PlateSpec["notch"]>, readonly unknown[]>;

export function notchesOf(spec: PlateSpec): readonly NotchSpec[] {
  if (spec.notch === undefined) return [];
  return Array.isArray(spec.notch) ? spec.notch : [spec.notch];
}

/** The piece that the plate lies on, where its height names one. */
export function bearerOf(spec: PlateSpec): string | undefined {
  return typeof spec.height === "string" ? spec.height.slice("top of ".length).trim() : undefined;
}
