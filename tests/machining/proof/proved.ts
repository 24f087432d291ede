import { programText } from "../../../src/export/gcode/program.js";
import { simulate } from "../../../src/machining/simulation/simulate.js";
import { cuttersOf, roomOf, stocksOf } from "../../../src/machining/stockOf.js";
import { tabHeight } from "../../../src/machining/tabs.js";
import type { Build } from "../../../src/model/build.js";
import type { Setup, WorkKind } from "../../../src/model/program.js";

type Made = Pick<Build, "shop" | "plan" | "process" | "layout" | "program">;

/** How high a skin may be that is left where there is no room for tabs, mm. */
const skin = 0.5;

/** Everything that is wrong with what a job's programs leave of its sheets, in words; none if it is as it should be.
 *  `chord`: how finely it is reckoned, mm. */
export function wrongWith(made: Made, chord: number): readonly string[] {
  return made.program.setups.flatMap((setup) => wrongIn(made, setup, chord).map((words) => `${setup.name}: ${words}`));
}

function wrongIn(made: Made, setup: Setup, chord: number): readonly string[] {
  const cnc = made.shop.cnc!;
  const files = cnc.controller.tools === "file" ? setup.runs.map((run) => [run]) : [setup.runs];
  const texts = files.map((runs) => programText(setup, runs, cnc, []));
  const report = simulate(texts, cuttersOf(made, setup), stocksOf(made, setup, chord), roomOf(setup, cnc), chord);
  const high = Math.max(tabHeight(setup.thickness), skin) + 0.02;
  return [
    ...report.faults.map(({ line, words }) => `line ${line}: ${words}`),
    ...report.parts.flatMap(({ name, lost, uncut, held, waste }) => [
      ...lost.map((spot) => `${name} lost ${JSON.stringify(spot)}`),
      ...uncut.map((spot) => `${name} keeps ${JSON.stringify(spot)}`),
      ...(held && held.bridges === 0 ? [`${name} is loose`] : []),
      ...[held, ...waste].flatMap((each) => (each && each.height > high ? [`${name} held ${each.height} high`] : [])),
    ]),
  ];
}

/** How often each kind of work is done. */
export function countWork(made: Made, counts: Map<WorkKind, number>): void {
  for (const { runs } of made.program.setups)
    for (const { operations } of runs) for (const { kind } of operations) counts.set(kind, (counts.get(kind) ?? 0) + 1);
}
