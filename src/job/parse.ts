import { z } from "zod";
import { type Door, doorFor } from "../input/door.js";
import { outOfRange } from "../input/doorFindings.js";
import type { Entries } from "../input/entries.js";
import { inFileOrder } from "../input/fileOrder.js";
import { below, type Finding, type Located, type Origin, type Outcome, raise } from "../input/finding.js";
import { readWith } from "../input/issues.js";
import { lengthUnits } from "../input/length.js";
import { versionFindings } from "../input/version.js";
import { isMap, readYaml } from "../input/yaml.js";
import type { Job, Obstacle, Unread } from "../model/job.js";
import type { PieceKind } from "../model/piece.js";
import { boardSchema, coveringSchema } from "./boards.js";
import { coveringOf } from "./coverings.js";
import { driverSchema } from "./driver.js";
import { readEach, readNamed } from "./entries.js";
import { headerShape, usualShow } from "./header.js";
import { noPieces, readPiece } from "./pieces.js";
import { jobVersions } from "./schema.js";
import { obstacleSchema, spaceSchema } from "./space.js";

type Data = Readonly<Record<string, unknown>>;

/**
 * Reads a job file. Every mistake in it is told at once. A mistake in one piece, board, driver, covering or obstacle
 * withholds that one; the value is undefined where the file cannot be used at all: it is not YAML, its version is not
 * known, or its header or space has a mistake.
 */
export function parseJob(source: string, file: string, kinds: readonly PieceKind[]): Located<Job> {
  const yaml = readYaml(source, file);
  const { locate } = yaml;
  if (yaml.value === undefined) return { value: undefined, findings: yaml.findings, locate };
  const { value: job, findings } = readJob(yaml.value.data, { file, path: [] }, kinds);
  return { value: job, findings: inFileOrder(findings, locate), locate };
}

function readJob(data: Data, root: Origin, kinds: readonly PieceKind[]): Outcome<Job> {
  const version = versionFindings(data, root, jobVersions);
  if (version.length > 0 && "version" in data) return { value: undefined, findings: version };
  const units = lengthUnits.find((unit) => unit === data.units);
  // Without units nothing can be said about sizes, but everything else can; inches take every way of writing.
  const door = doorFor(units ?? "in");
  const header = readWith(headerSchema, data, root);
  const space = readSpace(data.space, below(root, "space"), door);
  const boards = readEach(boardSchema(door), data.boards, below(root, "boards"));
  const drivers = readEach(driverSchema(door), data.drivers, below(root, "drivers"));
  const coverings = readEach(coveringSchema(door), data.coverings, below(root, "coverings"));
  const pieces = readNamed(data.pieces, below(root, "pieces"), (entry, at) => readPiece(entry, at, kinds, door));
  const all = [header, space.outcome, space.obstacles, boards, drivers, coverings, pieces];
  const found = [...version, ...all.flatMap((part) => part.findings), ...emptiness(data, root)];
  const findings = units === undefined ? found.filter((finding) => finding.code !== outOfRange.code) : found;
  if (header.value === undefined || space.outcome.value === undefined || units === undefined || version.length > 0) {
    return { value: undefined, findings };
  }
  const { title, reference, customer, date, show, shop } = header.value;
  const unread = [
    ...unreadOf("board", boards),
    ...unreadOf("driver", drivers),
    ...unreadOf("covering", coverings),
    ...unreadOf("obstacle", space.obstacles),
  ];
  const job: Job = {
    version: 1,
    file: root.file,
    title,
    reference,
    customer,
    date,
    units,
    show: show ?? usualShow(units),
    shop,
    "cut by": header.value["cut by"],
    boards: boards.values,
    space: space.outcome.value,
    drivers: drivers.values,
    coverings: Object.fromEntries(Object.entries(coverings.values).map(([name, each]) => [name, coveringOf(each)])),
    pieces: pieces.values,
    withheld: pieces.withheld,
    ...(unread.length > 0 && { unread }),
  };
  return { value: job, findings };
}

/** A map whose entries are read one by one. */
const anyMap = z.record(z.string(), z.unknown()).nullish();

/** The top of a file: what stands in its maps is looked at later. */
const headerSchema = z.strictObject({
  version: z.unknown().optional(),
  ...headerShape,
  boards: anyMap,
  space: z.unknown().optional(),
  drivers: anyMap,
  coverings: anyMap,
  pieces: anyMap,
});

/** The space without its obstacles, which are read one by one. */
function readSpace(written: unknown, at: Origin, door: Door) {
  const map = isMap(written) ? written.obstacles : undefined;
  const obstacles = readEach(obstacleSchema(door), map, below(at, "obstacles"));
  const known = anyMap.transform((): Readonly<Record<string, Obstacle>> => obstacles.values);
  return { obstacles, outcome: readWith(spaceSchema(door, known), written, at) };
}

function emptiness({ pieces }: Data, root: Origin): readonly Finding[] {
  const isEmpty = pieces === undefined || pieces === null || (isMap(pieces) && Object.keys(pieces).length === 0);
  return isEmpty ? [raise(noPieces, { at: [below(root, "pieces")] })] : [];
}

function unreadOf(kind: Unread["kind"], entries: Entries<unknown>): readonly Unread[] {
  return entries.withheld.map((name) => ({ kind, name }));
}
