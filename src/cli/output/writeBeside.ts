import { basename, dirname, join } from "node:path";
import type { Finding } from "../../input/finding.js";
import type { Disk } from "./disk.js";
import { diskFinding } from "./folder.js";

/** Writes one file whole or not at all: a new one beside it takes its place. What keeps it from that is a finding. */
export async function writeBeside(disk: Disk, path: string, words: string): Promise<readonly Finding[]> {
  const fresh = join(dirname(path), `.${basename(path)}.new`);
  try {
    await disk.write(fresh, new TextEncoder().encode(words));
    await disk.move(fresh, path);
    return [];
  } catch (error) {
    await disk.remove(fresh).catch(() => {});
    return [diskFinding(error, path)];
  }
}
