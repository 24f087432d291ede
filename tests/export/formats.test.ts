import { describe, expect, it } from "vitest";
import { exporters } from "../../src/export/formats.js";
import { sampleBuild } from "../fixtures/build.js";

describe("the formats", () => {
  it("are named once each and write no path twice, with folders and names that are safe everywhere", async () => {
    expect(new Set(exporters.map(({ format }) => format)).size).toBe(exporters.length);
    const paths: string[] = [];
    for (const exporter of exporters) for (const { path } of await exporter.write(sampleBuild())) paths.push(path);
    expect(new Set(paths.map((path) => path.toLowerCase())).size).toBe(paths.length);
    for (const path of paths) expect(path).toMatch(/^([a-z-]+\/)?[\p{L}\p{M}\p{N}_-]+\.[a-z]+$/u);
  });
});
