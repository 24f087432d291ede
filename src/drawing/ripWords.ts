import { difference } from "../geometry/boolean.js";
import type { Show } from "../input/show.js";
import type { Build } from "../model/build.js";
import type { PartId } from "../model/ids.js";
import type { BevelCut, PieceSide, RipCut, RipPiece } from "../model/rip.js";
import { clearRectangles } from "../nest/clearRectangles.js";
import { leastOffcut } from "../nest/remainder.js";
import type { RipStep } from "../nest/saw/ripSteps.js";
import { rules } from "../shop/rules.js";
import { edgeName } from "./edgeName.js";
import { showFor } from "./handShow.js";
import { counted } from "./partName.js";
import { degrees, exactSize, runningSize } from "./sizes.js";
import { sizesToFit } from "./toFit.js";

/** What words on a rip list are made with: how sizes are read at the saw, and the parts' numbers. */
export type RipTalk = { readonly show: Show; readonly numberOf: (part: PartId) => string; readonly build: Build };

export function ripTalk(build: Build): RipTalk {
  const numbers = new Map(build.plan.built.parts.map(({ id, number }) => [id, number]));
  return { show: showFor("saw", build), numberOf: (part) => numbers.get(part) ?? part, build };
}

/** "rip", "cross-cut", "true edge". */
export const wayWords = ({ saw, way }: Pick<RipCut, "saw" | "way">): string =>
  way === "true edge" ? "true edge" : saw === "track" ? "cut to a line" : way;

/** "track saw", "table saw". */
export const sawWords = ({ saw }: Pick<RipCut, "saw">): string => (saw === "track" ? "track saw" : "table saw");

/** What is set for a cut: "fence to 150", "stop block stays at 400". */
export function settingWords(cut: RipStep | RipCut, { show }: RipTalk): string {
  const { saw, way, along, fresh, edge } = cut;
  const size = runningSize(lineOf(cut), show);
  if (way === "true edge" && edge !== undefined) return `square the left end: line at ${size}`;
  if (way === "true edge") return `true the ${along ? "lower" : "left"} edge: line at ${size}`;
  if (saw === "track") return `line ${size} from ${along ? "below" : "the left"}`;
  const guide = way === "rip" ? "fence" : "stop block";
  return fresh ? `${guide} to ${size}` : `${guide} stays at ${size}`;
}

/** Where it is set or drawn: what comes off ends there, or begins there where only dust and a splinter do. mm. */
export const lineOf = ({ way, setting, kerf }: Pick<RipCut, "way" | "setting" | "kerf">): number =>
  way === "true edge" ? setting + kerf : setting;

/** "4b, 2430 × 615", a sheet by its name. */
export function pieceWords(piece: RipPiece, { show }: RipTalk): string {
  return `${piece.name}, ${piece.shape ? "odd, " : ""}${sizeWords(piece, show)}`;
}

const sizeWords = ({ length, width }: RipPiece, show: Show): string =>
  `${runningSize(length, show)} × ${runningSize(width, show)}`;

/** What a piece is from now on: a part by its number, a piece to go on with by its name, for the machine, or left over. */
export function becomesWords(piece: RipPiece, talk: RipTalk): string {
  if (piece.becomes === "part") return `part ${talk.numberOf(piece.part!)}`;
  if (piece.becomes === "cut") return piece.name;
  if (piece.goesOn !== undefined) return `${piece.name}, to the machine`;
  return isWorthKeeping(piece, talk) ? `${piece.name}, left over${bevelledWords(piece)}` : "waste";
}

const bevelledWords = ({ bevelled = [] }: RipPiece): string =>
  bevelled.length === 0 ? "" : ` with ${bevelled.length > 1 ? "bevelled edges" : "a bevelled edge"}`;

/** Whether what is left over goes to the rack: a rectangle worth keeping can be cut from it. */
function isWorthKeeping(piece: RipPiece, { build }: RipTalk): boolean {
  const { shape, knots = [] } = piece;
  const least = leastOffcut(build.shop);
  const [length, width] = [
    piece.length - lostOf(piece, "left", "right"),
    piece.width - lostOf(piece, "lower", "upper"),
  ];
  const [long, short] = [Math.max(length, width), Math.min(length, width)];
  if (long < least.length || short < least.width) return false;
  if (shape === undefined) return true;
  const bad = knots.map((outer) => ({ outer, holes: [] }));
  const clear = bad.length === 0 ? shape : shape.flatMap((region) => difference(region, bad));
  return clearRectangles(clear, least, build.shop.saw.kerf).length > 0;
}

