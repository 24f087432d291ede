import { named } from "../../drawing/handWords.js";
import { partName } from "../../drawing/partName.js";
import { formatNumber } from "../../input/number.js";
import { cautionsFor, cautionWords } from "../../lists/cautions.js";
import type { Build } from "../../model/build.js";
import type { CircleJig, HandProfile } from "../../model/hand.js";
import type { Part } from "../../model/part.js";
import { type Cell, csvBytes } from "./csv.js";

const heads = [
  "what",
  "number",
  "part",
  "line",
  "side",
  "bush",
  "bit",
  "offset mm",
  "template length mm",
  "template width mm",
  "template corner mm",
  "template thick mm",
  "outside corners rounded",
  "pivot to bit mm",
  "passes mm",
  "feed",
  "left on mm",
  "note",
  "build",
] as const;
type Line = Partial<Record<(typeof heads)[number], Cell>>;

/** Whether any part that is made is routed by hand. */
export const isRoutedByHand = (build: Build): boolean => linesOf(build).length > 0;

/** Every way to lead a bit round every line that is routed by hand, and every pivot, to the micron; then the cautions. */
export function handCsv(build: Build): Uint8Array {
  const cautions = cautionsFor(build, "cut list").map(
    (caution): Line => ({ what: "caution", note: cautionWords(caution) }),
  );
  const lines = [...linesOf(build), ...cautions];
  return csvBytes([heads, ...lines.map((line) => heads.map((head) => (head === "build" ? build.hash : line[head])))]);
}

function linesOf({ plan, process: { hand } }: Build): readonly Line[] {
  return plan.built.parts.flatMap((part) => [
    ...hand.profiles.filter((profile) => profile.part === part.id).flatMap((profile) => templateLines(part, profile)),
    ...hand.jigs.filter((jig) => jig.part === part.id).flatMap((jig) => jigLines(part, jig)),
  ]);
}

function templateLines(part: Part, profile: HandProfile): readonly Line[] {
  const { feature, side, feed, passes, allowance, templates } = profile;
  const shared = { number: part.number, part: partName(part), line: named(feature), side };
  if (templates.length === 0) return [{ what: "template", ...shared, note: "nothing on hand leads a bit along it" }];
  const bushed = templates.find(({ bush }) => bush !== undefined);
  return templates.map((template, i) => ({
    what: "template",
    ...shared,
    bush: template.bush ?? "own bearing",
    bit: template.bit,
    "offset mm": template.offset,
    "template length mm": template.size?.[0],
    "template width mm": template.size?.[1],
    "template corner mm": template.corner,
    "template thick mm": template.thick,
    "outside corners rounded": template.rounded,
    // They go with the first bit in a bush.
    "passes mm":
      template.bush !== undefined && template.bit === bushed?.bit
        ? passes.map((pass) => formatNumber(pass, 3)).join(" ")
        : undefined,
    feed,
    "left on mm": allowance,
    note: template.size === undefined ? "there is no such template: it closes" : i === 0 ? "best" : undefined,
  }));
}

function jigLines(part: Part, { bit, cuts }: CircleJig): readonly Line[] {
  return cuts.map(({ feature, side, pivots, passes, feed }, i) => ({
    what: `circle jig, cut ${i + 1}`,
    number: part.number,
    part: partName(part),
    line: named(feature),
    side,
    bit,
    "pivot to bit mm": pivots.map((pivot) => formatNumber(pivot, 3)).join(" "),
    "passes mm": passes.map((pass) => formatNumber(pass, 3)).join(" "),
    feed,
  }));
}
