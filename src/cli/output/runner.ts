import { randomUUID } from "node:crypto";
import { hostname, uptime } from "node:os";
import { setTimeout as pause } from "node:timers/promises";
import { systemCode } from "./disk.js";
import type { Runner } from "./lock.js";

/** This process, as other runs in the same output folder see it. */
export function thisRunner(): Runner {
  return {
    pid: process.pid,
    host: hostname().replace(/[^A-Za-z0-9-]/g, "-") || "here",
    token: () => randomUUID().slice(0, 8),
    isRunning,
    now: Date.now,
    startedAt: Date.now() - uptime() * 1000,
    pause: (ms) => pause(ms),
  };
}

/** Signal 0 asks and sends nothing. A process that may not be signalled is running. */
function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return systemCode(error) === "EPERM";
  }
}
