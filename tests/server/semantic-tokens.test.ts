// What each word is told to be: types and modifiers, whole files, ranges, and what changed since.

import { describe, expect, test } from "vitest";
import type { Range, SemanticTokens, SemanticTokensDelta } from "vscode-languageserver-protocol";
import { type Editor, withEditor } from "#harness/editor.ts";
import { plainTexts } from "#harness/samples.ts";
import { offsetsIn } from "#harness/thorough.ts";
import { TOKEN_MODIFIERS, TOKEN_TYPES } from "#server/semantic-tokens.ts";
import { linesOf } from "#syntax/lines.ts";
import { HURT } from "./hurt-texts.ts";

const full = (editor: Editor, path: string): Promise<SemanticTokens> =>
  editor.connection.sendRequest("textDocument/semanticTokens/full", { textDocument: { uri: editor.uri(path) } });

interface Told {
  readonly text: string;
  readonly offset: number;
  /** `variable part fastener`. */
  readonly kind: string;
}

/** The numbers of the protocol read as any editor reads them. */
function read(text: string, data: readonly number[]): readonly Told[] {
  const lines = linesOf(text);
  const told: Told[] = [];
  let [line, character] = [0, 0];
  for (let at = 0; at < data.length; at += 5) {
    const [down = 0, right = 0, length = 0, type = 0, bits = 0] = data.slice(at, at + 5);
    character = down > 0 ? right : character + right;
    line += down;
    const offset = lines.offset(line) + character;
    const modifiers = TOKEN_MODIFIERS.filter((_, bit) => (bits & (1 << bit)) !== 0);
    told.push({ text: text.slice(offset, offset + length), offset, kind: [TOKEN_TYPES[type], ...modifiers].join(" ") });
  }
  return told;
}

const TEXT = `part Cover "cover"
part Screw[1..4] "screw" { secures Cover torque 40 N·m }
tool Wrench "wrench"
consumable Grease "grease"
energy Supply "supply" { voltage 400 V AC }
option Extent "extent" { Full Reseal }
part Valve "valve" { states open, shut }
source Manual "manual"
value Final = 45 N·m
procedure Work "Work" {
  warning burn "Hot." avoid "Wait."
  task Closing "Close" {
    repeat n from 1 to 4 { step install Screw[n] in Nowhere[n + 1] }
    step Torque {
      tighten Screw[all] to Final, 12 foo with Wrench
      per Manual "6"
      allow order.enclosed because "Yes."
    }
    step lubricate Cover with Grease after Torque // so
    when Extent is Full { step isolate Supply }
    step "x" needs Valve is shut
  }
}
`;

