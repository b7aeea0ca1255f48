// The output beside its text: it follows the text and the cursor, leads back to the lines, keeps what was good, is another one
// when that is chosen, and is there again after a reload. In the newest workbench, and all in the browser.
import type { FrameLocator, Locator } from "playwright-core";
import { describe, expect, test } from "vitest";
import { barriersIn } from "./axe.ts";
import { deskFor, EVERYWHERE } from "./desk.ts";
import { addPicture, COVER, fillShop, LONG } from "./shop.ts";
import { PATIENCE, type Workbench } from "./workbench.ts";

const soon = { timeout: PATIENCE };
const [newest, , inBrowser] = EVERYWHERE;

/** In milliseconds. The workbench writes down what a panel keeps every five seconds, while it has nothing else to do, not at its end. */
const TO_KEEP = 10_000;

describe.each([newest, inBrowser])("in $name", ({ name, version, settings }) => {
  const desk = deskFor(name, version, settings);

  const opened = async (text: string): Promise<{ readonly at: Workbench; readonly pane: FrameLocator }> => {
    const at = await desk.open((folder) => {
      fillShop(folder, text);
      addPicture(folder);
    });
    await at.open("cover.sprag");
    await at.ready();
    await at.command("Sprag: Open Preview to the Side");
    const pane = at.webview();
    await pane.locator(".step").first().waitFor();
    return { at, pane };
  };

  test("it follows what is written, keeps what was good, and leads back to the line", async () => {
    const { at, pane } = await opened(COVER);
    const steps = pane.locator(".step");
    await at.picture("preview");
    expect(await steps.count()).toBe(3);
    await at.goTo(16, 20);
    await at.press("End", "Enter");
    await at.type("step inspect Cover");
    await expect.poll(() => steps.count(), soon).toBe(4);
    await expect.poll(() => pane.locator(".step.at-cursor").textContent(), soon).toMatch(/Inspect/);

    await at.type(" to to");
    await pane.locator("#preview-sheet.stale").waitFor();
    expect(await pane.locator("#preview-bar [role=status]").textContent()).toContain("cannot be read");
    expect(await steps.count()).toBe(4);
    expect(await pane.locator(".step.at-cursor").textContent()).toMatch(/Inspect/);
    await at.picture("preview of a broken line");
    expect(await barriersIn(pane)).toEqual([]);
    for (let n = 0; n < 6; n++) await at.press("Backspace");
    await pane.locator("#preview-sheet:not(.stale)").waitFor();

    await steps.filter({ hasText: "Tighten" }).locator("h3").click();
    await expect.poll(() => at.cursor(), soon).toMatch(/Ln 19, Col 3\b/);
    expect(await barriersIn(pane)).toEqual([]);
  }, 600_000);

  test("a picture is shown, and another procedure once its file is the one that is worked on", async () => {
    const { at, pane } = await opened(COVER);
    const title = pane.locator("h1").first();
    await expect.poll(() => title.textContent(), soon).toContain("Close the cover");
    await at.open("look.sprag");
    await expect.poll(() => title.textContent(), soon).toContain("Look at the seat");
    await expect.poll(at.pictureWidth, soon).toBe(240);
    await at.picture("preview with a picture");
    expect(await barriersIn(pane)).toEqual([]);
    // A library has nothing to show.
    await at.open("shop/tools.sprag");
    await at.open("cover.sprag");
    await expect.poll(() => title.textContent(), soon).toContain("Close the cover");
    expect(await pane.locator("img").count()).toBe(0);
  }, 600_000);

  test("it scrolls only where it must, shows what is chosen, and is as it was after a reload", async () => {
    const { at, pane } = await opened(LONG);
    const top = (row: Locator): Promise<number> => row.evaluate((one) => Math.round(one.getBoundingClientRect().top));
    await at.goTo(4, 3);
    const first = pane.locator("#step-1.at-cursor");
    await first.waitFor();
    const before = await top(pane.locator("#step-1"));
    await at.goTo(6, 3);
    await pane.locator("#step-3.at-cursor").waitFor();
    expect(await top(pane.locator("#step-1"))).toBe(before);
    await at.goTo(60, 3);
    const here = pane.locator("#step-57.at-cursor");
    await here.waitFor();
    await expect.poll(() => top(here), soon).toBeLessThan(800);
    const place = await top(here);
    expect(place).toBeGreaterThan(0);
    // An error makes the head longer, and what is looked at stays where it is.
    await at.press("End", "Enter");
    await at.type("step install Part[1]");
    await at.press("Enter");
    await at.type("step install Part[1]");
    await pane.locator("body.draft").waitFor();
    expect(Math.abs((await top(pane.locator("#step-57"))) - place)).toBeLessThanOrEqual(2);

    const facts = await pane.locator(".facts").textContent();
    await at.save();
    const again = at.webview();
    const units = again.locator("select[name=units]");
    const unitsAfterReload = async (): Promise<string> => {
      await units.selectOption("us");
      await expect.poll(() => again.locator(".facts").textContent(), soon).not.toBe(facts);
      await at.page.waitForTimeout(TO_KEEP);
      await at.page.reload();
      await again.locator(".step").first().waitFor();
      return units.inputValue();
    };
    await expect.poll(unitsAfterReload, { timeout: 3 * PATIENCE }).toBe("us");
    await at.picture("preview after a reload");

    await again.locator("select[name=as]").selectOption("diagram");
    const boxes = again.locator("[data-step]");
    await boxes.nth(1).waitFor();
    await at.picture("order of work");
    expect(await barriersIn(again)).toEqual([]);
    await at.command("Preferences: Toggle between Light/Dark Themes");
    await again.locator("html[data-theme=dark]").waitFor();
    await at.picture("order of work in the dark");
    expect(await barriersIn(again)).toEqual([]);
    await again.locator("select[name=as]").selectOption("checklist");
    await again.locator(".step").first().waitFor();
    await at.picture("preview in the dark");
    expect(await barriersIn(again)).toEqual([]);
    await again.locator("select[name=as]").selectOption("diagram");
    await boxes.nth(1).click();
    await expect.poll(() => at.cursor(), soon).toMatch(/Ln 5, Col 3\b/);
  }, 600_000);
});
