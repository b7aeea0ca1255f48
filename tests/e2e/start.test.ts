// A writer's first minutes, from an empty folder with what the walkthrough offers: a sample, an error that comes and goes, a checklist,
// and a shop of one's own; or with a new text.
import { existsSync } from "node:fs";
import { join } from "node:path";
import type { Locator } from "playwright-core";
import { describe, expect, test } from "vitest";
import { deskFor, EVERYWHERE } from "./desk.ts";
import { fillShop } from "./shop.ts";
import { PATIENCE } from "./workbench.ts";

const soon = { timeout: PATIENCE };
const [newest, , inBrowser] = EVERYWHERE;

describe.each([newest, inBrowser])("in $name", ({ name, version, settings }) => {
  const desk = deskFor(name, version, settings);

  test("the walkthrough opens a sample, makes an error come and go, and exports a checklist", async () => {
    const at = await desk.open(() => {});
    const button = (title: string): Locator => at.page.getByRole("button", { name: title, exact: true });
    const turnTo = (title: string): Promise<void> => at.page.getByText(title, { exact: true }).click();
    await at.command("Welcome: Open Walkthrough...");
    await at.page.locator(".quick-input-list .monaco-list-row", { hasText: "Get to know Sprag" }).click();
    await button("Open the Sample").click();
    await at.page.locator(".tab", { hasText: "Untitled-1" }).waitFor();
    await at.ready();
    await at.picture("walkthrough");
    expect(await at.squiggles("error").count()).toBe(0);

    await turnTo("Let an error appear and go away");
    await button("Leave the Gasket Out").click();
    await expect.poll(() => at.squiggles("error").count(), soon).toBe(1);
    await at.picture("an error appears");
    await button("Put It Back").click();
    await expect.poll(() => at.squiggles("error").count(), soon).toBe(0);

    await turnTo("See the checklist beside the text");
    await button("Open the Preview").click();
    await at.page.locator(".tab", { hasText: "Preview of Untitled-1" }).waitFor();
    // Below its text: a third column would leave none of the three wide enough.
    const groups = await at.page.locator(".editor-group-container").evaluateAll((all) =>
      all.map((one) => {
        const { left, width } = one.getBoundingClientRect();
        return [left, width].map(Math.round).join(" ");
      }),
    );
    expect(groups).toHaveLength(3);
    expect(new Set(groups).size).toBe(2);
    const [text, preview] = await Promise.all(
      ["A sample", "Preview of Untitled-1"].map((title) => at.page.locator(".tab", { hasText: title }).boundingBox()),
    );
    expect([preview?.x, (preview?.y ?? 0) > (text?.y ?? 0)]).toEqual([text?.x, true]);
    await at.picture("preview below");

    await turnTo("Take a checklist to the bench");
    await button("Export").click();
    await at.page.locator(".quick-input-list .monaco-list-row", { hasText: /Checklist: .*\.html/ }).click();
    // Where it is to be saved, the text having no place of its own.
    await at.acceptPlace("CloseHousing.html");
    await expect.poll(() => existsSync(join(at.folder, "CloseHousing.html")), soon).toBe(true);
    await at.notification("Saved as CloseHousing.html").waitFor();
    await at.picture("exported");

    await turnTo("Start your own");
    await button("Start a Shop Here").click();
    await expect.poll(() => existsSync(join(at.folder, "close-housing.sprag")), soon).toBe(true);
    await at.page.locator(".tab", { hasText: "close-housing.sprag" }).waitFor();
    // The walkthrough stays.
    expect(await button("Start a Shop Here").isVisible()).toBe(true);
    // Its lens is further down than the text beside the preview reaches.
    await at.page.locator(".tab", { hasText: "Preview of close-housing.sprag" }).waitFor();
    await at.picture("a shop of one's own");
    expect(await at.squiggles("error").count()).toBe(0);
  }, 600_000);

  test("a new procedure begins with what it can begin with, and a name with its declaration", async () => {
    const at = await desk.open(fillShop);
    // The palette is not filled up once it is open, so the extension has to be there before.
    await at.open("cover.sprag");
    await at.ready();
    await at.command("Sprag: New Procedure");
    await at.page.locator(".suggest-widget.visible .monaco-list-row.focused", { hasText: "procedure …" }).waitFor();
    await at.press("Enter");
    await expect.poll(() => at.onScreen(), soon).toMatch(/^procedure NewProcedure/);
    await at.press("Escape");
    await at.goTo(5, 30);
    await at.press("End", "Enter");
    await at.type("step remove Seal");
    await at.press("Escape");
    const fix = at.page.locator(".action-widget .monaco-list-row", { hasText: "Declare part Seal" });
    const isOffered = async (): Promise<boolean> => {
      await at.press("Control+.");
      return fix.waitFor({ timeout: 5000 }).then(
        () => true,
        () => false,
      );
    };
    // Asked before the name was found to be unknown, it offers nothing.
    await expect.poll(isOffered, { ...soon, interval: 500 }).toBe(true);
    await at.press("Enter");
    await expect.poll(() => at.onScreen(), soon).toMatch(/^part Seal "seal"\n\nprocedure NewProcedure/);
  }, 600_000);
});
