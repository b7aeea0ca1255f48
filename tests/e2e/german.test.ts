// A workbench shown in German: commands, questions, notices and lenses of the extension and its server are German.
import { existsSync } from "node:fs";
import { join } from "node:path";
import type { Browser } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import { fillShop } from "./shop.ts";
import { launchBrowser, openWorkbench, PATIENCE, type Workbench } from "./workbench.ts";
import { HOST_VERSIONS, type Host, IN_THE_BROWSER, startHost } from "./workbench-host.ts";

const soon = { timeout: PATIENCE };
const [newest, oldest] = HOST_VERSIONS;

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

  test("lenses, commands, questions and notices are German", async () => {
    at = await openWorkbench(browser, host, fillShop, "de");
    await at.open("cover.sprag");
    await at.ready();
    await expect
      .poll(() => at.page.locator(".codelens-decoration").first().textContent(), soon)
      .toContain("3 Schritte · Checkliste ausgeben");
    await at.command("Sprag: Alle Dateien prüfen");
    await at.notification("Geprüfte Dateien: 2. Fehler: 0, Warnungen: 0.").waitFor();
    await at.command("Sprag: Checkliste ausgeben");
    const webPage = at.page.locator(".quick-input-list .monaco-list-row", {
      hasText: "Webseite für Tablet oder Drucker",
    });
    await webPage.waitFor();
    await at.picture(`german ${name}`);
    await webPage.click();
    await at.notification("Gespeichert als cover.html.").waitFor();
    expect(existsSync(join(at.folder, "cover.html"))).toBe(true);
    expect(at.outside).toEqual([]);
  }, 600_000);
});
