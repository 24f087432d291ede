import { z } from "zod";
import { words } from "../../job/names.js";
import type { Method } from "../../model/shop.js";

/** The name of a row of the shop file: a bolt, an insert, a screw. */
export const rowName = () => words(80);

/** How a piece is cut, where it differs from the rest of the job. */
export const cutBy = () => z.enum(["saw", "hand", "cnc"] satisfies Method[]).optional();
