import { z } from "zod";
import { name, words } from "../../job/names.js";
import type { Method } from "../../model/shop.js";

/** The name of a row of the shop file: a bolt, an insert, a screw. */
export const rowName = () => words(80);

/** The board that a piece is cut from. */
export const board = () => name().describe("Which of the job's boards it is cut from.");

/** How a piece is cut, where it differs from the rest of the job. */
export const cutBy = () =>
  z
    .enum(["saw", "hand", "cnc"] satisfies Method[])
    .optional()
    .describe("How it is cut, where that differs from the rest of the job: saw, hand or cnc.");
