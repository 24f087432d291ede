import { formatNumber } from "../../input/number.js";
import type { Build } from "../../model/build.js";
import type { Run, Setup } from "../../model/program.js";
import type { Cnc } from "../../model/shop.js";
import { rowOf } from "../../shop/lookups.js";
import { cautionLines } from "../shapes/headLines.js";
import { comments } from "./comment.js";

/** What a person at the machine must know before the start, as comments; `runs`: those of this file. */
export function header(build: Build, setup: Setup, runs: readonly Run[], cnc: Cnc): readonly string[] {
  const { job, hash, shop } = build;
  const say = sizesIn(cnc.controller.units);
  const tools = runs.map(({ tool, number, d, rpm, feed, plunge }) => {
    const kind = rowOf(shop.bits, tool)?.kind ?? "bit";
    return comments(
      "tool",
      `T${number} = ${tool}: ${kind}, ${say(d)}, ${rpm} rpm, feed ${say(feed)}/min, plunge ${say(plunge)}/min`,
    );
  });
  const restOf = build.layout.sheets.find(({ sheet }) => sheet === setup.sheet)?.restOf;
  return [
    ...comments("job", [job.reference, job.title].filter(Boolean).join(", ")),
    ...comments("build", hash),
    ...comments(
      "setup",
      `${setup.name}: sheet ${setup.sheet}, board ${setup.board}, ${say(setup.length)} x ${say(setup.width)}`,
    ),
    ...(restOf ? comments("board", `the rest of sheet ${restOf.sheet}, as it lay there: saw that first`) : []),
    ...comments(
      "made",
      `for a sheet ${say(setup.thickness)} thick: measure it. If it is thicker do not start: write its measure into the job and make anew`,
    ),
    ...comments("zero", zeroWords(cnc)),
    ...(setup.turnedOver ? comments("turn", "the sheet lies turned over about its long side, on its pins") : []),
    ...setup.pins.flatMap(({ at, d, depth }) =>
      comments("pin", `${say(d)} at ${say(at.x)}, ${say(at.y)}, ${say(depth)} deep`),
    ),
    ...tools.flat(),
    ...comments("time", `about ${Math.max(1, Math.round(setup.seconds / 60))} min for the whole setup`),
    ...cautionLines(build).flatMap((line) => comments("caution", line)),
  ];
}

function zeroWords({ zero }: Cnc): string {
  const z = zero === "bed" ? "of z is the bed, under the sheet" : "of z is the top of the sheet";
  return `${z}, of x and y the lower left corner of the sheet, x along its length`;
}

/** Sizes for reading, in the program's own unit. */
function sizesIn(units: "mm" | "inch"): (mm: number) => string {
  return (mm) => (units === "mm" ? `${formatNumber(mm, 2)} mm` : `${formatNumber(mm / 25.4, 4)} in`);
}
