// Layout on request: whole files, some lines, as typed; damaged files, line ends, and how small the edits are.

import { describe, expect, test } from "vitest";
import type { Position, Range, TextEdit } from "vscode-languageserver-protocol";
import { type Editor, edited, withEditor } from "#harness/editor.ts";
import { plainTexts } from "#harness/samples.ts";
import { offsetsIn } from "#harness/thorough.ts";
import { formatText } from "#syntax/format.ts";
import { linesOf } from "#syntax/lines.ts";
import { parseText } from "#syntax/parse.ts";
import { HURT } from "./hurt-texts.ts";

const TABS = { tabSize: 2, insertSpaces: true };

async function whole(editor: Editor, path: string): Promise<TextEdit[]> {
  const textDocument = { uri: editor.uri(path) };
  return (await editor.connection.sendRequest("textDocument/formatting", {
    textDocument,
    options: TABS,
  })) as TextEdit[];
}

async function lines(editor: Editor, path: string, range: Range): Promise<TextEdit[]> {
  const textDocument = { uri: editor.uri(path) };
  const params = { textDocument, range, options: TABS };
  return (await editor.connection.sendRequest("textDocument/rangeFormatting", params)) as TextEdit[];
}

async function typed(editor: Editor, path: string, position: Position, ch: string): Promise<TextEdit[]> {
  const textDocument = { uri: editor.uri(path) };
  const params = { textDocument, position, ch, options: TABS };
  return (await editor.connection.sendRequest("textDocument/onTypeFormatting", params)) as TextEdit[];
}

/** The marked text after what the editor asks for. */
async function textAfter(
  marked: string,
  ask: (editor: Editor, path: string, opened: { cursor: Position; selection: Range }) => Promise<TextEdit[]>,
): Promise<string> {
  return withEditor({}, async (editor) => {
    const opened = await editor.open("a.sprag", marked);
    return edited(opened.text, await ask(editor, "a.sprag", opened));
  });
}

const UNTIDY = `part   Cover "cover"{mass 31 kg}
procedure   Work "Work"{
    step   install    Cover
  step inspect Cover
       task "Closing"  {
step   remove Cover
}
}
`;

