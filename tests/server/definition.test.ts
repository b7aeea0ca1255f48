// Finding one's way by names: definition, references, highlights and call hierarchy, in one file and across files.
import { expect, test } from "vitest";
import type {
  CallHierarchyIncomingCall,
  CallHierarchyItem,
  CallHierarchyOutgoingCall,
  DocumentHighlight,
  Location,
  LocationLink,
} from "vscode-languageserver-protocol";
import { type Editor, withEditor } from "#harness/editor.ts";
import { linesOf } from "#syntax/lines.ts";

const LIBRARY = `source Manual "pump manual" revision "9"
role Fitter "fitter"
hazard Dust "dust of linings"
option Extent "extent" { Full "full" Reseal "reseal" }
energy Supply "motor supply" { voltage 400 V AC }
ring Circle "circle" { count 4  numbered clockwise seen from "front"  position 1 at 12 o'clock }
part Foot[left, right] "foot" { states greased, blank }
part Cover "cover" { per Manual "6.1" }
part Screw[1..4] "screw" { seats in Circle by number  secures Cover }
tool Wrench "wrench"
value Final = 9 N·m
procedure Isolate "Take the supply off" { step isolate Supply }
`.replace('{ per Manual "6.1" }', 'per Manual "6.1"');

const MAIN = `use "shop/library.sprag"
procedure Open "Open it" {
  begin with Cover is installed, Foot[left] is greased
  perform Isolate
  task First "First" {
    warning Dust "There is dust." avoid "Breathe through a mask."
    step Loosen {
      repeat n in 1, 2, 3, 4 { loosen Screw[n] with Wrench  check "screw {n} of {m} turns" }
      measure Gap "gap" expect 1 .. 2 mm
      sign Fitter
      per Manual "6.4"
    }
    step Second after Loosen
    step Third { check "Gap is right" if it fails { return to Loosen } }
    when Extent is Full and Gap at most 2 mm { step tighten Screw[all] to 50 %, 100 % of Final }
  }
}
`.replace("step Second after Loosen", 'step Second "Go on." after Loosen');

const FILES = { "shop/library.sprag": LIBRARY, "main.sprag": MAIN };

test.each([
  ["a part", "begin with Co<|>ver is", "library", "part <Cover>"],
  ["behind the last letter", "begin with Cover<|> is", "library", "part <Cover>"],
  ["an own state", "is grea<|>sed", "library", "states <greased>"],
  ["a named instance", "Foot[le<|>ft]", "library", "part Foot[<left>"],
  ["a performed procedure", "perform Iso<|>late", "library", "procedure <Isolate>"],
  ["a declared hazard", "warning Du<|>st", "library", "hazard <Dust>"],
  ["a loop variable", "Screw[<|>n]", "main", "repeat <n> in"],
  ["a loop variable in own words", "screw {<|>n} of", "main", "repeat <n> in"],
  ["a tool", "with Wre<|>nch", "library", "tool <Wrench>"],
  ["a role", "sign Fit<|>ter", "library", "role <Fitter>"],
  ["a source", "per Man<|>ual", "library", "source <Manual>"],
  ["a step behind `after`", "after Loo<|>sen", "main", "step <Loosen> {"],
  ["a step behind `return to`", "return to Loo<|>sen", "main", "step <Loosen> {"],
  ["a choice", "Extent is Fu<|>ll", "library", "{ <Full>"],
  ["a reading", "and Ga<|>p at most", "main", "measure <Gap>"],
  ["a value", "of Fin<|>al", "library", "value <Final>"],
  ["the declaration itself", "step Loo<|>sen {", "main", "step <Loosen> {"],
  ["the file of a `use`", 'use "shop/lib<|>rary.sprag"', "library", "<>source Manual"],
])("definition of %s", (_title, marked, file, target) =>
  withEditor({ files: FILES }, async (editor) => {
    const [found] = await define(editor, marked);
    const path = file === "main" ? "main.sprag" : "shop/library.sprag";
    expect(found?.targetUri).toBe(editor.uri(path));
    expect(found?.targetSelectionRange).toEqual(rangeIn(editor.text(path), target));
  }),
);

test.each([
  ["a keyword", "be<|>gin with Cover"],
  ["a state that every part has", "is insta<|>lled"],
  ["a title", '"Open<|> it"'],
  ["a word in braces that is no loop variable", "of {<|>m} turns"],
  ["own words that are like a name", '"Ga<|>p is right"'],
])("no definition of %s", (_title, marked) =>
  withEditor({ files: FILES }, async (editor) => expect(await define(editor, marked)).toEqual([])),
);

test("no definition of a name that nothing bears, and of a file that is not there", () =>
  withEditor({ files: FILES }, async (editor) => {
    const text = 'use "gone.sprag"\nprocedure P "p" { step remove Nothing }\n';
    expect(await define(editor, "remove Not<|>hing", text)).toEqual([]);
    expect(await define(editor, 'use "go<|>ne.sprag"', text)).toEqual([]);
  }));

