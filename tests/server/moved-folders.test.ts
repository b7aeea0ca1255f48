// A folder of the workspace is deleted, moved or comes back: editors tell of the folder alone, and not of what is in it.
import { expect, test } from "vitest";
import { FileChangeType, WatchKind } from "vscode-languageserver-protocol/node";
import { type Editor, withEditor } from "#harness/editor.ts";

const TABLE = "position,serial,mass (kg)\n1,A,1\n2,B,1\n";
const MAIN = `use "shop/parts.sprag"
part S[1..2] "segment" { seats in R by number }
arrangement Order of S in R { radius 500 mm  unbalance at most 600 g·mm  from "shop/data/t.csv" }
`;
const FILES = {
  "main.sprag": MAIN,
  "shop/parts.sprag": 'ring R { count 2  numbered clockwise seen from "above"  position 1 at 12 o\'clock }\n',
  "shop/data/t.csv": TABLE,
  "shop/faulty.sprag": 'procedure P "p" {\n  step inspect Nothing\n}\n',
  "shopping.sprag": 'procedure Q "q" {\n  step inspect Nothing\n}\n',
};

/** What lies on a disk that changes without a word, and what was asked of it. */
async function withDisk(run: (editor: Editor, disk: Map<string, string>, asked: string[]) => Promise<void>) {
  const disk = new Map<string, string>(Object.entries(FILES));
  const asked: string[] = [];
  await withEditor({ files: FILES }, async (editor) => {
    const pathOf = (uri: string): string => decodeURIComponent(uri.slice(editor.uri("").length));
    const answer = <Result>(uris: readonly string[], of: (path: string) => Result): Result[] =>
      uris.map((uri) => of(pathOf(uri)));
    editor.connection.onRequest("sprag/list", ({ folder }: { folder: string }) => {
      asked.push(pathOf(`${folder}/`));
      const found = [...disk.keys()].filter((path) => path.endsWith(".sprag") && path.startsWith(pathOf(`${folder}/`)));
      return { uris: found.map(editor.uri) };
    });
    editor.connection.onRequest("sprag/read", ({ uris }: { uris: string[] }) => ({
      texts: answer(uris, (path) => disk.get(path) ?? null),
    }));
    editor.connection.onRequest("sprag/present", ({ uris }: { uris: string[] }) => {
      asked.push(...answer(uris, (path) => `${path}?`));
      return { present: answer(uris, (path) => disk.has(path)) };
    });
    await editor.open("main.sprag");
    expect(await codesIn(editor, "main.sprag")).toEqual([]);
    expect(await codesIn(editor, "shop/faulty.sprag")).toEqual(["names.unknown"]);
    asked.length = 0;
    await run(editor, disk, asked);
  });
}

const codesIn = async (editor: Editor, path: string) => (await editor.diagnostics(path)).map(({ code }) => code);

const tell = (editor: Editor, ...changes: readonly (readonly [string, FileChangeType])[]) =>
  editor.connection.sendNotification("workspace/didChangeWatchedFiles", {
    changes: changes.map(([path, type]) => ({ uri: editor.uri(path), type })),
  });

/** Moves all below one folder to another. */
function move(disk: Map<string, string>, from: string, to: string | null): void {
  for (const [path, text] of [...disk]) {
    if (!path.startsWith(`${from}/`)) continue;
    disk.delete(path);
    if (to !== null) disk.set(`${to}${path.slice(from.length)}`, text);
  }
}

test("deleted: what used it says so, and nothing is told any more of what was in it", () =>
  withDisk(async (editor, disk) => {
    move(disk, "shop", null);
    await tell(editor, ["shop", FileChangeType.Deleted]);
    expect(await codesIn(editor, "main.sprag")).toContain("names.outside-workspace");
    expect(await codesIn(editor, "shop/faulty.sprag")).toEqual([]);
    expect(await codesIn(editor, "shopping.sprag")).toEqual(["names.unknown"]);
    for (const [path, text] of Object.entries(FILES)) disk.set(path, text);
    await tell(editor, ["shop", FileChangeType.Created]);
    expect(await codesIn(editor, "main.sprag")).toEqual([]);
    expect(await codesIn(editor, "shop/faulty.sprag")).toEqual(["names.unknown"]);
  }));

test("moved: found under its new name, and no more under the old one", () =>
  withDisk(async (editor, disk) => {
    move(disk, "shop", "our library 1.2");
    await tell(editor, ["shop", FileChangeType.Deleted], ["our library 1.2", FileChangeType.Created]);
    expect(await codesIn(editor, "main.sprag")).toContain("names.outside-workspace");
    expect(await codesIn(editor, "shop/faulty.sprag")).toEqual([]);
    expect(await codesIn(editor, "our library 1.2/faulty.sprag")).toEqual(["names.unknown"]);
    await editor.change("main.sprag", MAIN.replaceAll('"shop/', '"our library 1.2/'));
    expect(await codesIn(editor, "main.sprag")).toEqual([]);
  }));

test("only the table's folder is gone, with the table", () =>
  withDisk(async (editor, disk) => {
    move(disk, "shop/data", null);
    await tell(editor, ["shop/data", FileChangeType.Deleted]);
    expect(await codesIn(editor, "main.sprag")).toEqual(["names.outside-workspace"]);
  }));

test("other files that come are asked about once and listed never; those left out, and those that go, not at all", () =>
  withDisk(async (editor, disk, asked) => {
    disk.set("notes.txt", "");
    await tell(editor, ["notes.txt", FileChangeType.Created], ["node_modules/x", FileChangeType.Created]);
    await tell(editor, ["old.txt", FileChangeType.Deleted], [".git/HEAD", FileChangeType.Created]);
    expect(await codesIn(editor, "main.sprag")).toEqual([]);
    expect(asked).toEqual(["notes.txt?"]);
  }));

test("the client is asked to tell of folders", async () => {
  const capabilities = { workspace: { didChangeWatchedFiles: { dynamicRegistration: true } } };
  const asked: unknown[] = [];
  await withEditor({ files: FILES, capabilities }, async (editor) => {
    editor.connection.onRequest("client/registerCapability", ({ registrations }) => {
      asked.push(...registrations);
      return null;
    });
    await editor.atRest();
  });
  expect(asked).toContainEqual(
    expect.objectContaining({
      method: "workspace/didChangeWatchedFiles",
      registerOptions: {
        watchers: expect.arrayContaining([{ globPattern: "**/*", kind: WatchKind.Create | WatchKind.Delete }]),
      },
    }),
  );
});
