import { defineConfig } from "vitest/config";

export default defineConfig({
  // a worker a core: left alone, a machine of two cores runs one
  test: { include: ["tests/**/*.test.ts"], exclude: ["tests/soak/**"], testTimeout: 60_000, maxWorkers: "100%" },
});
