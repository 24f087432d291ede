import type { PieceId } from "../../../model/ids.js";
import type { Corner } from "../form/meeting.js";

/** The joint of two faces, the one that runs over the other first: "box:top+front". */
export const jointName = (piece: PieceId, { over, into }: Corner): string => `${piece}:${over}+${into}`;
