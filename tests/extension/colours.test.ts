// What the editor colours, read by the same library that the editor uses. The grammar for it is made from the language's.
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { beforeAll, expect, test } from "vitest";
import type { IGrammar } from "vscode-textmate";
import { isFaulty, plainTexts } from "#harness/samples.ts";
import { type Token as LeafToken, leavesOf } from "#harness/tokens.ts";
import { parseText } from "#syntax/parse.ts";

const require = createRequire(import.meta.url);
const { loadWASM, OnigScanner, OnigString } = require("vscode-oniguruma") as typeof import("vscode-oniguruma");
const { INITIAL, parseRawGrammar, Registry } = require("vscode-textmate") as typeof import("vscode-textmate");

const extension = join(import.meta.dirname, "..", "..", "extension");
const kept = join(extension, "syntaxes", "sprag.tmLanguage.json");

let grammar: IGrammar;
beforeAll(async () => {
  await loadWASM(readFileSync(require.resolve("vscode-oniguruma/release/onig.wasm")));
  const registry = new Registry({
    onigLib: Promise.resolve({
      createOnigScanner: (sources) => new OnigScanner(sources),
      createOnigString: (text) => new OnigString(text),
    }),
    loadGrammar: async () => parseRawGrammar(readFileSync(kept, "utf8"), kept),
  });
  const loaded = await registry.loadGrammar("source.sprag");
  if (loaded === null) throw new Error("no grammar");
  grammar = loaded;
});

