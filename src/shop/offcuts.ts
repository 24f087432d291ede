import { type ZodType, z } from "zod";
import { extentsOf } from "../geometry/measure.js";
import type { Profile } from "../geometry/profile.js";
import { moved } from "../geometry/transform.js";
import type { Door } from "../input/door.js";
import { outOfRange } from "../input/doorFindings.js";
import { below, type Finding, list, mm, type Origin, text } from "../input/finding.js";
import { readWith } from "../input/issues.js";
import { nearest } from "../input/nearest.js";
import { cornersSchema, sidesOf } from "../input/outline.js";
import { refuse } from "../input/refusal.js";
import { isMap } from "../input/yaml.js";
import type { Offcut } from "../model/shop.js";
import { clearArea } from "./clearArea.js";
import { nothingLeftFacts } from "./nothingLeft.js";
import { noSuchTrueEdge, nothingLeftOf, offcutSize, trueEdgeBowed } from "./offcutFindings.js";
import { thickness, trim, wide, words } from "./rows.js";
import { clearKeys, clearMapped, zonesOf } from "./zones.js";

/** The sound offcuts of each board that has any in the file, and what is wrong with the others. */
export type ReadOffcuts = {
  readonly byBoard: ReadonlyMap<string, readonly Offcut[]>;
  readonly findings: readonly Finding[];
};

/** Reads the offcuts one by one, so that a mistake in one leaves out that one only. `at`: the map of boards. */
export function readOffcuts(door: Door, boards: unknown, at: Origin): ReadOffcuts {
  const schema = offcutSchema(door);
  const read = Object.entries(isMap(boards) ? boards : {}).flatMap(([board, row]) => {
    if (!isMap(row) || !Array.isArray(row.offcuts)) return [];
    const place = below(at, board, "offcuts");
    return [{ board, outcomes: row.offcuts.map((each: unknown, i) => readWith(schema, each, below(place, i))) }];
  });
  return {
    byBoard: new Map(read.map(({ board, outcomes }) => [board, outcomes.flatMap(({ value }) => value ?? [])])),
    findings: read.flatMap(({ outcomes }) => outcomes.flatMap(({ findings }) => findings)),
  };
}

function offcutSchema(door: Door): ZodType<Offcut> {
  const written = z.strictObject({
    name: words(),
    length: door.length(wide).optional(),
    width: door.length(wide).optional(),
    outline: cornersSchema(door, words()).optional().describe("Its corners, where it is no rectangle."),
    "true edge": words().optional().describe("The side of the outline that a saw goes by."),
    trim: trim(door)
      .optional()
      .transform((value) => value ?? 0),
    measured: door.length(thickness).optional(),
    ...clearKeys(door),
  });
  return written.transform((row, issues): Offcut => {
    const { name, length, width, outline, "true edge": edge, trim: left, measured, ...clear } = row;
    const common = { name, trim: left, ...(measured !== undefined && { measured }) };
    const fault = sizeFault(length, width, outline);
    if (fault !== undefined) return refuse(issues, offcutSize, { name: text(name), found: text(fault) });
    const trueFault = edge === undefined ? undefined : trueEdgeFault(name, edge, outline);
    if (trueFault !== undefined) return refuse(issues, trueFault.def, trueFault.facts, ["true edge"]);
    const made: Offcut =
      outline === undefined
        ? { ...common, length: length!, width: width!, ...clearMapped(clear, (zone) => zone) }
        : { ...common, ...fromCorner(outline, clear), ...(edge !== undefined && { "true edge": edge }) };
    const size = [made.length, made.width].find((each) => each < wide.min || each > wide.max);
    if (size !== undefined)
      return refuse(issues, outOfRange, { found: mm(size), least: mm(wide.min), most: mm(wide.max) }, ["outline"]);
    if (clearArea(made, zonesOf(made)).length === 0)
      return refuse(issues, nothingLeftOf, nothingLeftFacts(`offcut ${name}`, made));
    return made;
  });
}

function sizeFault(length: number | undefined, width: number | undefined, outline: Profile | undefined) {
  const given = [
    ...(length === undefined ? [] : ["its length"]),
    ...(width === undefined ? [] : ["its width"]),
    ...(outline === undefined ? [] : ["its outline"]),
  ];
  const isSound = outline === undefined ? given.length === 2 : given.length === 1;
  if (isSound) return undefined;
  return given.length === 0 ? "no size" : `${given.join(" and ")}${given.length === 1 ? " alone" : ""}`;
}

function trueEdgeFault(name: string, edge: string, outline: Profile | undefined) {
  const base = { name: text(name), found: text(edge) };
  if (outline === undefined)
    return {
      def: noSuchTrueEdge,
      facts: { ...base, rectangle: text("leave it out: all sides of a rectangle are true") },
    };
  const sides = sidesOf(outline);
  const close = nearest(edge, sides);
  if (!sides.includes(edge))
    return { def: noSuchTrueEdge, facts: { ...base, allowed: list(sides), ...(close && { nearest: text(close) }) } };
  const bowed = outline.some(({ by, bulge }) => by === edge && bulge !== 0);
  return bowed ? { def: trueEdgeBowed, facts: base } : undefined;
}

/** An outline and zones as they were measured, shifted so that the lower left corner of its extents is the origin. */
function fromCorner(outline: Profile, clear: Parameters<typeof clearMapped>[0]) {
  const { min, max } = extentsOf(outline);
  const shifted = (profile: Profile): Profile => moved(profile, -min.x, -min.y);
  return { length: max.x - min.x, width: max.y - min.y, outline: shifted(outline), ...clearMapped(clear, shifted) };
}
