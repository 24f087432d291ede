import { areaOf } from "../../geometry/measure.js";
import type { Point } from "../../geometry/profile.js";
import type { Air, Around } from "../../model/piece.js";
import { blocksOf, blockVolumeL, threadsOf } from "./backing/blocks.js";
import { battensOf } from "./battens/battens.js";
import { battenTerms } from "./battens/parts.js";
import { behind } from "./chambers/behind.js";
import type { Chamber } from "./chambers/divide.js";
import { sheetL } from "./chambers/innerSheet.js";
import { faceOf } from "./form/box.js";
import { displacementOf } from "./mounting/displacement.js";
import { seatsOf } from "./mounting/seats.js";
import { terminalsOf } from "./mounting/terminal.js";
import { dowelL, dowelsOf } from "./ports/dowels.js";
import { portBlockL, portBlocksOf } from "./ports/portBlocks.js";
import { portL, portName, roundPortsOf } from "./ports/roundPort.js";
import { comesOffTerms } from "./removable/comesOff.js";
import { allAsks } from "./removable/hatch/hatch.js";
import type { EnclosureSpec } from "./schema.js";
import { pointOn, type Shape } from "./shape.js";

type Term = Air["terms"][number];

/**
 * How the net volume of a chamber comes about, term by term, L: gross inside, less the blocks behind inserts, the braces
 * and ports in it, the drivers, and the terminal. The air in a port moves with the port and is
 * no part of the box's spring; the air in a cut-out is not counted (both common practice, no source).
 */
export function volumeTerms(chamber: Chamber, spec: EnclosureSpec, shape: Shape, around: Around): readonly Term[] {
  const { section, from, to } = chamber.air;
  const within = (face: string, at: readonly [number, number] | undefined) => isBehind(chamber, face, at, shape);
  return [
    { what: "gross inside", litres: (areaOf(section) * (to - from)) / 1e6, shaped: true },
    ...blockTerms(chamber, spec, shape, around),
    ...innerTerms(chamber, shape),
    ...comesOffTerms(chamber, spec, shape, around),
    ...battenTerms(chamber, battensOf(spec, shape, around)),
    ...roundTerms(chamber, spec, shape, around),
    ...seatsOf(spec, shape, around)
      .filter(({ face, at }) => behind(face, at, shape)?.chamber === chamber)
      .flatMap((seat) => {
        const displaced = displacementOf(seat);
        return displaced === undefined ? [] : taken(displaced.what, displaced.litres);
      }),
    ...terminalsOf(spec)
      .filter(({ spec: terminal }) => within(terminal.in, terminal.at))
      .flatMap(({ name, spec: terminal }) => taken(name, terminal.displaces)),
  ];
}

const taken = (what: string, litres: number | undefined): readonly Term[] =>
  litres === undefined ? [] : [{ what, litres: -litres, shaped: false }];

function blockTerms(chamber: Chamber, spec: EnclosureSpec, shape: Shape, around: Around): readonly Term[] {
  const board = around.board(spec.board).thickness;
  return blocksOf(threadsOf(allAsks(spec, shape, around), shape, around.shop), board, shape).flatMap(
    (block, index): Term[] => {
      if (block.chamber !== chamber) return [];
      return [{ what: `block ${index + 1}`, litres: -blockVolumeL(block), shaped: true }];
    },
  );
}

/** Braces less their windows, the panels of ports, and the air in those. */
function innerTerms(chamber: Chamber, { fitOut }: Shape): readonly Term[] {
  const named = (role: string) => role.replaceAll(".", " ");
  const braces = fitOut.braces
    .filter((brace) => brace.chamber === chamber)
    .map(({ board: { role, sheet, windows } }): Term => {
      const open = windows.reduce((sum, window) => sum + areaOf(window), 0) * sheet.thickness;
      return { what: named(role), litres: open / 1e6 - sheetL(sheet), shaped: true };
    });
  const ports = fitOut.slots
    .filter((slot) => slot.chamber === chamber)
    .flatMap(({ role, boards, channel }): Term[] => {
      const panels = boards.reduce((sum, { sheet }) => sum + sheetL(sheet), 0);
      const air = (areaOf(channel) * (chamber.air.to - chamber.air.from)) / 1e6;
      return [
        { what: `${named(role)} panels`, litres: -panels, shaped: true },
        { what: `${named(role)} air`, litres: -air, shaped: false },
      ];
    });
  return [...braces, ...ports];
}

/** Round ports, tube and air together, the blocks round them, and dowels. */
function roundTerms(chamber: Chamber, spec: EnclosureSpec, shape: Shape, around: Around): readonly Term[] {
  const ports = roundPortsOf(spec, shape, around).filter((port) => port.chamber === chamber);
  const dowels = dowelsOf(spec, shape, around).stand.filter((dowel) => dowel.chamber === chamber);
  return [
    ...ports.flatMap((port) => taken(portName(port), portL(port))),
    ...portBlocksOf(ports, spec, shape, around).map(
      (block): Term => ({ what: block.role.replace(".", " "), litres: -portBlockL(block), shaped: true }),
    ),
    ...dowels.flatMap((dowel) => taken(dowel.name, dowelL(dowel))),
  ];
}

/** Whether a chamber is the one behind a place on a face. */
export function isBehind(
  chamber: Chamber,
  name: string,
  at: readonly [number, number] | undefined,
  shape: Shape,
): boolean {
  const face = faceOf(shape, name);
  const point: Point | undefined = face && pointOn(face, at);
  return face !== undefined && point !== undefined && behind(face, point, shape)?.chamber === chamber;
}

/** What is wanted of a chamber, L. */
export function wantedL({ name }: Chamber, { net, chambers }: EnclosureSpec): number | undefined {
  return name === undefined ? net : chambers?.[name]?.net;
}

/** Wanted net volume of a chamber minus the one it has, L; 0 where none is wanted. */
export function missingOf(chamber: Chamber, spec: EnclosureSpec, shape: Shape, around: Around): number {
  const wanted = wantedL(chamber, spec);
  if (wanted === undefined) return 0;
  return wanted - volumeTerms(chamber, spec, shape, around).reduce((sum, { litres }) => sum + litres, 0);
}
