import type { Build } from "../model/build.js";
import type { PartId } from "../model/ids.js";
import { uniqueFileNames } from "./fileName.js";

/** File names without folder and extension, the same for every format: a part's number and id, a sheet's own name. */
export type OutputNames = {
  readonly parts: ReadonlyMap<PartId, string>;
  /** In the order of the layout's sheets. */
  readonly sheets: readonly string[];
};

export function outputNames({ plan, layout }: Build): OutputNames {
  const { parts } = plan.built;
  const names = uniqueFileNames(parts.map(({ number, id }) => `${number} ${id}`));
  return {
    parts: new Map(parts.map(({ id }, i) => [id, names[i]!])),
    sheets: uniqueFileNames(layout.sheets.map(({ sheet }) => sheet)),
  };
}
