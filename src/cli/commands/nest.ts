import type { JobOptions } from "../buildFile.js";
import type { AddCommand } from "../command.js";
import { takesJob, takesNest } from "../options.js";

export const addNest: AddCommand = (program, run) =>
  void takesNest(takesJob(program.command("nest")))
    .description("say which sheets to buy and how the parts lie on them")
    .action((file: string, options: JobOptions) =>
      run(async (terminal) => {
        const { buildFile } = await import("../buildFile.js");
        const { conclude, nothing } = await import("../conclude.js");
        const { layoutLines } = await import("../layoutLines.js");
        const { build, ...conclusion } = await buildFile(file, options);
        const result = build
          ? { lines: layoutLines(build), data: { hash: build.hash, layout: build.layout } }
          : nothing;
        return conclude(terminal, conclusion, result, options.json);
      }),
    );