test("definition for a client that knows no links", () =>
  withEditor({ files: FILES, capabilities: {} }, async (editor) => {
    const { uri, cursor } = await editor.open("main.sprag", marked(MAIN, "sign Fit<|>ter"));
    const found = await editor.connection.sendRequest<Location>("textDocument/definition", at(uri, cursor));
    expect(found).toEqual({ uri: editor.uri("shop/library.sprag"), range: rangeIn(LIBRARY, "role <Fitter>") });
  }));

test("references over all files, open or not, with the declaration and without", () =>
  withEditor(
    { files: { ...FILES, "other.sprag": MAIN.replace("Open ", "Other "), "alone.sprag": 'part Cover "another"\n' } },
    async (editor) => {
      const found = await refer(editor, "Co<|>ver is installed", true);
      expect(found.map(({ uri, range }) => [uri, range.start.line])).toEqual([
        [editor.uri("main.sprag"), 2],
        [editor.uri("other.sprag"), 2],
        [editor.uri("shop/library.sprag"), 7],
        [editor.uri("shop/library.sprag"), 8],
      ]);
      const used = await refer(editor, "Co<|>ver is installed", false);
      expect(used).toEqual(found.filter(({ range }) => range.start.line !== 7));
    },
  ));

test("references of an inner declaration are not those of the outer one it hides", () =>
  withEditor({}, async (editor) => {
    const text = `part Cap "cap"
procedure A "a" { part Cap "inner"  begin with Cap is installed  step remove C<|>ap }
procedure B "b" { begin with Cap is installed  step remove Cap }
`;
    const { uri, cursor } = await editor.open("caps.sprag", text);
    const found = await askReferences(editor, uri, cursor, true);
    expect(found.map(({ range }) => range.start.line)).toEqual([1, 1, 1]);
  }));

/** Each file takes over the names of what it uses itself, and of nothing behind that. */
const CHAIN = {
  "a.sprag": 'part Cover "cover"\n',
  "b.sprag": 'use "a.sprag"\nprocedure B "b" { step inspect Cover }\n',
  "c.sprag": 'use "b.sprag"\nprocedure C "c" {\n  perform B\n  step inspect Cover\n}\n',
  "d.sprag": 'use "c.sprag"\nuse "a.sprag"\npart Lid "lid" { encloses Cover }\n',
};

test.each([
  ["the library", "a.sprag", 'part Co<|>ver "cover"\n'],
  ["a file that uses it", "b.sprag", CHAIN["b.sprag"].replace("Cover", "Co<|>ver")],
  ["a file that uses it beside others", "d.sprag", CHAIN["d.sprag"].replace("Cover", "Co<|>ver")],
])("references over a chain of `use`, asked in %s", (_title, path, text) =>
  withEditor({ files: CHAIN }, async (editor) => {
    await editor.atRest();
    const { uri, cursor } = await editor.open(path, text);
    expect(await askReferences(editor, uri, cursor, true)).toEqual([
      { uri: editor.uri("a.sprag"), range: rangeIn(CHAIN["a.sprag"], "part <Cover>") },
      { uri: editor.uri("b.sprag"), range: rangeIn(CHAIN["b.sprag"], "inspect <Cover>") },
      { uri: editor.uri("d.sprag"), range: rangeIn(CHAIN["d.sprag"], "encloses <Cover>") },
    ]);
    // The name in c means nothing there, and is told.
    expect((await editor.diagnostics("c.sprag")).map(({ range }) => range)).toEqual([
      rangeIn(CHAIN["c.sprag"], "inspect <Cover>"),
    ]);
    expect(await askReferences(editor, editor.uri("c.sprag"), { line: 3, character: 16 }, true)).toEqual([]);
  }),
);

test("references of a procedure over a chain of `use`", () =>
  withEditor({ files: CHAIN }, async (editor) => {
    await editor.atRest();
    const { uri, cursor } = await editor.open("c.sprag", CHAIN["c.sprag"].replace("perform B", "perform B<|>"));
    expect(await askReferences(editor, uri, cursor, false)).toEqual([
      { uri, range: rangeIn(CHAIN["c.sprag"], "perform <B>") },
    ]);
  }));

test("references after a file that uses the name came and went", () =>
  withEditor({ files: FILES }, async (editor) => {
    expect(await refer(editor, "sign Fit<|>ter", false)).toHaveLength(1);
    // The server hears of changes on the disk and reads them in its own time.
    const count = async (): Promise<number> => (await refer(editor, "sign Fit<|>ter", false)).length;
    await editor.atRest();
    await editor.write("late.sprag", 'use "shop/library.sprag"\nprocedure L "l" { step "Do it." sign Fitter }\n');
    await expect.poll(count, WAIT).toBe(2);
    await editor.write("late.sprag", null);
    await expect.poll(count, WAIT).toBe(1);
  }));

test("references where the folder is not checked: it is read for them", () =>
  withEditor({ files: FILES, settings: { checkFolder: false } }, async (editor) => {
    const { uri, cursor } = await editor.open("shop/library.sprag", LIBRARY.replace("role Fit", "role <|>Fit"));
    expect(await askReferences(editor, uri, cursor, true)).toHaveLength(2);
  }));

