// The extension and its server all in the browser, where most is as elsewhere: a folder without trust, a folder of 500 files with
// what is left out of it, places shown from a lens.
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, describe, expect, test } from "vitest";
import { deskFor } from "./desk.ts";
import { addPicture, COVER, fillShop, fillWithMany } from "./shop.ts";
import { PATIENCE } from "./workbench.ts";
import { HOST_VERSIONS, IN_THE_BROWSER, RESTRICTED } from "./workbench-host.ts";

const FILES = 500;
const soon = { timeout: PATIENCE };
const later = { timeout: 300_000 };

describe.each([
  { trust: "a trusted folder", settings: IN_THE_BROWSER },
  { trust: "a folder without trust", settings: { ...IN_THE_BROWSER, ...RESTRICTED } },
])("$trust", ({ trust, settings }) => {
  const desk = deskFor(trust, HOST_VERSIONS[0], settings);
  afterEach(() => expect(desk.servers()).toEqual([]));

  test("a finding is seen and put right, and nothing asks for trust", async () => {
    const at = await desk.open((folder) => {
      fillShop(folder);
      writeFileSync(join(folder, "cover.sprag"), COVER.replace("install Cover", "install Covr"));
      addPicture(folder);
    });
    await at.open("cover.sprag");
    const restricted = at.page.locator(".statusbar-item", { hasText: "Restricted Mode" });
    await expect.poll(() => restricted.count(), soon).toBe("security.workspace.trust.enabled" in settings ? 1 : 0);
    await at.squiggles("error").first().waitFor();
    await at.goTo(16, 17);
    await at.press("Control+.");
    await at.page.locator(".action-widget .monaco-list-row", { hasText: "Cover" }).first().waitFor();
    await at.press("Enter");
    await expect.poll(() => at.squiggles("error").count(), soon).toBe(0);
    await at.save();
    expect(at.onDisk("cover.sprag")).toBe(COVER);
    await at.open("look.sprag");
    await at.command("Sprag: Open Preview to the Side");
    await expect.poll(at.pictureWidth, soon).toBe(240);
    await at.picture("in the browser");
    expect(await at.page.locator(".monaco-dialog-box").count()).toBe(0);
  }, 600_000);

  test("500 files are checked with progress, without those that .gitignore leaves out; that can be stopped", async () => {
    const at = await desk.open((folder) => {
      fillWithMany(folder, FILES);
      writeFileSync(join(folder, ".gitignore"), "old/\n");
      mkdirSync(join(folder, "old"));
      fillWithMany(join(folder, "old"), 20);
    });
    await at.open("file-000.sprag");
    const progress = at.notification("Checking all files");
    await progress.waitFor();
    await expect.poll(() => progress.textContent(), soon).toMatch(/[1-9]\d* of 500/);
    await progress.getByRole("button", { name: "Cancel" }).click();
    await progress.waitFor({ state: "detached" });
    await at.command("Sprag: Check All Files");
    await at.notification(`Files checked: ${FILES}. Errors: ${FILES}`).waitFor(later);
    await at.picture("500 files");
  }, 900_000);

  test("the lens of a performed procedure shows where it is performed", async () => {
    const at = await desk.open((folder) => {
      fillShop(folder);
      const users = ["First", "Second"].map((name) => `procedure ${name} {\n  perform CloseCover\n}\n`).join("");
      writeFileSync(join(folder, "line.sprag"), `use "cover.sprag"\n\n${users}`);
    });
    await at.open("line.sprag");
    await at.ready();
    await at.open("cover.sprag");
    await at.page.locator(".codelens-decoration a", { hasText: "performed by 2 procedures" }).click();
    const peek = at.page.locator(".peekview-widget .ref-tree .monaco-list-row .referenceMatch");
    await expect.poll(() => peek.count(), soon).toBe(2);
    await at.picture("performed");
    expect(await at.page.locator(".peekview-widget .peekview-title").textContent()).toContain("line.sprag");
  }, 600_000);
});
