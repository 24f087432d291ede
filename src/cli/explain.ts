import type { FindingDef } from "../input/finding.js";
import { nearest } from "../input/nearest.js";
import { jobJsonSchema } from "../job/jsonSchema.js";
import { kinds } from "../pieces/kinds.js";
import { type Exit, exit } from "./exit.js";
import { findingDefs } from "./findingDefs.js";
import { type JobKey, keysOf } from "./jobKeys.js";
import type { Terminal } from "./terminal.js";

/** Explains the code of a finding or a key of the job file; without either, lists what there is to ask for. */
export function explain(what: string | undefined, terminal: Terminal): Exit {
  const keys = keysOf(jobJsonSchema(kinds));
  if (what === undefined) return listAll(keys, terminal);
  const def = findingDefs.get(what);
  const places = keys.filter((key) => key.name === what || key.path === what);
  if (def !== undefined) terminal.out(explainFinding(def));
  if (places.length > 0) terminal.out(places.map(explainKey).join("\n\n"));
  if (def !== undefined || places.length > 0) return exit.done;

  const meant = nearest(what, [...findingDefs.keys(), ...keys.map((key) => key.name)]);
  terminal.err(`error  nothing is called ${what}${meant === undefined ? "" : `: did you mean ${meant}?`}`);
  terminal.err("  next   bafflewright explain, without a word behind it, lists all codes and keys");
  return exit.unusable;
}

function listAll(keys: readonly JobKey[], terminal: Terminal): Exit {
  const names = [...new Set(keys.map((key) => key.name))].sort();
  terminal.out(["Findings:", ...[...findingDefs.keys()].sort().map((code) => `  ${code}`)].join("\n"));
  terminal.out(["\nKeys of the job file:", ...names.map((name) => `  ${name}`)].join("\n"));
  return exit.done;
}

function explainFinding(def: FindingDef): string {
  return [
    `${def.code} (${def.severity})`,
    `  found  ${withBlanks(def.words)}`,
    `  next   ${withBlanks(def.next)}`,
    "",
    def.explain,
  ].join("\n");
}

function explainKey({ path, takes, description }: JobKey): string {
  return [path, ...(description === undefined ? [] : [`  ${description}`]), `  takes  ${takes}`].join("\n");
}

/** A sentence whose facts are still to come: "no board called <found>". */
function withBlanks(words: string): string {
  return words.replace(/[[\]]/g, "").replace(/\{([^}]*)\}/g, "<$1>");
}
