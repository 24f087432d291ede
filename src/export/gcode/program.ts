import { formatNumber } from "../../input/number.js";
import type { Run, Setup } from "../../model/program.js";
import type { Cnc, Controller } from "../../model/shop.js";
import { message } from "./comment.js";
import { Motion } from "./motion.js";

/** From the spindle's start to the first plunge, s. Common practice, no source. */
const spinUp = 5;

/**
 * A program in the words of RS-274/NGC: a start block that leaves nothing to what ran before, the runs one after the
 * other with one change of tool before each, and a full end. `head`: its comments. What differs from one controller to
 * the next is read from `cnc.controller`; nothing here asks whose it is.
 *
 * Source: NISTIR 6556, "The NIST RS274/NGC Interpreter, Version 3", tables of G and M codes.
 */
export function programText(setup: Setup, runs: readonly Run[], cnc: Cnc, head: readonly string[]): string {
  const { controller } = cnc;
  const motion = new Motion(controller, cnc.zero === "bed" ? setup.thickness : 0);
  const { lines } = motion;
  lines.push(...head);
  lines.push(`${controller.units === "mm" ? "G21" : "G20"} G17 G40 G49 G80 G90 G94 G54`);
  motion.lift(setup.safe);
  runs.forEach((run, i) => {
    lines.push(...(i === 0 ? firstTool(run, controller) : nextTool(run, controller)));
    motion.forget();
    motion.lift(setup.safe);
    lines.push(
      `S${formatNumber(run.rpm, 0)} M3`,
      ...(controller.extraction ? [controller.extraction] : []),
      dwell(spinUp, controller),
    );
    for (const { moves } of run.operations) motion.follow(moves);
    lines.push("M5");
  });
  motion.lift(setup.safe);
  lines.push("M9", controller.end);
  return `${lines.join("\n")}\n`;
}

/** A tool is named even where a person puts it in: a controller may know its length by it. */
function firstTool({ number, tool }: Run, { tools }: Controller): readonly string[] {
  return tools === "change" ? [`T${number} M6`] : [`T${number}`, message(`starts with tool ${number}: ${tool}`)];
}

function nextTool({ number, tool }: Run, { tools }: Controller): readonly string[] {
  if (tools === "change") return ["M9", `T${number} M6`];
  return ["M9", `T${number}`, message(`put in tool ${number}: ${tool}, set z zero anew, then go on`), "M0"];
}

function dwell(seconds: number, { dwell: unit }: Controller): string {
  return `G4 P${unit === "seconds" ? formatNumber(seconds, 1, { keepZeros: true }) : formatNumber(seconds * 1000, 0)}`;
}
