import type { JobOptions } from "../buildFile.js";
import type { AddCommand } from "../command.js";
import { takesJob, takesNest } from "../options.js";

export const addBuy: AddCommand = (program, run) =>
  void takesNest(takesJob(program.command("buy")))
    .description("print the shopping list and what it comes to")
    .action((file: string, options: JobOptions) =>
      run(async (terminal) => {
        const { buildFile } = await import("../buildFile.js");
        const { conclude, nothing } = await import("../conclude.js");
        const { shoppingList } = await import("../shoppingList.js");
        const { build, ...conclusion } = await buildFile(file, options);
        return conclude(terminal, conclusion, build === undefined ? nothing : shoppingList(build), options.json);
      }),
    );
