// What the server tells of files without being asked: open ones at once, the folder in the background.
import { describe, expect, test } from "vitest";
import type { Diagnostic } from "vscode-languageserver-protocol";
import { type Editor, withEditor } from "#harness/editor.ts";
import type { Status } from "#server/protocol.ts";

const LIBRARY = `tool Wrench "torque wrench" { torque 2 .. 25 N·m }
part Cover "inspection cover"
part Screws "cover screws" { secures Cover torque 9 N·m dry } per Manual "4"
source Manual "manual"
`;
const GOOD = `use "library.sprag"

procedure OpenUp "Open the pump" {
  begin with Cover is installed, Screws are tightened
  step loosen Screws
  step remove Screws
  step remove Cover
  step install Cover
  step install Screws
  step tighten Screws to 9 N·m with Wrench
}
`;
const FAULTY = GOOD.replace("  step install Cover\n", "  step instal Cover\n");
const UNKNOWN = GOOD.replace("  step install Cover\n", "  step install Covr\n");
const files = { "library.sprag": LIBRARY };

async function codes(editor: Editor, path: string): Promise<readonly unknown[]> {
  return (await editor.diagnostics(path)).map(({ code }) => code);
}

describe("an open file", () => {
  test("is told of at once", () =>
    withEditor({ files }, async (editor) => {
      await editor.open("open-up.sprag", FAULTY);
      const [first] = await editor.diagnostics("open-up.sprag");
      expect(first).toMatchObject({ source: "sprag", severity: 1, range: { start: { line: 7, character: 7 } } });
    }));

  test("a finding goes with a change", () =>
    withEditor({ files }, async (editor) => {
      await editor.open("open-up.sprag", FAULTY);
      expect(await editor.diagnostics("open-up.sprag")).not.toEqual([]);
      await editor.change("open-up.sprag", GOOD);
      expect(await editor.diagnostics("open-up.sprag")).toEqual([]);
    }));

  test("of many changes in a row the last one counts", () =>
    withEditor({ files }, async (editor) => {
      await editor.open("open-up.sprag", GOOD);
      for (const text of [FAULTY, UNKNOWN, "", GOOD, UNKNOWN]) await editor.change("open-up.sprag", text);
      expect(await codes(editor, "open-up.sprag")).toEqual(["names.unknown"]);
      await editor.change("open-up.sprag", GOOD);
      expect(await codes(editor, "open-up.sprag")).toEqual([]);
    }));

  test("a code has a link to its page, and other places their part in it", () =>
    withEditor({ files }, async (editor) => {
      await editor.open("open-up.sprag", GOOD.replace("  step remove Screws\n", ""));
      const [first] = await editor.diagnostics("open-up.sprag");
      expect(first).toMatchObject({
        code: "order.retained",
        codeDescription: { href: "sprag-rule:order.retained.md" },
      });
      expect(first?.relatedInformation?.map(({ location }) => location.uri)).toContain(editor.uri("library.sprag"));
      const page = await editor.connection.sendRequest("sprag/rule", { code: "order.retained" });
      expect(page).toMatchObject({ code: "order.retained", markdown: expect.stringContaining("# order.retained") });
    }));

  test("what is left over is faded, what is allowed a hint with its reason", () =>
    withEditor({}, async (editor) => {
      const text = `part A "a"
procedure W "w" {
  step {
    remove A
    allow order.not-installed because "It hangs in."
    allow order.enclosed because "It is in the way."
  }
}
`;
      await editor.open("w.sprag", text);
      const told = await editor.diagnostics("w.sprag");
      expect(told.map(({ code, severity, tags }) => [code, severity, tags])).toEqual([
        ["order.not-installed", 4, undefined],
        ["trace.unused-allow", 2, [1]],
      ]);
      expect(told[0]?.message).toContain("Allowed: It hangs in.");
    }));

  test("one opened alone, in no folder, with what it uses beside it", () =>
    withEditor({ files, folder: false }, async (editor) => {
      await editor.open("open-up.sprag", UNKNOWN);
      expect(await codes(editor, "open-up.sprag")).toEqual(["names.unknown"]);
      await editor.open("other.sprag", GOOD);
      expect(await codes(editor, "other.sprag")).toEqual([]);
      await editor.close("open-up.sprag");
      expect(await codes(editor, "open-up.sprag")).toEqual([]);
    }));

  test("one that was never saved", () =>
    withEditor({ folder: false }, async (editor) => {
      const told: Diagnostic[][] = [];
      const uri = "untitled:Untitled-1";
      editor.connection.onNotification(
        "textDocument/publishDiagnostics",
        ({ diagnostics }) => void told.push(diagnostics),
      );
      await editor.connection.sendNotification("textDocument/didOpen", {
        textDocument: { uri, languageId: "sprag", version: 1, text: "part part" },
      });
      await editor.atRest();
      expect(told[told.length - 1]).toMatchObject([{ code: expect.stringMatching(/^syntax\./) }]);
    }));

  test("closed: what is on the disk is told of again", () =>
    withEditor({ files: { ...files, "open-up.sprag": UNKNOWN } }, async (editor) => {
      await editor.open("open-up.sprag", GOOD);
      expect(await codes(editor, "open-up.sprag")).toEqual([]);
      await editor.close("open-up.sprag");
      expect(await codes(editor, "open-up.sprag")).toEqual(["names.unknown"]);
    }));

  test("closed and opened again in one breath stays open", () =>
    withEditor({ files: { ...files, "open-up.sprag": GOOD } }, async (editor) => {
      await editor.open("open-up.sprag");
      await Promise.all([editor.close("open-up.sprag"), editor.open("open-up.sprag", UNKNOWN)]);
      expect(await codes(editor, "open-up.sprag")).toEqual(["names.unknown"]);
    }));
});

