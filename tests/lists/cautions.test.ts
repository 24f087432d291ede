import { describe, expect, it } from "vitest";
import { cautions, cautionsFor, cautionWords } from "../../src/lists/cautions.js";
import type { Build } from "../../src/model/build.js";
import { sampleBuild } from "../fixtures/build.js";

const build = sampleBuild();
const ids = (of: Build) => cautionsFor(of).map(({ id }) => id);
const withBuilt = (of: Build, built: Partial<Build["plan"]["built"]>): Build => ({
  ...of,
  plan: { ...of.plan, built: { ...of.plan.built, ...built } },
});

describe("cautions", () => {
  it("each have a sentence, a source and places to be shown, and an id of their own", () => {
    expect(new Set(cautions.map(({ id }) => id)).size).toBe(cautions.length);
    for (const { sentence, source, showOn } of cautions) {
      expect(sentence).toMatch(/^[A-Z].*\.$/);
      expect(source).not.toBe("");
      expect(showOn.length).toBeGreaterThan(0);
    }
  });

  it("all end by deferring to local codes and licensed people", () => {
    for (const caution of cautionsFor(build)) {
      expect(cautionWords(caution)).toMatch(/Follow local codes and have licensed or qualified people .*\.$/);
    }
  });

  it("follow from what the job holds", () => {
    expect(ids(build)).toEqual([
      "dust",
      "formaldehyde",
      "saw-router",
      "gcode",
      "adhesive",
      "battery",
      "fuel",
      "crash",
      "hearing",
      "airbag",
      "spare",
    ]);
  });

  it("speak of two people for boxes over 25 kg by the computed mass, whatever the steps name", () => {
    expect(build.plan.built.steps.flatMap((step) => step.cautions)).toContain("lift");
    expect(ids(build)).not.toContain("lift");
    // NIOSH lifting equation, load constant 23 kg (from memory), rounded to 25 kg; panels of the box: about 6.5 kg
    const driverOf = (massKg: number) => ({ ten: { ...build.job.drivers.ten!, massKg } });
    const withDriver = (massKg: number) => ids({ ...build, job: { ...build.job, drivers: driverOf(massKg) } });
    expect(withDriver(18)).not.toContain("lift");
    expect(withDriver(19)).toContain("lift");
  });

  it("leave out batteries, coverings and the machine where the job has none", () => {
    const bare = build.plan.built.parts.map((part) => ({ ...part, coverings: {}, edges: {} }));
    const plain = withBuilt(
      { ...build, job: { ...build.job, space: { ...build.job.space, obstacles: {} } } },
      { parts: bare, steps: [] },
    );
    const parts = plain.process.parts.map((each) => ({ ...each, method: "saw" as const }));
    const process = { ...plain.process, parts };
    for (const id of ["battery", "adhesive", "airbag", "spare", "gcode", "lift"]) {
      expect(ids({ ...plain, process })).not.toContain(id);
    }
  });

  it("warn of dust from any board, and of formaldehyde from MDF alone", () => {
    const boards = Object.fromEntries(
      Object.entries(build.shop.boards).map(([name, stock]) => [name, { ...stock, material: "birch plywood" }]),
    );
    const ply = ids({ ...build, shop: { ...build.shop, boards } });
    expect(ply).toContain("wood-dust");
    expect(ply).not.toContain("dust");
    expect(ply).not.toContain("formaldehyde");
  });

  it("name the boxes that take two people, with their mass", () => {
    const { ten } = build.job.drivers;
    const heavy = { ...build, job: { ...build.job, drivers: { ten: { ...ten!, massKg: 25 } } } };
    const lift = cautionsFor(withBuilt(heavy, { steps: [] })).find(({ id }) => id === "lift")!;
    expect(lift.about).toEqual(["box: about 31.5 kg"]);
    expect(cautionWords(lift)).toMatch(
      /^Over 25 kg: two people \(in this job: box: about 31\.5 kg\)\. Follow local codes/,
    );
  });

  it("are chosen by where they are shown", () => {
    expect(cautionsFor(build, "cut list").map(({ id }) => id)).toEqual(["dust", "saw-router"]);
    expect(cautionsFor(build, "cut file").map(({ id }) => id)).toEqual(["dust", "saw-router", "gcode"]);
  });

  it("come in too where a step of the work names them", () => {
    const [first, ...rest] = build.plan.built.steps;
    const steps = [{ ...first!, cautions: ["styrene"] }, ...rest];
    expect(ids(build)).not.toContain("styrene");
    expect(ids(withBuilt(build, { steps }))).toContain("styrene");
  });
});
