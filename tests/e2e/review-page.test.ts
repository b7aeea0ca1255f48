// The review as a page in a browser: axe finds nothing, light and dark, wide and narrow; nothing is asked for, nothing runs.
import { afterAll, beforeAll, expect, test } from "vitest";
import { openWorkspace, reviewAs, reviewOf } from "#workspace/index.ts";
import { openShelf, type Shelf, violations } from "./checklist-page.ts";
import { COVER, TOOLS } from "./shop.ts";

let shelf: Shelf;
beforeAll(async () => {
  shelf = await openShelf();
}, 60_000);
afterAll(() => shelf?.close());

/** A change of every group but layout, one of them with a finding, one with markup in its text. */
const NOW = COVER.replace("  finish with", '  allow wording.vague because "<b>tried</b>"\n  finish with')
  .replace("to 40 ± 4 N·m with Wrench", "to 70 ± 4 N·m with Wrench")
  .replace('"Close the cover"', '"Shut the <i>cover</i>"')
  .replace('per Manual "6.4.9"', 'per Manual "6.5"')
  .replace("  step install Cover\n", '  step "Look at the seat."\n  step install Cover\n');

function page(): string {
  const side = (text: string) => {
    const texts = new Map([
      ["cover.sprag", text],
      ["shop/tools.sprag", TOOLS],
    ]);
    const workspace = openWorkspace({ texts, present: new Set(), absent: new Set(), today: "2026-05-04" });
    return { workspace, paths: ["cover.sprag"] };
  };
  const report = reviewOf(side(COVER), side(NOW));
  const groups = Object.entries(report.summary).filter(([, count]) => count > 0);
  expect(groups.map(([group]) => group)).toEqual(["safety", "values", "order", "items", "words"]);
  return reviewAs(report, "html");
}

test.each([
  ["light", 1280],
  ["dark", 1280],
  ["light", 380],
  ["dark", 380],
] as const)("%s, %d wide", async (colorScheme, width) => {
  const sheet = await shelf.open(page(), { colorScheme, viewport: { width, height: 900 } });
  const { page: shown, context, troubles } = sheet;
  expect(await violations(sheet)).toEqual([]);
  expect(await shown.locator("article").count()).toBeGreaterThan(4);
  // Text of a procedure is never markup.
  expect(await shown.locator("b, i").count()).toBe(0);
  expect(await shown.evaluate<number>("document.documentElement.scrollWidth - innerWidth")).toBeLessThanOrEqual(0);
  expect(troubles).toEqual([]);
  await context.close();
});
