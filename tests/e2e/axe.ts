// What axe-core finds on the page of a webview, by the rules of WCAG 2.2 AA. Knows no page.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { FrameLocator } from "playwright-core";

const axe = readFileSync(join(import.meta.dirname, "..", "..", "node_modules", "axe-core", "axe.min.js"), "utf8");
const RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];

/** A line for each rule that is broken, with the first place. */
export async function barriersIn(pane: FrameLocator): Promise<readonly string[]> {
  const body = await pane.locator("body").elementHandle();
  const frame = await body?.ownerFrame();
  if (frame == null) throw new Error("the webview is gone");
  // Evaluated from outside, since the page's own policy runs nothing that it does not know.
  await frame.evaluate(axe);
  const found: string[] = await frame.evaluate(
    `axe.run(document, { runOnly: ${JSON.stringify(RULES)} }).then(({ violations }) =>
      violations.map(({ id, nodes }) => id + ": " + nodes[0].html + " " + nodes[0].failureSummary))`,
  );
  return found;
}
