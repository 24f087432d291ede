// Builds dist/: the compiled library and command, and beside them the solid kernel.
// manifold-3d is a development dependency because its package drags bundlers and image tools into an install;
// only its two run-time files and its licence are taken into dist/vendor.

import { spawnSync } from "node:child_process";
import { chmodSync, cpSync, mkdirSync, mkdtempSync, readdirSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const require = createRequire(import.meta.url);
const tsc = join(dirname(require.resolve("typescript/package.json")), "bin", "tsc");

// Compiled elsewhere and then put in place, so that whoever runs the old files meanwhile still can.
// The kernel's folder stays: it changes with its package only.
const dist = join(root, "dist");
const fresh = mkdtempSync(join(tmpdir(), "bafflewright-build-"));
const compiled = spawnSync(process.execPath, [tsc, "-p", join(root, "tsconfig.build.json"), "--outDir", fresh], {
  stdio: "inherit",
});
mkdirSync(dist, { recursive: true });
for (const name of readdirSync(dist)) if (name !== "vendor") rmSync(join(dist, name), { recursive: true, force: true });
cpSync(fresh, dist, { recursive: true });
rmSync(fresh, { recursive: true });

const vendor = join(root, "dist", "vendor", "manifold");
mkdirSync(vendor, { recursive: true });
for (const file of ["manifold.js", "manifold.wasm", "LICENSE"]) {
  cpSync(join(root, "node_modules", "manifold-3d", file), join(vendor, file));
}
if (compiled.status !== 0) process.exit(compiled.status ?? 1);
chmodSync(join(root, "dist", "cli", "main.js"), 0o755);
