import { exporters } from "../export/formats.js";
import type { Build, OutputFile } from "../model/build.js";
import { buildFile, type JobOptions } from "./buildFile.js";
import { conclude, nothing } from "./conclude.js";
import type { Exit } from "./exit.js";
import { realDisk } from "./output/disk.js";
import { writeFolder } from "./output/folder.js";
import { thisRunner } from "./output/runner.js";
import { summaryData, summaryLines } from "./summary.js";
import type { Terminal } from "./terminal.js";

/** Builds a job and turns a folder into everything that is made of it. Where nothing is left to make it is left alone. */
export async function makeJob(terminal: Terminal, file: string, folder: string, options: JobOptions): Promise<Exit> {
  const { build, ...conclusion } = await buildFile(file, options);
  if (build === undefined || build.plan.built.parts.length === 0) {
    const result = conclusion.usable
      ? { ...nothing, lines: [`nothing to make: ${folder} is left as it was`] }
      : nothing;
    return conclude(terminal, conclusion, result, options.json);
  }
  const written = await writeFolder(realDisk, thisRunner(), folder, await filesOf(build), terminal.err);
  const findings = [...conclusion.findings, ...written.findings];
  if (written.value === undefined) {
    return conclude(terminal, { ...conclusion, findings, usable: false }, nothing, options.json);
  }
  const made = { folder, ...written.value };
  const result = { lines: summaryLines(build, made), data: summaryData(build, made) };
  return conclude(terminal, { ...conclusion, findings }, result, options.json);
}

/** Every file of every format, in the order of the formats. */
async function filesOf(build: Build): Promise<readonly OutputFile[]> {
  const files: OutputFile[] = [];
  for (const exporter of exporters) files.push(...(await exporter.write(build)));
  return files;
}
