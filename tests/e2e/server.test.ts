// The server under load and in trouble: a folder of 500 files with progress, cancelled and checked again; a server that is
// killed in the middle of work comes back, and nothing is lost.
import { describe, expect, test } from "vitest";
import { deskFor } from "./desk.ts";
import { fillShop, fillWithMany } from "./shop.ts";
import { PATIENCE, type Workbench } from "./workbench.ts";
import { HOST_VERSIONS } from "./workbench-host.ts";

const FILES = 500;
const soon = { timeout: PATIENCE };
const later = { timeout: 300_000 };

describe.each(HOST_VERSIONS)("in VS Code $vscode", (version) => {
  const desk = deskFor(version.vscode, version);

  /** Errors in the whole folder, as the status bar counts them. */
  const errors = async (at: Workbench): Promise<number> =>
    Number((await at.page.locator("#status\\.problems").textContent())?.match(/\d+/)?.[0] ?? Number.NaN);

  test("500 files are checked with progress; that can be stopped, and done again", async () => {
    const at = await desk.open((folder) => fillWithMany(folder, FILES));
    await at.open("file-000.sprag");
    const progress = at.notification("Checking all files");
    await progress.waitFor();
    await expect.poll(() => progress.textContent(), soon).toMatch(/[1-9]\d* of 500/);
    await at.picture("progress");
    await progress.getByRole("button", { name: "Cancel" }).click();
    await progress.waitFor({ state: "detached" });
    // What is open is checked all the same.
    await expect.poll(() => errors(at), soon).toBeGreaterThan(0);
    expect(await errors(at)).toBeLessThan(FILES);

    await at.command("Sprag: Check All Files");
    await expect.poll(() => errors(at), later).toBe(FILES);
    await at.notification(`Files checked: ${FILES}. Errors: ${FILES}`).waitFor();
    await at.picture("checked");
  }, 900_000);

  test("a server that is killed in the middle of the folder starts again, and all files are checked", async () => {
    const at = await desk.open((folder) => fillWithMany(folder, FILES));
    await at.open("file-000.sprag");
    await at.notification("Checking all files").waitFor();
    const [killed] = desk.servers();
    process.kill(killed ?? 0, "SIGKILL");
    await at.notification("was started again").waitFor();
    await at.picture("started again");
    await expect.poll(() => errors(at), later).toBe(FILES);
    expect(desk.servers()).not.toContain(killed);
  }, 900_000);

  test("what was typed and not saved is still there after the server was killed, and still checked", async () => {
    const at = await desk.open(fillShop);
    await at.open("cover.sprag");
    await at.ready();
    await at.goTo(16, 100);
    await at.type("s");
    await at.press("Escape");
    await at.squiggles("error").first().waitFor();
    const [killed] = desk.servers();
    process.kill(killed ?? 0, "SIGKILL");
    await expect.poll(() => desk.servers().filter((id) => id !== killed).length, soon).toBe(1);
    await at.squiggles("error").first().waitFor();
    expect(await at.onScreen()).toContain("step install Covers");
    await at.press("Backspace");
    await expect.poll(() => at.squiggles("error").count(), soon).toBe(0);
    expect(at.onDisk("cover.sprag")).toContain("step install Cover\n");
  }, 900_000);

  test("a server that dies again and again is left off, and the reader can start it", async () => {
    const at = await desk.open(fillShop);
    await at.open("cover.sprag");
    const off = at.notification("it is not checked");
    const seen = new Set<number>();
    await expect
      .poll(async () => {
        for (const id of desk.servers()) {
          seen.add(id);
          process.kill(id, "SIGKILL");
        }
        return off.isVisible();
      }, soon)
      .toBe(true);
    await at.picture("off");
    expect(seen.size).toBeGreaterThan(3);
    expect(await at.notification(/./).allInnerTexts()).toHaveLength(2);
    await off.getByRole("button", { name: "Start Again" }).click();
    await at.ready();
    expect(desk.servers()).toHaveLength(1);
  }, 900_000);
});
