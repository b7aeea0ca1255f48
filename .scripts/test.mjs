// `npm test`: installs, builds, then every check and every test. Extra words go to the test runner (`npm test -- tests/cli`).
import { join } from "node:path";
import { attempt, prepare } from "./install.mjs";

prepare();
const vitest = join("node_modules", "vitest", "vitest.mjs");
// Both run even if the first fails, so that one run shows everything there is to mend.
const checks = attempt("Format, lint, types, dead code, generated files", process.execPath, [
  join(".scripts", "check.mjs"),
]);
const tests = attempt("Tests", process.execPath, [
  vitest,
  ...["run", "--config", join("tests", "vitest.config.ts"), ...process.argv.slice(2)],
]);
process.exit(checks || tests);
