import type { PrintedStep } from "../drawing/orderPage.js";
import type { Show } from "../input/show.js";
import { wordsOf } from "../input/words.js";
import type { Build } from "../model/build.js";
import type { Step } from "../model/piece.js";
import { cautionsFor } from "./cautions.js";

/**
 * Build steps so that each comes after those it names, otherwise in the order given. A step that names one which is not
 * there (its piece was withheld) does not wait for it. Steps that wait for each other in a ring come last, as given.
 */
export function stepsInOrder(steps: readonly Step[]): readonly Step[] {
  const known = new Set(steps.map(({ id }) => id));
  const done = new Set<string>();
  const ordered: Step[] = [];
  let left = steps;
  for (;;) {
    const next = left.find(({ after }) => after.every((id) => done.has(id) || !known.has(id)));
    if (next === undefined) return [...ordered, ...left];
    ordered.push(next);
    done.add(next.id);
    left = left.filter((step) => step !== next);
  }
}

/** A step's sentence with its facts filled in, lengths as `show` says. */
export function stepWords(step: Step, show: Show): string {
  const { id: code, facts, words } = step;
  const def = { code, severity: "note", words, next: "", explain: "" } as const;
  return wordsOf({ code, severity: "note", at: [], on: [], facts }, def, show).words;
}

/** The steps of a job in order, as they are printed, each with the sentences of its cautions. */
export function printedSteps(build: Build): readonly PrintedStep[] {
  const shown = cautionsFor(build);
  return stepsInOrder(build.plan.built.steps).map((step) => ({
    piece: step.id.slice(0, step.id.lastIndexOf(":")),
    words: stepWords(step, build.job.show),
    parts: step.parts,
    cautions: shown.filter(({ id }) => step.cautions.includes(id)).map(({ sentence }) => sentence),
  }));
}
