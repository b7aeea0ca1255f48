// Makes the colouring grammar from the language's grammar: which words there are, and what each is for, is read from its
// rules; only the scopes are chosen here. Knows no theme.
// Usage: node generate.mjs [OUT_FILE]   (default: syntaxes/sprag.tmLanguage.json beside this file)
import { readFileSync, writeFileSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { AstUtils, EmptyFileSystem, GrammarAST } from "langium";
import { createLangiumGrammarServices } from "langium/grammar";

const here = dirname(fileURLToPath(import.meta.url));
const source = join(here, "..", "language", "grammar", "sprag.langium");
const out = resolve(process.argv[2] ?? join(here, "syntaxes", "sprag.tmLanguage.json"));

const parsed = createLangiumGrammarServices(EmptyFileSystem).grammar.parser.LangiumParser.parse(
  readFileSync(source, "utf8"),
);
if (parsed.parserErrors.length > 0) throw new Error(parsed.parserErrors[0].message);
const rules = new Map(
  parsed.value.rules.filter((rule) => GrammarAST.isParserRule(rule)).map((rule) => [rule.name, rule]),
);
writeFileSync(out, `${JSON.stringify(grammarOf(wordGroups()), null, 2)}\n`);

/** The words of the language by what they are for; a word may be in several groups. */
function wordGroups() {
  const all = [...new Set([...rules.values()].flatMap((rule) => keywordsIn(rule)))].filter((word) =>
    /^[a-z]/.test(word),
  );
  const soft = new Set(keywordsIn(rule("Name")));
  const declarations = callsIn(rule("Declaration")).map((name) => starters(rule(name)));
  const modifiers = declarations.flatMap((words) => words.slice(0, -1));
  const actions = callsIn(rule("Action")).flatMap((name) => assigned(rule(name), "verb"));
  const signals = assigned(rule("Statement"), "signal");
  const flow = [
    ...["TaskRepeat", "TaskWhen", "TaskAnyOrder"].map((name) => starters(rule(name)).join(" ")),
    ...alternatives(rule("Jump")).map((branch) => starters(branch).join(" ")),
    ...keywordsIn(rule("TaskWhen")).filter((word) => word === "otherwise"),
  ];
  const lines = ["PlainLine", "HeadLine", "Note"].flatMap((name) => leadingWords(rule(name)));
  const properties = [...rules.values()]
    .filter(({ name }) => /Property$|^QuantityWord$/.test(name))
    .flatMap(leadingWords);
  const things = declarations.map((words) => words.at(-1));
  const placed = new Set([...things, ...modifiers, ...actions, ...signals, ...flow, ...lines]);
  const joining = all.filter(
    (word) => !soft.has(word) && !placed.has(word) && !["procedure", "task", "step", "use"].includes(word),
  );
  return {
    all,
    soft: all.filter((word) => soft.has(word)),
    things: unique(things),
    modifiers: unique(modifiers),
    actions: unique(actions),
    signals: unique(signals),
    flow: unique(flow),
    lines: unique(lines),
    properties: unique(properties),
    joining: unique(joining),
  };
}

function grammarOf(words) {
  const NAME = "[\\p{L}_][\\p{L}\\p{N}_]*";
  const NUMBER = "\\d+[ \\u00A0\\u202F]+\\d+/\\d+|\\d+/\\d+|\\d[\\d_]*(?:\\.\\d[\\d_]*)?";
  // After a number a word is a unit unless the language has it; `in` and `turn` are both, and there they are units.
  const UNIT = `(?!(?:${either(words.all.filter((word) => word !== "in" && word !== "turn"))})(?![\\p{L}\\p{N}_'])(?![*/^·]))[\\p{L}%‰°º′″'Ω](?:[\\p{L}\\p{N}%°'′″²³⁻¹]|[·⋅*/^](?=[\\p{L}(\\d])|\\^-?\\d|\\([\\p{L}·⋅*/²³]+\\))*(?: (?:AC|DC|absolute)\\b)?`;
  const whole = (list) => `(?<![\\p{L}\\p{N}_.])(?:${either(list)})(?![\\p{L}\\p{N}_-])`;
  const declared = (list, type, scope) => ({
    match: `${whole(list).replace("(?:", "(")}(?:\\s+(${NAME}))?`,
    captures: { 1: { name: `${type}.sprag` }, 2: { name: `${scope}.sprag` } },
  });
  return {
    $schema: "https://raw.githubusercontent.com/martinring/tmlanguage/master/tmlanguage.json",
    comment: "Made by extension/generate.mjs from the language's grammar. Change that, not this.",
    name: "Sprag",
    scopeName: "source.sprag",
    patterns: [
      "comment",
      "text",
      "code",
      "use",
      "procedure",
      "part-of-work",
      "declaration",
      "safety",
      "state",
      "flow",
      "action",
      "line",
      "property",
      "several-words",
      "quantity",
      "joining",
      "punctuation",
      "name",
    ].map((name) => ({ include: `#${name}` })),
    repository: {
      comment: {
        patterns: [
          { name: "comment.block.sprag", begin: "/\\*", end: "\\*/" },
          { name: "comment.line.double-slash.sprag", match: "//.*$" },
        ],
      },
      text: {
        patterns: [
          { name: "string.quoted.triple.sprag", begin: '"""', end: '"""', patterns: [{ include: "#in-text" }] },
          { name: "string.quoted.double.sprag", begin: '"', end: '"|$', patterns: [{ include: "#in-text" }] },
        ],
      },
      "in-text": {
        patterns: [
          { name: "constant.character.escape.sprag", match: "\\\\." },
          { name: "constant.other.placeholder.sprag", match: `\\{${NAME}\\}` },
        ],
      },
      code: {
        name: "constant.other.code.sprag",
        match: "(?<![\\p{L}\\p{N}_.])[a-z]+\\.[a-z]+(?:-[a-z]+)*(?![\\p{L}\\p{N}_-])",
      },
      use: { name: "keyword.control.import.sprag", match: `^\\s*${whole(["use"])}(?=\\s*")` },
      procedure: declared(["procedure"], "storage.type.procedure", "entity.name.function.procedure"),
      "part-of-work": {
        patterns: [
          declared(["task"], "keyword.control.task", "entity.name.section.task"),
          {
            match: `${whole(["step"]).replace("(?:", "(")}(?:\\s+(?!(?:${either(words.actions)})(?![\\p{L}\\p{N}_]))(${NAME}))?`,
            captures: { 1: { name: "keyword.control.step.sprag" }, 2: { name: "entity.name.section.step.sprag" } },
          },
        ],
      },
      declaration: {
        patterns: [
          { name: "storage.modifier.sprag", match: whole(words.modifiers) },
          declared(words.things, "storage.type", "entity.name.type"),
        ].map((pattern) => ("captures" in pattern ? atStart(pattern) : pattern)),
      },
      safety: {
        patterns: words.signals.map((signal) => ({
          // The second scope gives it the colour of a warning in every theme.
          name: `keyword.other.safety.${signal}.sprag token.${signal === "danger" ? "error" : "warn"}-token`,
          match: `^\\s*${whole([signal])}|(?<=[{}])\\s*${whole([signal])}`,
        })),
      },
      state: {
        match: `${whole(["is", "are"]).replace("(?:", "(")}(?:\\s+(not)(?![\\p{L}\\p{N}_]))?(?:\\s+(?!at(?![\\p{L}\\p{N}_]))(${NAME}))?`,
        captures: {
          1: { name: "keyword.operator.word.sprag" },
          2: { name: "keyword.operator.word.sprag" },
          3: { name: "constant.language.state.sprag" },
        },
      },
      flow: { name: "keyword.control.flow.sprag", match: whole([...words.flow, "if it fails", "if not"]) },
      action: { name: "support.function.action.sprag", match: whole(words.actions) },
      line: { name: wordOf("line"), match: whole(words.lines) },
      property: {
        patterns: [
          {
            match: starting(words.properties, whole),
            captures: { 1: { name: wordOf("property") } },
          },
          // A word that may be a name is none where a text, a number or a limit follows it.
          {
            name: wordOf("property"),
            match: `${whole(words.soft)}(?=\\s*(?:"|\\d|[-−]\\d|at (?:least|most)\\b))`,
          },
        ],
      },
      "several-words": {
        name: "keyword.operator.word.sprag",
        match: whole([
          ...[
            "at least",
            "at most",
            "in cross pattern",
            "in circular pattern",
            "in order",
            "in reverse order",
            "by hand",
            "by number",
          ],
          ...["to seat", "equally spaced", "full scale", "seen from", "no temporary parts", "no temporary part"],
        ]),
      },
      quantity: {
        patterns: [
          { name: "constant.numeric.date.sprag", match: "(?<![\\p{L}\\p{N}_])\\d{4}-\\d{2}-\\d{2}(?!\\d)" },
          {
            match: `(?<![\\p{L}\\p{N}_])(${NUMBER})(?:[ \\u00A0\\u202F]*(${UNIT}))?`,
            captures: { 1: { name: "constant.numeric.sprag" }, 2: { name: "keyword.other.unit.sprag" } },
          },
          { name: "keyword.operator.range.sprag", match: "\\.\\.|±|\\+/-" },
          { name: "keyword.operator.arithmetic.sprag", match: "[-+*/−=]" },
        ],
      },
      joining: { name: "keyword.operator.word.sprag", match: whole(words.joining) },
      punctuation: { name: "punctuation.separator.sprag", match: "[,:]" },
      name: { name: "variable.other.sprag", match: NAME },
    },
  };
}

/** Other than a name in every theme, and quieter than a warning in those that make all keywords red. */
function wordOf(kind) {
  return `keyword.other.${kind}.sprag support.constant.${kind}.sprag`;
}

/** The word stands at the start of a line, behind a brace, or behind the gap that parts two properties. */
function starting(list, whole) {
  return `(?:^\\s*|(?<=[{}])\\s*|(?<=[^\\s]) {2,})${whole(list).replace("(?:", "(")}`;
}

function atStart(pattern) {
  return { ...pattern, match: `(?:^|(?<=[{}])|(?<=temporary))\\s*${pattern.match}` };
}

/** Longest first, so that `heat limit` is not read as `heat`. */
function either(list) {
  return [...list]
    .sort((a, b) => b.length - a.length || (a < b ? -1 : 1))
    .map((word) => word.replaceAll(" ", "\\s+"))
    .join("|");
}

function rule(name) {
  const found = rules.get(name);
  if (found === undefined) throw new Error(`The grammar has no rule ${name} any more; generate.mjs speaks of it.`);
  return found;
}

function keywordsIn(node) {
  return contents(node)
    .filter((found) => GrammarAST.isKeyword(found))
    .map(({ value }) => value);
}

function callsIn(node) {
  return contents(node)
    .filter((found) => GrammarAST.isRuleCall(found))
    .map((call) => call.rule.$refText);
}

/** The texts a feature can take, through the rules that give them. */
function assigned(node, feature) {
  return contents(node)
    .filter((found) => GrammarAST.isAssignment(found) && found.feature === feature)
    .flatMap((assignment) => [
      ...keywordsIn(assignment),
      ...callsIn(assignment).map((name) => keywordsIn(rule(name)).join(" ")),
    ]);
}

function alternatives(node) {
  const top = GrammarAST.isParserRule(node) ? node.definition : node;
  return GrammarAST.isAlternatives(top) ? top.elements.flatMap(alternatives) : [top];
}

/** The words a form begins with, up to the first thing that is no word. */
function starters(node) {
  const words = [];
  const take = (found) => {
    if (GrammarAST.isKeyword(found)) words.push(found.value);
    else if (GrammarAST.isGroup(found)) return found.elements.every(take);
    else if (GrammarAST.isAssignment(found) && found.operator === "?=") words.push(...keywordsIn(found));
    else if (!GrammarAST.isAction(found)) return false;
    return true;
  };
  take(GrammarAST.isParserRule(node) ? node.definition : node);
  return words.filter((word) => /^[a-z]/.test(word));
}

/** The same as texts, with the words that are held in a feature or a rule of their own. */
function leadingWords(node) {
  const top = GrammarAST.isParserRule(node) ? node.definition : node;
  if (GrammarAST.isAlternatives(top)) return top.elements.flatMap(leadingWords);
  if (GrammarAST.isRuleCall(top)) return rules.has(top.rule.$refText) ? leadingWords(rule(top.rule.$refText)) : [];
  const elements = GrammarAST.isGroup(top) ? top.elements.filter((found) => !GrammarAST.isAction(found)) : [top];
  const [first] = elements;
  if (first === undefined) return [];
  if (GrammarAST.isAssignment(first)) {
    const named = callsIn(first).flatMap((name) =>
      rules.has(name) ? alternatives(rule(name)).flatMap(leadingWords) : [],
    );
    return [...keywordsIn(first), ...named].filter((word) => /^[a-z]/.test(word));
  }
  const words = [];
  for (const element of elements) {
    if (!GrammarAST.isKeyword(element)) break;
    if (/^[a-z]/.test(element.value)) words.push(element.value);
  }
  return words.length === 0 ? [] : [words.join(" ")];
}

function contents(node) {
  return [...AstUtils.streamAst(node)];
}

function unique(list) {
  return [...new Set(list)].sort();
}
