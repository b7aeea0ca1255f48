// What is shipped: bundles that need nothing but the editor, three of them nothing of Node; none that reaches for a network.
import { fork, spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { builtinModules } from "node:module";
import { tmpdir } from "node:os";
import { join, posix } from "node:path";
import { pathToFileURL } from "node:url";
import { createContext, runInContext } from "node:vm";
import { afterAll, beforeAll, expect, onTestFinished, test } from "vitest";
import { createMessageConnection, IPCMessageReader, IPCMessageWriter } from "vscode-languageserver-protocol/node";
import type { ExportAnswer, ExportParams } from "#server/protocol.ts";

const root = join(import.meta.dirname, "..", "..");
const ALL = ["extension.js", "server.mjs", "extension-web.js", "server-worker.js", "preview-page.js"] as const;

let folder = "";
const file = (name: string): string => readFileSync(join(folder, name), "utf8");
/** A bundle; the server with all that it ever loads. */
const bundle = (name: (typeof ALL)[number]): string =>
  name === "server.mjs" ? [file(name), ...parts().map(file)].join("\n") : file(name);
const parts = (): string[] => readdirSync(join(folder, "parts")).map((name) => `parts/${name}`);

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "sprag-bundles-"));
  const build = join(root, "extension", "build.mjs");
  const { status, stderr } = spawnSync(process.execPath, [build, folder], { encoding: "utf8" });
  if (status !== 0) throw new Error(stderr);
}, 120_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test.each([
  ["extension-web.js", ["vscode"]],
  ["server-worker.js", []],
  ["preview-page.js", []],
] as const)("%s needs nothing of Node", (name, needs) => {
  expect(required(bundle(name))).toEqual(needs);
});

test.each([
  ["extension.js", ["vscode"]],
  ["server.mjs", []],
] as const)("%s needs nothing but Node and the editor", (name, others) => {
  const needs = required(bundle(name)).filter((one) => !builtinModules.includes(one.replace(/^node:/, "")));
  expect(needs).toEqual(others);
});

test.each(ALL)("%s reaches for no network and sends nothing about its reader", (name) => {
  const text = bundle(name);
  const web = required(text).filter((one) => /^(?:node:)?(?:https?|http2|tls|dns|dgram)$/.test(one));
  expect(web).toEqual([]);
  expect(text.match(REACHING) ?? []).toEqual([]);
});

test("says so: a bundle that does", () => {
  expect('fetch("https://x");navigator.sendBeacon(u)'.match(REACHING)).toHaveLength(2);
  expect(required('a=require("https"),b=require("node:fs")')).toEqual(["https", "node:fs"]);
  expect(required('import{a}from"node:https";import"tls";b("./parts/c.mjs")')).toEqual(["node:https", "tls"]);
});

test("the licences of others go along: of each package with code in a bundle, and of the typefaces", () => {
  const licences = file("licences.txt");
  const chapters = licences.match(/^(?:@[\w-]+\/)?[\w.-]+ \d+\.\d+\.\d+$/gm) ?? [];
  const named = chapters.map((chapter) => chapter.replace(/ .*/, ""));
  // Told by a word of each in the code itself, or by its file.
  for (const name of ["chevrotain", "langium", "pdfkit", "docx", "vscode-languageserver", "dejavu-fonts-ttf"])
    expect(named).toContain(name);
  expect(licences).not.toContain("not said");
  expect(licences.match(/Permission is hereby granted/g)?.length).toBeGreaterThan(10);
});

test("they stay small", () => {
  const sizes = ALL.map((name) => ({ name, kilobytes: Math.round(bundle(name).length / 1024) }));
  console.log(`bundles: ${sizes.map(({ name, kilobytes }) => `${name} ${kilobytes} KB`).join(", ")}`);
  // The servers hold the writers of PDF and DOCX; they wake up when one is asked for.
  for (const { name, kilobytes } of sizes)
    expect(kilobytes, name).toBeLessThan(name.startsWith("server") ? 5000 : 1000);
});

