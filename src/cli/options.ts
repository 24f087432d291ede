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
    .option("--iterations <number>", "how many layouts the nest tries", wholeNumber(1));
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
