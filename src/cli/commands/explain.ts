import type { AddCommand } from "../command.js";

export const addExplain: AddCommand = (program, run) =>
  void program
    .command("explain")
    .argument("[what]", "the code of a finding, such as unknown-stock, or a key of the job file")
    .description("explain a finding or a key of the job file")
    .action((what: string | undefined) =>
      run(async (terminal) => {
        const { explain } = await import("../explain.js");
        return explain(what, terminal);
      }),
    );
