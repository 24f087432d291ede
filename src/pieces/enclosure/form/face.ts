import { type Frame, inverse, place } from "../../../geometry/frame.js";
import type { Point, Profile } from "../../../geometry/profile.js";
import type { BoardId } from "../../../model/ids.js";
import type { Method } from "../../../model/shop.js";

/** What one face of the box is made of. mm. */
export type Skin = {
  readonly board: { readonly id: BoardId; readonly thickness: number };
  /** A second board glued flat behind the first, between its neighbours; 0 where there is none. */
  readonly lining: number;
  /** How far the face lies inside the outline that its neighbours run out to. */
  readonly setIn: number;
  /** Clamped thickness of the gasket on which the panel is bolted down, mm; 0 where it is glued. */
  readonly gasket: number;
  readonly method: Method;
};

/** Bolted on a gasket, so that it comes off again. */
export const isBolted = ({ gasket }: Pick<Skin, "gasket">): boolean => gasket > 0;

/** From the outline to the back of a face's panel, mm. */
export const boardBackOf = ({ setIn, board }: Skin): number => setIn + board.thickness;
/** On to where its neighbours end, behind its gasket; and to the air behind its lining, mm. */
export const backOf = (skin: Skin): number => boardBackOf(skin) + skin.gasket;
export const depthOf = (skin: Skin): number => backOf(skin) + skin.lining;

/**
 * A flat piece of board with bevelled edges. The outline is that of its face, in the sheet's own axes, each edge's `by`
 * the neighbour's name; `bevels` holds the edges that are not square: above 0 the back is smaller. rad.
 */
export type Sheet = {
  /** In the box frame; the face lies at z = 0, z out of the box. */
  readonly frame: Frame;
  readonly outline: Profile;
  readonly bevels: Readonly<Record<string, number>>;
  readonly thickness: number;
};

/** One face of a box: the flat outside that others lean on, and what makes it. */
export type Face = {
  readonly name: string;
  readonly skin: Skin;
  /** In the box frame: origin at the lower left corner as seen from outside, z out of the box. */
  readonly frame: Frame;
  /** The whole outside of the face, in its frame. */
  readonly outline: Profile;
  readonly panel: Sheet;
  readonly lining: Sheet | undefined;
};

/** From a face's outside to the air behind it, mm. */
export const thickOf = ({ panel, lining }: Face): number => panel.thickness + (lining?.thickness ?? 0);

/** What the board behind a double panel is called. */
export const liningRole = ({ name }: Face): string => `${name} lining`;

/** A point of a face in the axes of one of its sheets: they are only shifted against each other. */
export function onSheet(face: Face, sheet: Sheet, point: Point): Point {
  const from = shiftOf(face, sheet);
  return { x: point.x - from.x, y: point.y - from.y };
}

/** And back. */
export function offSheet(face: Face, sheet: Sheet, point: Point): Point {
  const from = shiftOf(face, sheet);
  return { x: point.x + from.x, y: point.y + from.y };
}

/** Where the sheet's origin lies on the face. */
function shiftOf(face: Face, sheet: Sheet): Point {
  const [x, y] = place(inverse(face.frame), sheet.frame.origin);
  return { x, y };
}
