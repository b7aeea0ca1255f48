// A folder that nobody has said is trusted: all is checked, explained, put right, shown and exported as elsewhere, and nothing
// asks the reader to trust it.
import { existsSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { deskFor } from "./desk.ts";
import { addPicture, COVER, fillShop } from "./shop.ts";
import { PATIENCE } from "./workbench.ts";
import { HOST_VERSIONS, RESTRICTED } from "./workbench-host.ts";

const soon = { timeout: PATIENCE };

describe.each(HOST_VERSIONS)("in VS Code $vscode", (version) => {
  const desk = deskFor(version.vscode, version, RESTRICTED);

  test("a folder without trust is checked, mended and exported, and nothing asks", async () => {
    const at = await desk.open((folder) => {
      fillShop(folder);
      writeFileSync(join(folder, "cover.sprag"), COVER.replace("install Cover", "install Covr"));
      addPicture(folder);
    });
    await at.open("cover.sprag");
    await at.page.locator(".statusbar-item", { hasText: "Restricted Mode" }).waitFor();
    await at.squiggles("error").first().waitFor();
    await at.goTo(16, 17);
    await at.press("Control+.");
    await at.page.locator(".action-widget .monaco-list-row", { hasText: "Cover" }).first().waitFor();
    await at.press("Enter");
    await expect.poll(() => at.squiggles("error").count(), soon).toBe(0);
    await at.save();
    expect(at.onDisk("cover.sprag")).toBe(COVER);
    await at.command("Sprag: Export");
    await at.page.locator(".quick-input-list .monaco-list-row", { hasText: /Checklist: .*\.md/ }).click();
    await expect
      .poll(() => existsSync(join(at.folder, "cover.md")) && at.onDisk("cover.md"), soon)
      .toContain("Close the cover");
    await at.open("look.sprag");
    await at.command("Sprag: Open Preview to the Side");
    await expect.poll(at.pictureWidth, soon).toBe(240);
    await at.picture("restricted");
    // In such a folder the workbench boxes all but plain letters, unless it is told that they belong to the language.
    expect(await at.page.locator(".unicode-highlight").count()).toBe(0);
    expect(await at.page.locator(".monaco-dialog-box").count()).toBe(0);
  }, 600_000);
});
