// A procedure whose name is missing or cannot be read: one finding with its remedy, its title and steps everywhere, and no word
// that only a program knows.
import { expect, test } from "vitest";
import type { CodeLens, DocumentSymbol } from "vscode-languageserver-protocol";
import { type Editor, withEditor } from "#harness/editor.ts";
import type { ExportAnswer, OutputsAnswer } from "#server/protocol.ts";

const textWith = (header: string): string => `part Cover "cover"
${header} {
  begin with Cover is installed
  step inspect Cover
}
procedure Other "the other" {
  begin with Cover is installed
  step remove Cover
  step install Cover
}
`;

test.each([
  ['procedure "no name"', "no name", "no name", '1:10-19 The name of the procedure is missing before “"no name"”.'],
  ['procedure 12 "twelve"', "twelve", "twelve", "1:10-12 A name cannot begin with the digit of “12”."],
  ['procedure A-B "dashed"', "dashed", "dashed", "1:11-12 A name holds no hyphen."],
  ["procedure", "procedure", "", "1:0-9 Something is missing after “procedure”."],
  ['procedure "one" "two"', "procedure", "", '1:10-15 The name of the procedure is missing before “"one"”.'],
])("%s", (header, label, title, finding) =>
  withEditor({}, async (editor) => {
    await editor.open("a.sprag", textWith(header));
    const told = await editor.diagnostics("a.sprag");
    expect(
      told.map(({ range: { start, end }, message }) => {
        const [first, ...others] = String(message).split("\n");
        // What makes it right stands last.
        expect(others.length).toBeGreaterThan(0);
        return `${start.line}:${start.character}-${end.character} ${first}`;
      }),
    ).toEqual([finding]);

    const symbols = await ask<DocumentSymbol[]>(editor, "textDocument/documentSymbol");
    expect(symbols.map(({ name, detail = "" }) => [name, detail])).toEqual([
      ["Cover", "cover"],
      [label, ""],
      ["Other", "the other"],
    ]);
    const outputs = await editor.connection.sendRequest<OutputsAnswer>("sprag/outputs", { uri: editor.uri("a.sprag") });
    expect(outputs.procedures).toEqual([
      { name: "", title },
      { name: "Other", title: "the other" },
    ]);
    const exported = await draftOf(editor, "");
    expect(exported.kind === "done" ? exported.content : "").toMatch(`# ${title}\n`);
    expect(exported.kind === "done" ? exported.content : "").toContain("Inspect the cover.");
    const unchosen = await draftOf(editor, "undefined");
    expect(unchosen).toMatchObject({ kind: "refused", remedy: "Choose one: Other." });

    const all = [told, symbols, outputs, exported, unchosen, await ask(editor, "textDocument/codeLens")];
    expect(JSON.stringify(all)).not.toMatch(/[>"“#]undefined/);
  }),
);

test("two of them are kept apart", () =>
  withEditor({}, async (editor) => {
    const text = 'part Cover "cover"\nprocedure "one" { step inspect Cover }\n';
    await editor.open("a.sprag", `${text}procedure "two" {\n  step inspect Cover\n  step inspect Cover\n}\n`);
    const lenses = await ask<CodeLens[]>(editor, "textDocument/codeLens");
    expect(lenses.map(({ command }) => command?.title)).toEqual(["1 step · export", "2 steps · export"]);
    expect((await editor.diagnostics("a.sprag")).map(({ code }) => code)).toEqual([
      "syntax.unexpected",
      "syntax.unexpected",
    ]);
  }));

function ask<Answer>(editor: Editor, method: string): Promise<Answer> {
  return editor.connection.sendRequest<Answer>(method, { textDocument: { uri: editor.uri("a.sprag") } });
}

function draftOf(editor: Editor, procedure: string): Promise<ExportAnswer> {
  return editor.connection.sendRequest<ExportAnswer>("sprag/export", {
    ...{ uri: editor.uri("a.sprag"), procedure, as: "checklist", format: "md" },
    ...{ units: "both", repeats: "compact", draft: true },
  });
}
