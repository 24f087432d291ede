import { z } from "zod";
import type { Method } from "../../model/shop.js";

/** A name that the job file gives to something: a board, a driver, another piece. */
export const name = () => z.string().min(1).max(80);

/** How a piece is cut, where it differs from the rest of the job. */
export const cutBy = () => z.enum(["saw", "hand", "cnc"] satisfies Method[]).optional();
