import { fillet } from "../../geometry/corners.js";
import type { Profile } from "../../geometry/profile.js";
import { below, type Outcome } from "../../input/finding.js";
import { partId } from "../../model/ids.js";
import type { Joint } from "../../model/joint.js";
import type { Edge, Part } from "../../model/part.js";
import type { Around } from "../../model/piece.js";
import { rules } from "../../shop/rules.js";
import { type Draft, makePart } from "../common/part.js";
import type { Thread } from "./backing/blocks.js";
import { liningHole, panelHole } from "./backing/threads.js";
import type { FittedSlot } from "./chambers/fitOut.js";
import { type Face, liningRole, type Sheet } from "./form/face.js";
import { meetingOf } from "./form/meeting.js";
import { type JointScrew, screwDrafts } from "./joints/jointScrews.js";
import { edgesOf } from "./joints/joints.js";
import { letInDrafts } from "./joints/letIn.js";
import { roundOverDrafts } from "./joints/roundOver.js";
import { liningDrafts, seatDrafts } from "./mounting/drivers.js";
import type { Seat } from "./mounting/seats.js";
import { terminalDrafts } from "./mounting/terminal.js";
import { mouthDraft, mouthOn } from "./ports/mouth.js";
import { roundHoles } from "./ports/roundHole.js";
import type { RoundPort } from "./ports/roundPort.js";
import { type Hatch, hatchDrafts } from "./removable/hatch/hatch.js";
import { boltHoles } from "./removable/parts.js";
import type { Removable } from "./removable/removable.js";
import type { EnclosureSpec } from "./schema.js";
import { coveringOn, type Shape } from "./shape.js";

/** What stands in the panels of a box besides its joints. */
export type Fitted = {
  readonly seats: readonly Seat[];
  readonly threads: readonly Thread[];
  readonly screws: readonly JointScrew[];
  readonly slots: readonly FittedSlot[];
  readonly removables: readonly Removable[];
  readonly hatch: Hatch | undefined;
  readonly rounds: readonly RoundPort[];
};

/** The panel of a face, and the board glued behind it where it is double. */
export function panelParts(
  face: Face,
  fitted: Fitted,
  spec: EnclosureSpec,
  shape: Shape,
  around: Around,
): readonly Outcome<Part>[] {
  return [panelPart(face, fitted, spec, shape, around), ...liningPart(face, fitted, spec, around)];
}

function panelPart(face: Face, fitted: Fitted, spec: EnclosureSpec, shape: Shape, around: Around): Outcome<Part> {
  const { panel, skin } = face;
  const screwFrom = [below(around.origin, spec.screws ? "screws" : "board")];
  const jointFrom = [below(around.origin, spec.joints ? "joints" : "board")];
  const seats = fitted.seats.filter((seat) => seat.face === face);
  const covering = coveringOn(spec, face, around) > 0 ? spec.covered?.with : undefined;
  const own = spec.panels?.[face.name]?.["cut by"];
  const outline = cutCorners(face, shape);
  return makePart({
    piece: around.id,
    role: face.name,
    from: [around.origin],
    board: skin.board,
    features: [
      outlineDraft(panel, around, outline),
      ...seats.flatMap((seat) => seatDrafts(around.id, seat)),
      ...terminalDrafts(spec, face, panel, around),
      ...mouthDrafts(face, panel, fitted.slots),
      ...hatchDrafts(face, panel, fitted.hatch),
      ...roundHoles(face, panel, fitted.rounds),
      ...fitted.threads.filter((thread) => thread.face === face).flatMap(panelHole),
      ...screwDrafts(face, fitted.screws, screwFrom),
      ...boltHoles(face, fitted.removables, around),
      ...letInDrafts(face, shape, outline, jointFrom),
      ...roundOverDrafts(spec, face, shape, around),
    ],
    edges: edgesOf(around.id, face, shape, spec.flush ?? []),
    ...(covering === undefined ? {} : { coverings: { face: covering } }),
    ...(own === undefined ? {} : { cutBy: own }),
    at: panel.frame,
  });
}

function liningPart(face: Face, fitted: Fitted, spec: EnclosureSpec, around: Around): readonly Outcome<Part>[] {
  const { lining } = face;
  const own = spec.panels?.[face.name];
  if (lining === undefined || own?.double === undefined) return [];
  const seats = fitted.seats.filter((seat) => seat.face === face);
  return [
    makePart({
      piece: around.id,
      role: liningRole(face),
      from: [below(around.origin, "panels", face.name, "double")],
      board: around.board(own.double),
      features: [
        outlineDraft(lining, around),
        ...seats.flatMap((seat) => liningDrafts(around.id, seat, lining)),
        ...terminalDrafts(spec, face, lining, around),
        ...mouthDrafts(face, lining, fitted.slots),
        ...hatchDrafts(face, lining, fitted.hatch),
        ...roundHoles(face, lining, fitted.rounds),
        ...fitted.threads.filter((thread) => thread.face === face).flatMap((thread) => liningHole(thread, lining)),
      ],
      edges: bevelledOnly(lining),
      ...(own["cut by"] === undefined ? {} : { cutBy: own["cut by"] }),
      at: lining.frame,
    }),
  ];
}

function mouthDrafts(face: Face, sheet: Sheet, slots: readonly FittedSlot[]): readonly Draft[] {
  return slots
    .filter((slot) => slot.face === face)
    .map(({ role, mouth, chamber, boards }) =>
      mouthDraft(role, face, sheet, mouthOn(face, mouth, chamber.air), boards[0]!.from),
    );
}

function outlineDraft(sheet: Sheet, around: Around, outline = sheet.outline): Draft {
  const region = { outer: outline, holes: [] };
  return {
    name: "outline",
    from: [below(around.origin, "outside")],
    cut: { kind: "outline", region, corner: "sharp" },
  };
}

/**
 * The outline of a panel as its machine can cut it: an inside corner where it covers both walls takes a radius, which
 * stands proud of them by a little. One that fits round a wall's corner stays sharp.
 */
function cutCorners({ name, panel, skin }: Face, { meetings }: Shape): Profile {
  if (skin.method !== "cnc") return panel.outline;
  const n = panel.outline.length;
  const covers = (by: string) => meetingOf(meetings, name, by).over === name;
  const radius = (i: number) =>
    covers(panel.outline[i]!.by) && covers(panel.outline[(i + n - 1) % n]!.by) ? rules.openingCorner.value : 0;
  return fillet(panel.outline, radius, { corners: "inside" }).profile;
}

function bevelledOnly({ bevels }: Sheet): Readonly<Record<string, Edge>> {
  return Object.fromEntries(
    Object.entries(bevels).map(([by, bevel]) => [by, { bevel, flush: 0, finish: { kind: "bare" } }]),
  );
}

/** The boards behind double panels are glued flat onto them. */
export function liningJoints({ faces }: Shape, { id }: Around): readonly Joint[] {
  return faces
    .filter(({ lining }) => lining !== undefined)
    .map((face): Joint => {
      const [laps, into] = [face.name, liningRole(face)];
      return {
        id: `${id}:${laps}+${into}`,
        form: "lap",
        laps: partId(id, laps),
        into: partId(id, into),
        edges: [],
        axes: [],
        glue: true,
      };
    });
}