describe("files that change elsewhere", () => {
  test("a used library changes on the screen, and on the disk: findings in the files that use it", () =>
    withEditor({ files }, async (editor) => {
      await editor.open("open-up.sprag", GOOD);
      expect(await codes(editor, "open-up.sprag")).toEqual([]);
      await editor.open("library.sprag");
      await editor.change("library.sprag", LIBRARY.replace("part Screws", "part Bolts"));
      expect(await codes(editor, "open-up.sprag")).toContain("names.unknown");
      await editor.change("library.sprag", LIBRARY);
      expect(await codes(editor, "open-up.sprag")).toEqual([]);
      await editor.close("library.sprag");
      await editor.write("library.sprag", LIBRARY.replace("part Cover", "part Lid"));
      expect(await codes(editor, "open-up.sprag")).toContain("names.unknown");
      await editor.write("library.sprag", null);
      expect(await codes(editor, "open-up.sprag")).toContain("names.outside-workspace");
      await editor.write("library.sprag", LIBRARY);
      expect(await codes(editor, "open-up.sprag")).toEqual([]);
    }));

  test("a figure that comes and goes; it is never read as a procedure", () =>
    withEditor({ files }, async (editor) => {
      const text = GOOD.replace("step loosen Screws\n", 'step loosen Screws figure "figures/a.svg"\n');
      await editor.open("open-up.sprag", text);
      expect(await codes(editor, "open-up.sprag")).toEqual(["names.outside-workspace"]);
      await editor.write("figures/a.svg", "<svg/>");
      expect(await codes(editor, "open-up.sprag")).toEqual([]);
      expect(await codes(editor, "figures/a.svg")).toEqual([]);
      await editor.write("figures/a.svg", null);
      expect(await codes(editor, "open-up.sprag")).toEqual(["names.outside-workspace"]);
    }));

  test("a file that is not open is told of too, until it is gone", () =>
    withEditor({ files: { ...files, "open-up.sprag": UNKNOWN } }, async (editor) => {
      expect(await codes(editor, "open-up.sprag")).toEqual(["names.unknown"]);
      await editor.write("open-up.sprag", GOOD);
      expect(await codes(editor, "open-up.sprag")).toEqual([]);
      await editor.write("open-up.sprag", FAULTY);
      expect(await codes(editor, "open-up.sprag")).not.toEqual([]);
      await editor.write("open-up.sprag", null);
      expect(await codes(editor, "open-up.sprag")).toEqual([]);
    }));
});

