import type { Part } from "../model/part.js";

/** Parts that are cut alike, made as "2 off" from one drawing; the first is drawn. */
export type SameParts = { readonly first: Part; readonly parts: readonly Part[] };
