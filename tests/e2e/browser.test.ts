// The same inputs give the same bytes in a browser's worker as from the command: findings of all samples, a checklist,
// a layout. Wants Chromium at /usr/bin/chromium; `.ci/run` installs it.
import { spawnSync } from "node:child_process";
import { readdirSync } from "node:fs";
import { join, relative, sep } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { startWorkerHost, type WorkerHost } from "./browser.ts";

const root = join(import.meta.dirname, "..", "..");
const samples = join(root, "samples");
const paths = readdirSync(samples, { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile() && entry.name.endsWith(".sprag"))
  .map((entry) => relative(samples, join(entry.parentPath, entry.name)).split(sep).join("/"))
  .filter((path) => !path.startsWith("out/"))
  .sort();

/** As the command does: asks for what the façade wants until it wants nothing more. */
const OPEN = `
  const texts = new Map(), present = new Set(), absent = new Set();
  for (const path of input.paths) texts.set(path, await fileText(path));
  const snapshot = () => ({ texts: new Map(texts), present: new Set(present), absent: new Set(absent), today: input.today });
  let workspace = sprag.openWorkspace(snapshot());
  while (workspace.wanted.length > 0) {
    for (const { path, need } of workspace.wanted) {
      const text = await fileText(path);
      if (text === null) absent.add(path);
      else if (need === "text") texts.set(path, text);
      else present.add(path);
    }
    workspace = sprag.openWorkspace(snapshot(), workspace);
  }`;

let host: WorkerHost;
beforeAll(async () => {
  host = await startWorkerHost(samples);
}, 60_000);
afterAll(() => host?.close());

function sprag(...args: string[]): string {
  const command = join(root, "language", "dist", "sprag.js");
  const { stdout, stderr, status } = spawnSync(process.execPath, [command, ...args], {
    cwd: samples,
    encoding: "utf8",
  });
  if (status === null || status > 1) throw new Error(stderr);
  return stdout;
}

test("the findings in all samples", async () => {
  const fromCommand = sprag("check", ...paths, "--format", "json", "--on", "2026-05-04");
  const body = `${OPEN} return sprag.reportText(workspace.check(input.paths));`;
  const fromBrowser = await host.inWorker<string>(body, { paths, today: "2026-05-04" });
  const findings = (JSON.parse(fromCommand) as { files: { findings: unknown[] }[] }).files.flatMap(
    (file) => file.findings,
  );
  console.log(`browser: ${paths.length} files, ${findings.length} findings, ${fromCommand.length} characters compared`);
  expect(findings.length).toBeGreaterThan(30);
  expect(fromBrowser).toBe(fromCommand);
});

test.each([["html"], ["md"]])("a checklist as %s", async (format) => {
  const path = "hot-bearing-fit.sprag";
  const request = { path, as: "checklist", format, units: "both", repeats: "compact", draft: false };
  const body = `${OPEN} return sprag.exportAs(workspace, input.request);`;
  const result = await host.inWorker<{ kind: string; text: string }>(body, {
    paths: [path],
    today: "2026-05-04",
    request,
  });
  expect(result.kind).toBe("done");
  expect(result.text).toBe(sprag("export", path, "--format", format));
});

test("a conversion and the page of a rule need nothing but the bundle", async () => {
  const body = `return [sprag.convertText("40 N·m", "lbf·in").ok, sprag.explain("order.enclosed").known];`;
  expect(await host.inWorker(body, null)).toEqual([true, true]);
});

test("nothing is asked of any other host", () => {
  expect(host.outside).toEqual([]);
});
