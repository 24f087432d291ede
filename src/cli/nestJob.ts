import type { Finding } from "../input/finding.js";
import { acceptedFileOf, acceptedText, readAcceptedLayout } from "../job/acceptedLayout.js";
import type { Build } from "../model/build.js";
import { acceptedGroups } from "../nest/accepted.js";
import { buildFile, type JobOptions } from "./buildFile.js";
import { conclude, nothing } from "./conclude.js";
import type { Exit } from "./exit.js";
import { layoutLines } from "./layoutLines.js";
import { realDisk } from "./output/disk.js";
import { writeBeside } from "./output/writeBeside.js";
import { row } from "./summary.js";
import type { Terminal } from "./terminal.js";
import { type TimedSearch, timedSearch } from "./timedSearch.js";

export type NestJobOptions = JobOptions & { readonly time?: number; readonly accept?: boolean };

/** Lays a job's parts on sheets and says how; keeps the layout beside the job if it is accepted. */
export async function nestJob(terminal: Terminal, file: string, options: NestJobOptions): Promise<Exit> {
  const { time } = options;
  const { built, timed } =
    time === undefined
      ? { built: await buildFile(file, options), timed: undefined }
      : await forSoLong(terminal, file, options, time);
  const { build, ...conclusion } = built;
  if (build === undefined) return conclude(terminal, conclusion, nothing, options.json);
  const accepted = options.accept ? await acceptLayout(file, build) : { lines: [], findings: [] };
  const findings = [...conclusion.findings, ...accepted.findings];
  const lines = [...layoutLines(build), ...repeatLines(timed, options), ...accepted.lines];
  const search = timed && { iterations: timed.iterations };
  const data = { hash: build.hash, layout: build.layout, ...(search && { search }) };
  return conclude(terminal, { ...conclusion, findings }, { lines, data }, options.json);
}

/** Searches in threads until the time is up or the person says stop; a second Ctrl-C ends the process as ever. */
async function forSoLong(terminal: Terminal, file: string, options: NestJobOptions, seconds: number) {
  let stopped = false;
  const stop = () => {
    stopped = true;
    terminal.err("stopping with the best so far");
  };
  process.once("SIGINT", stop);
  try {
    const timed = timedSearch(
      terminal,
      seconds,
      options,
      () => performance.now() / 1000,
      () => stopped,
    );
    return { built: await buildFile(file, { ...options, anew: true }, timed.search), timed };
  } finally {
    process.off("SIGINT", stop);
  }
}

function repeatLines(timed: TimedSearch | undefined, { seed }: JobOptions): readonly string[] {
  if (timed === undefined || timed.iterations.length === 0) return [];
  const same = `--iterations ${timed.iterations.join(",")}${seed === undefined ? "" : ` --seed ${seed}`}`;
  return ["", row("search", `the same is found again with ${same} --anew`)];
}

type Accepting = { readonly lines: readonly string[]; readonly findings: readonly Finding[] };

/** A file that is not as it was accepted is not written over: it may be the fabricator's own. */
async function acceptLayout(file: string, { plan, process: how, layout }: Build): Promise<Accepting> {
  const before = await readAcceptedLayout(file);
  if (before.findings.length > 0) return { lines: [row("accepted", "nothing")], findings: before.findings };
  const groups = acceptedGroups(plan, how, layout);
  if (groups.length === 0)
    return { lines: [row("accepted", "nothing: of every board a part is left over")], findings: [] };
  const to = acceptedFileOf(file);
  const findings = await writeBeside(realDisk, to, acceptedText(groups));
  if (findings.length > 0) return { lines: [], findings };
  const boards = [...new Set(groups.map((group) => group.board))].join(", ");
  return { lines: [row("accepted", `${boards}; kept in ${to}`)], findings: [] };
}
