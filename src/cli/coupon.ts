import { comments } from "../export/gcode/comment.js";
import { programText } from "../export/gcode/program.js";
import { type LengthUnit, parseLength } from "../input/length.js";
import { formatNumber } from "../input/number.js";
import { cautions, closing } from "../lists/cautions.js";
import { type Coupon, couponOf, measuredDiameter } from "../machining/coupon.js";
import type { Cnc } from "../model/shop.js";
import { conclude, nothing } from "./conclude.js";
import { type Exit, exit } from "./exit.js";
import { loadJob } from "./load.js";
import type { Terminal } from "./terminal.js";

/** What a caliper says, as typed; a bare number is in mm. */
export type CouponOptions = { readonly slot?: string; readonly disc?: string; readonly hole?: string };

const unit: LengthUnit = "mm";

/**
 * The program of a test piece for a bit of the job's shop to the output, and what to do with it to the error stream; or,
 * where sizes of the piece are given, what the bit measures and the line for the shop file.
 */
export async function runCoupon(terminal: Terminal, job: string, bit: string, options: CouponOptions): Promise<Exit> {
  const { shop, findings, reading } = await loadJob(job, {});
  if (shop === undefined) return conclude(terminal, { findings, reading, usable: false }, nothing, false);
  const coupon = couponOf(shop, bit);
  if (coupon.value === undefined || shop.cnc === undefined)
    return conclude(terminal, { findings: coupon.findings, reading, usable: false }, nothing, false);
  const typed = Object.entries(options);
  if (typed.length > 0) return readBack(terminal, bit, coupon.value, options);
  for (const words of coupon.value.words) terminal.err(words);
  terminal.out(textOf(coupon.value, shop.cnc, bit).trimEnd());
  return exit.done;
}

function readBack(terminal: Terminal, bit: string, coupon: Coupon, options: CouponOptions): Exit {
  const sizes = Object.entries(options).map(([name, typed]) => [name, parseLength(typed, unit)] as const);
  const wrong = sizes.find(([, size]) => size === undefined);
  if (wrong) {
    terminal.err(`error  --${wrong[0]} is no length: write 6.05, 6.05mm or 1/4in`);
    return exit.unusable;
  }
  const measured = measuredDiameter(coupon, Object.fromEntries(sizes));
  if (measured === undefined) return exit.unusable;
  const size = formatNumber(measured, 2);
  terminal.out(`${bit} cuts ${size} mm wide. In the shop file write:`);
  terminal.out(`bits:\n  ${JSON.stringify(bit)}: {measured: ${size}mm}`);
  return exit.done;
}

const onCoupon = new Set(["dust", "saw-router", "gcode"]);

function textOf({ program, words }: Coupon, cnc: Cnc, bit: string): string {
  const [setup] = program.setups;
  const head = [
    ...comments("coupon", `for ${bit}`),
    ...words.flatMap((line) => comments("do", line)),
    ...cautions.filter(({ id }) => onCoupon.has(id)).flatMap(({ sentence }) => comments("caution", sentence)),
    ...comments("caution", closing),
  ];
  return programText(setup!, setup!.runs, cnc, head);
}
