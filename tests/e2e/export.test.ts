// A checklist from the workbench: chosen, saved beside the procedure, opened; a procedure with errors; a file that somebody
// changed; the same bytes as the command writes. In both workbenches, and all in the browser.
import { spawnSync } from "node:child_process";
import { appendFileSync, existsSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Browser } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import { COVER, fillShop } from "./shop.ts";
import { launchBrowser, openWorkbench, PATIENCE, type Workbench } from "./workbench.ts";
import { HOST_VERSIONS, type Host, IN_THE_BROWSER, startHost } from "./workbench-host.ts";

const [newest, oldest] = HOST_VERSIONS;
const soon = { timeout: PATIENCE };
const command = join(import.meta.dirname, "..", "..", "language", "dist", "sprag.js");

describe.each([
  { name: `VS Code ${newest.vscode}`, version: newest, settings: {} },
  { name: `VS Code ${oldest.vscode}`, version: oldest, settings: {} },
  { name: `VS Code ${newest.vscode}, all in the browser`, version: newest, settings: IN_THE_BROWSER },
])("in $name", ({ name, version, settings }) => {
  let host: Host;
  let browser: Browser;
  let at: Workbench;

  beforeAll(async () => {
    [host, browser] = await Promise.all([startHost(version, settings), launchBrowser()]);
  }, 300_000);
  afterAll(async () => {
    await browser?.close();
    host?.stop();
  });
  afterEach(async ({ task }) => {
    if (task.result?.state === "fail") await at.picture(`failed ${task.name.slice(0, 20)} ${name}`);
    await at.close();
  });

  const choose = async (format: string): Promise<void> => {
    await at.command("Sprag: Export Checklist");
    await at.page.locator(".quick-input-list .monaco-list-row", { hasText: format }).click();
  };

  test("a checklist is saved beside the procedure, opened, and not written over once somebody changed it", async () => {
    at = await openWorkbench(browser, host, fillShop);
    await at.open("cover.sprag");
    await at.ready();
    await choose(".html");
    const saved = at.notification("Saved as cover.html");
    await saved.waitFor();
    await at.picture(`saved ${name}`);
    const told = spawnSync(
      process.execPath,
      [command, "export", "cover.sprag", "--as", "checklist", "--format", "html", "--out", "by-command.html"],
      { cwd: at.folder, encoding: "utf8" },
    );
    expect(told.status, told.stderr).toBe(0);
    expect(at.onDisk("cover.html")).toBe(at.onDisk("by-command.html"));

    await saved.getByRole("button", { name: "Open" }).click();
    const page = at.page.frameLocator("iframe.webview.ready").frameLocator("iframe#active-frame");
    await page.locator("h1, h2", { hasText: "Close the cover" }).first().waitFor();
    await at.picture(`checklist ${name}`);

    appendFileSync(join(at.folder, "cover.html"), "<!-- by hand -->");
    await at.page.locator(".tab", { hasText: "cover.sprag" }).click();
    await choose(".html");
    const asked = at.notification("cover.html is there already");
    await asked.waitFor();
    expect(at.onDisk("cover.html")).toContain("by hand");
    await asked.getByRole("button", { name: "Replace" }).click();
    await expect.poll(() => at.onDisk("cover.html"), soon).not.toContain("by hand");
    expect(at.outside).toEqual([]);
  }, 600_000);

  test("a procedure with errors gives a draft only, and only when asked for", async () => {
    at = await openWorkbench(browser, host, (folder) => {
      fillShop(folder);
      writeFileSync(join(folder, "cover.sprag"), COVER.replace("  step install Cover\n", ""));
    });
    await at.open("cover.sprag");
    await at.squiggles("error").first().waitFor();
    await choose(".md");
    const told = at.notification("error");
    await told.first().waitFor();
    await at.picture(`errors ${name}`);
    expect(existsSync(join(at.folder, "cover.md"))).toBe(false);
    await told.first().getByRole("button", { name: "Export a Draft" }).click();
    // On the disk, and not in a message: the oldest workbench may put a message that follows others in the bell at once.
    await expect.poll(() => existsSync(join(at.folder, "cover.md")) && at.onDisk("cover.md"), soon).toMatch(/draft/i);
  }, 600_000);
});
