// Takes damaged copies of a job through reading and building, one after the other, and prints a line as each begins and
// one as it ends, so that the process that started this one can tell a copy that hangs.
//
//   node tests/damage/runner.mjs JOB FIRST-SEED COUNT [write]     on dist/; "write" also makes the files, in memory
import { readFileSync } from "node:fs";
import { findingDefs } from "../../dist/cli/findingDefs.js";
import { reportOf } from "../../dist/cli/report.js";
import { painter } from "../../dist/cli/terminal.js";
import { buildJob, usualOptions } from "../../dist/flow/build.js";
import { parseJob } from "../../dist/job/parse.js";
import { kinds } from "../../dist/pieces/kinds.js";
import { starterShop } from "../../dist/shop/starter.js";
import { damaged } from "./damage.mjs";

const [job, first, count, write] = process.argv.slice(2);
const source = readFileSync(job, "utf8");
const exporters = write === "write" ? (await import("../../dist/export/formats.js")).exporters : [];
const show = { unit: "in", denominator: 16 };
const plain = painter(false);
const isError = (finding) => finding.severity === "error";

for (let seed = Number(first); seed < Number(first) + Number(count); seed++) {
  const text = damaged(source, seed);
  tell({ seed, begins: true });
  const begun = performance.now();
  const outcome = await outcomeOf(text).catch((error) => ({ outcome: "threw", stack: error?.stack ?? String(error) }));
  tell({ seed, ms: performance.now() - begun, ...outcome });
}

async function outcomeOf(text) {
  const read = parseJob(text, "damaged.yaml", kinds);
  const report = (findings) => printed(findings, { defs: findingDefs, show, locate: read.locate });
  if (read.value === undefined) return told("unreadable", report(read.findings), false);
  const valid = !read.findings.some(isError);
  const { value: build, findings } = await buildJob(read.value, starterShop(), kinds, {
    ...usualOptions,
    found: read.findings,
  });
  report(findings);
  if (build === undefined) return told("nothing planned", findings, valid);
  for (const exporter of exporters) for (const file of await exporter.write(build)) void file;
  if (build.plan.built.parts.length === 0) return told("all withheld", findings, valid);
  return told(findings.some(isError) ? "planned, with errors" : "planned", findings, valid);
}

/** Writes the report as the command would, in inches since that is the longer way; a finding that it cannot tell throws. */
function printed(findings, reading) {
  const text = reportOf(findings, reading, plain);
  if (/undefined|NaN|Infinity/.test(text.replaceAll(/^ {2}found.*$/gm, "")))
    throw new Error(`not told in words:\n${text}`);
  return findings;
}

/** Anything less than a whole plan must be told, by an error or, where a job has no pieces, by a warning. */
function told(outcome, findings, valid) {
  if (outcome !== "planned" && findings.length === 0) {
    return { outcome: "silent", stack: `${outcome} without a finding`, valid };
  }
  return { outcome, valid, codes: findings.filter(isError).map((finding) => finding.code) };
}

function tell(line) {
  process.stdout.write(`${JSON.stringify(line)}\n`);
}
