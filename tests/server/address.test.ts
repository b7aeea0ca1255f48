// A client that names a file by what is no URI: an error in words, and the server goes on.
import { expect, test } from "vitest";
import { ErrorCodes } from "vscode-languageserver-protocol";
import { withEditor } from "#harness/editor.ts";

const TEXT = `part Cover "cover"
procedure Work "Work" {
  begin with Cover is installed
  step remove Cover
}
`;
const PLACE = { line: 0, character: 6 };
const RANGE = { start: PLACE, end: PLACE };
const NO_URIS = ["a b:c", "", "pump.sprag", "file:////shop/../..//a"];

const REQUESTS: Readonly<Record<string, object>> = {
  "textDocument/hover": { position: PLACE },
  "textDocument/definition": { position: PLACE },
  "textDocument/references": { position: PLACE, context: { includeDeclaration: true } },
  "textDocument/prepareRename": { position: PLACE },
  "textDocument/rename": { position: PLACE, newName: "Lid" },
  "textDocument/completion": { position: PLACE },
  "textDocument/documentSymbol": {},
  "textDocument/documentLink": {},
  "textDocument/formatting": { options: { tabSize: 2, insertSpaces: true } },
  "textDocument/codeAction": { range: RANGE, context: { diagnostics: [] } },
  "textDocument/inlayHint": { range: RANGE },
  "textDocument/semanticTokens/full": {},
  "textDocument/foldingRange": {},
};

test.each(Object.entries(REQUESTS))("%s", (method, params) =>
  withEditor({ files: { "a.sprag": TEXT } }, async ({ connection, open, uri }) => {
    await open("a.sprag");
    const ask = (address: string): Promise<unknown> =>
      connection.sendRequest(method, { ...params, textDocument: { uri: address } });
    for (const address of NO_URIS) {
      const told = await ask(address).catch((error: unknown) => error);
      expect(told, address).toMatchObject({ code: ErrorCodes.InvalidParams });
      expect((told as Error).message).toContain(`“${address}” is not the URI of a file.`);
    }
    await expect(ask(uri("a.sprag"))).resolves.not.toBeUndefined();
  }),
);

test("notifications about such a file are left aside", () =>
  withEditor({ files: { "a.sprag": TEXT } }, async ({ connection, open, diagnostics }) => {
    for (const uri of NO_URIS) {
      await connection.sendNotification("textDocument/didOpen", {
        textDocument: { uri, languageId: "sprag", version: 1, text: TEXT },
      });
      await connection.sendNotification("textDocument/didChange", {
        textDocument: { uri, version: 2 },
        contentChanges: [{ text: "" }],
      });
      await connection.sendNotification("textDocument/didClose", { textDocument: { uri } });
      await connection.sendNotification("workspace/didChangeWatchedFiles", { changes: [{ uri, type: 2 }] });
    }
    await open("a.sprag", TEXT.replace("remove Cover", "remove Covr"));
    expect((await diagnostics("a.sprag")).map(({ code }) => code)).toContain("names.unknown");
  }));

test("such a file that is open keeps no folder from being opened", () =>
  withEditor({ folder: false, files: { "a.sprag": TEXT.replace("remove Cover", "remove Covr") } }, async (editor) => {
    const { connection, diagnostics, uri } = editor;
    await connection.sendNotification("textDocument/didOpen", {
      textDocument: { uri: NO_URIS[0], languageId: "sprag", version: 1, text: TEXT },
    });
    await connection.sendNotification("workspace/didChangeWorkspaceFolders", {
      event: { added: [{ uri: uri("").replace(/\/$/, ""), name: "shop" }], removed: [] },
    });
    expect((await diagnostics("a.sprag")).map(({ code }) => code)).toContain("names.unknown");
  }));
