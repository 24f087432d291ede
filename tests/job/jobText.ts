import { z } from "zod";
import type { Finding } from "../../src/input/finding.js";
import { parseJob } from "../../src/job/parse.js";
import type { PieceKind } from "../../src/model/piece.js";

/** A kind of piece for tests of the reader alone: a strip of a board. */
const strip: PieceKind<{ readonly kind: string }> = {
  kind: "strip",
  schema: (door) =>
    z.strictObject({
      kind: z.literal("strip"),
      board: z.string(),
      wide: z.union([z.literal("free"), door.length({ min: 10, max: 2000 })]),
      place: door.point().optional(),
      hole: door.size({ min: 8, max: 300 }).optional(),
      tilt: door.angle({ min: 0, max: 1 }).optional(),
      screws: z.int().min(2).max(20).optional(),
      note: z.string().min(1).max(10).optional(),
      code: z
        .string()
        .regex(/^[a-z]+$/)
        .optional(),
    }),
  findings: [],
  refs: () => [],
  free: () => undefined,
  offer: () => ({ value: undefined, findings: [] }),
  ask: () => ({ value: [], findings: [] }),
  miss: () => 0,
  build: () => ({ value: undefined, findings: [] }),
};

export const testKinds: readonly PieceKind[] = [strip];

/** The parts of a sound job file, each replaceable: `undefined` leaves it out. */
export const sound = {
  version: "version: 1",
  title: "title: Demo, invented",
  units: "units: mm",
  boards: "boards: {box: {stock: mdf-18, measured: 18.2}}",
  outline: "  outline: [{at: [0, 0]}, {at: [1000, 0]}, {at: [1000, 800]}, {at: [0, 800]}]",
  space: "",
  drivers: "",
  coverings: "",
  pieces: "pieces: {rail: {kind: strip, board: box, wide: 60}}",
  more: "",
};

export function jobText(changed: Partial<typeof sound> = {}): string {
  const { version, title, units, boards, outline, space, drivers, coverings, pieces, more } = { ...sound, ...changed };
  const lines = [version, title, units, boards, "space:", outline, space, drivers, coverings, pieces, more];
  return `${lines.filter((line) => line !== "").join("\n")}\n`;
}

export function parsed(changed: Partial<typeof sound> = {}) {
  return parseJob(jobText(changed), "job.yaml", testKinds);
}

export const codesOf = (findings: readonly Finding[]) => findings.map((finding) => finding.code);
