// The tests against which the mutation test of `language/analysis` runs: those of the analysis, without the long random runs.
import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["tests/analysis/**/*.test.ts"],
    exclude: ["tests/analysis/differential.test.ts", "tests/analysis/metamorphic.test.ts", "**/node_modules/**"],
    setupFiles: ["tests/harness/seed.ts"],
    pool: "threads",
    isolate: false,
    maxWorkers: 1,
    testTimeout: 30_000,
  },
});
