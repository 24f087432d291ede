import { massKg } from "../drawing/mass.js";
import { partName } from "../drawing/partName.js";
import { formatNumber } from "../input/number.js";
import type { Show } from "../input/show.js";
import type { Build } from "../model/build.js";
import type { PieceId } from "../model/ids.js";
import type { Part } from "../model/part.js";

/** What one piece weighs, kg. `unknown`: what is in it but has no known mass, so that the sum is a least. */
export type PieceMass = {
  readonly piece: PieceId;
  readonly panelsKg: number;
  readonly driversKg: number;
  readonly totalKg: number;
  readonly unknown: readonly string[];
};

/**
 * Mass of a bare part: area x thickness x the stock's density, less pockets; undefined where no stock matches. Boards of
 * one kind differ by about 5 % (densities as sold, common practice, no source).
 */
export function massOf(part: Part, { job, shop }: Build): number | undefined {
  return massKg(part, job, shop);
}

/** Every piece that has parts, in the order of the parts, with the drivers that sit in it. */
export function pieceMasses(build: Build): readonly PieceMass[] {
  const pieces = [...new Set(build.plan.built.parts.map(({ piece }) => piece))];
  return pieces.map((piece) => massOfPiece(piece, build));
}

function massOfPiece(piece: PieceId, build: Build): PieceMass {
  const { parts, mounts } = build.plan.built;
  const panels = parts
    .filter((part) => part.piece === piece)
    .map((part) => [partName(part), massOf(part, build)] as const);
  const drivers = mounts
    .filter((mount) => mount.piece === piece)
    .map(({ driver }) => [`driver ${driver}`, build.job.drivers[driver]?.massKg] as const);
  const panelsKg = sumKnown(panels);
  const driversKg = sumKnown(drivers);
  const unknown = [...panels, ...drivers].flatMap(([name, mass]) => (mass === undefined ? [name] : []));
  return { piece, panelsKg, driversKg, totalKg: panelsKg + driversKg, unknown };
}

function sumKnown(masses: readonly (readonly [string, number | undefined])[]): number {
  return masses.reduce((sum, [, mass]) => sum + (mass ?? 0), 0);
}

const kilogramsInPound = 0.45359237; // exact by definition

/** "about 31.5 kg", to the nearest half kilogram or whole pound: the boards' spread allows no more. Under 2 kg, 0.1 kg. */
export function aboutMass(kg: number, show: Show): string {
  if (show.unit === "in") return `about ${formatNumber(Math.max(1, Math.round(kg / kilogramsInPound)), 0)} lb`;
  return kg < 2 ? `about ${formatNumber(kg, 1)} kg` : `about ${formatNumber(Math.round(kg * 2) / 2, 1)} kg`;
}
