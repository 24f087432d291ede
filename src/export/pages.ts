import { drawingsOf } from "../drawing/drawingSet.js";
import type { Page } from "../drawing/page.js";
import { cautionsFor, cautionWords } from "../lists/cautions.js";
import { cutListOf } from "../lists/cutList.js";
import { printedSteps } from "../lists/steps.js";
import type { Build } from "../model/build.js";

/** Cautions that every sheet with a part on it repeats. */
const onEveryPart = new Set(["dust", "wood-dust"]);

/** All drawing pages of a build, grouped and worded as the lists are. */
export function pagesOf(build: Build): readonly Page[] {
  const cautions = cautionsFor(build);
  const onParts = [
    ...cautions.filter(({ id }) => onEveryPart.has(id)).map(({ sentence }) => sentence),
    "All cautions stand on sheet 1.",
  ];
  const onRouting = cautionsFor(build, "cut list").map(cautionWords);
  return drawingsOf(build, { rows: cutListOf(build), cautions, steps: printedSteps(build), onParts, onRouting });
}
