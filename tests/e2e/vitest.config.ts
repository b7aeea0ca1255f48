// Tests that want a browser. `.ci/run` runs them after the others; a machine without Chromium runs `npm test` alone.
import { defineConfig } from "vitest/config";

export default defineConfig({
  test: { include: ["tests/e2e/**/*.test.ts"], fileParallelism: false, testTimeout: 60_000 },
});