describe("each word", () => {
  test.each([
    ["part", "keyword"],
    ["Cover", "variable declaration part"],
    ["Screw", "variable declaration part fastener"],
    ["secures", "keyword"],
    ["40", "number"],
    ["N·m", "number unit"],
    ['"screw"', "string"],
    ["Wrench", "class declaration tool"],
    ["Grease", "type declaration consumable"],
    ["Supply", "event declaration energy"],
    ["Extent", "enum declaration option"],
    ["Full", "enumMember declaration choice"],
    ["open", "enumMember declaration state"],
    ["Manual", "namespace declaration source"],
    ["Final", "variable declaration value"],
    ["Work", "function declaration"],
    ["warning", "keyword safety"],
    ["burn", "type hazard"],
    ["Closing", "label declaration"],
    ["n", "parameter declaration"],
    ["install", "method"],
    ["Nowhere", "variable unknown"],
    ["+", "operator"],
    ["tighten", "method"],
    ["all", "keyword"],
    ["foo", "number unknown unit"],
    ["enclosed", "property"],
    ["// so", "comment"],
    ["shut", "enumMember declaration state"],
  ])("%s is %s", (word, kind) =>
    withEditor({}, async (editor) => {
      const { text } = await editor.open("a.sprag", TEXT);
      const told = read(text, (await full(editor, "a.sprag")).data);
      expect(told.find((one) => one.text === word)?.kind).toBe(kind);
    }),
  );

  test.each([
    ["Cover with", "variable part"],
    ["Screw[n]", "variable part fastener"],
    ["Wrench\n", "class tool"],
    ["Grease after", "type consumable"],
    ["Supply }", "event energy"],
    ["Full {", "enumMember choice"],
    ["shut\n", "enumMember state"],
    ["n]", "parameter"],
    ["Torque //", "label"],
    ["Final,", "variable value"],
    ["is shut", "keyword"],
  ])("used as in %j it is %s", (place, kind) =>
    withEditor({}, async (editor) => {
      const { text } = await editor.open("a.sprag", TEXT);
      const told = read(text, (await full(editor, "a.sprag")).data);
      expect(told.find(({ offset }) => offset === text.lastIndexOf(place))?.kind).toBe(kind);
    }),
  );

  test("a keyword that is used as a name is a name", () =>
    withEditor({}, async (editor) => {
      const { text } = await editor.open("a.sprag", 'part torque "x"\nprocedure W "w" { step inspect torque }\n');
      const told = read(text, (await full(editor, "a.sprag")).data).filter((one) => one.text === "torque");
      expect(told.map(({ kind }) => kind)).toEqual(["variable declaration part", "variable part"]);
    }));

  test("a part's own name of an instance is the same in brackets as where it is declared, unless a repeat means something else", () =>
    withEditor({}, async (editor) => {
      const { text } = await editor.open(
        "a.sprag",
        'part Foot[left, right] "foot"\nprocedure W "w" {\n  step install Foot[left], Foot[other]\n  repeat right in 1, 2 { step inspect Foot[right] }\n}\n',
      );
      const told = read(text, (await full(editor, "a.sprag")).data);
      const kinds = (name: string) => told.filter((one) => one.text === name).map(({ kind }) => kind);
      expect(kinds("left")).toEqual(["enumMember declaration part", "enumMember part"]);
      expect(kinds("other")).toEqual(["parameter"]);
      expect(kinds("right")).toEqual(["enumMember declaration part", "parameter declaration", "parameter"]);
    }));

  test("a name from a used file is known by its kind", () =>
    withEditor({ files: { "t.sprag": 'tool Wrench "wrench"\n' } }, async (editor) => {
      const { text } = await editor.open("a.sprag", 'use "t.sprag"\nprocedure W "w" { step do "x" with Wrench }\n');
      const told = read(text, (await full(editor, "a.sprag")).data);
      expect(told.find((one) => one.text === "Wrench")?.kind).toBe("class tool");
    }));
});

test("texts of several lines are told line by line", () =>
  withEditor({}, async (editor) => {
    const { text } = await editor.open("a.sprag", '/* one\n   two */\nfact Done """\n  a\n\n  b\n"""\n');
    const told = read(text, (await full(editor, "a.sprag")).data);
    expect(told.map((one) => one.text)).toEqual(["/* one", "   two */", "fact", "Done", '"""', "  a", "  b", '"""']);
  }));

