import { basename, join } from "node:path";
import type { JobOptions } from "../buildFile.js";
import type { AddCommand } from "../command.js";
import { takesJob, takesNest } from "../options.js";

export const addMake: AddCommand = (program, run) =>
  void takesNest(takesJob(program.command("make")))
    .description("make everything: cut files, drawings and lists, in a folder of their own")
    .option("--out <folder>", "where to write; output/<name of the job file> where it is not given")
    .action((file: string, options: JobOptions & { readonly out?: string }) =>
      run(async (terminal) => {
        const { makeJob } = await import("../makeJob.js");
        return makeJob(terminal, file, options.out ?? join("output", stem(file)), options);
      }),
    );

/** "jobs/estate-cargo.yaml" gives "estate-cargo". */
function stem(file: string): string {
  return basename(file).replace(/\.[^.]+$/, "") || "job";
}
