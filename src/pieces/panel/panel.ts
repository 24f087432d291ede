import { fillet } from "../../geometry/corners.js";
import { identity, shifted } from "../../geometry/frame.js";
import type { Profile } from "../../geometry/profile.js";
import { circle, rectangle } from "../../geometry/shapes.js";
import { below, type FindingDef, mm, type Origin, type Outcome, raise, text } from "../../input/finding.js";
import type { Around, Built, Offer, PieceKind, Reference } from "../../model/piece.js";
import { snap, stepOf } from "../common/method.js";
import { type Draft, makePart } from "../common/part.js";
import { bevelFindings, bevelledEdges, bevelNotSawn } from "./bevels.js";
import { type PanelSpec, panelSchema } from "./schema.js";

export const holeTooDeep: FindingDef = {
  code: "hole-too-deep",
  severity: "error",
  words: "hole {hole} is {deep} deep in {thickness} board",
  next: "leave `deep` out for a hole that goes through, or make it less",
  explain: "A hole with a depth is blind. As deep as the board or deeper, it would go through.",
};

/** A plain panel: the way out where no other kind fits. With `lies` it lies flat in the vehicle, face up. */
export const panel: PieceKind<PanelSpec> = {
  kind: "panel",
  schema: panelSchema,
  findings: [holeTooDeep, bevelNotSawn],
  refs: (spec: PanelSpec, at: Origin): readonly Reference[] => [
    { kind: "board", name: spec.board, at: below(at, "board") },
  ],
  free: () => undefined,
  offer: offerPanel,
  ask: () => ({ value: [], findings: [] }),
  miss: () => 0,
  build: buildPanel,
};

/** The panel's frame: its own origin at the place it lies, its face one board above. */
function offerPanel(spec: PanelSpec, _size: number, around: Around): Outcome<Offer> {
  const { thickness } = around.board(spec.board);
  const value: Offer = {
    ...(spec.lies ? { stands: shifted(spec.lies.x, spec.lies.y, spec.lies.z + thickness) } : {}),
    planes: { top: identity },
    outlines: { top: { outer: outlineOf(spec, around), holes: [] } },
    drivers: {},
  };
  return { value, findings: [] };
}

function buildPanel(spec: PanelSpec, _size: number, around: Around): Outcome<Built> {
  const { thickness } = around.board(spec.board);
  const outline = outlineOf(spec, around);
  const made = makePart({
    piece: around.id,
    role: "panel",
    from: [around.origin],
    board: around.board(spec.board),
    features: [
      {
        name: "outline",
        from: [below(around.origin, "outline")],
        cut: { kind: "outline", region: { outer: outline, holes: [] }, corner: "sharp" },
      },
      ...openingDrafts(spec, around),
      ...holeDrafts(spec, around),
    ],
    edges: bevelledEdges(spec),
    at: identity,
  });
  const tooDeep = Object.entries(spec.holes ?? {}).flatMap(([hole, { deep }]) => {
    if (deep === undefined || deep < thickness) return [];
    const facts = { hole: text(hole), deep: mm(deep), thickness: mm(thickness) };
    return [raise(holeTooDeep, { at: [below(around.origin, "holes", hole, "deep")], on: [around.id], facts })];
  });
  const wrong = [...tooDeep, ...bevelFindings(spec, outline, around.id, around.origin)];
  const parts = made.value && wrong.length === 0 ? [made.value] : [];
  const value: Built = { parts, joints: [], axes: [], mounts: [], air: [], steps: [], buys: [] };
  return { value, findings: [...made.findings, ...wrong] };
}

/** As drawn; a plain length by width snaps to the step of whoever cuts it. */
function outlineOf(spec: PanelSpec, around: Around): Profile {
  const [first, second] = spec.outline;
  if (typeof first !== "number" || typeof second !== "number") return spec.outline as Profile;
  const step = stepOf(spec, around);
  return rectangle(0, 0, snap(first, step), snap(second, step), ["near", "right", "far", "left"]);
}

function openingDrafts(spec: PanelSpec, { origin }: Around): readonly Draft[] {
  return Object.entries(spec.openings ?? {}).map(([key, { at, size, round }]) => {
    const name = `opening.${key}`;
    const [x, y] = at;
    const sharp = rectangle(x - size[0] / 2, y - size[1] / 2, x + size[0] / 2, y + size[1] / 2, name);
    const outer = fillet(sharp, Math.min(round ?? 0, size[0] / 2, size[1] / 2)).profile;
    const region = { outer: outer.map((vertex) => ({ ...vertex, by: name })), holes: [] };
    return { name, from: [below(origin, "openings", key)], cut: { kind: "opening", region, corner: "sharp" } };
  });
}

function holeDrafts(spec: PanelSpec, { origin }: Around): readonly Draft[] {
  return Object.entries(spec.holes ?? {}).map(
    ([
      key,
      {
        at: [x, y],
        across,
        deep,
        from,
      },
    ]) => {
      const place = [below(origin, "holes", key)];
      const side = from ?? "face";
      // A large round hole is an opening: it is routed, not drilled.
      if (deep === undefined && across > largestDrilled) {
        const name = `opening.${key}`;
        const region = { outer: circle({ x, y }, across / 2, name), holes: [] };
        return { name, from: place, cut: { kind: "opening", region, corner: "bit" } };
      }
      const cut = { kind: "hole", at: { x, y }, d: across, depth: deep ?? "through" } as const;
      return { name: `hole.${key}`, from: place, side, cut };
    },
  );
}

/** mm: wider than this, no drill in the shop. */
const largestDrilled = 40;
