import { spawn } from "node:child_process";
import { createInterface } from "node:readline";
import { fileURLToPath } from "node:url";

export type Copy = {
  readonly seed: number;
  readonly ms: number;
  readonly outcome: string;
  /** It passed the schema: nothing was found while it was read. */
  readonly valid?: boolean;
  readonly codes?: readonly string[];
  readonly stack?: string;
};

const runner = fileURLToPath(new URL("runner.mjs", import.meta.url));
const root = fileURLToPath(new URL("../..", import.meta.url));
/** A copy that takes longer counts as a hang. ms */
const longest = 20_000;

/** Runs damaged copies of a job in a process of their own, which is ended where one copy hangs or dies. */
export async function runDamaged(job: string, first: number, count: number, write: boolean): Promise<readonly Copy[]> {
  const copies: Copy[] = [];
  let next = first;
  while (next < first + count) {
    const { done, broke } = await runUntilBroken(job, next, first + count - next, write);
    copies.push(...done);
    if (broke !== undefined) copies.push(broke);
    next += done.length + (broke === undefined ? 0 : 1);
  }
  return copies;
}

async function runUntilBroken(job: string, first: number, count: number, write: boolean) {
  const args = [runner, job, String(first), String(count), ...(write ? ["write"] : [])];
  const child = spawn(process.execPath, args, { cwd: root, stdio: ["ignore", "pipe", "pipe"] });
  const done: Copy[] = [];
  let complaint = "";
  let hung = false;
  child.stderr.on("data", (chunk) => {
    complaint += String(chunk);
  });
  let guard = setTimeout(() => {}, 0);
  for await (const line of createInterface({ input: child.stdout })) {
    clearTimeout(guard);
    const told: Copy & { readonly begins?: boolean } = JSON.parse(line);
    if (!told.begins) done.push(told);
    guard = setTimeout(() => {
      hung = true;
      child.kill("SIGKILL");
    }, longest);
  }
  clearTimeout(guard);
  const whole = done.length === count;
  const outcome = hung ? "hung" : "died";
  return { done, broke: whole ? undefined : { seed: first + done.length, ms: longest, outcome, stack: complaint } };
}

/** The histogram of outcomes and the slowest copies, for a person. */
export function tableOf(copies: readonly Copy[]): string {
  const outcomes = countBy(copies.map((copy) => copy.outcome));
  const codes = countBy(copies.flatMap((copy) => [...new Set(copy.codes)]));
  const slowest = [...copies].sort((a, b) => b.ms - a.ms).slice(0, 5);
  const valid = copies.filter((copy) => copy.valid).length;
  return [
    `${copies.length} damaged copies, ${valid} of them passed the schema`,
    ...outcomes.map(([outcome, n]) => `${String(n).padStart(6)}  ${outcome}`),
    "errors, by the number of copies that had them",
    ...codes.map(([code, n]) => `${String(n).padStart(6)}  ${code}`),
    "slowest",
    ...slowest.map((copy) => `${copy.ms.toFixed(0).padStart(6)} ms  seed ${copy.seed}, ${copy.outcome}`),
  ].join("\n");
}

function countBy(words: readonly string[]): readonly (readonly [string, number])[] {
  const counts = new Map<string, number>();
  for (const word of words) counts.set(word, (counts.get(word) ?? 0) + 1);
  return [...counts].sort((a, b) => b[1] - a[1]);
}
