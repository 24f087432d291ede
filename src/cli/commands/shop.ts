import type { AddCommand } from "../command.js";
import type { CouponOptions } from "../coupon.js";
import { exit } from "../exit.js";

export const addShop: AddCommand = (program, run) =>
  void program
    .command("shop")
    .argument("[job]", "a job file: say which shop file it uses")
    .description("print the starter shop file, say which shop file a job uses, or measure a bit with a test piece")
    .option("--coupon <bit>", "print the program of a test piece for a bit of the job's shop")
    .option("--slot <width>", "with --coupon: what the piece's slot measures")
    .option("--disc <diameter>", "with --coupon: what its disc measures")
    .option("--hole <diameter>", "with --coupon: what its hole measures")
    .action((file: string | undefined, { coupon, ...sizes }: CouponOptions & { readonly coupon?: string }) =>
      run(async (terminal) => {
        if (file !== undefined && coupon !== undefined) {
          const { runCoupon } = await import("../coupon.js");
          return runCoupon(terminal, file, coupon, sizes);
        }
        if (coupon !== undefined || Object.keys(sizes).length > 0) {
          terminal.err(
            'error  a test piece needs a job, for its shop, and a bit: shop my-car.yaml --coupon "6 straight"',
          );
          return exit.unusable;
        }
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
