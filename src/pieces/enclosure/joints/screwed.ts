import { nearestOn } from "../../../geometry/distance.js";
import { pointInProfile } from "../../../geometry/inside.js";
import type { Point } from "../../../geometry/profile.js";
import type { PieceId } from "../../../model/ids.js";
import { rules } from "../../../shop/rules.js";
import { innerBoards } from "../chambers/fitOut.js";
import type { InnerBoard } from "../chambers/innerBoard.js";
import { outlineAt } from "../chambers/innerSheet.js";
import { faceOf } from "../form/box.js";
import { type Face, isBolted, type Sheet } from "../form/face.js";
import { isSquare, type Meeting } from "../form/meeting.js";
import type { EnclosureSpec } from "../schema.js";
import type { Shape } from "../shape.js";
import { jointName } from "./jointName.js";

/** A board by its name, as it stands. */
export type Plate = Pick<Face, "name" | "panel">;

/** A joint that takes screws: through one board into the edge of another that bears the first one's name. */
export type Screwed = {
  readonly joint: string;
  readonly over: Plate;
  readonly into: Plate;
  /** What a screw passes before it bites: the covering panel, less how deep the other is let into it. mm. */
  readonly passed: number;
  /** Whether a screw may go through the covering board here, in its own axes; anywhere where it is not asked. */
  readonly mayPass?: (through: Point) => boolean;
};

/** Every joint of the box that takes screws: at its corners, and where its walls meet what stands inside. */
export function screwedJoints(piece: PieceId, spec: EnclosureSpec, shape: Shape): readonly Screwed[] {
  return [...corners(piece, shape), ...innerBoards(shape.fitOut).flatMap((inner) => inside(piece, inner, spec, shape))];
}

/**
 * A corner is screwed where it is square, with one panel over the other on the outside. A screw through a bevelled edge
 * would come out askew, and in a corner that goes in its head would lie inside: those are glued and clamped. What is
 * bolted on comes off again.
 */
function corners(piece: PieceId, shape: Shape): readonly Screwed[] {
  return shape.meetings.filter(isScrewed).map((meeting) => {
    const [over, into] = [faceOf(shape, meeting.over)!, faceOf(shape, meeting.into)!];
    return { joint: jointName(piece, meeting), over, into, passed: passes(meeting, over) };
  });
}

export const isScrewed = (meeting: Meeting): boolean =>
  isSquare(meeting) && meeting.turn > 0 && meeting.form !== "mitre" && !meeting.bolted;

export const passes = (meeting: Meeting, over: Pick<Face, "panel">): number => over.panel.thickness - meeting.deep;

/**
 * What stands inside is screwed through the walls that it meets square, where it is thick enough for a screw in its edge
 * and no wall is double. A brace's border is too slender for that: it is glued.
 */
function inside(piece: PieceId, inner: InnerBoard, spec: EnclosureSpec, shape: Shape): readonly Screwed[] {
  const { role, sheet, windows } = inner;
  if (windows.length > 0 || sheet.thickness < rules.edgeScrewBoard.value || spec.screws === "none") return [];
  return [...new Set(sheet.outline.map(({ by }) => by))].flatMap((by) => {
    const over = faceOf(shape, by);
    if (over === undefined || over.lining !== undefined || sheet.bevels[by] !== undefined) return [];
    if (isBolted(over.skin)) return [];
    const into = { name: role, panel: sheet };
    const joint = jointName(piece, { over: by, into: role });
    return [{ joint, over, into, passed: over.panel.thickness, mayPass: wellInside(over.panel) }];
  });
}

/** Far enough from every edge of a board that neither its face nor its bevelled back breaks out. */
function wellInside(panel: Sheet): (point: Point) => boolean {
  const outlines = [panel.outline, outlineAt(panel, panel.thickness)];
  const least = rules.insideScrewToEdge.value;
  return (point) =>
    outlines.every((outline) => pointInProfile(outline, point) && (nearestOn(outline, point)?.distance ?? 0) >= least);
}
