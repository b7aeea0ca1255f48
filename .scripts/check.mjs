// `npm run check`: all checks that read the source without running it. Every one runs, also after one has failed.
import { join } from "node:path";
import { attempt, root } from "./install.mjs";

const tool = (...path) => join(root, "node_modules", ...path);
const failed = [
  ["Format and lint (biome)", tool("@biomejs", "biome", "bin", "biome"), ["check", "."]],
  ["Types (tsc)", tool("typescript", "bin", "tsc"), ["-p", ".", "--noEmit"]],
  ["Dead code (knip)", tool("knip", "bin", "knip.js"), []],
  ["Generated files", join(root, ".scripts", "generated.mjs"), []],
].filter(([title, script, args]) => attempt(title, process.execPath, [script, ...args]) !== 0);

const summary = failed.length === 0 ? "all passed" : `to mend: ${failed.map(([title]) => title).join(", ")}`;
process.stdout.write(`\nChecks: ${summary}\n`);
process.exitCode = failed.length === 0 ? 0 : 1;
