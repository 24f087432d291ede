import type { PieceId } from "../../../model/ids.js";

/** The joint of two boards, the one that runs over the other's edge first: "box:top+front". */
export const jointName = (piece: PieceId, { over, into }: { readonly over: string; readonly into: string }): string =>
  `${piece}:${over}+${into}`;