/** What bevels along two sides opposite take of a piece that is to be square again, mm. */
const lostOf = ({ bevelled = [] }: RipPiece, ...sides: readonly PieceSide[]): number =>
  bevelled.reduce((sum, { side, less }) => sum + (sides.includes(side) ? less : 0), 0);

/** What comes off at one step: "3 off 150 × 400: parts B3, B4, B5". */
export function offWords({ off, cuts }: RipStep, talk: RipTalk): string {
  const [first] = off;
  if (!first) return "nothing but dust";
  const count = cuts.length > 1 ? `${off.length} of ` : "";
  return `${count}${sizeWords(first, talk.show)}: ${allBecome(off, talk)}`;
}

function allBecome(pieces: readonly RipPiece[], talk: RipTalk): string {
  const words = pieces.map((piece) => becomesWords(piece, talk));
  const areParts = pieces.length > 1 && pieces.every(({ becomes }) => becomes === "part");
  return areParts ? `parts ${words.map((each) => each.replace(/^part /, "")).join(", ")}` : words.join(", ");
}

/** What remains: "1200 × 615: 12b", "1200 × 615: 12b, to the machine", "1200 × 40: waste". */
export function restWords(rest: RipPiece | undefined, talk: RipTalk): string {
  if (!rest) return "none";
  const size = sizeWords(rest, talk.show);
  if (rest.becomes === "part") return `${size}: part ${talk.numberOf(rest.part!)}`;
  if (rest.becomes === "cut") return `${size}: ${rest.name}`;
  if (rest.goesOn !== undefined) return `${size}: ${rest.name}, to the machine`;
  return isWorthKeeping(rest, talk) ? `${size}: left over${bevelledWords(rest)}, to the rack` : `${size}: waste`;
}

/** What to mind at a cut; empty where nothing is out of the ordinary. */
export function mindWords(step: MindedStep, talk: RipTalk): readonly string[] {
  const { saw, way, setting, cuts, piece } = step;
  const short = Math.min(piece.length, piece.width);
  const isSmall = cuts.some(({ trouble }) => trouble === "small");
  return [
    ...edgeWords(step),
    // it is as wide as the kerf leaves it, and was not measured from its own edge
    ...(step.rest?.becomes === "part" ? ["the rest is a part: measure it"] : []),
    ...(step.upright ? ["blade upright again: check it with a square"] : []),
    ...bevelledMinds(step),
    ...(isSmall ? [holdWords(step)] : []),
    ...(cuts.some(({ trouble }) => trouble === "reach") ? ["beyond the saw's reach"] : []),
    ...(saw === "table" && way === "rip" && !isSmall && setting < rules.pushStick.value ? ["push stick"] : []),
    ...(saw === "table" && way === "cross-cut" && setting < rules.pushStick.value && short >= rules.heldWidth.value
      ? ["hold the long side; let the short one lie"]
      : []),
    ...toFitWords(step, talk),
  ];
}

/** Parts that come out a hair too large, since they stand between others: "part 11: trim to fit, 23 7/8" + 0.1 mm". */
function toFitWords({ cuts }: MindedStep, { build, show, numberOf }: RipTalk): readonly string[] {
  const parts = cuts
    .flatMap(({ off, rest }) => [off, rest])
    .flatMap((piece) => {
      const part = build.plan.built.parts.find(({ id }) => id === piece?.part);
      return part && piece && isSawn(part.id, build) ? [{ piece, part }] : [];
    });
  return parts.flatMap(({ piece, part }) => {
    const sawn = [piece.length, piece.width];
    const sizes = sizesToFit(part, build).filter((size) =>
      sawn.some((each) => each > size && each - size < build.shop.saw.step),
    );
    const words = sizes.map((size) => exactSize(size, show)).join(", ");
    return words === "" ? [] : [`part ${numberOf(part.id)}: trim to fit, ${words}`];
  });
}

const isSawn = (id: PartId, { process }: Build) =>
  process.parts.some(({ part, method }) => part === id && method === "saw");

