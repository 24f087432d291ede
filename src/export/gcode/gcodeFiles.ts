import type { Build } from "../../model/build.js";
import type { Run, Setup } from "../../model/program.js";
import type { Cnc } from "../../model/shop.js";
import { header } from "./header.js";
import { programText } from "./program.js";

/** A file of a setup: a name of its own where each tool has a file, and its text. */
export type ProgramFile = { readonly name: string; readonly text: string };

/**
 * The programs of a setup: one, or one for each tool where the controller neither changes nor waits. `name`: the
 * setup's file name, without folder and extension.
 */
export function programsOf(build: Build, setup: Setup, cnc: Cnc, name: string): readonly ProgramFile[] {
  const file = (runs: readonly Run[], suffix: string): ProgramFile => ({
    name: `${name}${suffix}`,
    text: programText(setup, runs, cnc, header(build, setup, runs, cnc)),
  });
  if (setup.runs.length === 0) return [];
  if (cnc.controller.tools !== "file") return [file(setup.runs, "")];
  return setup.runs.map((run, i) => file([run], `-tool-${i + 1}-of-${setup.runs.length}`));
}