describe("folders", () => {
  const two = { "a/library.sprag": LIBRARY, "a/one.sprag": UNKNOWN, "b/two.sprag": GOOD };
  const change = (editor: Editor, added: readonly string[], removed: readonly string[]): Promise<void> =>
    editor.connection.sendNotification("workspace/didChangeWorkspaceFolders", {
      event: {
        added: added.map((path) => ({ uri: editor.uri(path), name: path })),
        removed: removed.map((path) => ({ uri: editor.uri(path), name: path })),
      },
    });

  test("each is a workspace of its own; one that is taken out takes its findings along", () =>
    withEditor({ files: two, folder: false }, async (editor) => {
      await change(editor, ["a", "b"], []);
      await expectCodes(editor, "a/one.sprag", ["names.unknown"]);
      // There is no library beside it.
      expect(await codes(editor, "b/two.sprag")).toContain("names.outside-workspace");
      await change(editor, [], ["a"]);
      await expectCodes(editor, "a/one.sprag", []);
      expect(await codes(editor, "b/two.sprag")).not.toEqual([]);
    }));

  test("what is open in it stays told of", () =>
    withEditor({ files: two, folder: false }, async (editor) => {
      await editor.open("a/one.sprag");
      expect(await codes(editor, "a/one.sprag")).toEqual(["names.unknown"]);
      await change(editor, ["a"], []);
      await expectCodes(editor, "a/one.sprag", ["names.unknown"]);
      // Now the folder's library counts, also as it changes.
      await editor.write("a/library.sprag", LIBRARY.replace("part Cover", "part Covr"));
      expect(await codes(editor, "a/one.sprag")).toEqual(["names.unknown", "names.unknown"]);
      await editor.write("a/library.sprag", LIBRARY);
      await change(editor, [], ["a"]);
      await expectCodes(editor, "a/one.sprag", ["names.unknown"]);
      await editor.change("a/one.sprag", GOOD);
      expect(await codes(editor, "a/one.sprag")).toEqual([]);
    }));

  test("checkFolder off: only what is open; on again: all", async () => {
    const settings = { checkFolder: false };
    await withEditor({ files: { ...files, "one.sprag": UNKNOWN, "two.sprag": UNKNOWN }, settings }, async (editor) => {
      const changed = (): Promise<void> =>
        editor.connection.sendNotification("workspace/didChangeConfiguration", { settings: null });
      await editor.open("one.sprag");
      expect(await codes(editor, "one.sprag")).toEqual(["names.unknown"]);
      expect(await codes(editor, "two.sprag")).toEqual([]);
      settings.checkFolder = true;
      await changed();
      await expectCodes(editor, "two.sprag", ["names.unknown"]);
      settings.checkFolder = false;
      await changed();
      await expectCodes(editor, "two.sprag", []);
      expect(await codes(editor, "one.sprag")).toEqual(["names.unknown"]);
      await editor.close("one.sprag");
      await expectCodes(editor, "one.sprag", []);
    });
  });
});

async function expectCodes(editor: Editor, path: string, wanted: readonly unknown[]): Promise<void> {
  expect(await codes(editor, path)).toEqual(wanted);
}