test("highlights: declared and used, in the file alone", () =>
  withEditor({ files: FILES }, async (editor) => {
    const highlight = async (place: string): Promise<readonly string[]> => {
      const { uri, cursor } = await editor.open("main.sprag", marked(MAIN, place));
      const found = await editor.connection.sendRequest<DocumentHighlight[]>(
        "textDocument/documentHighlight",
        at(uri, cursor),
      );
      return found.map(({ range, kind }) => `${range.start.line} ${kind === 3 ? "declared" : "used"}`);
    };
    expect(await highlight("return to Loo<|>sen")).toEqual(["6 declared", "12 used", "13 used"]);
    expect(await highlight("sign Fit<|>ter")).toEqual(["9 used"]);
    expect(await highlight("Screw[<|>n]")).toEqual(["7 declared", "7 used", "7 used"]);
    expect(await highlight("mea<|>sure")).toEqual([]);
  }));

test("call hierarchy: who performs a procedure, and what it performs", () =>
  withEditor(
    {
      files: {
        ...FILES,
        "twice.sprag": 'use "main.sprag"\nprocedure Twice "t" { perform Open  step { perform Open } }',
      },
    },
    async (editor) => {
      await editor.atRest();
      const ask = async <Answer>(method: string, params: object): Promise<Answer> =>
        editor.connection.sendRequest<Answer>(method, params);
      const { uri, cursor } = await editor.open("main.sprag", marked(MAIN, "procedure Op<|>en"));
      const [item] = await ask<CallHierarchyItem[]>("textDocument/prepareCallHierarchy", at(uri, cursor));
      expect(item).toMatchObject({ name: "Open", detail: "Open it", uri, range: { end: { line: 16 } } });
      const incoming = await ask<CallHierarchyIncomingCall[]>("callHierarchy/incomingCalls", { item });
      expect(incoming.map(({ from, fromRanges }) => [from.name, fromRanges.length])).toEqual([["Twice", 2]]);
      const outgoing = await ask<CallHierarchyOutgoingCall[]>("callHierarchy/outgoingCalls", { item });
      expect(outgoing.map(({ to, fromRanges }) => [to.name, to.uri, fromRanges])).toEqual([
        ["Isolate", editor.uri("shop/library.sprag"), [rangeIn(MAIN, "perform <Isolate>")]],
      ]);
      // The view stays open while the text goes on.
      await editor.change("main.sprag", `// one\n// two\n${MAIN}`);
      const later = await ask<CallHierarchyOutgoingCall[]>("callHierarchy/outgoingCalls", { item });
      expect(later.map(({ to }) => to.name)).toEqual(["Isolate"]);
      const callers = await ask<CallHierarchyIncomingCall[]>("callHierarchy/incomingCalls", { item });
      expect(callers.map(({ from }) => from.name)).toEqual(["Twice"]);
      await editor.change("main.sprag", MAIN.replace("procedure Open", "procedure Opened"));
      expect(await ask<CallHierarchyOutgoingCall[]>("callHierarchy/outgoingCalls", { item })).toEqual([]);
      const none = await ask<CallHierarchyItem[] | null>(
        "textDocument/prepareCallHierarchy",
        at(uri, (await editor.open("main.sprag", marked(MAIN, "sign Fit<|>ter"))).cursor),
      );
      expect(none).toBeNull();
    },
  ));

const WAIT = { timeout: 20_000 };

async function define(editor: Editor, place: string, text = MAIN): Promise<readonly LocationLink[]> {
  const { uri, cursor } = await editor.open("main.sprag", marked(text, place));
  const found = await editor.connection.sendRequest<LocationLink[] | null>("textDocument/definition", at(uri, cursor));
  return found ?? [];
}

async function refer(editor: Editor, place: string, includeDeclaration: boolean): Promise<readonly Location[]> {
  const { uri, cursor } = await editor.open("main.sprag", marked(MAIN, place));
  return askReferences(editor, uri, cursor, includeDeclaration);
}

async function askReferences(editor: Editor, uri: string, position: object, includeDeclaration: boolean) {
  const params = { textDocument: { uri }, position, context: { includeDeclaration } };
  const found = await editor.connection.sendRequest<Location[]>("textDocument/references", params);
  return found.sort((a, b) => (a.uri < b.uri ? -1 : a.uri > b.uri ? 1 : a.range.start.line - b.range.start.line));
}

function at(uri: string, position: object) {
  return { textDocument: { uri }, position };
}

/** The text with the cursor where the snippet has it. */
function marked(text: string, place: string): string {
  const plain = place.replace("<|>", "");
  expect(text.split(plain)).toHaveLength(2);
  return text.replace(plain, () => place);
}

/** The range of what stands between `<` and `>` in the snippet. */
function rangeIn(text: string, snippet: string) {
  const plain = snippet.replace(/[<>]/g, "");
  const start = text.indexOf(plain) + snippet.indexOf("<");
  expect(text).toContain(plain);
  return linesOf(text).range(start, start + (snippet.indexOf(">") - snippet.indexOf("<") - 1));
}
