import type { Operation, Program, Run, Setup } from "../../model/program.js";

/**
 * A program without its moves: they are in the G-code and DXF of each setup, and would make most of the file (measured
 * on the estate starter: 170 kB of 250). Which tool cuts which feature to which depth stays.
 */
export type ProgramSummary = {
  readonly setups: readonly (Omit<Setup, "runs" | "parts"> & {
    readonly runs: readonly (Omit<Run, "operations"> & { readonly operations: readonly Omit<Operation, "moves">[] })[];
    readonly parts: readonly Pick<Setup["parts"][number], "part" | "up">[];
  })[];
  readonly withheld: readonly string[];
};

export function summaryOf({ setups, withheld = [] }: Program): ProgramSummary {
  return {
    setups: setups.map((setup) => ({
      ...setup,
      parts: setup.parts.map(({ part, up }) => ({ part, up })),
      runs: setup.runs.map((run) => ({ ...run, operations: run.operations.map(({ moves: _, ...rest }) => rest) })),
    })),
    withheld,
  };
}
