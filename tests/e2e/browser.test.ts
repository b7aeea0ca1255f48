// The same inputs give the same bytes in a browser's worker as from the command: findings of all samples, outputs in
// each format. Wants Chromium at /usr/bin/chromium; `.ci/run` installs it.
import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, relative, sep } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { outputFormats } from "#workspace/index.ts";
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

/** Each format with the first output that is written in it. */
const firstIn = new Map(
  outputFormats()
    .toReversed()
    .flatMap(({ as, formats }) => formats.map((format) => [format, as] as const)),
);

test.each([...firstIn])("%s, of the output “%s”", async (format, as) => {
  const path = "hot-bearing-fit.sprag";
  const request = { path, as, format, units: "both", repeats: "compact", draft: false };
  const body = `${OPEN}
    const figures = new Map();
    for (const { path } of sprag.figuresWanted(workspace, input.request.path)) figures.set(path, await fileBytes(path));
    const result = sprag.exportAs(sprag.withFigures(workspace, figures), { ...input.request, fonts });
    if (result.kind !== "done") return result.kind;
    const content = await result.content;
    return typeof content === "string" ? [...new TextEncoder().encode(content)] : [...content];`;
  const made = await host.inWorker<number[] | string>(body, { paths: [path], today: "2026-05-04", request });
  expect(made).toBeInstanceOf(Array);
  const folder = mkdtempSync(join(tmpdir(), "sprag-bytes-"));
  const file = join(folder, `a.${format}`);
  sprag("export", path, "--as", as, "--format", format, "--out", file);
  const bytes = readFileSync(file);
  rmSync(folder, { recursive: true });
  expect(Buffer.compare(Buffer.from(made as number[]), bytes)).toBe(0);
});

test("a conversion and the page of a rule need nothing but the bundle", async () => {
  const body = `return [sprag.convertText("40 N·m", "lbf·in").ok, sprag.explain("order.enclosed").known];`;
  expect(await host.inWorker(body, null)).toEqual([true, true]);
});

test("nothing is asked of any other host", () => {
  expect(host.outside).toEqual([]);
});
