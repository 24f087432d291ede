import type { Show } from "../input/show.js";
import type { Build } from "../model/build.js";
import type { Part } from "../model/part.js";
import { setBlocks } from "./blocks.js";
import { type Callout, calloutsOf } from "./callouts.js";
import { type Draft, roomsOf, spilledPages } from "./draft.js";
import { showForPart } from "./handShow.js";
import { layOutPart } from "./partLayout.js";
import { namesOf, partName } from "./partName.js";
import { drawPart, viewHeading } from "./partView.js";
import { partWords } from "./partWords.js";
import type { SameParts } from "./sameParts.js";
import { factorOf, scaleWords } from "./scale.js";
import { pageSizeFor } from "./sheetFrame.js";
import type { SeenFrom } from "./view.js";

/** Below this scale a part goes on the larger sheet. */
const smallest = 1 / 5;

/** The pages of a part: one as seen from the face, one from the back where work is done there; more if words spill. */
export function partPages(same: SameParts, build: Build, cautions: readonly string[]): readonly Draft[] {
  const { first } = same;
  const show = showForPart(first, build);
  const callouts = calloutsOf(first, build.plan.built.axes, show);
  const back = first.features.some(({ side }) => side === "back");
  const sides: readonly SeenFrom[] = back ? ["face", "back"] : ["face"];
  return sides.flatMap((from) =>
    sidePages(same, from, callouts, { ...build, job: { ...build.job, show } }, build, cautions),
  );
}

function sidePages(
  same: SameParts,
  from: SeenFrom,
  callouts: readonly Callout[],
  shown: Build,
  { job }: Build,
  cautions: readonly string[],
): readonly Draft[] {
  const part = same.first;
  const { show } = shown.job;
  const { size, layout } = largeEnough(part, from, callouts, show, job.show);
  const rooms = roomsOf(size);
  const draft = {
    title: `${part.number}  ${same.parts.length === 1 ? partName(part) : namesOf(same.parts)}${from === "back" ? ", back" : ""}`,
    documentType: "part drawing",
    numberTail: part.number,
    scale: scaleWords(layout.scale),
    show,
    size,
  };
  const words = setBlocks(
    partWords(same, from, callouts, layout.tabled, shown, cautions, rooms.column.max.x - rooms.column.min.x),
    rooms.column,
  );
  const view = [...viewHeading(part, from, rooms.view), ...drawPart(part, callouts, layout, shown)];
  return [{ ...draft, items: [...view, ...words.items] }, ...spilledPages(words.rest, draft)];
}

/** On the paper of the job, the small sheet unless the part would come out too small on it, or too crowded. */
function largeEnough(part: Part, from: SeenFrom, callouts: readonly Callout[], show: Show, paper: Show) {
  const onSheet = (format: "small" | "large") => {
    const size = pageSizeFor(paper, format);
    return { size, layout: layOutPart(part, from, callouts, roomsOf(size).view, show) };
  };
  const small = onSheet("small");
  return factorOf(small.layout.scale) < smallest || small.layout.tabled ? onSheet("large") : small;
}
