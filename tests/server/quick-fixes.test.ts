// Every fix of every finding in the faulty samples, applied through the editor: its finding is gone, no other came, and the text
// is laid out. The same for every `allow` that is offered, but for the reason that its writer still owes.
import { expect, test } from "vitest";
import type { CodeAction, Diagnostic } from "vscode-languageserver-protocol";
import { type Editor, withEditor } from "#harness/editor.ts";
import { isFaulty, sampleTexts } from "#harness/samples.ts";
import { oneIn } from "#harness/thorough.ts";
import { formatEdits } from "#syntax/format.ts";
import { parseText } from "#syntax/parse.ts";

// As they stand on disk: their marks are comments, and laid out like all else.
const files = Object.fromEntries([...sampleTexts].filter(([path]) => isFaulty(path) || path.startsWith("shop/")));
const faulty = Object.keys(files).filter((path) => isFaulty(path) && !path.includes("parts/"));
/** What is found with a crib holds its own. */
const settingOf = (path: string) => ({ files, settings: { checkFolder: false, crib: path } });

test.each(oneIn(3, faulty))("%s", (path) =>
  withEditor(settingOf(path), async (editor) => {
    const { text } = await editor.open(path);
    const before = await editor.diagnostics(path);
    expect(before, "a faulty sample has findings").not.toEqual([]);
    for (const [at, diagnostic] of before.entries()) {
      for (const action of await actionsAt(editor, path, diagnostic)) {
        await editor.apply(action.edit ?? {});
        const after = await editor.diagnostics(path);
        expectMended(
          action,
          before,
          at,
          action.title.startsWith("Allow ") ? withoutOwed(editor.text(path), after) : after,
        );
        expectLaidOut(editor.text(path), text, `${path}: ${action.title}`);
        await editor.change(path, text);
        expect(await editor.diagnostics(path)).toHaveLength(before.length);
      }
    }
  }),
);

test("most kinds of findings that a text can mend by itself have a fix", async () => {
  const fixes = new Map<string, number>();
  await withEditor(settingOf(""), async (editor) => {
    for (const path of faulty) {
      await editor.open(path);
      for (const diagnostic of await editor.diagnostics(path))
        for (const { title } of await actionsAt(editor, path, diagnostic))
          if (!title.startsWith("Allow"))
            fixes.set(String(diagnostic.code), (fixes.get(String(diagnostic.code)) ?? 0) + 1);
      await editor.close(path);
    }
  });
  console.log(`fixes tried: ${[...fixes.values()].reduce((so, one) => so + one, 0)} of ${fixes.size} codes`);
  expect(fixes.size).toBeGreaterThanOrEqual(20);
});

async function actionsAt(editor: Editor, path: string, diagnostic: Diagnostic): Promise<readonly CodeAction[]> {
  const actions = await editor.connection.sendRequest<CodeAction[]>("textDocument/codeAction", {
    textDocument: { uri: editor.uri(path) },
    range: diagnostic.range,
    context: { diagnostics: [diagnostic] },
  });
  for (const { edit } of actions)
    for (const change of edit?.documentChanges ?? [])
      expect("textDocument" in change && change.textDocument.version).not.toBeUndefined();
  return actions;
}

/** All that was found before is found after but for this one, and nothing else. */
function expectMended(
  { title }: CodeAction,
  before: readonly Diagnostic[],
  at: number,
  after: readonly Diagnostic[],
): void {
  const others = before.filter((_, other) => other !== at).map(keyOf);
  const left = after.filter((one) => !isAllowed(one));
  if (title.startsWith("Allow ")) {
    const [allowed] = after.filter(isAllowed);
    expect(allowed, title).toMatchObject({ code: before[at]?.code, severity: 4 });
  }
  for (const finding of left.map(keyOf)) {
    const index = others.indexOf(finding);
    expect(index, `after “${title}”: ${finding}`).toBeGreaterThanOrEqual(0);
    others.splice(index, 1);
  }
}

/** What is found beside the reason that an offered `allow` leaves to its writer: exactly that is found, and at its line. */
function withoutOwed(text: string, after: readonly Diagnostic[]): readonly Diagnostic[] {
  const [line, ...more] = text.split("\n").flatMap((written, at) => (written.includes(OWED) ? [at] : []));
  expect(more, "one allow whose reason is owed").toEqual([]);
  const owed = after.filter(({ code, range }) => code === "trace.weak-allow" && range.start.line === line);
  expect(owed).toHaveLength(1);
  return after.filter((one) => !owed.includes(one));
}

const OWED = ' because "…"';

function isAllowed({ message }: Diagnostic): boolean {
  return String(message).includes("\nAllowed: ");
}

function keyOf({ code, message }: Diagnostic): string {
  return `${code} ${String(message).split("\n")[0]}`;
}

/** Nothing more to lay out than before; nothing at all in what could not be read before. */
function expectLaidOut(text: string, before: string, what: string): void {
  const [was, is] = [parseText(before, "x.sprag"), parseText(text, "x.sprag")];
  expect(formatEdits(is).length, what).toBeLessThanOrEqual(formatEdits(was).length);
  // Reading must not have become worse.
  if (was.problems.length === 0) expect(is.problems, what).toEqual([]);
}
