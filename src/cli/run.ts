import { Command, CommanderError } from "commander";
import type { Run } from "./command.js";
import { commands } from "./commands.js";
import { type Exit, exit } from "./exit.js";
import { ownVersion } from "./package.js";
import type { Terminal } from "./terminal.js";

/** The whole command: reads the arguments, runs what they ask for, and says how it ended. Never throws. */
export async function run(args: readonly string[], terminal: Terminal): Promise<Exit> {
  let ended: Exit = exit.done;
  const runWork: Run = async (work) => {
    ended = await work(terminal);
  };
  const program = programFor(terminal, runWork);
  try {
    if (args.length === 0) program.help();
    await program.parseAsync([...args], { from: "user" });
    return ended;
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? exit.done : exit.unusable;
    return ownMistake(error, terminal);
  }
}

function programFor(terminal: Terminal, runWork: Run): Command {
  const program = new Command("bafflewright")
    .description(
      "Plans panels and trim for a vehicle-audio workshop: from a measured space to parts, sheets and cut files.",
    )
    .version(ownVersion(), "--version", "print the version")
    .helpOption("-h, --help", "print this help")
    .configureOutput({
      writeOut: (words) => terminal.out(words.trimEnd()),
      writeErr: (words) => terminal.err(words.trimEnd()),
    })
    .showHelpAfterError("(add --help to see what it takes)")
    .exitOverride()
    .addHelpText(
      "after",
      "\nExit codes: 0 done, 1 findings of severity error, 2 unusable input or arguments, 70 a fault of the program.",
    );
  // A command takes over the program's settings when it is added.
  for (const add of commands) add(program, runWork);
  return program;
}

/** What a user sees of a fault of ours: never a stack trace, unless they ask for it. */
function ownMistake(error: unknown, terminal: Terminal): Exit {
  const told = error instanceof Error ? `${error.name}: ${error.message}` : String(error);
  terminal.err(`This is a fault in bafflewright ${ownVersion()}, not in your file: ${told.split("\n")[0]}`);
  if (terminal.env["BAFFLEWRIGHT_DEBUG"] === "1" && error instanceof Error) terminal.err(error.stack ?? "");
  else
    terminal.err(
      "Please report it with the job file; BAFFLEWRIGHT_DEBUG=1 in the environment shows where it happened.",
    );
  return exit.ourFault;
}