describe("500 files", () => {
  const many = Object.fromEntries([
    ["library.sprag", LIBRARY],
    ...Array.from({ length: 500 }, (_, at) => [`work/${at}.sprag`, UNKNOWN.replace("library", "../library")]),
  ]);
  const capabilities = { window: { workDoneProgress: true }, workspace: { configuration: true } };
  const settings = { checkFolder: false };

  test("are read and checked with progress", () =>
    withEditor({ files: many, capabilities, settings }, async (editor) => {
      const heard: { kind: string; title?: string; percentage?: number; cancellable?: boolean }[] = [];
      editor.connection.onNotification("$/progress", ({ value }) => void heard.push(value));
      await editor.atRest();
      const status = await editor.connection.sendRequest<Status>("sprag/checkFolders", {});
      // One finding in each, and none in the library.
      expect(status).toEqual({ state: "checked", files: 501, errors: 500, warnings: 0 });
      expect(heard.filter(({ kind }) => kind === "begin")).toHaveLength(
        heard.filter(({ kind }) => kind === "end").length,
      );
      const shown = heard.flatMap(({ percentage }) => percentage ?? []);
      expect(shown.length).toBeGreaterThan(100);
      expect(heard.find(({ title }) => title?.includes("checking"))).toMatchObject({ cancellable: true });
      expect(editor.statuses.filter(({ state }) => state === "checking").length).toBeGreaterThan(10);
    }));

  test("can be cancelled, and open files go on being checked", () =>
    withEditor({ files: many, capabilities, settings }, async (editor) => {
      await editor.atRest();
      let reports = 0;
      let isChecking = false;
      editor.connection.onNotification("$/progress", ({ token, value }) => {
        if (value.kind === "begin") isChecking = value.title.includes("checking");
        if (isChecking && value.kind === "report" && ++reports === 5)
          void editor.connection.sendNotification("window/workDoneProgress/cancel", { token });
      });
      const status = await editor.connection.sendRequest<Status>("sprag/checkFolders", {});
      expect(status).toMatchObject({ state: "stopped", of: 501, why: expect.stringMatching(/cancelled/) });
      expect(status.state === "stopped" && status.done).toBeGreaterThan(0);
      expect(status.state === "stopped" && status.done).toBeLessThan(501);
      await editor.atRest();
      // That it was stopped is the last word.
      expect(editor.statuses[editor.statuses.length - 1]).toEqual(status);
      await editor.open("work/7.sprag");
      expect(await codes(editor, "work/7.sprag")).toEqual(["names.unknown"]);
    }));

  test("do not keep a writer waiting", () =>
    withEditor({ files: many, capabilities, settings }, async (editor) => {
      await editor.atRest();
      let isOver = false;
      const all = editor.connection.sendRequest("sprag/checkFolders", {}).then(() => {
        isOver = true;
      });
      const told = new Promise<boolean>((done) =>
        editor.connection.onNotification("textDocument/publishDiagnostics", ({ uri, version }) => {
          if (uri === editor.uri("open.sprag") && version === 1) done(isOver);
        }),
      );
      await editor.open("open.sprag", UNKNOWN);
      expect(await told).toBe(false);
      await all;
    }));
});

describe("clients", () => {
  test("one that can do nearly nothing gets all in the message", () =>
    withEditor({ files, capabilities: {}, options: { commands: [] } }, async (editor) => {
      await editor.open("open-up.sprag", GOOD.replace("  step remove Screws\n", ""));
      const [first] = await editor.diagnostics("open-up.sprag");
      expect(first).toMatchObject({ code: "order.retained", severity: 2 });
      expect(first).not.toHaveProperty("relatedInformation");
      expect(first).not.toHaveProperty("codeDescription");
      expect(String(first?.message).split("\n").length).toBeGreaterThan(2);
      expect(editor.initialized.capabilities.codeActionProvider).toBeUndefined();
    }));

  test("a request that is no longer wanted is not answered", () =>
    withEditor({ files }, async (editor) => {
      const { uri } = await editor.open("open-up.sprag", GOOD);
      const cancelled = editor.connection.sendRequest("textDocument/semanticTokens/full", { textDocument: { uri } });
      // The number that the last request went out under; the harness has sent "initialize" and this one.
      await editor.connection.sendNotification("$/cancelRequest", { id: 1 });
      await expect(cancelled).rejects.toMatchObject({ code: -32800 });
      expect(await codes(editor, "open-up.sprag")).toEqual([]);
    }));

  test("one that starts the server again with the same texts open is told the same again", async () => {
    const told: (readonly (readonly Diagnostic[])[])[] = [];
    for (let start = 0; start < 2; start++)
      await withEditor({ files }, async (editor) => {
        await editor.open("library.sprag", LIBRARY.replace("Screws", "Bolts"));
        await editor.open("open-up.sprag", UNKNOWN);
        told.push([await editor.diagnostics("library.sprag"), await editor.diagnostics("open-up.sprag")]);
      });
    expect(told[1]).toEqual(told[0]);
    expect(told[0]?.[1]).not.toEqual([]);
  });
});
