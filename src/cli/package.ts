import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

// From dist/cli as from src/cli, the package's own folder is two up.
const root = new URL("../../", import.meta.url);

/** Where the starter files lie that came with the package. */
export const templatesFolder = fileURLToPath(new URL("templates/", root));

export function ownVersion(): string {
  const { version }: { version: string } = JSON.parse(readFileSync(new URL("package.json", root), "utf8"));
  return version;
}
