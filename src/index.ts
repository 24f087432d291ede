/**
 * Bafflewright as a library: the flow from a job file's text to files, each step a function over plain data.
 *
 *     const job = parseJob(text, "job.yaml", kinds);
 *     if (job.value) {
 *       const { value: build, findings } = await buildJob(job.value, starterShop(), kinds, usualOptions);
 *       if (build) for (const exporter of exporters) for (const file of await exporter.write(build)) keep(file);
 *     }
 *
 * Nothing here reads a disk or a clock; what is wrong comes back as findings, never as an exception.
 */

export { findingDefs } from "./cli/findingDefs.js";
export { exporters } from "./export/formats.js";
export { type BuildOptions, buildJob, type Stage, usualOptions } from "./flow/build.js";
export type * from "./input/finding.js";
export type { Show } from "./input/show.js";
export { wordsOf } from "./input/words.js";
export { jobJsonSchema } from "./job/jsonSchema.js";
export { parseJob } from "./job/parse.js";
export { type Coupon, couponOf, measuredDiameter, type Reading } from "./machining/coupon.js";
export { programOf } from "./machining/program.js";
export type * from "./model/build.js";
export type * from "./model/ids.js";
export type * from "./model/job.js";
export type * from "./model/joint.js";
export type * from "./model/part.js";
export type * from "./model/piece.js";
export type * from "./model/program.js";
export type * from "./model/shop.js";
export { kinds } from "./pieces/kinds.js";
export { planJob } from "./plan/plan.js";
export { parseShop } from "./shop/parse.js";
export { starterShop } from "./shop/starter.js";
