import { extentsOf } from "../geometry/measure.js";
import { turnRegion } from "../geometry/transform.js";
import { type Finding, type FindingDef, mm, raise, text } from "../input/finding.js";
import type { PartProcess } from "../model/build.js";
import type { Part } from "../model/part.js";
import type { Shop } from "../model/shop.js";
import { nameOf } from "../plan/standing.js";

export const ripTooWide: FindingDef = {
  code: "rip-too-wide",
  severity: "warning",
  words: "{part} is {width} across its narrow way; the fence reaches {reach} from the blade",
  next: "cut it against a clamped straight edge, or have it cut to size where the board is bought",
  explain:
    "A part is ripped to width against the fence. Where even its narrow side is wider than the fence reaches, the saw " +
    "cannot be set to it; the long side is cross-cut and does not matter here. A track saw whose longest cut is as long as " +
    "the part does without a fence.",
};

export const partOverMachine: FindingDef = {
  code: "part-over-machine",
  severity: "error",
  words: "{part} ({length} x {width}) is larger than the machine's bed, {bed length} x {bed width}",
  next: "cut the part by hand, make it smaller, or join it of two pieces",
  explain:
    "A part must lie on the bed whole, in one of the turns that it may have, as its outline is cut in one setup.",
};

/** Findings for a part that is too large for the machine that is to cut it. */
export function overMachine(shop: Shop, part: Part, process: PartProcess): readonly Finding[] {
  const { w, h } = sizeOf(part, 0);
  const where = { at: part.from, on: [part.id] };
  const reach = shop.saw["longest rip"] ?? Number.POSITIVE_INFINITY;
  const track = shop["track saw"]?.["longest cut"] ?? 0;
  if (process.method === "saw" && Math.min(w, h) > reach && Math.max(w, h) > track)
    return [
      raise(ripTooWide, { ...where, facts: { part: text(nameOf(part)), width: mm(Math.min(w, h)), reach: mm(reach) } }),
    ];
  const bed = shop.cnc;
  if (process.method !== "cnc" || !bed || process.turns.some((turn) => fitsBed(sizeOf(part, turn), bed))) return [];
  const facts = {
    part: text(nameOf(part)),
    length: mm(Math.max(w, h)),
    width: mm(Math.min(w, h)),
    "bed length": mm(bed.length),
    "bed width": mm(bed.width),
  };
  return [raise(partOverMachine, { ...where, facts })];
}

type Size = { readonly w: number; readonly h: number };

function sizeOf(part: Part, turn: number): Size {
  const { min, max } = extentsOf(turnRegion(part.blank, turn));
  return { w: max.x - min.x, h: max.y - min.y };
}

/** The sheet may lie on the bed either way round, whatever its grain. */
const fitsBed = ({ w, h }: Size, bed: { readonly length: number; readonly width: number }): boolean =>
  (w <= bed.length && h <= bed.width) || (h <= bed.length && w <= bed.width);
