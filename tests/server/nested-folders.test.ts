// A folder of the workspace that lies in another one: each file is told of by the inner folder, seen as it stands on the screen by both.
import { expect, test } from "vitest";
import type { SymbolInformation, WorkspaceEdit } from "vscode-languageserver-protocol";
import { type Editor, withEditor } from "#harness/editor.ts";

const PARTS = 'part Bush "bush"\nprocedure Look "Look" {\n  step inspect Bsh\n}\n';
const FILES = {
  "outer.sprag": 'part Cover "cover"\n',
  "main.sprag": 'use "sub/parts.sprag"\nprocedure Main "Main" {\n  step inspect Bush\n}\n',
  "sub/parts.sprag": PARTS,
  "sub/beyond.sprag": 'use "../outer.sprag"\nprocedure Beyond "Beyond" {\n  step inspect Cover\n}\n',
};

const codesIn = async (editor: Editor, path: string) => (await editor.diagnostics(path)).map(({ code }) => code);

async function folders(editor: Editor, added: readonly string[], removed: readonly string[]): Promise<void> {
  const of = (paths: readonly string[]) => paths.map((path) => ({ uri: editor.uri(path), name: path }));
  await editor.connection.sendNotification("workspace/didChangeWorkspaceFolders", {
    event: { added: of(added), removed: of(removed) },
  });
  await editor.atRest();
}

test("what is in it is found by its own rules, told once, and as of the outer one when it is gone", () =>
  withEditor({ files: FILES }, async (editor) => {
    expect(await codesIn(editor, "sub/beyond.sprag")).toEqual([]);
    await folders(editor, ["sub"], []);
    expect(await codesIn(editor, "sub/beyond.sprag")).toEqual(["names.outside-workspace"]);
    const symbols = await editor.connection.sendRequest<SymbolInformation[]>("workspace/symbol", { query: "Look" });
    expect(symbols.map(({ name }) => name)).toEqual(["Look"]);
    await folders(editor, [], ["sub"]);
    expect(await codesIn(editor, "sub/beyond.sprag")).toEqual([]);
  }));

test("what stands on the screen holds, whatever is written on the disk", () =>
  withEditor({ files: FILES }, async (editor) => {
    await editor.open("sub/parts.sprag");
    await editor.change("sub/parts.sprag", PARTS.replace("Bsh", "Bush"));
    await folders(editor, ["sub"], []);
    expect(await codesIn(editor, "sub/parts.sprag")).toEqual([]);
    await editor.write("sub/parts.sprag", PARTS.replace("Bsh", "Buhs"));
    expect(await codesIn(editor, "sub/parts.sprag")).toEqual([]);
    await editor.connection.sendRequest("sprag/checkFolders", {});
    expect(await codesIn(editor, "sub/parts.sprag")).toEqual([]);
    await editor.close("sub/parts.sprag");
    expect((await editor.diagnostics("sub/parts.sprag"))[0]?.message).toContain("Buhs");
  }));

test("a file of the outer folder sees the text on the screen, and an edit fits that text", () =>
  withEditor({ files: FILES }, async (editor) => {
    await folders(editor, ["sub"], []);
    await editor.open("main.sprag");
    await editor.open("sub/parts.sprag");
    await editor.change("sub/parts.sprag", PARTS.replace("part Bush", "// Ours.\npart Bush").replace("Bsh", "Bush"));
    const edit = await editor.connection.sendRequest<WorkspaceEdit>("textDocument/rename", {
      textDocument: { uri: editor.uri("main.sprag") },
      position: { line: 2, character: 16 },
      newName: "Sleeve",
    });
    await editor.apply(edit);
    expect(editor.text("sub/parts.sprag")).toContain("// Ours.\npart Sleeve");
    expect(await codesIn(editor, "main.sprag")).toEqual([]);
    expect(await codesIn(editor, "sub/parts.sprag")).toEqual([]);
  }));