type MindedStep = Pick<RipStep, "saw" | "way" | "along" | "setting" | "cuts" | "piece" | "edge" | "rest" | "upright">;

/** How what is too small for hands is held: on the sled by clamps; along the fence, where it is long and narrow, by pressure. */
const holdWords = ({ saw, way }: Pick<RipCut, "saw" | "way">): string =>
  saw === "track"
    ? "hard to hold: clamp it, with board as thick beside it under the track"
    : way === "rip"
      ? "hard to hold: featherboard and push block, hands away"
      : "hard to hold: clamp it to the sled";

/** How a strip lies on the sled whose long sides are bevelled: no thin edge must creep under the sled's fence. */
function bevelledMinds({ saw, way, piece: { bevelled = [] } }: MindedStep): readonly string[] {
  const [one, other] = bevelled;
  if (one === undefined || saw !== "table" || way !== "cross-cut") return [];
  if (other === undefined) return ["its square edge at the sled's fence"];
  if (one.down !== other.down) return ["no thin edge under the sled's fence"];
  return [`name ${one.down === "under" ? "up" : "down"}`];
}

/** What the true edge of an odd piece lies at, which is all there is to go by. */
function edgeWords({ saw, way, along, edge }: MindedStep): readonly string[] {
  if (edge === undefined || (way === "rip" && !along)) return [];
  const side = `side ${edgeName(edge)}`;
  if (saw === "track") return [`the line ${along ? "along" : "square to"} ${side}`];
  if (along) return [`${side} at the ${way === "rip" ? "fence" : "stop block"}`];
  return [`${side} at the sled's fence`];
}

/** Where a bevel is set: it is on no step of the fence, and half a sixteenth off would show. */
export const bevelSize = ({ setting }: BevelCut, { show }: RipTalk): string =>
  show.unit === "mm" ? runningSize(setting, show) : exactSize(setting, show);

/** "tilt 30°, fence to 282"; along the track the line on the larger side, at its edge or a hair within. */
export function bevelSetting(cut: BevelCut, talk: RipTalk): string {
  const size = bevelSize(cut, talk);
  const tilt = `tilt ${degrees(cut.tilt)}`;
  if (cut.saw === "track") return `${tilt}, line ${size}`;
  const guide = cut.way === "rip" ? "fence" : "stop block";
  return cut.fresh ? `${tilt}, ${guide} to ${size}` : `${tilt}, ${guide} stays at ${size}`;
}

/**
 * What is bevelled, and how it lies: "part B2, edge top, back down"; of a strip "its upper edge, name up", with its
 * parts below.
 */
export function bevelWords(bevel: BevelCut, talk: RipTalk): readonly string[] {
  const [first] = bevel.edges;
  const from = bevel.saw === "track" ? "; the line from the edge opposite" : "";
  if (!bevel.piece)
    return [`part ${talk.numberOf(first!.part)}, edge ${edgeName(first!.edge)}, ${bevel.down} down${from}`];
  const parts = bevel.edges.map(({ part, edge }) => `${talk.numberOf(part)} (${edgeName(edge)})`);
  return [
    `its ${bevel.side} edge, name ${bevel.down === "under" ? "up" : "down"}${from}`,
    `of ${counted(parts.length, "part")}: ${parts.join(", ")}`,
  ];
}

/** What goes in for a bevel: "7a, 2430 × 60"; of a part its size alone. */
export function bevelTakes({ piece, run, across }: BevelCut, talk: RipTalk): string {
  return piece ? pieceWords(piece, talk) : `${runningSize(run, talk.show)} × ${runningSize(across, talk.show)}`;
}

/** What to mind at a bevel. */
export function bevelMinds(bevel: BevelCut): readonly string[] {
  const { saw, way, setting, trouble, thin } = bevel;
  return [
    ...(trouble === "small" ? [holdWords(bevel)] : []),
    ...(trouble === "reach" ? ["beyond the saw's reach"] : []),
    ...(thin && saw === "table"
      ? [`its thin edge at the ${way === "rip" ? "fence" : "stop block"}: close the gap below`]
      : []),
    ...(saw === "table" && way === "rip" && trouble !== "small" && setting < rules.pushStick.value
      ? ["push stick"]
      : []),
  ];
}
