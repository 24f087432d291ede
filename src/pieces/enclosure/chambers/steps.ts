import { type Finding, mm } from "../../../input/finding.js";
import { partId } from "../../../model/ids.js";
import type { Around } from "../../../model/piece.js";
import type { Shape } from "../shape.js";
import { innerBoards } from "./fitOut.js";
import type { InnerBoard } from "./innerBoard.js";

const from = { width: "left", depth: "rear", height: "lower" } as const;

/** What is done with the boards inside a box before its last panel closes it. */
export function insideSteps({ fitOut }: Shape, { id }: Around) {
  const boards = innerBoards(fitOut);
  if (boards.length === 0) return [];
  const parts = boards.map(({ role }) => partId(id, role));
  return [
    {
      name: "inside marked",
      parts,
      words: `Mark on the walls where the boards inside stand: ${boards.map(marked).join("; ")}`,
      facts: Object.fromEntries(
        boards.map((board, i): [string, Finding["facts"][string]] => [factOf(i), mm(placeOf(board))]),
      ),
      cautions: [],
    },
    {
      name: "inside glued",
      parts,
      words:
        fitOut.dividers.length > 0
          ? "Glue the boards inside to the first wall before the others close them in, and run a bead of glue along both sides of each divider: no air may pass from chamber to chamber"
          : "Glue the boards inside to the first wall before the others close them in",
      facts: {},
      cautions: ["formaldehyde"],
    },
  ];
}

const factOf = (i: number) => `place${i + 1}`;

const placeOf = ({ marked: place }: InnerBoard): number => ("at" in place ? place.at : place.gap);

function marked({ role, marked: place }: InnerBoard, i: number): string {
  const name = role.replace(".", " ");
  return "at" in place
    ? `${name} at {${factOf(i)}} from the outside of the ${from[place.across]} side`
    : `${name} at {${factOf(i)}} from the inside of the ${place.beside}`;
}
