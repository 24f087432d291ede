import { join } from "node:path";
import { type Disk, systemCode } from "./disk.js";

/** The run that wants the lock, and what it can learn of other runs. */
export type Runner = {
  readonly pid: number;
  /** The machine's name, made safe for a file name. */
  readonly host: string;
  /** New at each call; tells two locks of one process apart. */
  token(): string;
  /** Whether a process of this machine is running. */
  isRunning(pid: number): boolean;
  /** Milliseconds since 1970: now, and when this machine was started. */
  now(): number;
  readonly startedAt: number;
  pause(ms: number): Promise<void>;
};

type Flag = { readonly name: string; readonly pid: number; readonly host: string };

/** A run on another machine cannot be asked whether it lives; none writes for as long as this. ms */
const longestElsewhere = 10 * 60_000;
const pollEvery = 100;

/** Flags of this process that are really its own: a number may come back after a restart or in a container. */
const own = new Set<string>();

/**
 * Waits until no other run writes in a folder, and returns what gives the folder free again. `waiting` is called once,
 * with the process waited for, if there is one.
 *
 * Each run raises a flag, a file whose name says who it is, and only then looks for others: of two that raise theirs at
 * once, each sees the other's, both lower them and try again after pauses of different length. A flag whose owner is
 * gone counts as none, so no run has to take over anything.
 */
export async function takeLock(
  disk: Disk,
  runner: Runner,
  folder: string,
  waiting: (who: { readonly pid: number; readonly host: string; readonly file: string }) => void,
): Promise<() => Promise<void>> {
  let told = false;
  for (let attempt = 0; ; attempt++) {
    let other = await liveFlag(disk, runner, folder);
    if (other === undefined) {
      const name = `lock.${runner.pid}.${runner.host}.${runner.token()}`;
      own.add(name);
      if (!(await raise(disk, folder, name))) continue;
      const lower = async () => {
        await disk.remove(join(folder, name));
        own.delete(name);
      };
      other = await liveFlag(disk, runner, folder, name);
      if (other === undefined) {
        await removeDeadFlags(disk, runner, folder);
        return lower;
      }
      await lower();
    } else if (!told) {
      waiting({ pid: other.pid, host: other.host, file: join(folder, other.name) });
      told = true;
    }
    await runner.pause(pollEvery + ((runner.pid * 7 + attempt * 31) % pollEvery));
  }
}

/** False where another run, leaving, took the empty folder away in between. */
async function raise(disk: Disk, folder: string, name: string): Promise<boolean> {
  await disk.makeFolder(folder);
  try {
    await disk.create(join(folder, name));
    return true;
  } catch (error) {
    if (systemCode(error) !== "ENOENT") throw error;
    return false;
  }
}

async function liveFlag(disk: Disk, runner: Runner, folder: string, except?: string): Promise<Flag | undefined> {
  for (const flag of await flags(disk, folder)) {
    if (flag.name !== except && (await isLive(disk, runner, folder, flag))) return flag;
  }
  return undefined;
}

async function isLive(disk: Disk, runner: Runner, folder: string, flag: Flag): Promise<boolean> {
  const raisedAt = await disk.writtenAt(join(folder, flag.name));
  if (raisedAt === undefined) return false;
  if (flag.host !== runner.host) return runner.now() - raisedAt < longestElsewhere;
  if (raisedAt < runner.startedAt) return false;
  return flag.pid === runner.pid ? own.has(flag.name) : runner.isRunning(flag.pid);
}

async function removeDeadFlags(disk: Disk, runner: Runner, folder: string): Promise<void> {
  for (const flag of await flags(disk, folder)) {
    if (!(await isLive(disk, runner, folder, flag))) await disk.remove(join(folder, flag.name));
  }
}

async function flags(disk: Disk, folder: string): Promise<readonly Flag[]> {
  return (await disk.list(folder)).flatMap((name) => {
    const [, pid, host] = /^lock\.(\d+)\.([^.]+)\.[^.]+$/.exec(name) ?? [];
    return pid === undefined || host === undefined ? [] : [{ name, pid: Number(pid), host }];
  });
}
