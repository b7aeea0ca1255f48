// The server under load and in trouble: a folder of 500 files with progress, cancelled and checked again; a server that is
// killed in the middle of work comes back, and nothing is lost.
import type { Browser } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import { fillShop, fillWithMany } from "./shop.ts";
import { launchBrowser, openWorkbench, PATIENCE, type Workbench } from "./workbench.ts";
import { HOST_VERSIONS, type Host, startHost } from "./workbench-host.ts";

const FILES = 500;
const soon = { timeout: PATIENCE };
const later = { timeout: 300_000 };

describe.each(HOST_VERSIONS)("in VS Code $vscode", (version) => {
  let host: Host;
  let browser: Browser;
  let at: Workbench;

  beforeAll(async () => {
    [host, browser] = await Promise.all([startHost(version), launchBrowser()]);
  }, 300_000);
  afterAll(async () => {
    await browser?.close();
    host?.stop();
  });
  afterEach(async ({ task }) => {
    if (task.result?.state === "fail") await at.picture(`failed ${task.name.slice(0, 20)} ${version.vscode}`);
    await at.close();
  });

  /** Errors in the whole folder, as the status bar counts them. */
  const errors = async (): Promise<number> =>
    Number((await at.page.locator("#status\\.problems").textContent())?.match(/\d+/)?.[0] ?? Number.NaN);

  test("500 files are checked with progress; that can be stopped, and done again", async () => {
    at = await openWorkbench(browser, host, (folder) => fillWithMany(folder, FILES));
    await at.open("file-000.sprag");
    const progress = at.notification("Checking all files");
    await progress.waitFor();
    await expect.poll(() => progress.textContent(), soon).toMatch(/[1-9]\d* of 500/);
    await at.picture(`progress ${version.vscode}`);
    await progress.getByRole("button", { name: "Cancel" }).click();
    await progress.waitFor({ state: "detached" });
    // What is open is checked all the same.
    await expect.poll(errors, soon).toBeGreaterThan(0);
    expect(await errors()).toBeLessThan(FILES);

    await at.command("Sprag: Check All Files");
    await expect.poll(errors, later).toBe(FILES);
    await at.notification(`Files checked: ${FILES}. Errors: ${FILES}`).waitFor();
    await at.picture(`checked ${version.vscode}`);
  }, 900_000);

  test("a server that is killed in the middle of the folder starts again, and all files are checked", async () => {
    at = await openWorkbench(browser, host, (folder) => fillWithMany(folder, FILES));
    await at.open("file-000.sprag");
    await at.notification("Checking all files").waitFor();
    const [killed] = host.servers();
    process.kill(killed ?? 0, "SIGKILL");
    await at.notification("was started again").waitFor();
    await at.picture(`started again ${version.vscode}`);
    await expect.poll(errors, later).toBe(FILES);
    expect(host.servers()).not.toContain(killed);
  }, 900_000);

  test("what was typed and not saved is still there after the server was killed, and still checked", async () => {
    at = await openWorkbench(browser, host, fillShop);
    await at.open("cover.sprag");
    await at.ready();
    await at.goTo(16, 100);
    await at.type("s");
    await at.press("Escape");
    await at.squiggles("error").first().waitFor();
    const [killed] = host.servers();
    process.kill(killed ?? 0, "SIGKILL");
    await expect.poll(() => host.servers().filter((id) => id !== killed).length, soon).toBe(1);
    await at.squiggles("error").first().waitFor();
    expect(await at.onScreen()).toContain("step install Covers");
    await at.press("Backspace");
    await expect.poll(() => at.squiggles("error").count(), soon).toBe(0);
    expect(at.onDisk("cover.sprag")).toContain("step install Cover\n");
  }, 900_000);

  test("a server that dies again and again is left off, and the reader can start it", async () => {
    at = await openWorkbench(browser, host, fillShop);
    await at.open("cover.sprag");
    const off = at.notification("it is not checked");
    const seen = new Set<number>();
    await expect
      .poll(async () => {
        for (const id of host.servers()) {
          seen.add(id);
          process.kill(id, "SIGKILL");
        }
        return off.isVisible();
      }, soon)
      .toBe(true);
    await at.picture(`off ${version.vscode}`);
    expect(seen.size).toBeGreaterThan(3);
    expect(await at.notification(/./).allInnerTexts()).toHaveLength(2);
    await off.getByRole("button", { name: "Start Again" }).click();
    await at.ready();
    expect(host.servers()).toHaveLength(1);
  }, 900_000);
});
