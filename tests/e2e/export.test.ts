// A checklist from the workbench: chosen, saved beside the procedure, opened; a procedure with errors; a file that somebody
// changed; the same bytes as the command writes. In both workbenches, and all in the browser.
import { spawnSync } from "node:child_process";
import { appendFileSync, existsSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { deskFor, EVERYWHERE } from "./desk.ts";
import { COVER, fillShop } from "./shop.ts";
import { PATIENCE, type Workbench } from "./workbench.ts";

const soon = { timeout: PATIENCE };
const command = join(import.meta.dirname, "..", "..", "language", "dist", "sprag.js");

describe.each(EVERYWHERE)("in $name", ({ name, version, settings }) => {
  const desk = deskFor(name, version, settings);

  const choose = async (at: Workbench, format: string): Promise<void> => {
    await at.command("Sprag: Export");
    const row = new RegExp(`Checklist: .*\\${format}`);
    await at.page.locator(".quick-input-list .monaco-list-row", { hasText: row }).click();
  };

  test("a checklist is saved beside the procedure, opened, and not written over once somebody changed it", async () => {
    const at = await desk.open(fillShop);
    await at.open("cover.sprag");
    await at.ready();
    await choose(at, ".html");
    const saved = at.notification("Saved as cover.html");
    await saved.waitFor();
    await at.picture("saved");
    // Before all else: the message does not stay.
    await saved.getByRole("button", { name: "Open" }).click();
    const told = spawnSync(
      process.execPath,
      [command, "export", "cover.sprag", "--as", "checklist", "--format", "html", "--out", "by-command.html"],
      { cwd: at.folder, encoding: "utf8" },
    );
    expect(told.status, told.stderr).toBe(0);
    expect(at.onDisk("cover.html")).toBe(at.onDisk("by-command.html"));

    const page = at.page.frameLocator("iframe.webview.ready").frameLocator("iframe#active-frame");
    await page.locator("h1, h2", { hasText: "Close the cover" }).first().waitFor();
    await at.picture("checklist");

    appendFileSync(join(at.folder, "cover.html"), "<!-- by hand -->");
    await at.page.locator(".tab", { hasText: "cover.sprag" }).click();
    await choose(at, ".html");
    const asked = at.notification("cover.html is there already");
    await asked.waitFor();
    expect(at.onDisk("cover.html")).toContain("by hand");
    await asked.getByRole("button", { name: "Replace" }).click();
    await expect.poll(() => at.onDisk("cover.html"), soon).not.toContain("by hand");
  }, 600_000);

  test("a procedure with errors gives a draft only, and only when asked for", async () => {
    const at = await desk.open((folder) => {
      fillShop(folder);
      writeFileSync(join(folder, "cover.sprag"), COVER.replace("  step install Cover\n", ""));
    });
    await at.open("cover.sprag");
    await at.squiggles("error").first().waitFor();
    await choose(at, ".md");
    const told = at.notification("error");
    await told.first().waitFor();
    await at.picture("errors");
    expect(existsSync(join(at.folder, "cover.md"))).toBe(false);
    await told.first().getByRole("button", { name: "Export a Draft" }).click();
    // On the disk, and not in a message: the oldest workbench may put a message that follows others in the bell at once.
    await expect.poll(() => existsSync(join(at.folder, "cover.md")) && at.onDisk("cover.md"), soon).toMatch(/draft/i);
  }, 600_000);
});
