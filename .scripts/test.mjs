// `npm test`: installs, builds, then every check and every test. Extra words go to the test runner (`npm test -- tests/cli`).
import { spawn } from "node:child_process";
import { join } from "node:path";
import { attempt, prepare, root } from "./install.mjs";

prepare();
const vitest = join("node_modules", "vitest", "vitest.mjs");
// Both run even if one fails, so that one run shows everything there is to mend; the checks beside the tests, and told behind them.
const checks = checked();
const tests = attempt("Tests", process.execPath, [
  vitest,
  ...["run", "--config", join("tests", "vitest.config.ts"), ...process.argv.slice(2)],
]);
process.stdout.write("\n> Format, lint, types, dead code, generated files\n");
const { said, status } = await checks;
process.stdout.write(said);
process.exitCode = status || tests;

/** All that the checks say, and how they end. */
function checked() {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [join(".scripts", "check.mjs")], {
      cwd: root,
      stdio: ["ignore", "pipe", "inherit"],
    });
    const said = [];
    child.stdout.on("data", (bytes) => said.push(bytes));
    child.on("error", reject);
    child.on("close", (status) => resolve({ said: Buffer.concat(said), status: status ?? 1 }));
  });
}
