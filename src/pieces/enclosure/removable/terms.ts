import type { Air } from "../../../model/piece.js";
import type { Chamber } from "../chambers/divide.js";
import { battensL, gapL, type Removable } from "./removable.js";

/** What a panel that is bolted on takes of a chamber and leaves to it, L: its battens, and the gap that its gasket frames. */
export function removableTerms(chamber: Chamber, removables: readonly Removable[]): Air["terms"] {
  return removables.flatMap(({ face, rings }) =>
    rings
      .filter((ring) => ring.chamber === chamber)
      .flatMap((ring) => [
        { what: `battens under ${face.name}`, litres: -battensL(ring), shaped: true },
        { what: `gap within the gasket of ${face.name}`, litres: gapL(ring), shaped: true },
      ]),
  );
}
