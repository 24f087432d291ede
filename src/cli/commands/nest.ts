import type { JobOptions } from "../buildFile.js";
import type { AddCommand } from "../command.js";
import { duration, takesJob, takesNest } from "../options.js";

export const addNest: AddCommand = (program, run) =>
  void takesNest(takesJob(program.command("nest")))
    .description("say which sheets to buy and how the parts lie on them")
    .option("--time <duration>", "search anew for so long, such as 60s or 2min; Ctrl-C ends it with the best", duration)
    .option("--accept", "write the layout beside the job: it is then cut so until a part of it changes")
    .action((file: string, options: JobOptions & { readonly time?: number; readonly accept?: boolean }) =>
      run(async (terminal) => {
        const { nestJob } = await import("../nestJob.js");
        return nestJob(terminal, file, options);
      }),
    );
