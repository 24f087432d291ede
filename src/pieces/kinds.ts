import type { PieceKind } from "../model/piece.js";
import { enclosure } from "./enclosure/enclosure.js";
import { panel } from "./panel/panel.js";
import { plate } from "./plate/plate.js";
import { ring } from "./ring/ring.js";

/** Every kind of piece. A new kind is one folder and one line here. */
export const kinds: readonly PieceKind[] = [enclosure, plate, ring, panel];