describe("a whole file", () => {
  test.each([...plainTexts.keys()].filter((path) => !path.startsWith("faulty/")))(
    "%s is as the command has it",
    (path) =>
      withEditor({}, async (editor) => {
        const untidy = (plainTexts.get(path) ?? "").replace(/^ +/gm, "").replace(/ \{$/gm, "{");
        await editor.open("a.sprag", untidy);
        const formatted = formatText(parseText(untidy, "a.sprag"));
        expect(formatted).toMatchObject({ ok: true });
        expect(edited(untidy, await whole(editor, "a.sprag"))).toBe(formatted.ok && formatted.text);
      }),
  );

  test("no edit touches a word that stays", () =>
    withEditor({}, async (editor) => {
      const { text } = await editor.open("a.sprag", UNTIDY);
      const at = linesOf(text);
      const edits = await whole(editor, "a.sprag");
      expect(edits.length).toBeGreaterThan(5);
      for (const { range, newText } of edits) {
        const old = text.slice(
          at.offset(range.start.line) + range.start.character,
          at.offset(range.end.line) + range.end.character,
        );
        expect(`${old}${newText}`).toMatch(/^\s+$/);
      }
    }));

  test("a file laid out as it should be gets no edit", () =>
    withEditor({}, async (editor) => {
      await editor.open("a.sprag", 'part Cover "cover" { mass 31 kg }\n');
      expect(await whole(editor, "a.sprag")).toEqual([]);
    }));

  test("CR LF stays", async () => {
    const made = await textAfter(UNTIDY.replaceAll("\n", "\r\n"), whole);
    expect(made.replaceAll("\r\n", "\n")).toBe(await textAfter(UNTIDY, whole));
    expect(made).not.toMatch(/(?<!\r)\n/);
  });

  test("one with a finding of form is left alone", () =>
    withEditor({}, async (editor) => {
      await editor.open("a.sprag", `${UNTIDY}\npart part {`);
      expect(await whole(editor, "a.sprag")).toEqual([]);
    }));
});

describe("some lines", () => {
  test("only these change", async () => {
    const marked = UNTIDY.replace("    step   install    Cover", "<[    step   install    Cover]>");
    expect(await textAfter(marked, (editor, path, { selection }) => lines(editor, path, selection))).toBe(
      UNTIDY.replace("    step   install    Cover", "  step install Cover"),
    );
  });

  test("whole lines end before the next", async () => {
    const marked = UNTIDY.replace("    step   install    Cover\n", "<[    step   install    Cover\n]>");
    expect(await textAfter(marked, (editor, path, { selection }) => lines(editor, path, selection))).toBe(
      UNTIDY.replace("    step   install    Cover", "  step install Cover"),
    );
  });

  test("a sound declaration in a file that has a fault elsewhere", async () => {
    const marked = '<[part   Cover   "cover"]>\npart part {\n';
    expect(await textAfter(marked, (editor, path, { selection }) => lines(editor, path, selection))).toBe(
      'part Cover "cover"\npart part {\n',
    );
  });

  test("a procedure with the fault in it is left alone", async () => {
    const marked = 'procedure Work "Work" {\n  <[step   inspect]>\n}\n';
    const { length } = marked.replace(/<\[|\]>/g, "");
    expect(await textAfter(marked, (editor, path, { selection }) => lines(editor, path, selection))).toHaveLength(
      length,
    );
  });
});

describe("as typed", () => {
  test("a closing brace lays out its block", async () => {
    const marked = UNTIDY.replace("remove Cover\n}", "remove Cover\n}<|>");
    expect(await textAfter(marked, (editor, path, { cursor }) => typed(editor, path, cursor, "}"))).toBe(
      UNTIDY.replace(
        '       task "Closing"  {\nstep   remove Cover\n}',
        '  task "Closing" {\n    step remove Cover\n  }',
      ),
    );
  });

  test.each([
    [
      "a step, on one line as the formatter has it",
      "  step {\n inspect A\n}<|>\n  step   x",
      "  step { inspect A }\n  step   x",
    ],
    ["on the line of its opening", "  step { inspect   A }<|>\n  step   x", "  step { inspect A }\n  step   x"],
    [
      "of a branch, not the next one",
      '  when X is Y {\nstep   inspect   A\n    }<|> otherwise {\n step   "x"\n  }',
      '  when X is Y {\n    step inspect A\n  } otherwise {\n step   "x"\n  }',
    ],
    ["none that cannot be read", "    task {\nstep   inspec   A\n  }<|>", "    task {\nstep   inspec   A\n  }"],
    ["none in a text", '  step   "a }<|> b"', '  step   "a } b"'],
    ["none in a comment", "  // a   }<|>", "  // a   }"],
  ])("a closing brace and its block: %s", async (_title, marked, wanted) => {
    const round = (text: string): string => `procedure P "p" {\n${text}\n}\n`;
    const brace = (editor: Editor, path: string, { cursor }: { cursor: Position }) => typed(editor, path, cursor, "}");
    expect(await textAfter(round(marked), brace)).toBe(round(wanted));
    const withCr = (text: string): string => round(text).replaceAll("\n", "\r\n");
    expect(await textAfter(withCr(marked), brace)).toBe(withCr(wanted));
  });

  test.each([
    [
      "the whole procedure",
      'procedure P "p" {\nstep   inspect   A\n    }<|>\n',
      'procedure P "p" {\n  step inspect A\n}\n',
    ],
    [
      "a declaration, not the next one",
      'part A "a" {\nmass   3 kg\n    }<|>\npart   B "b"\n',
      'part A "a" { mass 3 kg }\npart   B "b"\n',
    ],
  ])("a closing brace at the margin: %s", async (_title, marked, wanted) => {
    expect(await textAfter(marked, (editor, path, { cursor }) => typed(editor, path, cursor, "}"))).toBe(wanted);
  });

  test("a new line lays out the line before and goes as far in as that", async () => {
    const marked = UNTIDY.replace("    step   install    Cover\n", "    step   install    Cover\n<|>\n");
    expect(await textAfter(marked, (editor, path, { cursor }) => typed(editor, path, cursor, "\n"))).toBe(
      UNTIDY.replace("    step   install    Cover\n", "  step install Cover\n    \n"),
    );
  });

  test.each([
    ["behind an opening brace one deeper", "task {\n<|>", "task {\n  "],
    ["before a closing brace as far as its block", "task {\n  step inspect A\n  <|>}", "task {\n  step inspect A\n}"],
    ["in a text that cannot be read", "  step inst\n<|>", "  step inst\n  "],
    ["on the first line nothing", "<|>", ""],
  ])("%s", async (_title, marked, wanted) => {
    expect(await textAfter(marked, (editor, path, { cursor }) => typed(editor, path, cursor, "\n"))).toBe(wanted);
  });
});

test("all over damaged texts it answers, and never changes a word", () =>
  withEditor({}, async (editor) => {
    for (const [name, text] of Object.entries(HURT)) {
      await editor.open(`${name}.sprag`);
      await editor.change(`${name}.sprag`, text);
      const at = linesOf(text);
      const words = text.normalize("NFC").replace(/\s+/g, "");
      // Typing is three requests a place.
      for (const offset of offsetsIn(text, 10)) {
        const position = at.position(offset);
        const range = { start: position, end: at.position(offset + 5) };
        for (const edits of [
          await typed(editor, `${name}.sprag`, position, "}"),
          await typed(editor, `${name}.sprag`, position, "\n"),
          await lines(editor, `${name}.sprag`, range),
        ])
          expect(edited(text, edits).replace(/\s+/g, "")).toBe(words);
      }
      expect(edited(text, await whole(editor, `${name}.sprag`)).replace(/\s+/g, "")).toBe(words);
    }
  }));
