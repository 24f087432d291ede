import type { Show } from "../input/show.js";
import type { Part } from "../model/part.js";
import { type Block, type Column, tableHead, tableRow } from "./blocks.js";
import type { Callout } from "./callouts.js";
import { datumOf } from "./datum.js";
import { belongsTo } from "./dimensions/marks.js";
import { runningSize } from "./sizes.js";
import type { SeenFrom } from "./view.js";

/** Where holes lie, one row each, for a part with more of them than numbers find room for beside the view. */
export function holeRows(
  part: Part,
  callouts: readonly Callout[],
  from: SeenFrom,
  width: number,
  show: Show,
): readonly Block[] {
  const datum = datumOf(part).at;
  const columns: readonly Column[] = [
    { title: "hole", width: width * 0.2 },
    { title: "across", width: width * 0.4, align: "right" },
    { title: "up", width: width * 0.4, align: "right" },
  ];
  const rows = callouts.flatMap(({ letter, features, circle }) =>
    features.flatMap((feature, i) => {
      if (circle || feature.cut.kind !== "hole" || !belongsTo(feature, from)) return [];
      const { x, y } = feature.cut.at;
      const name = features.length > 1 ? `${letter}${i + 1}` : letter;
      return [tableRow(columns, [name, runningSize(x - datum.x, show), runningSize(y - datum.y, show)])];
    }),
  );
  return rows.length === 0 ? [] : [tableHead(columns), ...rows];
}
