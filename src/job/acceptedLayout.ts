import { basename, dirname, join } from "node:path";
import { z } from "zod";
import { type FindingDef, type Located, raise, text } from "../input/finding.js";
import { atTop, noSuchFile, readTextFile } from "../input/textFile.js";
import type { AcceptedGroup, AcceptedLayout } from "../model/accepted.js";
import { hashOf } from "../model/hash.js";
import type { BoardId, PartId } from "../model/ids.js";

export const acceptedUnreadable: FindingDef = {
  code: "accepted-layout-unreadable",
  severity: "error",
  words: "{file} is not a layout as it was accepted: {reason}",
  next: "take the file away, or accept a layout anew",
  explain:
    "`nest --accept` writes the layout that was accepted beside the job file, with a sum over all that is in it. A file " +
    "that does not agree with its sum was changed or cut short, so a new layout is searched; check it against the " +
    "sheets that were bought.",
};

/** Beside the job file: "estate-cargo.yaml" has "estate-cargo.layout.json". */
export function acceptedFileOf(jobFile: string): string {
  const stem = basename(jobFile).replace(/\.[^.]+$/, "");
  return join(dirname(jobFile), `${stem}.layout.json`);
}

export function acceptedText(groups: readonly AcceptedGroup[]): string {
  const layout: AcceptedLayout = { version: 1, sum: hashOf(groups), groups };
  return `${JSON.stringify(layout, null, 1)}\n`;
}

/** The layout that was accepted for a job; no value where there is no such file or it cannot be used. */
export async function readAcceptedLayout(jobFile: string): Promise<Located<AcceptedLayout>> {
  const path = acceptedFileOf(jobFile);
  const locate: Located<AcceptedLayout>["locate"] = (at) => ({ ...atTop(at), file: path });
  const { value: source, findings } = await readTextFile(path);
  if (source === undefined)
    return { value: undefined, findings: findings.filter(({ code }) => code !== noSuchFile.code), locate };
  const value = parsed(source);
  if (typeof value !== "string") return { value, findings: [], locate };
  const file = basename(path);
  const finding = raise(acceptedUnreadable, {
    at: [{ file, path: [] }],
    facts: { file: text(file), reason: text(value) },
  });
  return { value: undefined, findings: [finding], locate };
}

/** What is in the file, or why it cannot be used. */
function parsed(source: string): AcceptedLayout | string {
  let json: unknown;
  try {
    json = JSON.parse(source);
  } catch {
    return "it is cut short or changed";
  }
  const { success, data } = acceptedSchema.safeParse(json);
  if (!success) return "it has another form";
  return data.sum === hashOf(data.groups) ? data : "its sum does not agree with what is in it";
}

const number = z.number();
const isText = (value: unknown) => typeof value === "string";
const board = z.custom<BoardId>(isText);
const part = z.custom<PartId>(isText);
const sheet = z.looseObject({
  sheet: z.string(),
  board,
  length: number,
  width: number,
  trim: number,
  offcut: z.string().exactOptional(),
  onHand: z.literal(true).exactOptional(),
  price: number.exactOptional(),
  restOf: z.strictObject({ sheet: z.string(), x: number, y: number }).exactOptional(),
  measured: number.exactOptional(),
  placed: z.array(z.strictObject({ part, x: number, y: number, turn: number, backUp: z.boolean() })),
});
const acceptedSchema = z.strictObject({
  version: z.literal(1),
  sum: z.string(),
  groups: z.array(
    z.strictObject({
      board,
      byMachine: z.boolean(),
      parts: z.record(z.string(), z.string()),
      sheets: z.array(sheet),
    }),
  ),
});
