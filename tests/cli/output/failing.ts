import type { Disk } from "../../../src/cli/output/disk.js";
import type { Runner } from "../../../src/cli/output/lock.js";

const changing = ["write", "create", "move", "remove", "makeFolder", "removeEmptyFolder", "flush"] as const;

/** Thrown where a test kills a run: from then on the run's disk does nothing more. */
export class Killed extends Error {}

/**
 * A disk that stops for good at its `at`-th change, as a killed process does; a write it dies in leaves half the bytes.
 * `steps()` counts the changes made.
 */
export function killedAt(disk: Disk, at: number): { readonly disk: Disk; steps(): number } {
  let steps = 0;
  const killed = { ...disk };
  for (const name of Object.keys(disk) as (keyof Disk)[]) {
    const real = disk[name] as (...values: unknown[]) => Promise<unknown>;
    const counts = (changing as readonly string[]).includes(name);
    const step = async (...values: unknown[]) => {
      if (steps >= at) throw new Killed();
      if (counts) steps++;
      if (counts && steps >= at) {
        if (name === "write") await disk.write(String(values[0]), half(values[1] as Uint8Array));
        throw new Killed();
      }
      return real(...values);
    };
    Object.assign(killed, { [name]: step });
  }
  return { disk: killed, steps: () => steps };
}

/** A disk whose `at`-th write or move fails once with the system's code, and which works before and after. */
export function failsAt(disk: Disk, at: number, code: string): Disk {
  let left = at;
  const fail = () => {
    if (--left === 0) throw Object.assign(new Error(code), { code });
  };
  return {
    ...disk,
    write: async (path, bytes) => {
      fail();
      await disk.write(path, bytes);
    },
    move: async (from, to) => {
      fail();
      await disk.move(from, to);
    },
  };
}

/** A runner that does not wait for real; `alive` lists the processes that run. */
export function runner(pid: number, alive: readonly number[] = []): Runner {
  let tokens = 0;
  return {
    pid,
    host: "bench",
    token: () => `t${tokens++}${pid}`,
    isRunning: (other) => alive.includes(other),
    now: Date.now,
    startedAt: 0,
    pause: () => new Promise((resolve) => setTimeout(resolve, 2)),
  };
}

function half(bytes: Uint8Array): Uint8Array {
  return bytes.slice(0, Math.floor(bytes.length / 2));
}
