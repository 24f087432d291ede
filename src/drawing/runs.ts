/** Names of which some count up: "7 to 12", "pilot.1 to 8", "5, 6". */
export function inRuns(names: readonly string[]): string {
  const runs: string[][] = [];
  for (const name of names) {
    const run = runs.at(-1);
    if (run !== undefined && nameAfter(run.at(-1)!) === name) run.push(name);
    else runs.push([name]);
  }
  return runs.map((run) => (run.length > 2 ? `${run[0]} to ${numberOf(run.at(-1)!)}` : run.join(", "))).join(", ");
}

/** "pilot.3" after "pilot.2"; none after a name without a number. */
function nameAfter(name: string): string | undefined {
  const number = numberOf(name);
  return number === undefined ? undefined : `${name.slice(0, -number.length)}${Number(number) + 1}`;
}

function numberOf(name: string): string | undefined {
  return /\d+$/.exec(name)?.[0];
}
