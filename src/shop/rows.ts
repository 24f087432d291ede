import { type ZodType, z } from "zod";
import type { Door } from "../input/door.js";
import type {
  Bit,
  BoardStock,
  Bolt,
  Cnc,
  CoveringStock,
  Router,
  Saw,
  Screw,
  Sourced,
  ThreadedInsert,
} from "../model/shop.js";
import { rules } from "./rules.js";

// One schema for each kind of row. `base`: the built-in row of the same name; what a row does not say comes from it.

const words = () => z.string().trim().min(1).max(120);
const small = { min: 0.1, max: 200 };
const wide = { min: 20, max: 6000 };
const money = { min: 0, max: 1e6 };

/** The schema, with the base row's value where the file says nothing. */
function or<T>(schema: ZodType<T>, base: T | undefined): ZodType<T> {
  return base === undefined ? schema : schema.optional().transform((value) => value ?? base);
}

/** Where the row's numbers come from; a built-in row that the shop file changed says so. */
function source(base: Sourced | undefined): ZodType<string | undefined> {
  const changed = base?.source === undefined ? undefined : `${base.source}; changed in the shop file`;
  return z
    .string()
    .max(300)
    .optional()
    .transform((written) => written ?? changed);
}

export function boardRow(door: Door, base?: BoardStock): ZodType<BoardStock> {
  const sheet = z.strictObject({
    length: door.length(wide),
    width: door.length(wide),
    trim: or(door.length({ min: 0, max: 100 }), rules.trim.value),
    price: door.number(money).optional(),
    "on hand": door.count({ min: 0, max: 1000 }).optional(),
    source: source(undefined),
  });
  const offcut = z.strictObject({
    name: words(),
    length: door.length(wide),
    width: door.length(wide),
    trim: or(door.length({ min: 0, max: 100 }), 0),
  });
  return z.strictObject({
    material: or(words(), base?.material),
    thickness: or(door.length({ min: 1, max: 80 }), base?.thickness),
    measured: or(door.length({ min: 1, max: 80 }).optional(), base?.measured),
    density: or(door.number({ min: 50, max: 3000 }), base?.density),
    grain: or(z.boolean(), base?.grain),
    sheets: or(z.array(sheet).max(40), base?.sheets),
    offcuts: or(z.array(offcut).max(400), base?.offcuts ?? []),
    source: source(base),
  });
}

const bitKinds = ["straight", "compression", "flush trim", "round-over", "chamfer", "v", "drill"] as const;

export function bitRow(door: Door, base?: Bit): ZodType<Bit> {
  return z.strictObject({
    kind: or(z.enum(bitKinds), base?.kind),
    d: or(door.length(small), base?.d),
    measured: or(door.length(small).optional(), base?.measured),
    flutes: or(door.count({ min: 1, max: 8 }).optional(), base?.flutes),
    "cutting length": or(door.length(small).optional(), base?.["cutting length"]),
    shank: or(door.length(small).optional(), base?.shank),
    source: source(base),
  });
}

export function insertRow(door: Door, base?: ThreadedInsert): ZodType<ThreadedInsert> {
  return z.strictObject({
    thread: or(words(), base?.thread),
    hole: or(door.length(small), base?.hole),
    length: or(door.length(small), base?.length),
    source: source(base),
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

export function boltRow(door: Door, base?: Bolt): ZodType<Bolt> {
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
  return z.strictObject({
    thread: or(words(), base?.thread),
    d: or(door.length(small), base?.d),
    pitch: or(door.length(small), base?.pitch),
    head: or(head, base?.head),
    clearance: or(clearance, base?.clearance),
    lengths: or(lengths(door), base?.lengths),
    source: source(base),
  });
}

export function screwRow(door: Door, base?: Screw): ZodType<Screw> {
  const head = z.strictObject({ d: door.length(small), angle: door.angle({ min: 0.5, max: Math.PI }) });
  return z.strictObject({
    d: or(door.length(small), base?.d),
    root: or(door.length(small), base?.root),
    head: or(head, base?.head),
    pilot: or(door.length(small), base?.pilot),
    clearance: or(door.length(small), base?.clearance),
    lengths: or(lengths(door), base?.lengths),
    source: source(base),
  });
}

export function coveringRow(door: Door, base?: CoveringStock): ZodType<CoveringStock> {
  return z.strictObject({
    material: or(words(), base?.material),
    thick: or(door.length({ min: 0.1, max: 30 }), base?.thick),
    clamped: or(door.length({ min: 0, max: 30 }), base?.clamped),
    wrap: or(door.length({ min: 0, max: 300 }), base?.wrap),
    reveal: or(door.length({ min: 0, max: 30 }), base?.reveal),
    "roll width": or(door.length({ min: 100, max: 6000 }), base?.["roll width"]),
    price: or(door.number(money).optional(), base?.price),
    source: source(base),
  });
}

/** A fence or scale steps by something that can be read off it. */
const step = { min: 0.01, max: 25 };

export function sawRow(door: Door, base?: Saw): ZodType<Saw> {
  return z.strictObject({
    kerf: or(door.length({ min: 0.5, max: 10 }), base?.kerf),
    step: or(door.length(step), base?.step),
    "longest rip": or(door.length(wide).optional(), base?.["longest rip"]),
    source: source(base),
  });
}

export function routerRow(door: Door, base?: Router): ZodType<Router> {
  return z.strictObject({ step: or(door.length(step), base?.step), source: source(base) });
}

export function cncRow(door: Door, base?: Cnc): ZodType<Cnc> {
  return z.strictObject({
    length: or(door.length(wide), base?.length),
    width: or(door.length(wide), base?.width),
    clearance: or(door.length({ min: 0, max: 100 }), base?.clearance),
    source: source(base),
  });
}
