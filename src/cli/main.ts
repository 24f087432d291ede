#!/usr/bin/env node
import { run } from "./run.js";
import { thisTerminal } from "./terminal.js";

process.exitCode = await run(process.argv.slice(2), thisTerminal());
