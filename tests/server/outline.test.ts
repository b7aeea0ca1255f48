// What shows the shape of a file and of the folder: symbols, folding, widening selections, links and lenses.
import { expect, test } from "vitest";
import type {
  CodeLens,
  DocumentLink,
  DocumentSymbol,
  FoldingRange,
  SelectionRange,
  SymbolInformation,
} from "vscode-languageserver-protocol";
import { type Editor, type EditorSetting, withEditor } from "#harness/editor.ts";
import type { PlacesArguments } from "#server/protocol.ts";
import { linesOf } from "#syntax/lines.ts";

const TEXT = `use "shop/library.sprag"
use "gone.sprag"
// The rings
// of the pump.
ring Circle "circle" {
  count 4
  numbered clockwise seen from "front"
  position 1 at 12 o'clock
}
part Cover "inspection cover"
part Screw[1..4] "screw" { seats in Circle by number  secures Cover }

part Late "late"
option Extent "extent" { Full "full overhaul"  Reseal }
arrangement Weights of Screw in Circle { from "weights.csv" }
procedure Open "Open it" {
  role Helper "helper"
  note """
    Two
    lines.
  """
  task First "Take it off" {
    step Loosen {
      loosen Screw[all]
      measure Gap "gap" expect 1 .. 2 mm
      figure "figures/cover.svg" "Cover"
    }
    when Extent is Full {
      step "Look at it closely."
    }
    repeat n in 1, 2, 3, 4 { step remove Screw[n] }
  } // behind
  // alone
  perform Inner
  step remove Cover
}
procedure Inner "Do the inner work" { step "One." }
`;
const FILES = {
  "main.sprag": TEXT,
  "shop/library.sprag": 'role Fitter "fitter"\nprocedure Outer "o" { step SlideHome "Slide it home." }\n',
  "figures/cover.svg": "<svg/>",
  "weights.csv": "1,2\n",
};

test("symbols: nested, numbered as the checklist numbers them", () =>
  inMain(async (editor) => {
    const found = await ask<DocumentSymbol[]>(editor, "documentSymbol");
    expect(tree(found)).toEqual([
      "Circle (circle)",
      "Cover (inspection cover)",
      "Screw (screw)",
      "Late (late)",
      "Extent (extent)",
      "Weights",
      "Open (Open it)",
      "  Helper (helper)",
      "  1 Take it off (First)",
      "    1.1 Loosen",
      "      Gap (gap)",
      "    1.2 Look at it closely.",
      "    1.3 remove Screw[n]",
      "  2 perform Inner",
      "  3 remove Cover",
      "Inner (Do the inner work)",
      "  1 One.",
    ]);
  }));

test("symbols for a client that knows no nesting", () =>
  inMain(
    async (editor) => {
      const found = await ask<SymbolInformation[]>(editor, "documentSymbol");
      expect(found).toHaveLength(17);
      expect(found[9]).toMatchObject({ name: "1.1 Loosen", containerName: "1 Take it off" });
    },
    { capabilities: {} },
  ));

test.each([
  ["", 15],
  ["loosen", ["Loosen | step 1.1 of Open | main.sprag"]],
  ["slh", ["SlideHome | step 1 of Outer: Slide it home. | shop/library.sprag"]],
  ["SH", ["SlideHome | step 1 of Outer: Slide it home. | shop/library.sprag"]],
  ["hslide", 0],
  ["inspection c", ["Cover | part in main.sprag: inspection cover | main.sprag"]],
  ["take off", ["First | task 1 of Open: Take it off | main.sprag"]],
  ["gap", ["Gap | reading in Open: gap | main.sprag"]],
  ["dinn", ["Inner | procedure in main.sprag: Do the inner work | main.sprag"]],
  ["closely", 0],
])("symbols of all files by the letters “%s”", (query, wanted) =>
  withEditor({ files: FILES }, async (editor) => {
    const found = await editor.connection.sendRequest<SymbolInformation[]>("workspace/symbol", { query });
    if (typeof wanted === "number") expect(found).toHaveLength(wanted);
    else
      expect(
        found.map(({ name, containerName, location }) => `${name} | ${containerName} | ${location.uri.slice(13)}`),
      ).toEqual(wanted);
  }),
);

