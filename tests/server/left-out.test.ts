// The server checks the files that the command checks: what `.gitignore`, a hidden folder or node_modules holds is left out, unless
// it is open or used.
import { mkdirSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import fc from "fast-check";
import { expect, test } from "vitest";
import type { WorkspaceSymbol } from "vscode-languageserver-protocol";
import { findFiles } from "#cli/find-files.ts";
import { folderWith } from "#harness/command.ts";
import { type Editor, withEditor } from "#harness/editor.ts";
import { diskFiles } from "#server/disk.ts";
import { listFiles } from "#server/listing.ts";
import type { Status } from "#server/protocol.ts";

const folderName = fc.constantFrom("out", "sub", "node_modules", ".hidden", "Work");
const fileName = fc.constantFrom("a.sprag", "b.draft.sprag", "out.sprag", "notes.txt", ".c.sprag");
const path = fc.tuple(fc.array(folderName, { maxLength: 3 }), fileName).map(([at, name]) => [...at, name].join("/"));
const rule = fc.constantFrom(
  ...["out/", "out", "/out/", "*.draft.sprag", "!b.draft.sprag", "/a.sprag", "a.sprag", "sub/*", "!sub/a.sprag"],
  ...["**/Work/", "# nothing", "", "*.sprag", "!out/", "work", "[ab].sprag", "!*.sprag", "sub/**/a.sprag", " "],
);
const rules = fc.tuple(fc.array(folderName, { maxLength: 2 }), fc.array(rule, { minLength: 1, maxLength: 4 }));

test("the files of a folder are those of the command, whatever the rules", async () => {
  let compared = 0;
  let leftOut = 0;
  await fc.assert(
    fc.asyncProperty(fc.array(path, { maxLength: 12 }), fc.array(rules, { maxLength: 3 }), async (paths, ignoring) => {
      const { path: root } = folderWith({});
      for (const one of paths) put(root, one, "");
      for (const [at, lines] of ignoring) put(root, [...at, ".gitignore"].join("/"), `${lines.join("\n")}\n`);
      const address = pathToFileURL(root).href;
      const pathOf = (uri: string): string => fileURLToPath(uri).slice(root.length + 1);
      const { files, leavesOut } = await listFiles(diskFiles, address, pathOf);
      const counted = findFiles(["."], root, root).paths;
      expect(files.map((file) => file.path).sort()).toEqual(counted);
      const procedures = [...new Set(paths)].filter((one) => one.endsWith(".sprag"));
      expect(procedures.filter((one) => !leavesOut(one)).sort()).toEqual(counted);
      compared += procedures.length;
      leftOut += procedures.length - counted.length;
    }),
    { numRuns: 150 },
  );
  console.log(`${compared} files compared, ${leftOut} of them left out`);
  expect(leftOut).toBeGreaterThan(50);
  expect(compared - leftOut).toBeGreaterThan(50);
});

const FAULTY = 'procedure Work "Work" { step install Covr }\n';
const FILES = {
  ".gitignore": "out/\n*.draft.sprag\n",
  "work.sprag":
    'use "out/library.sprag"\nprocedure Open "open" {\n  begin with Cover is installed\n  step inspect Cover\n}\n',
  "work.draft.sprag": FAULTY,
  "out/library.sprag": 'part Cover "cover"\n',
  "out/old.sprag": FAULTY,
  ".backup/work.sprag": FAULTY,
  "sub/.gitignore": "!kept.draft.sprag\n",
  "sub/kept.draft.sprag": FAULTY.replace("Work", "Kept"),
};

test("what is left out is not checked; what a file uses of it is read", () =>
  withEditor({ files: FILES }, async (editor) => {
    expect(await checked(editor)).toMatchObject({ state: "checked", files: 2, errors: 1 });
    expect(await editor.diagnostics("work.sprag")).toEqual([]);
    for (const path of ["work.draft.sprag", "out/old.sprag", ".backup/work.sprag"])
      expect(await editor.diagnostics(path), path).toEqual([]);
    expect(await proceduresKnown(editor)).toEqual(["Kept", "Open"]);
  }));

test("what is left out and open is checked until it is closed", () =>
  withEditor({ files: FILES }, async (editor) => {
    await editor.open("out/old.sprag");
    expect((await editor.diagnostics("out/old.sprag")).map(({ code }) => code)).toEqual(["names.unknown"]);
    await editor.close("out/old.sprag");
    expect(await editor.diagnostics("out/old.sprag")).toEqual([]);
    expect(await proceduresKnown(editor)).toEqual(["Kept", "Open"]);
  }));

test("a file that is written where nothing counts stays out; a library that is used there is read again", () =>
  withEditor({ files: FILES }, async (editor) => {
    await editor.atRest();
    await editor.write("out/new.sprag", FAULTY);
    await editor.write(".backup/new.sprag", FAULTY);
    for (const path of ["out/new.sprag", ".backup/new.sprag"]) expect(await editor.diagnostics(path), path).toEqual([]);
    expect(await proceduresKnown(editor)).toEqual(["Kept", "Open"]);
    await editor.write("out/library.sprag", 'part Lid "lid"\n');
    expect((await editor.diagnostics("work.sprag")).map(({ code }) => code)).toContain("names.unknown");
    // It is not checked itself, though a file uses it.
    await editor.write("out/library.sprag", 'part Cover "cover"\npart part\n');
    expect(await editor.diagnostics("out/library.sprag")).toEqual([]);
  }));

test("what is gone or left out is not counted", () =>
  withEditor({ files: FILES }, async (editor) => {
    const expectChecked = async (files: number, errors: number): Promise<void> => {
      await editor.atRest();
      expect(editor.statuses.at(-1)).toMatchObject({ state: "checked", files, errors });
    };
    await expectChecked(2, 1);
    await editor.write("sub/kept.draft.sprag", null);
    await expectChecked(1, 0);
    await editor.write(".gitignore", "out/\n");
    await expectChecked(2, 1);
    await editor.write(".gitignore", "*.sprag\n");
    await expectChecked(0, 0);
  }));

test("other rules hold as soon as they are written", () =>
  withEditor({ files: FILES }, async (editor) => {
    await editor.atRest();
    await editor.write(".gitignore", "out/\nsub/\n");
    expect((await editor.diagnostics("work.draft.sprag")).map(({ code }) => code)).toEqual(["names.unknown"]);
    expect(await editor.diagnostics("sub/kept.draft.sprag")).toEqual([]);
    expect(await proceduresKnown(editor)).toEqual(["Open", "Work"]);
    await editor.write(".gitignore", null);
    expect(await proceduresKnown(editor)).toEqual(["Kept", "Open", "Work", "Work"]);
    expect((await editor.diagnostics("out/old.sprag")).map(({ code }) => code)).toEqual(["names.unknown"]);
  }));

function put(root: string, path: string, text: string): void {
  mkdirSync(dirname(join(root, path)), { recursive: true });
  writeFileSync(join(root, path), text);
}

function checked({ connection }: Editor): Promise<Status> {
  return connection.sendRequest<Status>("sprag/checkFolders", {});
}

async function proceduresKnown(editor: Editor): Promise<readonly string[]> {
  await editor.atRest();
  const found = await editor.connection.sendRequest<readonly WorkspaceSymbol[]>("workspace/symbol", { query: "" });
  return found
    .filter(({ containerName }) => containerName?.startsWith("procedure") === true)
    .map(({ name }) => name)
    .sort();
}
