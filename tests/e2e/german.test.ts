// A workbench shown in German: commands, questions, notices and lenses of the extension and its server are German, and so are the
// preview and what is exported.
import { describe, expect, test } from "vitest";
import { deskFor, EVERYWHERE } from "./desk.ts";
import { fillShop } from "./shop.ts";
import { PATIENCE } from "./workbench.ts";

const soon = { timeout: PATIENCE };

describe.each(EVERYWHERE)("in $name", ({ name, version, settings }) => {
  const desk = deskFor(name, version, settings);

  test("lenses, commands, questions, notices, the preview and the export are German", async () => {
    const at = await desk.open(fillShop, "de");
    await at.open("cover.sprag");
    await at.ready();
    await expect
      .poll(() => at.page.locator(".codelens-decoration").first().textContent(), soon)
      .toContain("3 Schritte · ausgeben");
    await at.command("Sprag: Alle Dateien prüfen");
    await at.notification("Geprüfte Dateien: 2. Fehler: 0, Warnungen: 0.").waitFor();
    await at.command("Sprag: Vorschau daneben öffnen");
    await at.webview().locator(".step", { hasText: "anziehen" }).waitFor();
    await at.command("Sprag: Ausgeben");
    const webPage = at.page.locator(".quick-input-list .monaco-list-row", {
      hasText: "Checkliste: Webseite für Tablet oder Drucker",
    });
    await webPage.waitFor();
    await at.picture("german");
    await webPage.click();
    await at.notification("Gespeichert als cover.html.").waitFor();
    expect(at.onDisk("cover.html")).toContain('<html lang="de"');
  }, 600_000);
});
