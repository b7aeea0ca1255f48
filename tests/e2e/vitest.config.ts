// Tests that want a browser. `.ci/run` runs them after the others; a machine without Chromium runs `npm test` alone.
import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["tests/e2e/**/*.test.ts"],
    // Installs the workbenches where they are not yet, and packs the extension.
    globalSetup: "tests/e2e/setup.ts",
    fileParallelism: false,
    testTimeout: 60_000,
    // A real workbench on a busy machine: what fails three times fails.
    retry: 2,
  },
});
