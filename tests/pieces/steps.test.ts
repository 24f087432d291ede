import { describe, expect, it } from "vitest";
import { stepsInOrder } from "../../src/lists/steps.js";
import { planned } from "./planned.js";

describe("the build steps of a job", () => {
  const { steps } = planned().plan.built;
  const order = stepsInOrder(steps).map((step) => step.id);
  const before = (a: string, b: string) => order.indexOf(a) < order.indexOf(b) && order.includes(a);

  it("wait only for steps that exist", () => {
    const ids = new Set(steps.map((step) => step.id));
    for (const step of steps) for (const id of step.after) expect(ids.has(id), `${step.id} waits for ${id}`).toBe(true);
  });

  it("put the ring on before the driver, and the inserts in before the plate is bolted down", () => {
    expect(before("ring:glue", "box:driver")).toBe(true);
    expect(before("box:glue", "ring:glue")).toBe(true);
    expect(before("box:inserts", "plate:bolt")).toBe(true);
    expect(before("plate:cover", "plate:bolt")).toBe(true);
  });
});
