// The one test configuration; `npm test` and the guards use it.
import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";
import { browserBuilds } from "../.scripts/browser-builds.mjs";

// unitmath's own entry uses a loader that newer versions of Node do not bear; Vite takes the module behind it.
const unitmath = fileURLToPath(import.meta.resolve("unitmath/src/Unit.js"));

/** `.ci/run`: what takes long, beside what every run does. */
const isThorough = process.env.SPRAG_THOROUGH === "1";
/** Tries a share in each run, and far more in a thorough one (`harness/thorough.ts`). */
const IN_BOTH = [
  "tests/analysis/differential.test.ts",
  "tests/samples/recovery.test.ts",
  "tests/review/mutations/*.test.ts",
  "tests/server/quick-fixes.test.ts",
  "tests/review/match.test.ts",
  "tests/workspace/kept-facts.test.ts",
];

export default defineConfig({
  resolve: { alias: { unitmath, ...browserBuilds } },
  test: {
    include: isThorough ? ["tests/**/*.long.test.ts", ...IN_BOTH] : ["tests/**/*.test.ts"],
    exclude: ["tests/e2e/**", "**/node_modules/**", ...(isThorough ? [] : ["tests/**/*.long.test.ts"])],
    setupFiles: ["tests/harness/seed.ts"],
    pool: "threads",
    // The core is pure, so files can share one set of modules; making the parser anew for each would cost more than the tests.
    isolate: false,
    maxWorkers: 2,
    server: { deps: { inline: [/unitmath/, /pdfkit/] } },
    testTimeout: 30_000,
  },
});
