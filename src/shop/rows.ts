import { type ZodType, z } from "zod";
import type { Door } from "../input/door.js";
import type { Controller, Offcut } from "../model/shop.js";
import { type ControllerName, controllers } from "./controllers.js";
import { rules } from "./rules.js";
import { clearKeys } from "./zones.js";

// One schema for each kind of row, made once for a file: `full` for a new row, `partial` for one laid over a built-in
// row. To make one for each row would take longer than all the rest of reading a shop file.

/** The schemas of one kind of row. */
export type RowSchemas<T> = { readonly full: ZodType<T>; readonly partial: ZodType<Partial<T>> };

function rowOf<S extends z.ZodRawShape>(shape: S) {
  const full = z.strictObject({ ...shape, source: source() });
  return { full, partial: full.partial() };
}

const source = () => z.string().max(300).optional();
export const words = () => z.string().trim().min(1).max(120);
const small = { min: 0.1, max: 200 };
export const thickness = { min: 1, max: 80 };
export const wide = { min: 20, max: 6000 };
const turning = { min: 100, max: 100_000 };
const money = { min: 0, max: 1e6 };

export const trim = (door: Door) => door.length({ min: 0, max: 100 });

export function boardRow(door: Door) {
  const sheet = z.strictObject({
    length: door.length(wide),
    width: door.length(wide),
    trim: trim(door)
      .optional()
      .transform((written) => written ?? rules.trim.value),
    price: door.number(money).optional(),
    "on hand": door.count({ min: 0, max: 1000 }).optional(),
    measured: door.length(thickness).optional(),
    ...clearKeys(door),
    source: source(),
  });
  return rowOf({
    material: words(),
    thickness: door.length(thickness),
    measured: door.length(thickness).optional(),
    density: door.number({ min: 50, max: 3000 }),
    grain: z.boolean(),
    sheets: z.array(sheet).max(40),
    // Each is read by itself (offcuts.ts), so that a mistake in one leaves out that one only.
    offcuts: z
      .array(z.unknown())
      .max(400)
      .optional()
      .transform((): readonly Offcut[] => []),
  });
}

const bitKinds = ["straight", "compression", "flush trim", "round-over", "chamfer", "v", "drill"] as const;

export function bitRow(door: Door) {
  return rowOf({
    kind: z.enum(bitKinds),
    d: door.length(small),
    measured: door.length(small).optional(),
    flutes: door.count({ min: 1, max: 8 }).optional(),
    "cutting length": door.length(small).optional(),
    shank: door.length(small).optional(),
    angle: door.angle({ min: 0.1, max: 3 }).optional(),
    "up-cut": door.length(small).optional(),
    bearing: door.length(small).optional(),
    "most rpm": door.count(turning).optional(),
  });
}

export function bushRow(door: Door) {
  return rowOf({
    d: door.length({ min: 3, max: 100 }),
    bore: door.length({ min: 2, max: 99 }),
    stands: door.length({ min: 1, max: 40 }),
  });
}

export function insertRow(door: Door) {
  return rowOf({
    thread: words(),
    hole: door.length(small),
    length: door.length(small),
  });
}

/** Lengths on the shelf, shortest first in whatever order they are written. */
function lengths(door: Door): ZodType<readonly number[]> {
  const all = z
    .array(door.length({ min: 3, max: 500 }))
    .min(1)
    .max(60);
  return all.transform((written) => [...new Set(written)].sort((a, b) => a - b));
}

export function boltRow(door: Door) {
  const head = z.strictObject({
    d: door.length(small),
    height: door.length(small),
    form: z.enum(["cap", "button", "flat"]),
  });
  const clearance = z.strictObject({
    fine: door.length(small),
    medium: door.length(small),
    coarse: door.length(small),
  });
  return rowOf({
    thread: words(),
    d: door.length(small),
    pitch: door.length(small),
    head,
    clearance,
    lengths: lengths(door),
  });
}

export function screwRow(door: Door) {
  const head = z.strictObject({ d: door.length(small), angle: door.angle({ min: 0.5, max: Math.PI }) });
  return rowOf({
    d: door.length(small),
    root: door.length(small),
    head,
    pilot: door.length(small),
    clearance: door.length(small),
    lengths: lengths(door),
  });
}

export function coveringRow(door: Door) {
  return rowOf({
    material: words(),
    thick: door.length({ min: 0.1, max: 30 }),
    clamped: door.length({ min: 0, max: 30 }),
    wrap: door.length({ min: 0, max: 300 }),
    reveal: door.length({ min: 0, max: 30 }),
    "roll width": door.length({ min: 100, max: 6000 }),
    price: door.number(money).optional(),
  });
}

/** A fence or scale steps by something that can be read off it. */
const step = { min: 0.01, max: 25 };

export function sawRow(door: Door) {
  return rowOf({
    kerf: door.length({ min: 0.5, max: 10 }),
    step: door.length(step),
    "longest rip": door.length(wide).optional(),
    "longest cross-cut": door.length(wide).optional(),
    "one person": z.strictObject({ length: door.length(wide), width: door.length(wide) }).optional(),
    setting: door.number({ min: 0, max: 1 }).optional(),
  });
}

export function trackSawRow(door: Door) {
  return rowOf({ kerf: door.length({ min: 0.5, max: 10 }), "longest cut": door.length(wide) });
}

export function routerRow(door: Door) {
  return rowOf({ step: door.length(step) });
}

export function cncRow(door: Door) {
  const speed = door.length({ min: 1, max: 200_000 });
  const rpm = door.count(turning);
  return rowOf({
    length: door.length(wide),
    width: door.length(wide),
    clearance: door.length({ min: 0, max: 100 }),
    travel: door.length({ min: 10, max: 1000 }),
    "safe height": door.length({ min: 1, max: 200 }),
    zero: z.enum(["bed", "sheet top"]),
    // Lengths a minute.
    feed: z.strictObject({ least: speed, most: speed }),
    plunge: speed,
    rapid: speed,
    rpm: z.strictObject({ least: rpm, most: rpm }),
    "chip share": door.number({ min: 0.05, max: 1 }),
    tools: z.record(words(), door.count({ min: 1, max: 9999 })),
    direction: z.enum(["climb", "conventional"]),
    hold: z.enum(["tabs", "skin"]),
    "second side": z.enum(["pins", "hand"]),
    numbers: z.enum(["none", "engraved"]),
    controller: controllerRow(door),
    ...clearKeys(door),
  });
}

/** By the name of its habits, or by those that differ from the first one's. */
function controllerRow(door: Door): ZodType<Controller> {
  const own = z
    .strictObject({
      units: z.enum(["mm", "inch"]),
      decimals: door.count({ min: 3, max: 6 }),
      tools: z.enum(["change", "pause", "file"]),
      circles: z.enum(["whole", "halves"]),
      arcs: z.enum(["centre", "lines"]),
      chord: door.length({ min: 0.001, max: 0.5 }),
      dwell: z.enum(["seconds", "milliseconds"]),
      end: z.enum(["M30", "M2"]),
      extraction: z.enum(["M7", "M8"]),
      source: source(),
    })
    .partial();
  const [usual, ...others] = Object.keys(controllers).filter(isController);
  return z
    .union([z.enum([usual ?? "changes tools", ...others]), own])
    .transform(
      (written): Controller =>
        typeof written === "string" ? controllers[written] : { ...controllers["changes tools"], ...written },
    );
}

const isController = (name: string): name is ControllerName => Object.hasOwn(controllers, name);
