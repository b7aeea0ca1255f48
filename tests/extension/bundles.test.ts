// What is shipped: bundles that need nothing but the editor, three of them nothing of Node; none that reaches for a network.
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, statSync } from "node:fs";
import { builtinModules } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { createContext, runInContext } from "node:vm";
import { afterAll, beforeAll, expect, test } from "vitest";

const root = join(import.meta.dirname, "..", "..");
const ALL = ["extension.js", "server.js", "extension-web.js", "server-worker.js", "preview-page.js"] as const;

let folder = "";
const bundle = (name: (typeof ALL)[number]): string => readFileSync(join(folder, name), "utf8");

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
  ["server.js", []],
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
});

test("they stay small", () => {
  const sizes = ALL.map((name) => ({ name, kilobytes: Math.round(statSync(join(folder, name)).size / 1024) }));
  console.log(`bundles: ${sizes.map(({ name, kilobytes }) => `${name} ${kilobytes} KB`).join(", ")}`);
  // The servers hold the writers of PDF and DOCX; they wake up when one is asked for.
  for (const { name, kilobytes } of sizes)
    expect(kilobytes, name).toBeLessThan(name.startsWith("server") ? 5000 : 1000);
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

function required(text: string): string[] {
  return [...new Set([...text.matchAll(/(?<![.\w])require\("([^"]+)"\)/g)].map(([, name]) => name as string))].sort();
}