test("folding: blocks, comments, texts and runs of lines", () =>
  inMain(async (editor) => {
    const found = await ask<FoldingRange[]>(editor, "foldingRange");
    expect(found.map(({ startLine, endLine, kind }) => `${startLine}-${endLine} ${kind ?? "block"}`)).toEqual([
      "0-1 imports",
      "2-3 comment",
      "4-7 block",
      "9-10 region",
      "15-34 block",
      "17-20 block",
      "21-30 block",
      "22-25 block",
      "27-28 block",
    ]);
  }));

test("selection: word, value, line, step, task, procedure, file", () =>
  inMain(async (editor) => {
    const position = linesOf(TEXT).position(TEXT.indexOf("2 mm") + 1);
    const [found] = await ask<SelectionRange[]>(editor, "selectionRange", { positions: [position] });
    const selected: string[] = [];
    for (let at: SelectionRange | undefined = found; at !== undefined; at = at.parent) selected.push(textIn(at.range));
    const first = (text: string): string => text.split("\n")[0] ?? "";
    expect(selected.map(first)).toEqual([
      "2",
      "2 mm",
      "1 .. 2 mm",
      'measure Gap "gap" expect 1 .. 2 mm',
      "step Loosen {",
      'task First "Take it off" {',
      'procedure Open "Open it" {',
      'use "shop/library.sprag"',
    ]);
    selected.forEach((text, nth) => {
      if (nth > 0) expect(text).toContain(selected[nth - 1]);
    });
  }));

test("selection in own words: the word, the words, the words with their quotes", () =>
  inMain(async (editor) => {
    const position = linesOf(TEXT).position(TEXT.indexOf("at it closely") + 1);
    const [found] = await ask<SelectionRange[]>(editor, "selectionRange", { positions: [position] });
    const three = [found?.range, found?.parent?.range, found?.parent?.parent?.range];
    expect(three.map((range) => range && textIn(range))).toEqual([
      "at",
      "Look at it closely.",
      '"Look at it closely."',
    ]);
  }));

test("selections of several places at once, exactly", () =>
  withEditor({}, async (editor) => {
    const { uri, text, cursors } = await editor.open(
      "a.sprag",
      `// a comment <|>here
part Cover <|> "cover"
<|>
procedure P "p" { step inspect Cover[<|>1 + 2] } <|>`,
    );
    const found = await editor.connection.sendRequest<SelectionRange[]>("textDocument/selectionRange", {
      ...{ textDocument: { uri }, positions: cursors },
    });
    const lines = linesOf(text);
    const textsOf = ({ range: { start, end }, parent }: SelectionRange): readonly string[] => [
      text.slice(lines.offset(start.line) + start.character, lines.offset(end.line) + end.character),
      ...(parent === undefined ? [] : textsOf(parent)),
    ];
    expect(found.map(textsOf)).toEqual([
      ["here", "// a comment here", text],
      ['part Cover  "cover"', text],
      [text],
      [
        ...["1", "1 + 2", "Cover[1 + 2]", "inspect Cover[1 + 2]", "step inspect Cover[1 + 2]"],
        ...['procedure P "p" { step inspect Cover[1 + 2] }', text],
      ],
      [text],
    ]);
  }));

test("links from a folder below: up, beside, with blanks, and to a file that comes and goes", () =>
  withEditor({ files: { "lib/my parts.sprag": "", "lib/x.svg": "", "top.sprag": "" } }, async (editor) => {
    const { uri, text } = await editor.open(
      "lib/a.sprag",
      `use "my parts.sprag"
use "../top.sprag"
// use "my parts.sprag"
use "../../out.sprag"
use "late.sprag"
procedure P "p" { step { figure "x.svg" "see x.svg"  figure "late.svg" "x" } }
use "./my parts.sprag`,
    );
    const lines = linesOf(text);
    const linked = async (): Promise<readonly string[]> => {
      await editor.atRest();
      const found = await editor.connection.sendRequest<DocumentLink[]>("textDocument/documentLink", {
        textDocument: { uri },
      });
      return found.map(({ range: { start, end }, target }) => {
        const source = text.slice(lines.offset(start.line) + start.character, lines.offset(end.line) + end.character);
        return `${start.line} ${source} → ${target?.replace("file:///shop/", "")}`;
      });
    };
    const always = [
      ...["0 my parts.sprag → lib/my%20parts.sprag", "1 ../top.sprag → top.sprag", "5 x.svg → lib/x.svg"],
      "6 ./my parts.sprag → lib/my%20parts.sprag",
    ];
    expect(await linked()).toEqual(always);
    await editor.write("lib/late.sprag", "");
    await editor.write("lib/late.svg", "<svg/>");
    expect(await linked()).toEqual([
      ...always.slice(0, 2),
      ...["4 late.sprag → lib/late.sprag", "5 x.svg → lib/x.svg", "5 late.svg → lib/late.svg"],
      ...always.slice(3),
    ]);
    await editor.write("lib/late.sprag", null);
    await editor.write("lib/late.svg", null);
    expect(await linked()).toEqual(always);
  }));

