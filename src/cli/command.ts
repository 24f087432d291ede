import type { Command } from "commander";
import type { Exit } from "./exit.js";
import type { Terminal } from "./terminal.js";

/** Runs the work of a command, keeps its exit code, and turns what it throws into one honest line. */
export type Run = (work: (terminal: Terminal) => Exit | Promise<Exit>) => Promise<void>;

/**
 * Adds one command to the program. Its module loads nothing heavy: what the work needs is imported when it is done,
 * so that `--help` and the light commands answer at once.
 */
export type AddCommand = (program: Command, run: Run) => void;
