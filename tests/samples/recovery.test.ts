// A slip costs the statement it stands in and nothing else, over all findings: a token of a sample is deleted, and what is
// found elsewhere, in this file and in those that use it, stays as it was.
import { type AstNode, AstUtils } from "langium";
import { expect, test } from "vitest";
import * as ast from "#grammar/generated/ast.ts";
import { openSamples, plainTexts } from "#harness/samples.ts";
import { oneIn } from "#harness/thorough.ts";
import { leavesOf, type Place, statementOf, type Token } from "#harness/tokens.ts";
import { readUnit } from "#quantity/unit.ts";
import { parseText } from "#syntax/parse.ts";
import { resolveUse } from "#syntax/scope.ts";
import type { Workspace } from "#workspace/workspace.ts";

/** Of all deletions one in so many is tried: as many as fit a quick test, and far more in a thorough one. */
const STRIDE = 120;
const THOROUGH_STRIDE = 10;
/** Words that could have stood in the gap, beside all those of the file. */
const VERBS = ["install", "remove", "tighten", "loosen", "isolate", "restore", "turn", "inspect", "gives", "not"];

/** A finding, its place as in the sound text. */
interface Found extends Place {
  readonly path: string;
  readonly code: string;
  readonly message: string;
  /** All that it says. */
  readonly words: string;
  /** Other places in the file in hand that it speaks of. */
  readonly others: readonly Place[];
}

/** One file with those it uses and those that use it. */
interface Sample {
  readonly path: string;
  readonly text: string;
  readonly tokens: readonly Token[];
  /** It and the files that use it. */
  readonly checked: readonly string[];
  readonly workspace: Workspace;
  readonly findings: readonly Found[];
}

// A text that has a slip of form already is left out: two of them beside each other can be read in more ways than one.
const files = [...plainTexts]
  .filter(([path]) => !path.startsWith("faulty/syntax."))
  .map(([path, text]) => parseText(text, path));
const uses = new Map(
  files.map(({ path, file }) => [path, file.items.filter(ast.isUse).map((use) => resolveUse(path, use.path) ?? "")]),
);
const samples = files.map(({ path, text, file }): Sample => {
  const checked = closure(path, (from) => [...uses.keys()].filter((user) => uses.get(user)?.includes(from)));
  const around = new Set(checked.flatMap((one) => closure(one, (from) => uses.get(from) ?? [])));
  const workspace = openSamples(new Map(), [...around]);
  return {
    path,
    text,
    tokens: leavesOf(file.$cstNode),
    checked,
    workspace,
    findings: foundIn(workspace, path, checked),
  };
});

test("a deleted token changes no finding outside its step or declaration", { timeout: 1_800_000 }, () => {
  const deletions = samples.flatMap((sample) => sample.tokens.map((token) => ({ sample, token })));
  const tried = oneIn(STRIDE, deletions, THOROUGH_STRIDE);
  const wrong: string[] = [];
  let told = 0;
  for (const { sample, token } of tried) {
    const after = withWord(sample, token, "");
    if (!after.some((one) => one.code.startsWith("syntax."))) continue;
    told++;
    const statement = statementOf(token);
    const isOutside = (one: Found): boolean => one.path !== sample.path || !statement.some((own) => meets(own, one));
    const where = `${sample.path}:${token.range.start.line + 1} without “${token.text}”`;
    const inside = sample.findings.filter((one) => !isOutside(one));
    for (const one of after.filter(isOutside).filter(missingIn(sample.findings)))
      if (!inside.some((first) => isToldOnce(first, one))) wrong.push(`${where}: new ${line(one)}`);
    for (const one of sample.findings.filter(isOutside).filter(missingIn(after)))
      if (!hangsOn(one, sample, token)) wrong.push(`${where}: gone ${line(one)}`);
  }
  console.log(
    `recovery: ${told} of ${tried.length} deletions told, of ${deletions.length} tokens; ${wrong.length} wrong`,
  );
  expect(wrong).toEqual([]);
  expect(told).toBeGreaterThan(0.7 * tried.length);
});

/** What is so at several places is told at the first; where that cannot be read any more, at the next. */
function isToldOnce(first: Found, next: Found): boolean {
  return first.code === next.code && first.message === next.message && first.start < next.start;
}

/**
 * Whether a finding may go with the token: it speaks of a place in the statement, of what is declared there, or of what a
 * line names that lost its verb and so may have done anything to it, or that without its first word can be `begin with` or
 * `finish with`; it is of the direction in which a ring is
 * filled, and the token of a line that may fill it; it would not
 * have come if nobody had written the statement, or with other quantities, since it is worked out with what that says; or some other word in the gap would have made the text sound and taken
 * the finding away, so that nobody can know. That nothing uses a name, or an `allow`, can be told of no text with a line
 * that could not be read.
 */
