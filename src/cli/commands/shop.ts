import type { AddCommand } from "../command.js";
import { exit } from "../exit.js";

export const addShop: AddCommand = (program, run) =>
  void program
    .command("shop")
    .argument("[job]", "a job file: say which shop file it uses")
    .description("print the starter shop file, or say which shop file a job uses")
    .action((file: string | undefined) =>
      run(async (terminal) => {
        if (file === undefined) {
          const { starterShopYaml } = await import("../../shop/starter.js");
          terminal.out(starterShopYaml().trimEnd());
          return exit.done;
        }
        const { loadJob, shopFileOf } = await import("../load.js");
        const { conclude, nothing } = await import("../conclude.js");
        const { job, findings, reading } = await loadJob(file, {});
        if (job === undefined) return conclude(terminal, { findings, reading, usable: false }, nothing, false);
        terminal.out(shopFileOf(job, file, undefined) ?? "the built-in starter; `bafflewright shop` prints it");
        return exit.done;
      }),
    );
