// Makes the README's pictures from the starter, so that they show what the tool draws today. Needs a build.
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { pagesOf } from "../dist/export/pages.js";
import { svgOfPage } from "../dist/export/svg/svgOfPage.js";
import { buildJob, kinds, parseJob, starterShop, usualOptions } from "../dist/index.js";

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const file = join(root, "templates", "estate-cargo.yaml");
const job = parseJob(readFileSync(file, "utf8"), "estate-cargo.yaml", kinds);
const { value: build } = await buildJob(job.value, starterShop(), kinds, usualOptions);
const pages = pagesOf(build);

/** The first page with this among its texts. */
const pageSaying = (words) =>
  pages.find((page) => page.items.some((item) => item.kind === "text" && words.test(item.text)));

const folder = join(root, "docs", "pictures");
mkdirSync(folder, { recursive: true });
const wanted = { plate: /^\d+ plate$/, ring: /^\d+ ring$/, sheet: /^Sheet \w+ \d+$/ };
for (const [name, words] of Object.entries(wanted)) {
  writeFileSync(join(folder, `${name}.svg`), await svgOfPage(pageSaying(words)));
  console.log(`docs/pictures/${name}.svg`);
}
