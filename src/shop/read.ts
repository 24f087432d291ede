import { basename } from "node:path";
import type { Located } from "../input/finding.js";
import { atTop, readTextFile } from "../input/textFile.js";
import type { Shop } from "../model/shop.js";
import { parseShop } from "./parse.js";

/** Reads a shop file from the disk. As with a job, only `locate` knows by which path it was asked for. */
export async function readShopFile(path: string): Promise<Located<Shop>> {
  const { value: source, findings } = await readTextFile(path);
  if (source === undefined) return { value: undefined, findings, locate: atTop };
  const read = parseShop(source, basename(path));
  return { ...read, locate: (at) => ({ ...read.locate(at), file: path }) };
}
