// What a writer does in the workbench, in the newest and the oldest that is supported, and with the extension's web build:
// sees a finding, reads about it, has it put right; completes, renames, formats.
import { cpSync, mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { deskFor, EVERYWHERE } from "./desk.ts";
import { COVER, fillShop, TOOLS } from "./shop.ts";
import { PATIENCE } from "./workbench.ts";
import { IN_THE_BROWSER } from "./workbench-host.ts";

const samples = join(import.meta.dirname, "..", "..", "samples");
const soon = { timeout: PATIENCE };

describe.each(EVERYWHERE)("in $name", ({ name, version, settings }) => {
  const desk = deskFor(name, version, settings);

  test("a finding is seen, read about, put right, and gone", async () => {
    const at = await desk.open((folder) => {
      writeFileSync(join(folder, "close.sprag"), 'part Cover "cover"\n\nprocedure CloseUp {\n  step install Covr\n}\n');
    });
    await at.open("close.sprag");
    await at.squiggles("error").first().waitFor();
    expect(desk.servers()).toHaveLength(settings === IN_THE_BROWSER ? 0 : 1);
    await at.press("Control+Shift+M");
    await expect.poll(() => at.problems().allTextContents(), soon).toContainEqual(expect.stringContaining("Covr"));
    await at.picture("finding");

    await at.goTo(4, 17);
    const hover = await at.hoverHere("names.unknown");
    await at.picture("hover");
    await hover.locator("a", { hasText: "names.unknown" }).click();
    await at.page.locator(".tab.active", { hasText: "names.unknown.md" }).waitFor();
    const shown = at.page.frameLocator("iframe.webview.ready").frameLocator("iframe#active-frame");
    await shown.locator("h1", { hasText: "names.unknown" }).waitFor();
    await at.picture("page");

    await at.open("close.sprag");
    await at.goTo(4, 17);
    await at.press("Control+.");
    const fix = at.page.locator(".action-widget .monaco-list-row", { hasText: "Cover" });
    await fix.first().waitFor();
    await at.picture("fixes");
    await at.press("Enter");
    await expect.poll(() => at.onScreen(), soon).toContain("step install Cover");
    await expect.poll(() => at.squiggles("error").count(), soon).toBe(0);
    await at.save();
    expect(at.onDisk("close.sprag")).toContain("  step install Cover\n");
  }, 600_000);

  test("a tool and a unit are completed, those that fit first", async () => {
    const at = await desk.open((folder) => {
      fillShop(folder);
      writeFileSync(join(folder, "cover.sprag"), COVER.replace("40 ± 4 N·m with Wrench", "40 ± 4"));
    });
    await at.open("cover.sprag");
    await at.goTo(18, 100);
    const list = at.page.locator(".suggest-widget.visible .monaco-list-row");
    await at.type(" N");
    await at.press("Control+Space");
    await list.filter({ hasText: "N·m" }).first().waitFor();
    await at.picture("units");
    expect(await list.first().textContent()).toContain("N·m");
    await at.press("Enter");
    await expect.poll(() => at.onScreen(), soon).toContain("40 ± 4 N·m");
    await at.type(" with ");
    await at.press("Control+Space");
    await list.filter({ hasText: "Wrench" }).first().waitFor();
    await at.picture("tools");
    expect(await list.first().textContent()).toContain("Wrench");
    await at.press("Enter");
    await at.save();
    expect(at.onDisk("cover.sprag")).toBe(COVER);
  }, 600_000);

  test("a name is changed in all files that use it", async () => {
    const at = await desk.open(fillShop);
    await at.open("cover.sprag");
    await at.goTo(18, 50);
    const box = at.page.locator(".rename-box input");
    await at.ready();
    await at.press("F2");
    await box.waitFor();
    await box.fill("TorqueWrench");
    await at.picture("rename");
    await at.press("Enter");
    await expect.poll(() => at.onScreen(), soon).toContain("with TorqueWrench");
    await at.command("File: Save All Files");
    await expect
      .poll(() => at.onDisk("shop/tools.sprag"), soon)
      .toBe(TOOLS.replace("tool Wrench", "tool TorqueWrench"));
    expect(at.onDisk("cover.sprag")).toBe(COVER.replace("with Wrench", "with TorqueWrench"));
  }, 600_000);

  test("a file is laid out", async () => {
    const at = await desk.open((folder) => {
      fillShop(folder);
      writeFileSync(join(folder, "cover.sprag"), COVER.replaceAll(/^ +/gm, "").replace("N·m", "Nm"));
    });
    await at.open("cover.sprag");
    await at.squiggles("hint").first().waitFor();
    await at.command("Format Document");
    await expect.poll(() => at.onScreen(), soon).toContain("  step install Cover");
    await at.save();
    expect(at.onDisk("cover.sprag")).toBe(COVER);
  }, 600_000);

  test("a sample is read: numbers, other units, a value explained, an outline, in light and in dark", async () => {
    const at = await desk.open((folder) => {
      cpSync(samples, folder, { recursive: true });
      mkdirSync(join(folder, ".vscode"));
      writeFileSync(join(folder, ".vscode", "settings.json"), '{ "editor.inlayHints.enabled": "on" }');
    });
    await at.open("hot-bearing-fit.sprag");
    const line =
      at
        .onDisk("hot-bearing-fit.sprag")
        .split("\n")
        .findIndex((text) => text.includes("heat Bearing to")) + 1;
    await at.goTo(line, 24);
    await expect.poll(() => at.onScreen(), soon).toMatch(/heat Bearing to .*°F/);
    await expect.poll(() => at.onScreen(), soon).toMatch(/step\W*2\.1\W*HeatBearing/);
    await at.hoverHere("°F");
    await at.picture("value");
    await at.press("Escape");
    await at.press("Control+Shift+o");
    await at.page.locator(".quick-input-list .monaco-list-row", { hasText: "2.1 HeatBearing" }).waitFor();
    await at.picture("outline");
    await at.press("Escape");
    await at.command("Preferences: Toggle between Light/Dark Themes");
    await at.page.locator(".monaco-workbench.vs-dark").waitFor();
    await at.picture("dark");
    expect(await at.squiggles("error").count()).toBe(0);
  }, 600_000);
});
