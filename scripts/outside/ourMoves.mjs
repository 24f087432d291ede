// What the machine should do, as this project means it, before any of it is written as text: for readers of the text
// that are not ours.   node scripts/outside/ourMoves.mjs JOB   prints JSON, mm, after a build.
import { buildFile } from "../../dist/cli/buildFile.js";
import { outputNames } from "../../dist/export/outputNames.js";

const { build } = await buildFile(process.argv[2], {});
const { setups } = outputNames(build);
const { zero } = build.shop.cnc;
process.stdout.write(
  JSON.stringify(
    build.program.setups.map((setup, i) => ({
      file: `${setups[i]}.ngc`,
      top: zero === "bed" ? setup.thickness : 0,
      runs: setup.runs.map(({ number, d, operations }) => ({
        number,
        d,
        operations: operations.map(({ kind, part, floor, moves }) => ({ kind, part, floor, moves })),
      })),
      parts: setup.parts.map(({ part, blank }) => ({ part, outer: blank.outer })),
    })),
  ),
);
