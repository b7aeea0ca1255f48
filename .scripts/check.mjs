// `npm run check`: all checks that read the source without running it. Every one runs, also where another has failed; side by
// side, for the types take as long as all others.
import { spawn } from "node:child_process";
import { join } from "node:path";
import { root } from "./install.mjs";

const tool = (...path) => join(root, "node_modules", ...path);
const results = await Promise.all(
  [
    ["Format and lint (biome)", tool("@biomejs", "biome", "bin", "biome"), ["check", "."]],
    ["Types (tsc)", tool("typescript", "bin", "tsc"), ["-p", ".", "--noEmit"]],
    [
      "Types of the page (tsc)",
      tool("typescript", "bin", "tsc"),
      ["-p", join("language", "outputs", "checklist", "page")],
    ],
    ["Types of the preview's page (tsc)", tool("typescript", "bin", "tsc"), ["-p", "extension/webview", "--noEmit"]],
    ["Dead code (knip)", tool("knip", "bin", "knip.js"), []],
    ["Generated files", join(root, ".scripts", "generated.mjs"), []],
  ].map(([title, script, args]) => done(title, script, args)),
);
for (const { title, said } of results) process.stdout.write(`\n> ${title}\n${said}`);

const failed = results.filter(({ status }) => status !== 0);
const summary = failed.length === 0 ? "all passed" : `to mend: ${failed.map(({ title }) => title).join(", ")}`;
process.stdout.write(`\nChecks: ${summary}\n`);
process.exitCode = failed.length === 0 ? 0 : 1;

/** All that it says, and how it ends; a status that is null is one that was killed. */
function done(title, script, args) {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [script, ...args], { cwd: root, stdio: ["ignore", "pipe", "pipe"] });
    let said = "";
    for (const stream of [child.stdout, child.stderr])
      stream.setEncoding("utf8").on("data", (text) => {
        said += text;
      });
    child.on("error", reject);
    child.on("close", (status) => resolve({ title, said, status }));
  });
}
