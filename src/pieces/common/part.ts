import type { Frame } from "../../geometry/frame.js";
import { offsetEach } from "../../geometry/offset.js";
import type { Region } from "../../geometry/profile.js";
import { circle } from "../../geometry/shapes.js";
import { sureDifference } from "../../geometry/sure.js";
import {
  count,
  type Finding,
  type FindingDef,
  list,
  type Origin,
  type Outcome,
  raise,
  text,
} from "../../input/finding.js";
import { type BoardId, featureId, type PartId, type PieceId, partId } from "../../model/ids.js";
import type { Cut, Edge, Feature, Part, Side } from "../../model/part.js";

/** A feature before it has its part's id. `name` becomes the `by` of the edges it makes. */
export type Draft = {
  readonly name: string;
  readonly from: readonly Origin[];
  readonly side?: Side;
  readonly cut: Cut;
  readonly axis?: Feature["axis"];
  readonly filledBy?: string;
  readonly stage?: Feature["stage"];
};

export type PartDraft = {
  readonly piece: PieceId;
  readonly role: string;
  readonly from: readonly Origin[];
  readonly board: { readonly id: BoardId; readonly thickness: number };
  /** Outline first. */
  readonly features: readonly Draft[];
  readonly edges?: Readonly<Record<string, Edge>>;
  readonly coverings?: Part["coverings"];
  readonly grain?: number;
  readonly at: Frame;
};

export const shapeInDoubt: FindingDef = {
  code: "shape-in-doubt",
  severity: "error",
  words: "the shape of {part} could not be worked out with certainty, so it is withheld",
  next: "move {features} by a millimetre, or change a radius, so that edges do not run exactly along each other",
  explain:
    "Every cut-out is taken from the outline twice, by two different methods, and the areas are compared. Where they do not agree the part is withheld: a wrong outline costs a sheet.",
};

export const nothingLeft: FindingDef = {
  code: "nothing-left",
  severity: "error",
  words: "{part} falls apart: its cut-outs leave {pieces} separate pieces",
  next: "make a cut-out smaller or move it away from the edge",
  explain:
    "A part must be one piece of board. Cut-outs that cross the whole part, or swallow it, leave none or several.",
};

export const partFindings: readonly FindingDef[] = [shapeInDoubt, nothingLeft];

/**
 * Makes a part of its recipe: the profile is the outline less every notch, opening and hole that goes through; the
 * blank is face and back outline together with what is left on to be flushed off.
 *
 * Returns: no part, and a finding, where the shape is in doubt or is not one piece.
 */
export function makePart(draft: PartDraft): Outcome<Part> {
  const id = partId(draft.piece, draft.role);
  const outline = draft.features[0]?.cut;
  if (outline?.kind !== "outline") throw new Error(`${id}: the outline must be the first feature`);
  const taken = draft.features.slice(1).flatMap((feature) => takenBy(feature));
  const cut = sureDifference(outline.region, taken);
  const from = draft.features.slice(1).flatMap((feature) => feature.from);
  if (cut.value === undefined || cut.doubt) return refuse(shapeInDoubt, id, draft, from);
  const [profile, ...others] = cut.value;
  if (profile === undefined || others.length > 0) return refuse(nothingLeft, id, draft, from, cut.value.length);
  const part: Part = {
    id,
    number: "",
    piece: draft.piece,
    role: draft.role,
    from: draft.from,
    board: draft.board.id,
    thickness: draft.board.thickness,
    ...(draft.grain === undefined ? {} : { grain: draft.grain }),
    features: draft.features.map((feature) => finish(feature, id)),
    profile,
    blank: blankOf(profile, draft.edges ?? {}, draft.board.thickness),
    edges: draft.edges ?? {},
    coverings: draft.coverings ?? {},
    at: draft.at,
  };
  return { value: part, findings: [] };
}

/** What a cut takes out of the whole thickness. */
function takenBy({ name, side, cut }: Draft): readonly Region[] {
  if (cut.kind === "notch" || cut.kind === "opening") return [cut.region];
  if (cut.kind === "hole" && cut.depth === "through" && (side === undefined || typeof side === "string")) {
    return [{ outer: circle(cut.at, cut.d / 2, name), holes: [] }];
  }
  return [];
}

/**
 * The nest sees the larger of the two faces. A bevel above 0 makes the back smaller and below 0 larger, by
 * thickness x tan(bevel); a flush allowance is left on either.
 */
function blankOf(profile: Region, edges: Readonly<Record<string, Edge>>, thickness: number): Region {
  const growth = (by: string) => {
    const edge = edges[by];
    return edge === undefined ? 0 : Math.max(0, -thickness * Math.tan(edge.bevel)) + edge.flush;
  };
  if (!profile.outer.some((vertex) => growth(vertex.by) > 0)) return profile;
  const [outer] = offsetEach(profile.outer, growth, { corners: "sharp" });
  return { outer: outer ?? profile.outer, holes: profile.holes };
}

function finish({ name, from, side, cut, axis, filledBy, stage }: Draft, part: PartId): Feature {
  return {
    id: featureId(part, name),
    from,
    side: side ?? "face",
    cut,
    ...(axis === undefined ? {} : { axis }),
    ...(filledBy === undefined ? {} : { filledBy }),
    stage: stage ?? "sheet",
  };
}

function refuse(def: FindingDef, id: PartId, draft: PartDraft, from: readonly Origin[], pieces = 0): Outcome<Part> {
  const names = draft.features.slice(1).map((feature) => feature.name);
  const finding: Finding = raise(def, {
    at: [...draft.from, ...from].slice(0, 4),
    on: [id],
    facts: {
      part: text(draft.role === draft.piece ? draft.role : `${draft.piece} ${draft.role}`),
      features: list(names),
      pieces: count(pieces),
    },
  });
  return { value: undefined, findings: [finding] };
}
