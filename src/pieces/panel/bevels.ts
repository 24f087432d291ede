import { cornersOf } from "../../geometry/corner.js";
import type { Profile } from "../../geometry/profile.js";
import { below, type Finding, type FindingDef, list, type Origin, raise, text } from "../../input/finding.js";
import type { Edge } from "../../model/part.js";
import type { PanelSpec } from "./schema.js";

export const bevelNotSawn: FindingDef = {
  code: "bevel-not-sawn",
  severity: "error",
  words: "{side} of {piece} cannot be bevelled; sides that can be: {sides}",
  next: "name one of those sides, or draw that one straight, with sharp corners at both ends",
  explain:
    "A bevel is sawn along a whole side with the blade tilted. A curved side cannot be followed, and at a rounded corner the saw would cut the rounding away.",
};

/**
 * The bevelled edges of a panel by name. `wider` names the face that keeps the longer size: with the face wider the bevel
 * is positive and the back smaller, as in `Edge.bevel`.
 */
export function bevelledEdges(spec: PanelSpec): Readonly<Record<string, Edge>> {
  return Object.fromEntries(
    Object.entries(spec.bevels ?? {}).map(([side, { angle, wider }]): [string, Edge] => [
      side,
      { bevel: wider === "back" ? -angle : angle, finish: { kind: "bare" }, flush: 0 },
    ]),
  );
}

/** A finding for every bevel along a side that is not there, is curved, or runs into a rounded corner. */
export function bevelFindings(spec: PanelSpec, outline: Profile, piece: string, origin: Origin): readonly Finding[] {
  const sides = sawnSides(outline);
  return Object.keys(spec.bevels ?? {})
    .filter((side) => !sides.includes(side))
    .map((side) =>
      raise(bevelNotSawn, {
        at: [{ ...below(origin, "bevels", side), token: "key" }],
        on: [piece],
        facts: { side: text(side), piece: text(piece), sides: list(sides) },
      }),
    );
}

/** Straight sides with sharp corners at both ends, each run of one name taken as a side. */
function sawnSides(outline: Profile): readonly string[] {
  const sharp = new Set(cornersOf(outline).map((corner) => corner.index));
  const names = [...new Set(outline.map((vertex) => vertex.by))];
  return names.filter((name) =>
    outline.every((vertex, i) => {
      const next = (i + 1) % outline.length;
      if (vertex.by !== name) return true;
      const starts = outline[(i + outline.length - 1) % outline.length]!.by === name || sharp.has(i);
      return vertex.bulge === 0 && starts && (outline[next]!.by === name || sharp.has(next));
    }),
  );
}
