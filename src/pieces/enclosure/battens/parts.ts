import type { Outcome } from "../../../input/finding.js";
import { count, text } from "../../../input/finding.js";
import { type PieceId, partId } from "../../../model/ids.js";
import type { Joint } from "../../../model/joint.js";
import type { Edge, Part } from "../../../model/part.js";
import type { Air, Around } from "../../../model/piece.js";
import { makePart } from "../../common/part.js";
import type { Chamber } from "../chambers/divide.js";
import { sheetL } from "../chambers/innerSheet.js";
import { type Face, liningRole } from "../form/face.js";
import { jointName } from "../joints/jointName.js";
import type { Due } from "../removable/steps.js";
import type { EnclosureSpec } from "../schema.js";
import type { Battens, CornerBatten } from "./battens.js";

/** A batten as a part: a bar whose face is glued to the first face of its corner. */
export function battenPart(batten: CornerBatten, spec: EnclosureSpec, around: Around): Outcome<Part> {
  const { role, from, board, sheet } = batten;
  const own = spec["cut by"];
  return makePart({
    piece: around.id,
    role,
    from: [from],
    board,
    features: [
      {
        name: "outline",
        from: [from],
        cut: { kind: "outline", region: { outer: sheet.outline, holes: [] }, corner: "sharp" },
      },
    ],
    edges: edgesOf(batten, around.id),
    ...(own === undefined ? {} : { cutBy: own }),
    at: sheet.frame,
  });
}

function edgesOf({ role, along, sheet, isSnug }: CornerBatten, piece: PieceId): Readonly<Record<string, Edge>> {
  return Object.fromEntries(
    sheet.outline.flatMap(({ by }): [string, Edge][] => {
      const bevel = sheet.bevels[by] ?? 0;
      if (by === along.name && isSnug) {
        const joint = jointName(piece, { over: behindOf(along), into: role });
        return [[by, { bevel, flush: 0, finish: { kind: "joint", joint } }]];
      }
      return bevel === 0 ? [] : [[by, { bevel, flush: 0, finish: { kind: "bare" } }]];
    }),
  );
}

/** The board that one meets behind a face: of a double one the second. */
const behindOf = (face: Face): string => (face.lining === undefined ? face.name : liningRole(face));

/** Each is glued to both faces of its corner, or to the first alone where it only touches the other. */
export function battenJoints({ stand }: Battens, piece: PieceId): readonly Joint[] {
  return stand.flatMap(({ role, flat, along, isSnug }) => {
    const to = (face: Face, form: "lap" | "butt", edges: readonly string[]): Joint => ({
      id: jointName(piece, { over: behindOf(face), into: role }),
      form,
      laps: partId(piece, behindOf(face)),
      into: partId(piece, role),
      edges,
      axes: [],
      glue: true,
    });
    return [to(flat, "lap", []), ...(isSnug ? [to(along, "butt", [along.name])] : [])];
  });
}

/** What battens take of a chamber, L. */
export function battenTerms(chamber: Chamber, { stand }: Battens): Air["terms"] {
  return stand
    .filter((batten) => batten.chamber === chamber)
    .map(({ role, sheet }) => ({ what: role.replaceAll(".", " "), litres: -sheetL(sheet), shaped: true }));
}

/** Before the box is glued. */
export function battenSteps({ stand }: Battens, { id }: Pick<Around, "id">): readonly Due[] {
  if (stand.length === 0) return [];
  const corners = [...new Set(stand.map(({ flat, along }) => `${flat.name} + ${along.name}`))];
  return [
    {
      name: "battens",
      parts: stand.map(({ role }) => partId(id, role)),
      words:
        "Glue the {count} battens flat onto the face named first of each corner, their edges in line with where the other will stand: {corners}",
      facts: { count: count(stand.length), corners: text(corners.join(", ")) },
      cautions: ["formaldehyde"],
    },
  ];
}
