// Tables of arrangements that are open in the editor: what stands on the screen holds, saved or not, until it is closed.
import { expect, test } from "vitest";
import type { Diagnostic } from "vscode-languageserver-protocol/node";
import { type Editor, withEditor } from "#harness/editor.ts";

const EVEN = "position,serial,mass\n1,A,1 kg\n2,B,1 kg\n";
const UNEVEN = EVEN.replace("A,1 kg", "A,2 kg");
const MAIN = `ring R { count 2  numbered clockwise seen from "above"  position 1 at 12 o'clock }
part S[1..2] "segment" { seats in R by number }
arrangement Order of S in R { radius 500 mm  unbalance at most 600 g·mm  from "data/t.csv" }
`;
const files = { "main.sprag": MAIN, "data/t.csv": EVEN };

const codes = (found: readonly Diagnostic[]): readonly unknown[] => found.map(({ code }) => code);
const found = async (editor: Editor): Promise<readonly unknown[]> => codes(await editor.diagnostics("main.sprag"));

test("an open table holds before the one on the disk, and no longer than it is open", async () => {
  await withEditor({ files }, async (editor) => {
    await editor.open("main.sprag");
    expect(await found(editor)).toEqual([]);
    await editor.open("data/t.csv");
    expect(await found(editor)).toEqual([]);
    await editor.change("data/t.csv", UNEVEN);
    expect(await found(editor)).toEqual(["limits.balance"]);
    // What is saved by somebody else meanwhile is not what is seen.
    await editor.write("data/t.csv", EVEN.replace("1 kg", "1.001 kg"));
    expect(await found(editor)).toEqual(["limits.balance"]);
    await editor.close("data/t.csv");
    expect(await found(editor)).toEqual([]);
  });
});

test("a table that is on no disk yet is there while it is open", async () => {
  await withEditor({ files: { "main.sprag": MAIN } }, async (editor) => {
    await editor.open("main.sprag");
    expect(await found(editor)).toEqual(["names.outside-workspace"]);
    await editor.open("data/t.csv", EVEN);
    expect(await found(editor)).toEqual([]);
    await editor.close("data/t.csv");
    expect(await found(editor)).toEqual(["names.outside-workspace"]);
  });
});

test("a table is no file that is checked: nothing is told of it, and it is not counted", async () => {
  await withEditor({ files }, async (editor) => {
    await editor.open("data/t.csv", "no table at all\n");
    expect(await editor.diagnostics("data/t.csv")).toEqual([]);
    await editor.open("main.sprag");
    expect(await found(editor)).not.toEqual([]);
    expect(editor.statuses.at(-1)).toMatchObject({ state: "checked", files: 1 });
  });
});

test("the client is asked for tables as well, where it can be", async () => {
  const asked: unknown[] = [];
  const capabilities = { textDocument: { synchronization: { dynamicRegistration: true } } };
  await withEditor({ files, capabilities }, async (editor) => {
    await editor.atRest();
    asked.push(...editor.registered);
  });
  expect(asked).toEqual(
    ["didOpen", "didChange", "didClose"].map((what) => [`textDocument/${what}`, [{ pattern: "**/*.csv" }]]),
  );
});
