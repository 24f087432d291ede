import { centreLineLength, type Elbow } from "../../../acoustics/centreLine.js";
import type { Flare } from "../../../acoustics/flare.js";
import { roundPortL } from "../../../acoustics/roundPort.js";
import type { Point } from "../../../geometry/profile.js";
import { below, type Origin } from "../../../input/finding.js";
import type { Around } from "../../../model/piece.js";
import { rules } from "../../../shop/rules.js";
import { upToStep } from "../../common/method.js";
import { behind } from "../chambers/behind.js";
import type { Chamber } from "../chambers/divide.js";
import { faceOf } from "../form/box.js";
import { type Face, type Sheet, thickOf } from "../form/face.js";
import type { EnclosureSpec } from "../schema.js";
import { pointOn, type Shape } from "../shape.js";
import type { elbowWays, RoundPortSpec } from "./roundKeys.js";
import { type Blocked, holeFor, outsideOf, sizeFaults } from "./roundSizes.js";

/** A port of tube where it stands. Lengths along its middle, from the outside of the wall it opens through, mm. */
export type RoundPort = {
  /** "port.2": ports are numbered on from those made of panels. */
  readonly role: string;
  readonly from: Origin;
  readonly spec: RoundPortSpec;
  readonly face: Face;
  /** Its middle on the face, in the face's axes. */
  readonly at: Point;
  readonly chamber: Chamber;
  /** What of the face has that chamber's air behind it. */
  readonly air: Sheet;
  /** Outside diameter of the tube. */
  readonly outside: number;
  readonly long: number;
  /** How much of its length stands in the wall. */
  readonly wall: number;
  /** Diameter of its hole as it is cut. */
  readonly hole: number;
  readonly recess: { readonly across: number; readonly deep: number } | undefined;
  readonly flares: { readonly outer: Flare | undefined; readonly inner: Flare | undefined };
  readonly elbow: (Elbow & { readonly after: number; readonly to: (typeof elbowWays)[number] }) | undefined;
};

/** What a port is called in what one reads: "port 2". */
export const portName = ({ role }: Pick<RoundPort, "role">): string => role.replace(".", " ");

/** The role of the round port at this place in the job's list. */
export const roundRole = (spec: EnclosureSpec, index: number): string =>
  `port.${(spec["slot ports"]?.length ?? 0) + index + 1}`;

/** Every round port whose sizes agree and whose face is there. */
export function roundPortsOf(spec: EnclosureSpec, shape: Shape, around: Around): readonly RoundPort[] {
  return (spec["round ports"] ?? []).flatMap((wanted, index): RoundPort[] => {
    const face = faceOf(shape, wanted.in);
    const outside = outsideOf(wanted);
    if (face === undefined || outside === undefined) return [];
    const at = pointOn(face, wanted.at);
    const found = behind(face, at, shape);
    const wall = thickOf(face);
    if (found === undefined || sizeFaults(wanted, outside, wall, blockedBy(wanted, spec, around)).length > 0) return [];
    const { flange, elbow, long } = wanted;
    return [
      {
        role: roundRole(spec, index),
        from: below(around.origin, "round ports", index),
        spec: wanted,
        face,
        at,
        ...found,
        outside,
        long,
        wall,
        hole: upToStep(holeFor(wanted, outside), shape.step),
        recess: flange && {
          across: upToStep(flange.across + 2 * rules.frameClearance.value, shape.step),
          deep: flange.thick,
        },
        flares: { outer: flareOf(wanted, "outer"), inner: flareOf(wanted, "inner") },
        elbow: elbow && { ...elbow, turn: elbow.turns ?? Math.PI / 2 },
      },
    ];
  });
}

/** How thick the blocks at a port's ends are. */
export function blockedBy({ blocks }: RoundPortSpec, { board }: EnclosureSpec, around: Around): Blocked {
  const thick = (end: keyof Blocked) =>
    blocks?.[end] === undefined ? 0 : around.board(blocks[end].board ?? board).thickness;
  return { outer: thick("outer"), inner: thick("inner") };
}

function flareOf({ flares }: RoundPortSpec, end: "outer" | "inner"): Flare | undefined {
  const flare = flares?.[end];
  return flare && { mouth: flare.mouth, length: flare.long };
}

/** What a port takes of the air, L: what of it stands inside the wall, tube and air together. */
export function portL({ outside, long, wall, flares: { outer, inner } }: RoundPort): number {
  const shown = outer && outer.length > wall ? [{ ...outer, hidden: wall }] : [];
  return roundPortL({ outside, length: long - wall, flares: [...shown, ...(inner ? [inner] : [])] });
}

/** What is straight of a port, before and after its elbow, mm. */
export function straightsOf({ long, elbow }: Pick<RoundPort, "long" | "elbow">): readonly number[] {
  return elbow === undefined ? [long] : [elbow.after, long - elbow.after - centreLineLength([], [elbow])];
}
