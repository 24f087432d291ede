import { compose, inverse, turn } from "../../../geometry/frame.js";
import type { Plan } from "../../../model/build.js";
import type { Job } from "../../../model/job.js";
import type { Axis } from "../../../model/joint.js";
import { rowOf } from "../../../shop/lookups.js";

/** Near enough to a bolt circle to be one of its holes, mm. */
const onCircle = 0.5;

/** Whether a fastener holds a driver: it runs along the driver's axis, on its bolt circle. */
export function fixesDriver(axis: Axis, job: Job, plan: Plan): boolean {
  return plan.built.mounts.some((mount) => {
    const circle = rowOf(job.drivers, mount.driver)?.bolts?.circle;
    if (circle === undefined) return false;
    const seen = compose(inverse(mount.at), axis.ray);
    const out = turn(seen.quat, [0, 0, 1])[2];
    return out > 1 - 1e-6 && Math.abs(Math.hypot(seen.origin[0], seen.origin[1]) - circle / 2) < onCircle;
  });
}
