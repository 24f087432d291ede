import { countedWork } from "../drawing/workNouns.js";
import type { Part } from "../model/part.js";

/** What there is to cut in a part besides its outline, counted: "1 opening, 18 holes, 1 groove on the back". */
export const workWords = (part: Part): string => countedWork(part.features);
