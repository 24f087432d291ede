import type { AddCommand } from "../command.js";
import { exit } from "../exit.js";

export const addSchema: AddCommand = (program, run) =>
  void program
    .command("schema")
    .description("print the job file's JSON Schema, for editors that complete and check")
    .action(() =>
      run(async (terminal) => {
        const { jobJsonSchema } = await import("../../job/jsonSchema.js");
        const { kinds } = await import("../../pieces/kinds.js");
        terminal.out(JSON.stringify(jobJsonSchema(kinds), null, 2));
        return exit.done;
      }),
    );
