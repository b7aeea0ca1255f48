// What the server says beside findings, in the language of the client: each text has its German, and the features use it.
import { expect, test } from "vitest";
import type { CodeLens, DocumentLink, InlayHint } from "vscode-languageserver-protocol";
import { type Editor, withEditor } from "#harness/editor.ts";
import type { Status } from "#server/protocol.ts";
import { GERMAN, type Text, wordsFor } from "#server/words.ts";

const FILES = {
  "library.sprag": 'part Screw[1..4] "screw"\npart Cover "cover"\n',
  "work.sprag": `use "library.sprag"
procedure Open "Open it" {
  begin with Cover is installed
  repeat n in 1, 2, 3, 4 { step inspect Screw[n] }
  perform Inner
}
procedure Inner "Do the inner work" {
  begin with Cover is installed
  step remove Cover
}
`,
};

const TEXTS = Object.entries(GERMAN) as readonly (readonly [Text, string])[];

test("each text has a German one of its own with the same figures", () => {
  const figures = (text: string): readonly string[] => (text.match(/\{\d\}/g) ?? []).sort();
  expect(TEXTS.length).toBeGreaterThan(20);
  for (const [english, german] of TEXTS) {
    expect(german).not.toBe(english);
    expect(figures(german), english).toEqual(figures(english));
    expect(/[.]$/.test(german), english).toBe(/[.]$/.test(english));
  }
});

test.each([
  ["de", "8 Schritte"],
  ["de-AT", "8 Schritte"],
  ["DE", "8 Schritte"],
  ["en", "8 steps"],
  ["den", "8 steps"],
  [undefined, "8 steps"],
])("a client in %s", (locale, expected) => expect(wordsFor(locale)("{0} steps", 8)).toBe(expected));

test("what is filled in is not filled in again", () =>
  expect(wordsFor("de")("There is no {0} as {1}.", "{1}", "pdf")).toBe("Die Ausgabe {1} gibt es nicht als pdf."));

test("lenses, hints, links and exports are German for a German client; findings are not", () =>
  withEditor({ files: FILES, locale: "de" }, async (editor) => {
    await editor.open("work.sprag");
    expect(await titlesOf(editor)).toEqual([
      "5 Schritte · ausgeben",
      "1 Schritt · ausgeben",
      "ausgeführt von 1 Arbeitsanweisung",
    ]);
    const hints = await editor.connection.sendRequest<InlayHint[]>("textDocument/inlayHint", {
      textDocument: { uri: editor.uri("work.sprag") },
      range: { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } },
    });
    expect(hints.map(({ label }) => label)).toContain("4 Schritte");
    const [link] = await ask<DocumentLink>(editor, "documentLink");
    expect(link?.tooltip).toBe("Benutzte Datei öffnen: library.sprag");
    const refused = await editor.connection.sendRequest("sprag/export", {
      ...{ uri: editor.uri("work.sprag"), as: "checklist", format: "doc" },
      ...{ procedure: "Open", units: "both", repeats: "compact", draft: false },
    });
    expect(refused).toEqual({
      kind: "refused",
      message: "Die Ausgabe checklist gibt es nicht als doc.",
      remedy: expect.stringMatching(/^Wählen Sie eine davon: html, .*\.$/),
    });
    await editor.change("work.sprag", FILES["work.sprag"].replace("remove Cover", "remove Covr"));
    expect((await editor.diagnostics("work.sprag")).map(({ message }) => message).join()).toContain("Cover");
  }));

/** So many that one check of them cannot be over before the next is asked for. */
const MANY = Object.fromEntries(
  Array.from({ length: 60 }, (_, at) => [`more/${at}.sprag`, FILES["work.sprag"].replace('"library', '"../library')]),
);

test("why a check of the folder stopped is said in German too", () =>
  withEditor({ files: { ...FILES, ...MANY }, locale: "de-DE" }, async (editor) => {
    await editor.atRest();
    const first = editor.connection.sendRequest<Status>("sprag/checkFolders", {});
    const second = editor.connection.sendRequest<Status>("sprag/checkFolders", {});
    expect(await first).toMatchObject({ state: "stopped", why: "Der Ordner wird von Neuem geprüft." });
    expect(await second).toMatchObject({ state: "checked" });
  }));

test("they are English for any other", () =>
  withEditor({ files: FILES, locale: "fr" }, async (editor) => {
    await editor.open("work.sprag");
    expect((await titlesOf(editor))[0]).toBe("5 steps · export");
  }));

async function titlesOf(editor: Editor): Promise<readonly (string | undefined)[]> {
  return (await ask<CodeLens>(editor, "codeLens")).map(({ command }) => command?.title);
}

function ask<Answer>(editor: Editor, what: string): Promise<readonly Answer[]> {
  const textDocument = { uri: editor.uri("work.sprag") };
  return editor.connection.sendRequest<Answer[]>(`textDocument/${what}`, { textDocument });
}