test("links to files that are there, and none to one that is not", () =>
  inMain(async (editor) => {
    const found = await ask<DocumentLink[]>(editor, "documentLink");
    expect(found.map(({ range, target, tooltip }) => [textIn(range), target, tooltip])).toEqual([
      ["shop/library.sprag", editor.uri("shop/library.sprag"), "Open the file that is used: shop/library.sprag"],
      ["weights.csv", editor.uri("weights.csv"), "Open the table: weights.csv"],
      ["figures/cover.svg", editor.uri("figures/cover.svg"), "Open the figure: figures/cover.svg"],
    ]);
  }));

test("lenses: the steps with repeats written out, and who performs it", () =>
  inMain(async (editor) => {
    const found = await ask<CodeLens[]>(editor, "codeLens");
    expect(found.map(({ range, command }) => `${range.start.line} ${command?.title} ${command?.command}`)).toEqual([
      "15 8 steps · export sprag.export",
      "36 1 step · export sprag.export",
      "36 performed by 1 procedure sprag.showPlaces",
    ]);
    const line = TEXT.split("\n").indexOf("  perform Inner");
    const place = { start: { line, character: 10 }, end: { line, character: 15 } };
    expect(found[2]?.command?.arguments).toEqual([
      {
        uri: editor.uri("main.sprag"),
        at: { line: 36, character: 10 },
        places: [{ uri: editor.uri("main.sprag"), range: place }],
      },
    ]);
    expect(found[0]?.command?.arguments).toEqual([{ uri: editor.uri("main.sprag"), procedure: "Open" }]);
  }));

test("who performs it: each place in each file, counted by procedure", () => {
  const outer = 'use "main.sprag"\nprocedure Twice "twice" {\n  perform Inner\n  perform Inner\n}\n';
  return inMain(
    async (editor) => {
      await editor.atRest();
      const lens = (await ask<CodeLens[]>(editor, "codeLens")).at(-1);
      expect(lens?.command?.title).toBe("performed by 2 procedures");
      const [{ places }] = (lens?.command?.arguments ?? [{ places: [] }]) as [PlacesArguments];
      expect(
        places.map(({ uri, range: { start } }) => `${uri.split("/").at(-1)} ${start.line}:${start.character}`),
      ).toEqual(["main.sprag 33:10", "outer.sprag 2:10", "outer.sprag 3:10"]);
    },
    { files: { ...FILES, "outer.sprag": outer } },
  );
});

test("who performs it cannot be pressed where the client cannot show places", () =>
  inMain(
    async (editor) => {
      const commands = (await ask<CodeLens[]>(editor, "codeLens")).map(({ command }) => command?.command);
      expect(commands).toEqual(["sprag.export", "sprag.export", ""]);
    },
    { options: { commands: ["sprag.export"] } },
  ));

test("no lens where the client has no command for it", () =>
  inMain(async (editor) => expect(await ask(editor, "codeLens")).toEqual([]), { options: { commands: [] } }));

function inMain(run: (editor: Editor) => Promise<void>, setting: EditorSetting = {}): Promise<void> {
  return withEditor({ files: FILES, ...setting }, async (editor) => {
    await editor.open("main.sprag");
    await run(editor);
  });
}

function ask<Answer>(editor: Editor, what: string, params: object = {}): Promise<Answer> {
  const textDocument = { uri: editor.uri("main.sprag") };
  return editor.connection.sendRequest<Answer>(`textDocument/${what}`, { textDocument, ...params });
}

function tree(symbols: readonly DocumentSymbol[], indent = ""): readonly string[] {
  return symbols.flatMap(({ name, detail, children = [], range, selectionRange }) => {
    expect(textIn(range)).toContain(textIn(selectionRange));
    return [`${indent}${name}${detail === undefined ? "" : ` (${detail})`}`, ...tree(children, `${indent}  `)];
  });
}

function textIn({ start, end }: DocumentSymbol["range"]): string {
  const lines = linesOf(TEXT);
  return TEXT.slice(lines.offset(start.line) + start.character, lines.offset(end.line) + end.character);
}
