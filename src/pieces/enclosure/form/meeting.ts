import { type Extrusion, endNames, isInsideCorner, turnAtCorner, wallNames } from "./extrusion.js";

/** A butt covers the other's edge, a mitre is cut from both, a rebate or a groove lets the other in. */
export const jointForms = ["butt", "square", "mitre", "rebate", "groove"] as const;
export type JointForm = (typeof jointForms)[number];

/** Where two faces of a box meet, and which of them runs over the other. */
export type Corner = {
  readonly over: string;
  readonly into: string;
  /** Turn of the section between the two, rad; a quarter turn between a wall and an end. */
  readonly turn: number;
  /** Whether one can be let into the other: square, jutting out, and not an end that would go round an inside corner. */
  readonly letsIn: boolean;
};

/** How two faces meet. Of a mitre neither runs over the other; the first named is the earlier. */
export type Meeting = Corner & {
  /** `square`: a butt whose covering panel keeps its end square, and stands proud where the corner is not. */
  readonly form: JointForm;
  /** How deep the covered panel is let into the other, mm; less than 0 where it stands off, to come out again. */
  readonly deep: number;
  /** One of them is bolted on, so that nothing is glued or screwed here. */
  readonly bolted: boolean;
};

/** What is wanted of one corner: the form, and how deep the covered panel is let in. `off`: how far one that is bolted
 *  stands off instead; none where the corner is glued. */
export type Choice = { readonly form: JointForm | undefined; readonly deep: number; readonly off?: number };
export type ChoiceOf = (corner: Corner) => Choice;

const quarter = Math.PI / 2;
/** A corner this near to a right angle is square, rad: 0.01 mm in the thickness of a board. */
export const squareWithin = 5e-4;

export const isSquare = ({ turn }: Pick<Corner, "turn">): boolean => Math.abs(Math.abs(turn) - quarter) < squareWithin;

/** The blade's tilt that a corner asks for, rad: of a butt for both panels, of a mitre for each. */
export function tiltOf(form: JointForm, turn: number): number {
  return form === "mitre" ? Math.abs(turn) / 2 : Math.abs(Math.abs(turn) - quarter);
}

/** Every pair of faces that meet: at the corners of the section, then each end with each wall. */
export function meetingsOf(extrusion: Extrusion, laps: readonly string[], choose: ChoiceOf): readonly Meeting[] {
  const walls = wallNames(extrusion);
  const meet = (a: string, b: string, turn: number): Meeting => {
    const [over, into] = laps.indexOf(a) < laps.indexOf(b) ? [a, b] : [b, a];
    const round = endNames[extrusion.view].includes(into) && isInsideCorner(extrusion, over);
    const corner = { over, into, turn, letsIn: isSquare({ turn }) && turn > 0 && !round };
    const { form, deep, off } = choose(corner);
    const chosen = form ?? (off === undefined ? usualForm(turn) : "butt");
    const letIn = chosen === "rebate" || chosen === "groove" ? deep : 0;
    return { ...corner, form: chosen, deep: off === undefined ? letIn : -off, bolted: off !== undefined };
  };
  return [
    ...walls.map((wall, k) =>
      meet(walls[(k + walls.length - 1) % walls.length]!, wall, turnAtCorner(extrusion.section, k)),
    ),
    ...endNames[extrusion.view].flatMap((end) => walls.map((wall) => meet(end, wall, quarter))),
  ];
}

/** The form that tilts the blade less: a butt up to a third of a turn between the panels, a mitre where they open wider. */
const usualForm = (turn: number): JointForm =>
  tiltOf("butt", turn) <= tiltOf("mitre", turn) + 1e-9 ? "butt" : "mitre";

/** The one meeting of two faces. */
export function meetingOf(meetings: readonly Meeting[], a: string, b: string): Meeting {
  const found = meetings.find(({ over, into }) => (over === a && into === b) || (over === b && into === a));
  if (found === undefined) throw new Error(`${a} and ${b} do not meet`);
  return found;
}

/**
 * Who runs over whom where the job does not say. A box of six: top and bottom over the walls, front and rear over the
 * sides. Seen from the side: the cheeks over the ends of all walls, the leaning walls over the level and upright ones.
 * Seen from above: top and bottom, then the walls that stand askew. `between`: the ends stand between the walls.
 */
export function usualLaps(extrusion: Extrusion, ends: "over" | "between"): readonly string[] {
  const { section, view } = extrusion;
  const rank = (wall: string) => {
    const k = section.findIndex(({ by }) => by === wall);
    const [a, b] = [section[k]!, section[(k + 1) % section.length]!];
    const [x, y] = [Math.abs(b.x - a.x), Math.abs(b.y - a.y)];
    if (Math.min(x, y) > squareWithin * Math.max(x, y)) return 0;
    return x > y ? 1 : 2;
  };
  const order = [...wallNames(extrusion)].sort((a, b) => rank(a) - rank(b));
  const caps = view === "plan" ? ["top", "bottom"] : [...endNames.side];
  return ends === "over" ? [...caps, ...order] : [...order, ...caps];
}
