import type { Profile } from "../../../geometry/profile.js";
import type { Origin, Outcome } from "../../../input/finding.js";
import { type BoardId, type PieceId, partId } from "../../../model/ids.js";
import type { Joint } from "../../../model/joint.js";
import type { Edge, Part } from "../../../model/part.js";
import type { Around } from "../../../model/piece.js";
import { type Draft, makePart } from "../../common/part.js";
import type { Boards } from "../form/box.js";
import { faceOf } from "../form/box.js";
import { liningRole, type Sheet } from "../form/face.js";

import type { EnclosureSpec } from "../schema.js";

/** A board that stands inside the box: a divider, a brace, a panel of a port. */
export type InnerBoard = {
  readonly role: string;
  readonly from: Origin;
  readonly board: { readonly id: BoardId; readonly thickness: number };
  /** Each edge's `by` is the face or the inner board that it is glued to; one that ends free is called "free". */
  readonly sheet: Sheet;
  /** Openings through it, in the sheet's axes. */
  readonly windows: readonly Profile[];
};

/** The name of an edge that meets nothing. */
export const freeEdge = "free";

export function innerPart(inner: InnerBoard, spec: EnclosureSpec, boards: Boards, around: Around): Outcome<Part> {
  const { role, from, board, sheet, windows } = inner;
  const outline: Draft = {
    name: "outline",
    from: [from],
    cut: { kind: "outline", region: { outer: sheet.outline, holes: [] }, corner: "sharp" },
  };
  const openings = windows.map((outer, i): Draft => {
    const by = `window.${i + 1}`;
    const named = outer.map((corner) => ({ ...corner, by }));
    return { name: by, from: [from], cut: { kind: "opening", region: { outer: named, holes: [] }, corner: "bit" } };
  });
  const own = spec["cut by"];
  return makePart({
    piece: around.id,
    role,
    from: [from],
    board,
    features: [outline, ...openings],
    edges: edgesOf(inner, boards, around.id),
    ...(own === undefined ? {} : { cutBy: own }),
    at: sheet.frame,
  });
}

function edgesOf({ role, sheet }: InnerBoard, boards: Boards, piece: PieceId): Readonly<Record<string, Edge>> {
  return Object.fromEntries(
    edgeNames(sheet).map((by): [string, Edge] => {
      const bevel = sheet.bevels[by] ?? 0;
      if (by === freeEdge) return [by, { bevel, flush: 0, finish: { kind: "bare" } }];
      const joint = jointId(piece, roleBehind(by, boards), role);
      return [by, { bevel, flush: 0, finish: { kind: "joint", joint } }];
    }),
  );
}

/** An inner board is glued with its edges to the walls, or the boards behind them, and to other inner boards. */
export function innerJoints({ role, sheet }: InnerBoard, boards: Boards, piece: PieceId): readonly Joint[] {
  const glued = edgeNames(sheet).filter((by) => by !== freeEdge);
  return glued.map((by): Joint => {
    const laps = roleBehind(by, boards);
    return {
      id: jointId(piece, laps, role),
      form: "butt",
      laps: partId(piece, laps),
      into: partId(piece, role),
      edges: [by],
      axes: [],
      glue: true,
    };
  });
}

/** What the edges meet; the arcs of relieved corners meet nothing. */
const edgeNames = ({ outline }: Sheet): readonly string[] =>
  [...new Set(outline.map(({ by }) => by))].filter((by) => !by.includes("|"));

const jointId = (piece: PieceId, laps: string, into: string) => `${piece}:${laps}+${into}`;

/** The board that an edge meets: behind a double wall that is the second one. */
function roleBehind(by: string, boards: Boards): string {
  const face = faceOf(boards, by);
  return face?.lining === undefined ? by : liningRole(face);
}
