// A writer who typed any of the samples could have had each word of it from completion: the text is cut before a word (what
// follows on later lines stays), and the word must be among what is offered. New names are the writer's own and not asked for.
import { type AstNode, isReference } from "langium";
import { expect, test } from "vitest";
import type { CompletionItem } from "vscode-languageserver";
import { openSamples, plainTexts } from "#harness/samples.ts";
import { leavesOf, type Token } from "#harness/tokens.ts";
import { completionsAt } from "#server/completion.ts";
import type { Folder } from "#server/folder.ts";
import { type FileView, viewOf } from "#server/view.ts";

/** Of so many words one is asked for; each run of the suite the same. */
const EVERY = Number(process.env.SPRAG_EVERY ?? 37);
/** Words that the grammar or the names in reach cannot tell: a word that stands there by mistake, in a sample of that mistake. */
const ENOUGH = 0.97;

const folder = { paths: () => [...plainTexts.keys()], uriOf: (path: string) => path } as unknown as Folder;
const CAN = { snippets: true, markdown: true };

interface Asked {
  readonly path: string;
  readonly text: string;
  readonly word: Token;
  readonly typed: number;
}

const whole = openSamples();

function* words(): Generator<Omit<Asked, "typed">> {
  let at = 0;
  for (const path of plainTexts.keys()) {
    const parsed = whole.loaded.parsed.get(path);
    for (const word of leavesOf(parsed?.file.$cstNode)) {
      if (!/^[\p{L}_%°'µ]/u.test(word.text) || isNewName(word)) continue;
      if (at++ % EVERY === 0) yield { path, text: parsed?.text ?? "", word };
    }
  }
}

/** The name that a declaration gives; a hazard or an index only names. */
function isNewName({ astNode, text }: Token): boolean {
  const { name, $type } = astNode as AstNode & { readonly name?: unknown };
  if (name !== text || $type === "HazardUse" || $type === "IndexName") return false;
  return !Object.values(astNode).some((value) => isReference(value) && value.$refText === text);
}

/** As it is while the word is typed: the rest of its line is not there yet. */
function cutView({ path, text, word, typed }: Asked): FileView | null {
  const lineEnd = text.indexOf("\n", word.offset);
  const cut = text.slice(0, word.offset + typed) + (lineEnd < 0 ? "" : text.slice(lineEnd));
  const uses = whole.loaded.models.get(path)?.uses ?? [];
  const known = [path, ...uses.flatMap((use) => use.path ?? [])].filter((one) => plainTexts.has(one));
  return viewOf(folder, openSamples(new Map([[path, cut]]), [...new Set(known)]), path);
}

function offers(view: FileView, { text, word, typed }: Asked): boolean {
  const position = view.lines.position(word.offset + typed);
  return completionsAt(view, position, CAN).items.some((item) => {
    const from = startOf(view, item);
    const [wanted, given] = [text.slice(from, word.end), item.textEdit?.newText.replace(/^ /, "") ?? ""];
    return given === wanted || (given.startsWith(wanted) && !/^\w/.test(given.slice(wanted.length)));
  });
}

function startOf(view: FileView, { textEdit }: CompletionItem): number {
  if (textEdit === undefined || !("range" in textEdit)) return -1;
  const { line, character } = textEdit.range.start;
  return view.lines.offset(line) + character;
}

test.each([
  ["nothing of it is typed", 0],
  ["its first letter is typed", 1],
])("each word of the samples is offered where %s", { timeout: 300_000 }, (_, typed) => {
  const missed: string[] = [];
  let asked = 0;
  for (const one of words()) {
    if (typed >= one.word.text.length) continue;
    const view = cutView({ ...one, typed });
    if (view === null) throw new Error(`no ${one.path}`);
    asked++;
    if (offers(view, { ...one, typed })) continue;
    missed.push(`${one.path}: ${one.text.slice(Math.max(0, one.word.offset - 25), one.word.offset)}«${one.word.text}»`);
  }
  console.log(`${asked} words asked for, ${missed.length} not offered`, ...missed);
  expect(asked).toBeGreaterThan(50);
  expect(1 - missed.length / asked).toBeGreaterThanOrEqual(ENOUGH);
});
