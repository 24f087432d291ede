import type { Build } from "../model/build.js";
import type { PartId } from "../model/ids.js";
import { uniqueFileNames } from "./fileName.js";

/** File names without folder and extension, the same for every format: a part's number and id, a sheet's own name. */
export type OutputNames = {
  readonly parts: ReadonlyMap<PartId, string>;
  /** In the order of the layout's sheets. */
  readonly sheets: readonly string[];
  /** In the order of the program's setups: the sheet's own name, or one of its own where the sheet is turned over. */
  readonly setups: readonly string[];
};

export function outputNames({ plan, layout, program }: Build): OutputNames {
  const { parts } = plan.built;
  const names = uniqueFileNames(parts.map(({ number, id }) => `${number} ${id}`));
  const sheets = layout.sheets.map(({ sheet }) => sheet);
  const turned = program.setups.map(({ name }) => name).filter((name) => !sheets.includes(name));
  const onSheets = uniqueFileNames([...sheets, ...turned]);
  const all = [...sheets, ...turned];
  return {
    parts: new Map(parts.map(({ id }, i) => [id, names[i]!])),
    sheets: onSheets.slice(0, sheets.length),
    setups: program.setups.map(({ name }) => onSheets[all.indexOf(name)]!),
  };
}
