import type { BoardId } from "../../../model/ids.js";
import type { Around } from "../../../model/piece.js";
import type { Sheet } from "../form/face.js";
import type { Inside } from "../inside.js";
import { type Axis, lineAcross, reachOf } from "./across.js";
import { type Lie, sheetAcross } from "./innerSheet.js";
import type { DividerSpec } from "./keys.js";
import { leftPart, reversed } from "./section.js";

/** The air between the walls and the dividers of a box, under the name the job gives it; a box of one has none. */
export type Chamber = { readonly name: string | undefined; readonly air: Inside };

/** A divider before it stands: which way, how far from the outside of the box to its nearer side, of which board. */
export type Wanted = {
  readonly role: string;
  readonly spec: DividerSpec;
  readonly index: number;
  readonly axis: Axis;
  readonly at: number;
  readonly board: { readonly id: BoardId; readonly thickness: number };
};

export type Divider = Wanted & { readonly sheet: Sheet };

/** A divider that cannot stand: its names fit no chamber, it lies outside of that, or in a corner of it. */
export type Refused = {
  readonly wanted: Wanted;
  readonly why: "names" | "outside" | "corner";
  readonly reach: readonly [number, number];
};

export type Divided = {
  readonly chambers: readonly Chamber[];
  readonly dividers: readonly Divider[];
  readonly refused: readonly Refused[];
};

/**
 * Parts the air of a box, one divider after the other. Each parts the chamber that has one of its two names already, the
 * first of all the whole box: what lies below it along its axis takes its first name, the rest the second.
 */
export function divided(inside: Inside, wanted: readonly Wanted[], lie: Lie): Divided {
  const whole: Divided = { chambers: [{ name: undefined, air: inside }], dividers: [], refused: [] };
  return wanted.reduce((so, next) => part(so, next, lie), whole);
}

function part(so: Divided, wanted: Wanted, lie: Lie): Divided {
  const names = namesOf(wanted.spec);
  const known = so.chambers.filter(({ name }) => name === undefined || names.includes(name));
  const [chamber] = known;
  const refuse = (why: Refused["why"], reach: readonly [number, number]): Divided => {
    return { ...so, refused: [...so.refused, { wanted, why, reach }] };
  };
  if (chamber === undefined || known.length > 1 || names[0] === names[1]) return refuse("names", [0, 0]);
  const { axis, at, board, role } = wanted;
  const reach = reachOf(chamber.air, axis);
  if (at <= reach[0] || at + board.thickness >= reach[1]) return refuse("outside", reach);
  const sheet = sheetAcross(chamber.air, axis, at, board.thickness, lie);
  if (sheet === undefined) return refuse("corner", reach);
  const [below, above] = split(chamber.air, axis, at, at + board.thickness, role);
  return {
    ...so,
    chambers: so.chambers.flatMap((each) =>
      each === chamber
        ? [
            { name: names[0], air: below },
            { name: names[1], air: above },
          ]
        : [each],
    ),
    dividers: [...so.dividers, { ...wanted, sheet }],
  };
}

function split(air: Inside, axis: Axis, from: number, to: number, role: string): readonly [Inside, Inside] {
  if (axis === "length") {
    return [
      { ...air, to: from, ends: [air.ends[0], role] },
      { ...air, from: to, ends: [role, air.ends[1]] },
    ];
  }
  return [
    { ...air, section: leftPart(air.section, lineAcross(axis, from), role) },
    { ...air, section: leftPart(air.section, reversed(lineAcross(axis, to)), role) },
  ];
}

const usualNames = { width: ["left", "right"], depth: ["rear", "front"], height: ["lower", "upper"] } as const;

/** The chambers on both sides of a divider, the one nearer to the left, rear or lower side of the box first. */
export const namesOf = ({ across, between }: DividerSpec): readonly [string, string] => between ?? usualNames[across];

/** A chamber's air as one says it: "box left"; the box's name alone where it has one chamber. */
export const airName = ({ name }: Chamber, { id }: Pick<Around, "id">): string =>
  name === undefined ? id : `${id} ${name}`;
