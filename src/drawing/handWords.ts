import type { Show } from "../input/show.js";
import type { CircleJig, HandProfile, HandSide, JigCut, Template } from "../model/hand.js";
import type { FeatureId } from "../model/ids.js";
import { featureName } from "../model/ids.js";
import { sizePair, toolSize } from "./sizes.js";

/** What stands above the table of a line that is routed by hand. */
export function profileWords(profile: HandProfile, show: Show): readonly string[] {
  const { feature, side, size, depth, through, passes, allowance, templates } = profile;
  const deep = through ? "through the board" : `${toolSize(depth, show)} deep`;
  const head = `${sideWords[side]} ${named(feature)}: ${sizePair(...size, show)}, ${deep}`;
  if (templates.length === 0) return [head, nothingLeads];
  const borne = templates.some(({ bush }) => bush === undefined);
  const bearing = `On its own bearing: saw it free first, at most ${toolSize(allowance, show)} left on, and trim that in one pass.`;
  const bushed = passes.length > 0 ? [`In a bush: ${passWords(passes, through, show)}`] : [];
  return [head, [...(borne ? [bearing] : []), ...bushed].join(" "), feedWords[side]];
}

const nothingLeads =
  "Nothing on hand leads a bit along a template: add a bush that the bit turns free in, or a bit with a bearing.";

/** A row of the table: bush, bit, offset, template, its tightest inside corner, its least thickness, what to mind. */
export function templateCells(template: Template, side: HandSide, show: Show): readonly string[] {
  const { bush, bit, offset, size, corner, rounded, thick } = template;
  return [
    bush ?? "own bearing",
    bit,
    offset === 0 ? "0" : toolSize(offset, show),
    size ? sizePair(...size, show) : "none",
    corner === undefined ? "" : toolSize(corner, show),
    thick === 0 ? "" : toolSize(thick, show),
    size ? roundedWords(rounded, offset, show) : goneWords[side],
  ];
}

const sideWords: Readonly<Record<HandSide, string>> = {
  outside: "Outside of",
  inside: "Inside of",
  recess: "Wall of",
};

const feedWords: Readonly<Record<HandSide, string>> = {
  outside: "Feed counter-clockwise round the outside, seen from the router.",
  inside: "Feed clockwise round the inside, seen from the router.",
  recess: "Feed clockwise along the wall, seen from the router; clear the rest of the floor after it.",
};

const goneWords: Readonly<Record<HandSide, string>> = {
  outside: "no template: a narrow place closes",
  inside: "no template: it falls apart",
  recess: "no template: it falls apart",
};

const roundedWords = (rounded: number, offset: number, show: Show): string =>
  rounded === 0
    ? ""
    : `${rounded === 1 ? "1 outside corner comes" : `${rounded} outside corners come`} out R${toolSize(offset, show)}`;

export const named = (feature: FeatureId): string => featureName(feature).replaceAll(".", " ");

/** "4 passes, 5, 10, 15, through." */
export function passWords(passes: readonly number[], through: boolean, show: Show): string {
  const shown = passes.map((depth, i) => (through && i === passes.length - 1 ? "through" : toolSize(depth, show)));
  return passes.length === 1 ? `one pass, ${shown[0]}.` : `${passes.length} passes, ${shown.join(", ")}.`;
}

/** "2. Outside of outline, R155: pivot to middle of bit 161.4. 4 passes ..." */
export function jigWords({ feature, side, radius, pivots, passes, through }: JigCut, show: Show): string {
  const to = pivots.map((pivot) => toolSize(pivot, show)).join(", ");
  const way = side === "outside" ? "counter-clockwise" : "clockwise";
  return `${sideWords[side]} ${named(feature)}, R${toolSize(radius, show)}: pivot to middle of bit ${to}. In ${passWords(passes, through, show)} Feed ${way}.`;
}

/** What to mind at a pivot. */
export const pivotWords = ({ pivotStays }: Pick<CircleJig, "pivotStays">): string =>
  pivotStays
    ? "The pivot's hole stays in the part: use a pad that is taped on, or bore it from the side that is not seen."
    : "The inside is cut last: the pivot goes with it. Screw the middle down to the board under it before the last pass.";