function hangsOn(finding: Found, sample: Sample, token: Token): boolean {
  if (finding.code === "names.unused" || finding.code === "trace.unused-allow") return true;
  const statement = statementOf(token);
  if (finding.others.some((place) => statement.some((own) => meets(own, place)))) return true;
  const head = AstUtils.getContainerOfType(token.astNode, isHeadLine) ?? actionWithout(token);
  if (head !== undefined && namesIn(head).some((name) => finding.words.includes(name))) return true;
  // A line that puts in what cannot be read may have filled any place of a ring.
  if (finding.code === "order.direction" && AstUtils.getContainerOfType(token.astNode, ast.isInstall) !== undefined)
    return true;
  const declared = AstUtils.getContainerOfType(token.astNode, ast.isDeclaration);
  if (declared !== undefined && "name" in declared && finding.words.includes(declared.name)) return true;
  const unsaid = withoutAll(sample, statement).find((one) => keyOf(one) === keyOf(finding));
  if (unsaid === undefined || quantitiesIn(unsaid) !== quantitiesIn(finding)) return true;
  const words = new Set([...VERBS, ...sample.tokens.map(({ text }) => text)]);
  return [...words].some((word) => {
    const found = withWord(sample, token, ` ${word} `);
    return !found.some(({ code }) => code.startsWith("syntax.")) && missingIn(found)(finding);
  });
}

function isHeadLine(node: AstNode): node is ast.BeginLine | ast.FinishLine {
  return ast.isBeginLine(node) || ast.isFinishLine(node);
}

/** The action whose verb the token is. */
function actionWithout({ astNode, offset }: Token): AstNode | undefined {
  const action = AstUtils.getContainerOfType(astNode, ast.isAction);
  return action?.$cstNode?.offset === offset ? action : undefined;
}

function namesIn(node: AstNode): readonly string[] {
  return [...AstUtils.streamAllContents(node)].filter(ast.isTarget).map((target) => target.thing.$refText);
}

/** The findings with blanks in place of a statement. */
function withoutAll(sample: Sample, statement: readonly Place[]): readonly Found[] {
  const blank = (so: string, { start, end }: Place): string =>
    so.slice(0, start) + so.slice(start, end).replace(/[^\n]/g, " ") + so.slice(end);
  return foundWith(sample, statement.reduce(blank, sample.text));
}

/** The findings with another word in place of the token; places behind it as in the sound text. */
function withWord(sample: Sample, { offset, end }: Token, word: string): readonly Found[] {
  const text = sample.text.slice(0, offset) + word + sample.text.slice(end);
  return foundWith(sample, text, offset, end - offset - word.length);
}

function foundWith({ path, checked, workspace }: Sample, text: string, at = 0, shift = 0): readonly Found[] {
  const around = [...workspace.snapshot.texts.keys()];
  return foundIn(openSamples(new Map([[path, text]]), around, workspace), path, checked, at, shift);
}

/** @param shift how much further right places behind `at` stand in the sound text */
function foundIn(workspace: Workspace, path: string, checked: readonly string[], at = 0, shift = 0): readonly Found[] {
  const back = (offset: number): number => (offset > at ? offset + shift : offset);
  const placeOf = ({ path: of, start, end }: Place & { path: string }): Place =>
    of === path ? { start: back(start), end: back(end) } : { start, end };
  return workspace
    .findings(checked)
    .map(({ code, message, why = "", remedy = "", span, related = [], witness = [] }) => {
      const others = [...related, ...witness].filter((remark) => remark.span.path === path);
      return {
        ...{ code, message, words: `${message} ${why} ${remedy}` },
        ...{ path: span.path, ...placeOf(span), others: others.map((remark) => placeOf(remark.span)) },
      };
    });
}

/** What it says that has a unit. */
function quantitiesIn({ words }: Found): string {
  const pairs = [...words.matchAll(/(\d[\d.]*) (\S+?)[.,:;)]?(?=\s|$)/g)];
  return pairs
    .filter(([, , unit = ""]) => readUnit(unit, null).ok)
    .map(([, number, unit]) => `${number} ${unit}`)
    .join();
}

/** By code and place: the words may count steps that were not read. */
function keyOf({ path, code, start, end }: Found): string {
  return `${path} ${code} ${start} ${end}`;
}

function missingIn(list: readonly Found[]): (one: Found) => boolean {
  const known = new Set(list.map(keyOf));
  return (one) => !known.has(keyOf(one));
}

function line({ path, start, code, message }: Found): string {
  return `${path}:${(plainTexts.get(path) ?? "").slice(0, start).split("\n").length} ${code} ${message}`;
}

function meets(a: Place, b: Place): boolean {
  return a.start <= b.end && b.start <= a.end;
}

/** What can be reached step by step, itself included. */
function closure(from: string, next: (path: string) => readonly string[]): readonly string[] {
  const reached = new Set([from]);
  for (const path of reached) for (const other of next(path)) reached.add(other);
  return [...reached];
}
