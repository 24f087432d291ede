// Holds the one-way imports: cruises src/, then plants a violation and makes sure that it is seen.
// A cruise that reads no modules passes every rule, so the count is part of the check.
import { cpSync, mkdtempSync, readdirSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { cruise } from "dependency-cruiser";
import extractTSConfig from "dependency-cruiser/config-utl/extract-ts-config";
import configuration from "../.dependency-cruiser.mjs";

const root = dirname(dirname(fileURLToPath(import.meta.url)));

async function look(folder) {
  process.chdir(folder);
  const { forbidden, options } = configuration;
  const { output } = await cruise(["src"], { ...options, ruleSet: { forbidden }, validate: true }, undefined, {
    tsConfig: extractTSConfig(join(folder, "tsconfig.json")),
  });
  return {
    modules: output.modules.filter((module) => module.source.startsWith("src/")).length,
    violations: output.summary.violations.map((v) => `${v.rule.name}: ${v.from} -> ${v.to}`),
  };
}

function countSources(folder) {
  return readdirSync(folder, { recursive: true }).filter((name) => /(?<!\.d)\.ts$/.test(String(name))).length;
}

const real = await look(root);
const planted = mkdtempSync(join(tmpdir(), "bafflewright-imports-"));
let caught;
try {
  for (const name of ["src", "tsconfig.json", "package.json"])
    cpSync(join(root, name), join(planted, name), { recursive: true });
  symlinkSync(join(root, "node_modules"), join(planted, "node_modules"), "junction");
  writeFileSync(join(planted, "src", "geometry", "planted.ts"), 'import "../cli/main.js";\n');
  caught = await look(planted);
} finally {
  process.chdir(root);
  rmSync(planted, { recursive: true, force: true });
}

const expected = countSources(join(root, "src"));
const sawPlant = caught.violations.some((line) => line.includes("src/geometry/planted.ts"));
for (const line of real.violations) console.error(`wrong way  ${line}`);
if (real.modules < expected) console.error(`only ${real.modules} of ${expected} modules were read`);
if (!sawPlant) console.error("the planted violation was not seen");
const good = real.violations.length === 0 && real.modules >= expected && sawPlant;
console.log(
  `imports: ${real.modules} modules read, ${real.violations.length} violations, planted violation ${sawPlant ? "seen" : "missed"}`,
);
process.exit(good ? 0 : 1);
