import { extentsOf } from "../geometry/measure.js";
import { offsetEach } from "../geometry/offset.js";
import type { Profile } from "../geometry/profile.js";
import { mm } from "../input/finding.js";
import { showQuantity } from "../input/show.js";
import type { Build } from "../model/build.js";
import type { Job } from "../model/job.js";
import type { EdgeFinish, Part } from "../model/part.js";
import { edgeName } from "./edgeName.js";
import { massKg, massWords } from "./mass.js";
import { methodWords } from "./methodWords.js";
import { degrees, overallSize, sizePair, toolSize } from "./sizes.js";
import { fitWords } from "./toFit.js";
import { elsewhereNotes } from "./workGroups.js";

/** What a part's page says beside the drawing, one short sentence each. `count`: how many are cut alike. */
export function notesOf(part: Part, count: number, build: Build): readonly string[] {
  return [
    materialNote(part, build),
    sizeNote(part, build),
    ...fitNote(part, build),
    massNote(part, count, build),
    methodNote(part, build),
    ...elsewhere(part, build),
    ...grainNote(part),
    ...coveringNotes(part, build),
    ...jointNote(part),
    ...flushNote(part, build),
    ...bevelNote(part, build),
  ];
}

/** "MDF, measured 18.2 thick (board box, stock mdf-18)". */
export function materialNote(part: Part, { job, shop }: Build): string {
  const stock = job.boards[part.board]?.stock ?? "";
  const material = shop.boards[stock]?.material ?? stock;
  const measured = job.boards[part.board]?.measured !== undefined || shop.boards[stock]?.measured !== undefined;
  return `${material}, ${measured ? "measured" : "nominal"} ${toolSize(part.thickness, job.show)} thick (board ${part.board}, ${stock})`;
}

function sizeNote(part: Part, { job }: Build): string {
  const size = sizeOf(part.profile.outer, job);
  const bevelled = Object.values(part.edges).some(({ bevel }) => bevel !== 0);
  return bevelled ? `Face ${size} when finished` : `Cut ${size} over all, bare board`;
}

/** A board between others is as long as the gap, whatever the step of the saw. */
function fitNote(part: Part, build: Build): readonly string[] {
  const words = fitWords(part, build);
  const isSawn = build.process.parts.some((each) => each.part === part.id && each.method === "saw");
  const how = isSawn ? "; saw it to the next step and trim, or set the stop by the gap" : "";
  return words === "" ? [] : [`Between its neighbours ${words}${how}`];
}

function massNote(part: Part, count: number, { job, shop }: Build): string {
  const kg = massKg(part, job, shop);
  if (kg === undefined) return "Mass unknown: no stock matches the board";
  return count === 1 ? `Mass ${massWords(kg, job.show)}` : `Mass ${massWords(kg, job.show)} each`;
}

function methodNote(part: Part, { process }: Build): string {
  const how = process.parts.find((each) => each.part === part.id);
  return how ? `Cut by ${methodWords[how.method]} (${how.why})` : "Not cut: no way to cut it was found";
}

/** What is cut elsewhere than the part itself: at the bench, by hand, in a second setup. */
function elsewhere(part: Part, { process }: Build): readonly string[] {
  const how = process.parts.find((each) => each.part === part.id);
  return how ? elsewhereNotes(part, how) : [];
}

function grainNote(part: Part): readonly string[] {
  return part.grain === undefined ? [] : ["Grain as the arrow beside the view shows"];
}

function coveringNotes(part: Part, { job }: Build): readonly string[] {
  const faces = (["face", "back"] as const).flatMap((side) => {
    const name = part.coverings[side];
    return name === undefined ? [] : [`${name} on the ${side}`];
  });
  const wraps = wrapsOf(part).map(
    ({ finish, edges, all }) =>
      `${finish.covering} ${toolSize(finish.loose, job.show)} thick goes round ${all ? "all edges" : `edges ${edges.map(edgeName).join(", ")}`} (wide chain line)${
        finish.wrap > 0 ? `, ${overallSize(finish.wrap, job.show)} on to the back` : ""
      }`,
  );
  return faces.length + wraps.length === 0 ? [] : [`Covering: ${[...faces, ...wraps].join("; ")}`];
}

type Wrapped = Extract<EdgeFinish, { kind: "wrapped" }>;

/** Edges that are wrapped alike, together. */
function wrapsOf(part: Part) {
  const names = [...new Set(part.profile.outer.map(({ by }) => by))];
  const groups = new Map<string, { finish: Wrapped; edges: string[] }>();
  for (const name of names) {
    const finish = part.edges[name]?.finish;
    if (finish?.kind !== "wrapped") continue;
    const key = JSON.stringify(finish);
    const group = groups.get(key) ?? { finish, edges: [] };
    // A rounded corner between two named edges goes without saying.
    if (!name.includes("|")) group.edges.push(name);
    groups.set(key, group);
  }
  const named = names.filter((name) => !name.includes("|")).length;
  return [...groups.values()].map((group) => ({ ...group, all: group.edges.length === named }));
}

/** Edges that meet another part, so that nobody rounds or covers them. */
function jointNote(part: Part): readonly string[] {
  const glued = Object.entries(part.edges).filter(([, { finish }]) => finish.kind === "joint");
  const named = (bevelled: boolean) =>
    glued.filter(([, { bevel }]) => (bevel !== 0) === bevelled).map(([name]) => edgeName(name));
  const [square, leaning] = [named(false), named(true)];
  return [
    ...(square.length === 0 ? [] : [`Glued edges, keep square and bare: ${square.join(", ")}`]),
    ...(leaning.length === 0 ? [] : [`Glued bevels, keep bare: ${leaning.join(", ")}`]),
  ];
}

/** Where it is cut larger: what the blank measures, and how its corner lies to the one that positions are taken from. */
function flushNote(part: Part, { job }: Build): readonly string[] {
  if (Object.values(part.edges).every(({ flush }) => flush === 0)) return [];
  const [blank, trimmed] = [extentsOf(part.blank.outer), extentsOf(part.profile.outer)];
  const more = (axis: "x" | "y") => showQuantity(mm(trimmed.min[axis] - blank.min[axis]), job.show);
  return [
    `Cut ${sizeOf(part.blank.outer, job)} first (double-dotted line); trim flush to size after glue-up. Positions are from ` +
      `the trimmed edges; from those of the blank they are ${more("x")} more to the right and ${more("y")} more upwards`,
  ];
}

/** The bevels are sawn from a blank that holds both faces. */
function bevelNote(part: Part, { job }: Build): readonly string[] {
  const bevelled = Object.entries(part.edges).filter(([, { bevel }]) => bevel !== 0);
  if (bevelled.length === 0) return [];
  const back = offsetEach(part.profile.outer, (by) => -part.thickness * Math.tan(part.edges[by]?.bevel ?? 0), {
    corners: "sharp",
  });
  const words = bevelled.map(
    ([name, { bevel }]) => `${edgeName(name)} ${degrees(Math.abs(bevel))}, the ${bevel > 0 ? "face" : "back"} wider`,
  );
  return [
    `Cut square to ${sizeOf(part.blank.outer, job)} first, then saw the bevels: ${words.join("; ")}`,
    `The back then measures ${sizeOf(back[0] ?? part.profile.outer, job)} (narrow line)`,
  ];
}

function sizeOf(outline: Profile, job: Job): string {
  const { min, max } = extentsOf(outline);
  return sizePair(max.x - min.x, max.y - min.y, job.show);
}
