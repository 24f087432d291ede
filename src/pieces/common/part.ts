import type { Frame } from "../../geometry/frame.js";
import type { Region } from "../../geometry/profile.js";
import { circle } from "../../geometry/shapes.js";
import { type Doubt, type Sure, sureDifference, sureOffset } from "../../geometry/sure.js";
import {
  count,
  type Finding,
  type FindingDef,
  list,
  mm,
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
  readonly cutBy?: Part["cutBy"];
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

export const outlineInDoubt: FindingDef = {
  code: "outline-in-doubt",
  severity: "error",
  words: "{what} of {part} could not be worked out with certainty near x {x}, y {y}, so it is withheld",
  next: "look at the outline there: change a gap, a covering or a radius by a little, or straighten what is measured",
  explain:
    "An outline that is moved by gaps, coverings, bevels or what is left on to be trimmed is worked out by two different methods. Where they do not agree the part is withheld: a wrong outline costs a sheet.",
};

export const partFindings: readonly FindingDef[] = [shapeInDoubt, outlineInDoubt, nothingLeft];

/** The finding for a moved outline that is not to be trusted. */
export function inDoubt(
  what: string,
  part: string,
  { at }: Doubt,
  from: readonly Origin[],
  on: readonly string[],
): Finding {
  return raise(outlineInDoubt, {
    at: from,
    on,
    facts: { what: text(what), part: text(part), x: mm(at.x), y: mm(at.y) },
  });
}

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
  const blank = blankOf(profile, draft.edges ?? {}, draft.board.thickness);
  if (blank.doubt) {
    const findings = [inDoubt("the blank", nameOf(draft), blank.doubt, draft.from, [id])];
    return { value: undefined, findings };
  }
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
    blank: { outer: blank.value[0]!.outer, holes: profile.holes },
    edges: draft.edges ?? {},
    coverings: draft.coverings ?? {},
    ...(draft.cutBy === undefined ? {} : { cutBy: draft.cutBy }),
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
 * What is first cut: all that lies between the outlines of face and back, and what is left on to be flushed off.
 *
 * The back's outline is the face's moved by - thickness x tan(bevel), so each edge is moved out where that is above 0, and
 * by its flush allowance. Where an edge with a larger back meets one with a smaller back this is a corner more than the
 * two outlines together: the sections between them reach into it.
 */
function blankOf(profile: Region, edges: Readonly<Record<string, Edge>>, thickness: number): Sure {
  const face: Region = { outer: profile.outer, holes: [] };
  const growth = (by: string) => {
    const edge = edges[by];
    return edge === undefined ? 0 : Math.max(0, -thickness * Math.tan(edge.bevel)) + edge.flush;
  };
  if (profile.outer.every((vertex) => growth(vertex.by) === 0)) return { value: [face] };
  return sureOffset(face, growth, { corners: "sharp" });
}

const nameOf = ({ role, piece }: PartDraft): string => (role === piece ? role : `${piece} ${role}`);

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
      part: text(nameOf(draft)),
      features: list(names),
      pieces: count(pieces),
    },
  });
  return { value: undefined, findings: [finding] };
}
