// Ids are names and roles: no counters that depend on order elsewhere, no clock. They outlive a reordered job file.
type Brand<T, B extends string> = T & { readonly __brand: B };

/** The piece's key in the job file: "box". */
export type PieceId = Brand<string, "piece">;
/** Piece and role: "box/top", "box/block.2" (index in the piece's own list). */
export type PartId = Brand<string, "part">;
/** Part and feature: "box/top:opening.driver". */
export type FeatureId = Brand<string, "feature">;
/** The piece that wants the hole, and its name there: "plate:bolt.3". */
export type AxisId = Brand<string, "axis">;
/** The job's name for a board: one material, one batch, ONE measured thickness. A nest may use only its sheets. */
export type BoardId = Brand<string, "board">;

export const pieceId = (name: string) => name as PieceId;
export const partId = (piece: PieceId, role: string) => `${piece}/${role}` as PartId;
export const featureId = (part: PartId, name: string) => `${part}:${name}` as FeatureId;
export const axisId = (piece: PieceId, name: string) => `${piece}:${name}` as AxisId;
export const boardId = (name: string) => name as BoardId;

/** The feature's name within its part, whatever signs the names in the ids hold. */
export const nameWithin = (part: PartId, id: FeatureId) => id.slice(part.length + 1);

/** The same where the part is not at hand: "opening.driver" of "box/top:opening.driver". No piece's name may hold ":". */
export const featureName = (id: FeatureId) => id.slice(id.indexOf(":") + 1);
