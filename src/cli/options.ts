import { type Command, InvalidArgumentError } from "commander";

/** The argument and options of every command that reads a job file. */
export function takesJob(command: Command): Command {
  return command
    .argument("<job>", "the job file")
    .option("--shop <file>", "the shop file, instead of the one that the job names")
    .option("--json", "findings and result as JSON on the output");
}

/** The options of commands that nest. */
export function takesNest(command: Command): Command {
  return command
    .option("--seed <number>", "start of the nest's search; the same number gives the same layout", wholeNumber(0))
    .option(
      "--iterations <number>",
      "how long the nest searches, counted; several with commas, one for each board and way of cutting",
      wholeNumbers(1),
    )
    .option("--anew", "search again, though a layout was accepted");
}

function wholeNumbers(least: number): (written: string) => readonly number[] {
  const one = wholeNumber(least);
  return (written) => written.split(",").map((each) => one(each.trim()));
}

/** "60s", "2 min": seconds. */
export function duration(written: string): number {
  const [, value, unit] = /^(\d{1,5}(?:\.\d+)?)\s*(s|min)$/.exec(written) ?? [];
  const seconds = Number(value) * (unit === "min" ? 60 : 1);
  if (!(seconds >= 1 && seconds <= 24 * 3600))
    throw new InvalidArgumentError("Write seconds or minutes from 1 s to 1440 min, such as 60s or 2min.");
  return seconds;
}

function wholeNumber(least: number): (written: string) => number {
  return (written) => {
    const value = Number(written);
    if (!/^\d{1,9}$/.test(written) || value < least) {
      throw new InvalidArgumentError(`Write a whole number from ${least} on, such as ${least + 1}.`);
    }
    return value;
  };
}
