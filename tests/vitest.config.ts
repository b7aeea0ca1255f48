// The one test configuration; `npm test` and the guards use it.
import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

// unitmath's own entry uses a loader that newer versions of Node do not bear; Vite takes the module behind it.
const unitmath = fileURLToPath(import.meta.resolve("unitmath/src/Unit.js"));

export default defineConfig({
  resolve: { alias: { unitmath } },
  test: {
    include: ["tests/**/*.test.ts"],
    exclude: ["tests/e2e/**", "**/node_modules/**"],
    setupFiles: ["tests/harness/seed.ts"],
    pool: "threads",
    // The core is pure, so files can share one set of modules; making the parser anew for each would cost more than the tests.
    isolate: false,
    maxWorkers: 2,
    server: { deps: { inline: [/unitmath/] } },
    testTimeout: 30_000,
  },
});
