import { describe, expect, it } from "vitest";
import { netVolume } from "../../../src/plan/checks/netVolume.js";
import { empty } from "../../findings/chambers.js";
import { box, ten } from "../../findings/changes.js";
import { ports, tube } from "../../findings/ports.js";
import { type Change, codesOf, planned } from "../../pieces/planned.js";

/** A box of some 60 L with a driver of these wishes in its top. */
async function found(wants: object, ...more: readonly Change[]) {
  const made = planned(empty(box("driver", { is: "ten", in: "top" }), ten("wants", wants), ...more));
  expect(codesOf(made)).not.toContain("unknown-key");
  return (await netVolume.run(made.job, made.shop, made.plan)).map(({ code }) => code);
}

const round = ports(tube());
const slot = box("slot ports", [{ in: "front", beside: "left", gap: 30, long: 300 }]);

describe("what a driver wants", () => {
  it("of a closed box is asked of a closed box alone", async () => {
    const wants = { closed: "1 to 2 L" };
    expect(await found(wants)).toEqual(["volume-outside-wants"]);
    expect(await found(wants, round)).toEqual([]);
    expect(await found(wants, slot)).toEqual([]);
  });

  it("of a box with a port is asked of one with a port, round or made of panels", async () => {
    const wants = { ported: "1 to 2 L" };
    expect(await found(wants)).toEqual([]);
    expect(await found(wants, round)).toEqual(["volume-outside-wants"]);
    expect(await found(wants, slot)).toEqual(["volume-outside-wants"]);
    expect(await found({ closed: "1 to 2 L", ported: "40 to 80 L" }, round)).toEqual([]);
  });
});