test("the checked-in file is what the language's grammar gives", () => {
  const folder = mkdtempSync(join(tmpdir(), "sprag-colours-"));
  try {
    const fresh = join(folder, "fresh.json");
    const { status, stderr } = spawnSync(process.execPath, [join(extension, "generate.mjs"), fresh], {
      encoding: "utf8",
    });
    expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
    expect(readFileSync(kept, "utf8"), "npm run generate makes it so").toBe(readFileSync(fresh, "utf8"));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});

test.each([
  [
    'part Cover[1..8] "cover" { mass 31 kg  needs Bearing }',
    'part storage.type | Cover entity.name.type | 1 constant.numeric | .. keyword.operator.range | 8 constant.numeric | "cover" string.quoted.double | mass support.constant.property | 31 constant.numeric | kg keyword.other.unit | needs support.constant.property | Bearing variable.other',
  ],
  [
    'temporary part Pin "guide pin"',
    'temporary storage.modifier | part storage.type | Pin entity.name.type | "guide pin" string.quoted.double',
  ],
  [
    'procedure Fit "Fit it" {',
    'procedure storage.type.procedure | Fit entity.name.function.procedure | "Fit it" string.quoted.double',
  ],
  [
    "  step clean Cover with Cleaner takes 5 min",
    "step keyword.control.step | clean support.function.action | Cover variable.other | with keyword.operator.word | Cleaner variable.other | takes support.constant.line | 5 constant.numeric | min keyword.other.unit",
  ],
  [
    '  step FitCover "Put it on." {',
    'step keyword.control.step | FitCover entity.name.section.step | "Put it on." string.quoted.double',
  ],
  [
    '  step cleanUp "Clear the bench."',
    'step keyword.control.step | cleanUp entity.name.section.step | "Clear the bench." string.quoted.double',
  ],
  [
    '  warning burn "Hot." avoid "Do not touch."',
    'warning token.warn-token | burn variable.other | "Hot." string.quoted.double | avoid support.constant.property | "Do not touch." string.quoted.double',
  ],
  ['  danger electric "Live."', 'danger token.error-token | electric variable.other | "Live." string.quoted.double'],
  [
    "  tighten Screw[all] in cross pattern to 30 %, 100 % of V with T",
    "tighten support.function.action | Screw variable.other | all keyword.operator.word | in cross pattern keyword.operator.word | to keyword.operator.word | 30 constant.numeric | % keyword.other.unit | , punctuation.separator | 100 constant.numeric | % keyword.other.unit | of keyword.operator.word | V variable.other | with keyword.operator.word | T variable.other",
  ],
  [
    '  count 8  numbered clockwise seen from "drive end"',
    'count support.constant.property | 8 constant.numeric | numbered support.constant.property | clockwise variable.other | seen from keyword.operator.word | "drive end" string.quoted.double',
  ],
  [
    "value M = 40 ± 4 N·m",
    "value storage.type | M entity.name.type | = keyword.operator.arithmetic | 40 constant.numeric | ± keyword.operator.range | 4 constant.numeric | N·m keyword.other.unit",
  ],
  [
    "  expansion 11.7 µm/(m·K) from 20 .. 100 °C",
    "expansion support.constant.property | 11.7 constant.numeric | µm/(m·K) keyword.other.unit | from keyword.operator.word | 20 constant.numeric | .. keyword.operator.range | 100 constant.numeric | °C keyword.other.unit",
  ],
  [
    "  loosen Screw by 1/4 turn",
    "loosen support.function.action | Screw variable.other | by support.constant.line | 1/4 constant.numeric | turn keyword.other.unit",
  ],
  [
    "  turn Seat[3] to 6 o'clock",
    "turn support.function.action | Seat variable.other | 3 constant.numeric | to keyword.operator.word | 6 constant.numeric | o'clock keyword.other.unit",
  ],
  ["  voltage 400 V AC", "voltage support.constant.property | 400 constant.numeric | V AC keyword.other.unit"],
  [
    "  needs Cover is not installed",
    "needs support.constant.property | Cover variable.other | is keyword.operator.word | not keyword.operator.word | installed constant.language.state",
  ],
  [
    '  allow order.note-before because "So said."',
    'allow support.constant.line | order.note-before constant.other.code | because support.constant.property | "So said." string.quoted.double',
  ],
  [
    "  repeat n from 16 down to 4 {",
    "repeat keyword.control.flow | n variable.other | from keyword.operator.word | 16 constant.numeric | down variable.other | to keyword.operator.word | 4 constant.numeric",
  ],
  [
    '  use "a.sprag" // why',
    'use keyword.control.import | "a.sprag" string.quoted.double | // why comment.line.double-slash',
  ],
  [
    '  check "Gap" if it fails { return to Look }',
    'check support.constant.line | "Gap" string.quoted.double | if it fails keyword.control.flow | return to keyword.control.flow | Look variable.other',
  ],
])("%s", (line, expected) => {
  expect(coloured(line)).toBe(expected);
});

test("a text may hold a pass's number and a quote, and ends with its line", () => {
  const [first, second] = tokensOf('step "Push {n} \\" in\npart Pin');
  expect(first?.map(({ scopes }) => scopes.at(-1))).toContain("constant.other.placeholder.sprag");
  expect(first?.map(({ scopes }) => scopes.at(-1))).toContain("constant.character.escape.sprag");
  expect(second?.[0]?.scopes.at(-1)).toBe("storage.type.sprag");
});

test("in all samples the editor and the parser mean the same by each number, unit, text and word", () => {
  let compared = 0;
  for (const [path, text] of plainTexts) {
    // A faulty sample may hold a text that never ends; there each reads as far as it likes.
    if (isFaulty(path)) continue;
    const scopeAt = scopesOf(text);
    for (const leaf of leavesOf(parseText(text, path).file.$cstNode)) {
      const wanted = wantedFor(leaf);
      if (wanted === undefined) continue;
      compared++;
      expect(scopeAt(leaf.offset), `${path}: ${leaf.text} at ${leaf.offset}`).toMatch(wanted);
    }
  }
  console.log(`colours: ${compared} tokens of samples compared`);
  expect(compared).toBeGreaterThan(1500);
});

const SCOPES: Readonly<Record<string, RegExp>> = {
  UNIT: /keyword\.other\.unit/,
  NUMBER: /constant\.numeric/,
  DATE: /constant\.numeric\.date/,
  STRING: /string\.quoted/,
  TEXT_BLOCK: /string\.quoted\.triple/,
};

function wantedFor(leaf: LeafToken): RegExp | undefined {
  const holder = leaf.astNode;
  if ("verb" in holder && holder.verb === leaf.text && holder.$type !== "StateCondition")
    return /support\.function\.action/;
  if ("signal" in holder && holder.signal === leaf.text) return /token\.(?:warn|error)-token/;
  return SCOPES[leaf.tokenType.name];
}

/** All scopes of the sign at an offset. */
function scopesOf(text: string): (offset: number) => string {
  const scopes: string[] = [];
  for (const line of tokensOf(text)) {
    for (const token of line) for (let n = 0; n < token.text.length; n++) scopes.push(token.scopes.join(" "));
    scopes.push("");
  }
  return (offset) => scopes[offset] ?? "";
}

interface Token {
  readonly text: string;
  readonly scopes: readonly string[];
}

function tokensOf(text: string): Token[][] {
  let state = INITIAL;
  return text.split("\n").map((line) => {
    const { tokens, ruleStack } = grammar.tokenizeLine(line, state);
    state = ruleStack;
    return tokens.map(({ startIndex, endIndex, scopes }) => ({ text: line.slice(startIndex, endIndex), scopes }));
  });
}

/** Words with their last scope; texts and comments as one. */
function coloured(line: string): string {
  const parts: { text: string; scope: string }[] = [];
  for (const { text, scopes } of tokensOf(line)[0] ?? []) {
    const scope = (scopes.find((name) => /^string|^comment/.test(name)) ?? scopes.at(-1) ?? "").replace(/\.sprag$/, "");
    const last = parts.at(-1);
    if (last !== undefined && last.scope === scope && /^string|^comment/.test(scope)) last.text += text;
    else parts.push({ text, scope });
  }
  return parts
    .filter(({ text, scope }) => text.trim() !== "" && scope !== "source")
    .map(({ text, scope }) => `${text.trim()} ${scope}`)
    .join(" | ");
}
