import type { Build } from "../model/build.js";
import type { CircleJig, HandProfile, Template } from "../model/hand.js";
import type { Part } from "../model/part.js";
import { type Block, type Column, paragraph, rule, setBlocks, stacked, tableHead, tableRow } from "./blocks.js";
import { datumOf } from "./datum.js";
import { type Draft, roomsOf, spilledPages } from "./draft.js";
import { showFor } from "./handShow.js";
import { jigWords, pivotWords, profileWords, templateCells } from "./handWords.js";
import { namesOf, partName } from "./partName.js";
import { inRuns } from "./runs.js";
import type { SameParts } from "./sameParts.js";
import { pageSizeFor } from "./sheetFrame.js";
import { overallSize } from "./sizes.js";

/** Ways that are printed for one line: the best, and what the bushes do with one bit; the CSV has them all. */
const mostRows = 8;

/** Pages with what one sets and cuts for hand routing; none where nothing is routed by hand. */
export function handPages(same: readonly SameParts[], build: Build, cautions: readonly string[]): readonly Draft[] {
  const size = pageSizeFor(build.job.show, "large");
  const rooms = roomsOf(size);
  const width = rooms.view.max.x - rooms.view.min.x;
  const blocks = same.flatMap((each) => partBlocks(each, build, width));
  if (blocks.length === 0) return [];
  const show = showFor("hand", build);
  const draft = { title: "Hand routing", documentType: "templates and pivots", numberTail: "R", show, size };
  const words = setBlocks(rulesOf(cautions, rooms.column.max.x - rooms.column.min.x), rooms.column);
  const first = setBlocks(blocks, rooms.view);
  return [
    { ...draft, items: [...words.items, ...first.items] },
    ...spilledPages(first.rest, draft),
    ...spilledPages(words.rest, draft),
  ];
}

/** What holds for all of it, beside the tables. */
function rulesOf(cautions: readonly string[], width: number): readonly Block[] {
  const lines = [
    "The bush runs along the template; its edge lies off the cut by (bush - bit) / 2, the offset.",
    "Outside work: the template is smaller than the part by the offset all round. Inside work: the hole in the template is larger.",
    "By the diameter that the bit really cuts: measure it on a test cut, write it into the shop file, and run this again.",
    "The bit must turn free in the bush. The template is at least as thick as the bush stands below the base.",
    "Set depths from the top of the template: its thickness and the depth of the pass.",
    "Feed against the bit's turn, never with it. Clamp the template; it must not move between passes.",
    "A groove: the template's edge lies half the bush off the groove's middle; or set the router's fence.",
    "A circle jig is set from the pivot to the middle of the bit.",
  ];
  return [
    paragraph("Hand routing", width, { height: 5, bold: true }, 2),
    ...lines.map((line) => paragraph(line, width, { height: 3 }, 1.5)),
    rule(width),
    ...cautions.map((words) => paragraph(words, width, { bold: true })),
  ];
}

function partBlocks({ first, parts }: SameParts, build: Build, width: number): readonly Block[] {
  const { profiles, jigs } = build.process.hand;
  const lines = profiles.filter(({ part }) => part === first.id);
  if (lines.every(({ straight }) => straight)) return [];
  const circles = jigs.filter(({ part }) => part === first.id);
  const numbers = inRuns(parts.map(({ number }) => number));
  const name = parts.length === 1 ? partName(first) : `${namesOf(parts)}, ${parts.length} off`;
  const [line, ...more] = lines.map((each) => lineBlock(each, build, width));
  const heading = paragraph(`${numbers}  ${name}`, width, { height: 3.5, bold: true });
  return [
    stacked([heading, ...(line ? [line] : [])]),
    ...more,
    ...circles.map((jig) => jigBlock(jig, first, build, width)),
    rule(width),
  ];
}

function lineBlock(line: HandProfile, build: Build, width: number): Block {
  const show = showFor("hand", build);
  const [head = "", ...more] = profileWords(line, show);
  if (line.straight)
    return stacked([
      paragraph(head, width, { height: 3 }, 0.5),
      paragraph("Four straight edges: saw it, or rout along a straight edge that is clamped on.", width, {}, 2),
    ]);
  const ways = printedWays(line.templates);
  const table = columnsFor(width);
  const left = line.templates.length - ways.length;
  return stacked([
    paragraph(head, width, { height: 3 }, 0.5),
    ...more.map((words) => paragraph(words, width)),
    ...(ways.length === 0 ? [] : [tableHead(table)]),
    ...ways.map((way, i) => tableRow(table, templateCells(way, line.side, show), { bold: i === 0 })),
    paragraph(left > 0 ? `${left} more ways with what is on hand stand in hand-routing.csv` : "", width, {}, 2),
  ]);
}

/** The best way first, then other bearings, then each bush with the bit that is best in one. */
function printedWays(templates: readonly Template[]): readonly Template[] {
  const bushed = templates.find(({ bush }) => bush !== undefined);
  return templates.filter(({ bush, bit }) => bush === undefined || bit === bushed?.bit).slice(0, mostRows);
}

function columnsFor(width: number): readonly Column[] {
  const share = (part: number) => part * width;
  return [
    { title: "bush", width: share(0.11) },
    { title: "bit", width: share(0.13) },
    { title: "offset", width: share(0.1), align: "right" },
    { title: "template", width: share(0.24), align: "right" },
    { title: "corner R", width: share(0.1), align: "right" },
    { title: "thick", width: share(0.09), align: "right" },
    { title: "mind", width: share(0.23) },
  ];
}

function jigBlock(jig: CircleJig, part: Part, build: Build, width: number): Block {
  const show = showFor("hand", build);
  const { at: from } = datumOf(part);
  const at = `x ${overallSize(jig.pivot.x - from.x, show)}, y ${overallSize(jig.pivot.y - from.y, show)}`;
  return stacked([
    paragraph(`Circle jig with ${jig.bit}, one pivot at ${at}, in this order`, width, { height: 3 }, 0.5),
    ...jig.cuts.map((cut, i) => paragraph(`${i + 1}. ${jigWords(cut, show)}`, width)),
    paragraph(pivotWords(jig), width, {}, 2),
  ]);
}