test("every letter of the samples belongs to one token, in order, and no name in them is unknown", () =>
  withEditor({ files: Object.fromEntries(plainTexts), settings: { checkFolder: false } }, async (editor) => {
    let count = 0;
    for (const [path, plain] of plainTexts) {
      if (path.startsWith("faulty/")) continue;
      await editor.open(path);
      const told = read(plain, (await full(editor, path)).data);
      let end = 0;
      for (const { offset, text, kind } of told) {
        expect(plain.slice(end, offset)).toMatch(/^[^\p{L}\p{N}"]*$/u);
        expect(`${path} ${text} ${kind}`).not.toContain("unknown");
        end = offset + text.length;
        count++;
      }
    }
    console.log(`tokens looked at: ${count}`);
    expect(count).toBeGreaterThan(3000);
  }));

describe("parts and changes", () => {
  test("a range has its tokens as the whole has them", () =>
    withEditor({}, async (editor) => {
      const { text, selection } = await editor.open(
        "a.sprag",
        TEXT.replace("  task Closing", "<[  task Closing").replace("Torque {", "Torque {]>"),
      );
      const all = read(text, (await full(editor, "a.sprag")).data);
      const textDocument = { uri: editor.uri("a.sprag") };
      const params = { textDocument, range: selection as Range };
      const some = await editor.connection.sendRequest<SemanticTokens>("textDocument/semanticTokens/range", params);
      const [from, to] = [text.indexOf("  task Closing"), text.indexOf("Torque {") + 8];
      expect(read(text, some.data)).toEqual(all.filter(({ offset }) => offset >= from && offset < to));
    }));

  test.each([
    ["of no length", [0, 0, 0, 0], []],
    ["inside a word", [0, 7, 0, 8], ["Cover"]],
    ["from the end of one word to the start of the next", [0, 10, 0, 11], []],
    ["one line", [0, 0, 1, 0], ["part", "Cover", '"cover"']],
    ["in a comment of several lines, which is one", [2, 0, 2, 3], ["/* two", "lines */"]],
    ["in a text of several lines, which is one", [3, 0, 4, 1], ['"""', " a", " b", '"""']],
    ["past the end", [98, 0, 99, 0], []],
  ] as const)("a range %s", (_title, [line, character, endLine, endCharacter], texts) =>
    withEditor({}, async (editor) => {
      const { uri, text } = await editor.open(
        "a.sprag",
        'part Cover "cover"\n/* two\nlines */ part Lid """\n a\n b\n"""\n',
      );
      const range = { start: { line, character }, end: { line: endLine, character: endCharacter } };
      const some = await editor.connection.sendRequest<SemanticTokens>("textDocument/semanticTokens/range", {
        ...{ textDocument: { uri }, range },
      });
      const told = read(text, some.data);
      expect(told.map((one) => one.text)).toEqual(texts);
      const all = read(text, (await full(editor, "a.sprag")).data);
      expect(told).toEqual(all.filter(({ offset }) => told.some((one) => one.offset === offset)));
    }),
  );

  test("what changed since, put into what was told, is what is told of the whole", () =>
    withEditor({}, async (editor) => {
      await editor.open("a.sprag", TEXT);
      const textDocument = { uri: editor.uri("a.sprag") };
      let { data, resultId } = await full(editor, "a.sprag");
      const texts = [TEXT, TEXT.replace("step lubricate", "\n  step clean"), TEXT.replace("Grease", "Oil"), "", TEXT];
      for (const text of texts) {
        await editor.change("a.sprag", text);
        const delta = await editor.connection.sendRequest<SemanticTokensDelta>(
          "textDocument/semanticTokens/full/delta",
          { textDocument, previousResultId: resultId },
        );
        for (const { start, deleteCount, data: put = [] } of delta.edits)
          data = [...data.slice(0, start), ...put, ...data.slice(start + deleteCount)];
        resultId = delta.resultId;
        expect(data).toEqual((await full(editor, "a.sprag")).data);
        // Asking for the whole began a new count.
        ({ data, resultId } = await full(editor, "a.sprag"));
      }
    }));

  test("where nothing is known of what was told, all is told", () =>
    withEditor({}, async (editor) => {
      await editor.open("a.sprag", TEXT);
      const textDocument = { uri: editor.uri("a.sprag") };
      const answer = await editor.connection.sendRequest("textDocument/semanticTokens/full/delta", {
        textDocument,
        previousResultId: "long ago",
      });
      expect(answer).toMatchObject({ data: (await full(editor, "a.sprag")).data });
    }));
});

test("in damaged texts, cut anywhere, each token lies inside the text and behind the one before", () =>
  withEditor({}, async (editor) => {
    for (const [name, text] of Object.entries(HURT)) {
      await editor.open(`${name}.sprag`);
      for (const cut of offsetsIn(text, 10)) {
        const part = text.slice(0, cut);
        await editor.change(`${name}.sprag`, part);
        let end = 0;
        for (const token of read(part, (await full(editor, `${name}.sprag`)).data)) {
          expect(token.offset).toBeGreaterThanOrEqual(end);
          end = token.offset + token.text.length;
          expect(token.text).not.toBe("");
        }
      }
    }
  }));

test("a client that lays them over its own colours gets names alone", async () => {
  const kinds = async (augmentsSyntaxTokens: boolean): Promise<readonly string[]> => {
    const semanticTokens = { augmentsSyntaxTokens, requests: {}, tokenTypes: [], tokenModifiers: [], formats: [] };
    return withEditor({ capabilities: { textDocument: { semanticTokens } } }, async (editor) => {
      await editor.open("a.sprag", TEXT);
      return read(TEXT, (await full(editor, "a.sprag")).data).map(({ text, kind }) => `${text} ${kind}`);
    });
  };
  const plain = /^\S.* (?:keyword|method|string|number|operator|comment)(?: \w+)*$/s;
  const all = await kinds(false);
  expect(all.filter((one) => plain.test(one)).length).toBeGreaterThan(20);
  expect(await kinds(true)).toEqual(all.filter((one) => !plain.test(one)));
});
