// What changed since the last commit, from the editor's own git: seen in a view by gravity, both sides opened. Where the editor has no
// git, as all in the browser, it says so.
import { execFileSync } from "node:child_process";
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { deskFor, EVERYWHERE } from "./desk.ts";
import { COVER, fillShop } from "./shop.ts";
import { PATIENCE } from "./workbench.ts";

const soon = { timeout: PATIENCE };
const [newest, , inBrowser] = EVERYWHERE;

function fillWithHistory(folder: string): void {
  fillShop(folder);
  const who = ["-c", "user.name=Writer", "-c", "user.email=writer@shop.invalid"];
  for (const args of [
    ["init", "--quiet"],
    ["add", "."],
    ["commit", "--quiet", "--message", "First"],
  ])
    execFileSync("git", [...who, ...args], { cwd: folder, stdio: "pipe" });
  const now = COVER.replace("to 40 ± 4 N·m with", "to 36 ± 4 N·m with").replace(
    '"Close the cover"',
    '"Shut the cover"',
  );
  writeFileSync(join(folder, "cover.sprag"), now);
}

describe(`in ${newest.name}`, () => {
  const desk = deskFor(newest.name, newest.version, newest.settings);

  test("a changed file is reviewed, and an entry opens both sides", async () => {
    const at = await desk.open(fillWithHistory);
    await at.open("cover.sprag");
    await at.ready();
    await at.page
      .getByRole("button", { name: /What Changed/ })
      .first()
      .click();
    const rows = at.page.getByRole("tree", { name: /What Changed/ }).getByRole("treeitem");
    await rows.filter({ hasText: "Values" }).waitFor();
    await rows.filter({ hasText: "Words" }).waitFor();
    await at.picture("review");
    await rows.filter({ hasText: /N·m/ }).first().click();
    const sides = at.page.locator(".monaco-diff-editor .view-lines");
    await expect.poll(() => sides.count(), soon).toBe(2);
    await expect.poll(async () => (await sides.first().textContent()) ?? "", soon).toMatch(/to\s40\s±/);
    await expect.poll(async () => (await sides.last().textContent()) ?? "", soon).toMatch(/to\s36\s±/);
    await at.picture("both sides");
  }, 600_000);
});

describe(`in ${inBrowser.name}`, () => {
  const desk = deskFor(inBrowser.name, inBrowser.version, inBrowser.settings);

  test("where the editor has no git, it says so", async () => {
    const at = await desk.open(fillWithHistory);
    await at.open("cover.sprag");
    await at.ready();
    await at.command("Sprag: Show What Changed Since the Last Commit");
    const told = at.notification("This editor has no git here");
    await told.waitFor();
    expect(await told.textContent()).toContain("sprag review");
  }, 600_000);
});
