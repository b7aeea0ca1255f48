// Brings node_modules into line with package-lock.json, and builds. Runs before anything is installed,
// so it knows only Node itself.
import { spawnSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

export const root = dirname(dirname(fileURLToPath(import.meta.url)));
const oldestNode = 20;

/** Installs what is missing, builds the command, and ends the process with a clear line where that cannot be done. */
export function prepare() {
  const node = Number(process.versions.node.split(".")[0]);
  if (node < oldestNode) stop(`Sprag needs Node ${oldestNode} or newer; this is Node ${process.versions.node}.`);
  if (!isInstalled()) install();
  run("Building the command", process.execPath, [join("language", "build.mjs")]);
  // npm leaves out the link for `npx sprag` while the command it points at is not built yet.
  if (!existsSync(join(root, "node_modules", ".bin", "sprag"))) npm("Linking the command", ["rebuild", "sprag"]);
}

/** Runs one command in the root folder with its output shown; ends the process with its status if it fails. */
export function run(title, command, args, environment = {}) {
  const status = attempt(title, command, args, environment);
  if (status !== 0) stop(`${title}: failed (status ${status}). The lines above say why.`, status);
}

/** As `run`, but hands the status back. */
export function attempt(title, command, args, environment = {}) {
  process.stdout.write(`\n> ${title}\n`);
  const result = spawnSync(command, args, { cwd: root, stdio: "inherit", env: { ...process.env, ...environment } });
  if (result.error) stop(`${title}: ${result.error.message}`);
  return result.status ?? 1;
}

/** Every package the lock file asks for is there in its version; what is optional depends on the machine. */
function isInstalled() {
  const installedList = join(root, "node_modules", ".package-lock.json");
  if (!existsSync(installedList)) return false;
  const wanted = JSON.parse(readFileSync(join(root, "package-lock.json"), "utf8")).packages;
  const installed = JSON.parse(readFileSync(installedList, "utf8")).packages;
  return Object.entries(wanted).every(
    ([path, entry]) =>
      !path.includes("node_modules/") || entry.link || entry.optional || installed[path]?.version === entry.version,
  );
}

function install() {
  // Chevrotain asks for Node 22 and runs on 20 as it is used here (see DEVELOPERS.md), so warnings are left out.
  const quiet = ["--loglevel=error"];
  if (npm("Installing (npm ci)", ["ci", ...quiet]) === 0) return;
  process.stdout.write("The lock file does not fit package.json; installing without it.\n");
  if (npm("Installing (npm install)", ["install", ...quiet]) !== 0) {
    stop(
      "The packages could not be installed. Look at the lines above; a network or registry fault is the usual cause.",
    );
  }
}

function npm(title, args) {
  const script = process.env.npm_execpath;
  if (script !== undefined) return attempt(title, process.execPath, [script, ...args]);
  return attempt(title, process.platform === "win32" ? "npm.cmd" : "npm", args);
}

function stop(message, status = 1) {
  process.stderr.write(`\n${message}\n`);
  process.exit(status);
}
