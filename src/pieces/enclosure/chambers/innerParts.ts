import type { Outcome } from "../../../input/finding.js";
import { type PieceId, partId } from "../../../model/ids.js";
import type { Joint } from "../../../model/joint.js";
import type { Edge, Part } from "../../../model/part.js";
import type { Around } from "../../../model/piece.js";
import { type Draft, makePart } from "../../common/part.js";
import type { Boards } from "../form/box.js";
import { faceOf } from "../form/box.js";
import { isBolted, liningRole, type Sheet } from "../form/face.js";
import { jointName } from "../joints/jointName.js";
import { type JointScrew, screwDrafts } from "../joints/jointScrews.js";
import type { EnclosureSpec } from "../schema.js";
import { freeEdge, type InnerBoard } from "./innerBoard.js";

/** A board inside the box as a part. */
export function innerPart(
  inner: InnerBoard,
  spec: EnclosureSpec,
  boards: Boards,
  screws: readonly JointScrew[],
  around: Around,
): Outcome<Part> {
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
    features: [outline, ...openings, ...screwDrafts({ name: role }, screws, [from])],
    edges: edgesOf(inner, boards, around.id),
    ...(own === undefined ? {} : { cutBy: own }),
    at: sheet.frame,
  });
}

function edgesOf({ role, sheet }: InnerBoard, boards: Boards, piece: PieceId): Readonly<Record<string, Edge>> {
  return Object.fromEntries(
    edgeNames(sheet).map((by): [string, Edge] => {
      const bevel = sheet.bevels[by] ?? 0;
      if (by === freeEdge || isLoose(by, boards)) return [by, { bevel, flush: 0, finish: { kind: "bare" } }];
      const joint = jointName(piece, { over: roleBehind(by, boards), into: role });
      return [by, { bevel, flush: 0, finish: { kind: "joint", joint } }];
    }),
  );
}

/** An inner board is glued with its edges to the walls, or the boards behind them, and to other inner boards. */
export function innerJoints(
  { role, sheet }: InnerBoard,
  boards: Boards,
  screws: readonly JointScrew[],
  piece: PieceId,
): readonly Joint[] {
  const glued = edgeNames(sheet).filter((by) => by !== freeEdge && !isLoose(by, boards));
  return glued.map((by): Joint => {
    const laps = roleBehind(by, boards);
    const id = jointName(piece, { over: laps, into: role });
    return {
      id,
      form: "butt",
      laps: partId(piece, laps),
      into: partId(piece, role),
      edges: [by],
      axes: screws.filter(({ joint }) => joint === id).map(({ axis }) => axis),
      glue: true,
    };
  });
}

/** What the edges meet; the arcs of relieved corners meet nothing. */
const edgeNames = ({ outline }: Sheet): readonly string[] =>
  [...new Set(outline.map(({ by }) => by))].filter((by) => !by.includes("|"));

/** An edge that ends on the gasket of a panel that is bolted on. */
function isLoose(by: string, boards: Boards): boolean {
  const face = faceOf(boards, by);
  return face !== undefined && isBolted(face.skin);
}

/** The board that an edge meets: behind a double wall that is the second one. */
function roleBehind(by: string, boards: Boards): string {
  const face = faceOf(boards, by);
  return face?.lining === undefined ? by : liningRole(face);
}