test("the server starts without what makes documents, and loads it when one is wanted", async () => {
  const atStart = loadedBy("server.mjs");
  const kilobytes = Math.round([...atStart].map(file).join("").length / 1024);
  console.log(`at the start: ${kilobytes} KB in ${atStart.size} files of ${parts().length + 1}`);
  expect(kilobytes).toBeLessThan(2000);
  const server = fork(join(folder, "server.mjs"), ["--node-ipc"], { silent: true });
  onTestFinished(() => void server.kill("SIGKILL"));
  const connection = createMessageConnection(new IPCMessageReader(server), new IPCMessageWriter(server));
  connection.listen();
  const assets = pathToFileURL(join(folder, "assets")).href;
  await connection.sendRequest("initialize", {
    ...{ processId: process.pid, rootUri: null, capabilities: {} },
    initializationOptions: { assets },
  });
  const uri = "untitled:first.sprag";
  const text = 'procedure First "First" {\n  step "Look."\n}\n';
  await connection.sendNotification("initialized", {});
  await connection.sendNotification("textDocument/didOpen", {
    textDocument: { uri, languageId: "sprag", version: 1, text },
  });
  for (const [format, beginning] of [
    ["html", "<!doctype html>"],
    ["pdf", btoa("%PDF-1")],
    ["docx", btoa("PK\x03")],
  ] as const) {
    const params: ExportParams = { uri, as: "checklist", format, units: "both", repeats: "compact", draft: true };
    const answer = await connection.sendRequest<ExportAnswer>("sprag/export", params);
    expect(answer.kind === "done" && answer.content.slice(0, beginning.length), format).toBe(beginning);
  }
});

test("the worker's server answers where there is nothing of Node", async () => {
  const answers: Answer[] = [];
  const scope: Record<string, unknown> = {
    setTimeout,
    clearTimeout,
    queueMicrotask,
    performance,
    TextDecoder,
    TextEncoder,
  };
  scope.self = scope;
  scope.postMessage = (message: Answer) => answers.push(message);
  const listeners: ((event: { data: unknown }) => void)[] = [];
  scope.addEventListener = (_: string, listener: (event: { data: unknown }) => void) => listeners.push(listener);
  runInContext(bundle("server-worker.js"), createContext(scope));
  const hear = scope.onmessage as ((event: { data: unknown }) => void) | undefined;
  const params = { processId: null, rootUri: null, capabilities: {} };
  const message = { jsonrpc: "2.0", id: 1, method: "initialize", params };
  for (const listener of hear === undefined ? listeners : [hear]) listener({ data: message });
  await expect.poll(() => answers.find(({ id }) => id === 1)?.result?.serverInfo?.name).toBe("Sprag");
});

interface Answer {
  readonly id?: number;
  readonly result?: { readonly serverInfo?: { readonly name: string } };
}

const REACHING =
  /\bfetch\(|\bXMLHttpRequest\b|\bnew WebSocket\b|\bsendBeacon\b|\bEventSource\b|createTelemetryLogger|applicationinsights|importScripts/g;

/** Modules that a text asks for, other than its own parts. */
function required(text: string): string[] {
  const asked = [...text.matchAll(/(?<![.\w])require\("([^"]+)"\)|\b(?:from|import)\s?"([\w@][\w@/.:-]*)"/g)];
  return [...new Set(asked.map(([, name, imported]) => name ?? imported ?? ""))].sort();
}

/** The files that are read before the first line of one runs, by what each imports. */
function loadedBy(name: string, found: Set<string> = new Set()): ReadonlySet<string> {
  if (found.has(name)) return found;
  found.add(name);
  for (const [, path = ""] of file(name).matchAll(/\b(?:from|import)"(\.[^"]*)"/g))
    loadedBy(posix.join(posix.dirname(name), path), found);
  return found;
}
