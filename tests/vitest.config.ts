// The one test configuration; `npm test` and the guards use it.
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";
import { browserBuilds } from "../.scripts/browser-builds.mjs";

// unitmath's own entry uses a loader that newer versions of Node do not bear; Vite takes the module behind it.
const unitmath = fileURLToPath(import.meta.resolve("unitmath/src/Unit.js"));

/** `.ci/run`: what takes long, beside what every run does. */
const isThorough = process.env.SPRAG_THOROUGH === "1";
/** Those that try a share in each run, and far more in a thorough one (`harness/thorough.ts`). */
const here = fileURLToPath(new URL(".", import.meta.url));
const isShare = (path: string): boolean =>
  /harness\/(?:thorough|everywhere)\.ts"/.test(readFileSync(join(here, path), "utf8"));
const IN_BOTH = readdirSync(here, { recursive: true, encoding: "utf8" })
  .filter((path) => path.endsWith(".test.ts") && isShare(path))
  .map((path) => `tests/${path}`);

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
