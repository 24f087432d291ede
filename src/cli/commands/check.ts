import type { JobOptions } from "../buildFile.js";
import type { AddCommand } from "../command.js";
import { takesJob } from "../options.js";

export const addCheck: AddCommand = (program, run) =>
  void takesJob(program.command("check"))
    .description("say what would not fit, hold or work, and write nothing")
    .action((file: string, options: JobOptions) =>
      run(async (terminal) => {
        const { buildFile } = await import("../buildFile.js");
        const { conclude, nothing } = await import("../conclude.js");
        const { volumeLines } = await import("../summary.js");
        const { build, ...conclusion } = await buildFile(file, options);
        const result = build === undefined ? nothing : { lines: volumeLines(build), data: { hash: build.hash } };
        return conclude(terminal, conclusion, result, options.json);
      }),
    );
