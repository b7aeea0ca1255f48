// Hover: what stands under the pointer. A name says what it means and in which state it is there, a quantity both unit
// systems, a verb what it needs and does, a code its rule's page.
import { type AstNode, GrammarUtils } from "langium";
import { type ClientCapabilities, type Hover, MarkupKind, type Position } from "vscode-languageserver";
import * as ast from "#grammar/generated/ast.ts";
import type { Declaration } from "#model/declarations.ts";
import { HAZARDS } from "#model/names.ts";
import { en } from "#outputs/words/en.ts";
import { explain, pageMarkdown } from "#rules/explain.ts";
import { typeName } from "#syntax/statements.ts";
import type { Feature } from "./feature.ts";
import { computedAt } from "./hover/computed.ts";
import { blocks, plain, strong, withoutMarkup } from "./hover/markup.ts";
import { performedText, stepText } from "./hover/procedures.ts";
import { quantityText, type Units } from "./hover/quantities.ts";
import { stateText } from "./hover/state.ts";
import { thingText } from "./hover/things.ts";
import { ACTIONS, LINES, needsAndDoes, PROPERTIES } from "./hover/words.ts";
import { valuesOf } from "./inlay-hints.ts";
import { type Reach, reachAt } from "./reach.ts";
import { enclosing, nameAt, tokenAt } from "./tree-at.ts";
import { type FileView, offsetOf } from "./view.ts";

export const hover: Feature = {
  capabilities: () => ({ hoverProvider: true }),
  start: (session) => {
    const isMarkdown = takesMarkdown(session.client);
    session.connection.onHover(({ textDocument, position }, token) =>
      session.ask<Hover | null>(
        textDocument.uri,
        token,
        (view) => {
          const found = hoverAt(view, position, session.settings().units);
          if (found === null || isMarkdown) return found;
          const { value } = found.contents;
          return { ...found, contents: { kind: MarkupKind.PlainText, value: withoutMarkup(value) } };
        },
        null,
      ),
    );
  },
};

function takesMarkdown({ textDocument }: ClientCapabilities): boolean {
  return textDocument?.hover?.contentFormat?.includes(MarkupKind.Markdown) === true;
}

function hoverAt(
  view: FileView,
  position: Position,
  units: Units,
): (Hover & { readonly contents: { readonly kind: MarkupKind; readonly value: string } }) | null {
  const offset = offsetOf(view, position);
  const said = withComputed(
    codeAt(view, offset) ?? nameSaid(view, offset) ?? quantityAt(view, offset, units) ?? wordAt(view, offset),
    computedAt(view, offset),
  );
  if (said === null || said.text === "") return null;
  return {
    contents: { kind: MarkupKind.Markdown, value: said.text },
    range: view.lines.range(said.start, said.end),
  };
}

/** How a value came about stands below what else there is to say. */
function withComputed(said: Said | null, computed: Said | null): Said | null {
  if (said === null || computed === null || said.text === "") return said ?? computed;
  return { ...said, text: blocks([said.text, computed.text]) };
}

interface Said {
  readonly text: string;
  readonly start: number;
  readonly end: number;
}

/** The page of a code that is allowed. */
function codeAt({ parsed }: FileView, offset: number): Said | null {
  const token = tokenAt(parsed, offset);
  const allow = token === undefined ? undefined : enclosing(token.astNode, ast.isAllow);
  const code = allow === undefined ? undefined : GrammarUtils.findNodeForProperty(allow.$cstNode, "code");
  if (allow === undefined || code === undefined || offset < code.offset || offset > code.end) return null;
  const found = explain(allow.code);
  const text = found.known
    ? pageMarkdown(found)
    : `${strong(allow.code)} is no code.${found.nearest === null ? "" : ` The nearest is ${plain(found.nearest)}.`}`;
  return { text, start: code.offset, end: code.end };
}

/* ---- names ---- */

function nameSaid(view: FileView, offset: number): Said | null {
  const name = nameAt(view.parsed, offset);
  if (name === null) return null;
  const reach = reachAt(view, offset);
  const text = nameText(view, reach, name);
  return text === null ? null : { text, start: name.start, end: name.end };
}

function nameText(
  view: FileView,
  reach: Reach,
  { name, declared, start }: NonNullable<ReturnType<typeof nameAt>>,
): string | null {
  if (declared === undefined) return HAZARDS.includes(name) ? hazardText(name) : null;
  if (ast.isStep(declared) || ast.isTask(declared)) return stepText(reach, name);
  if (ast.isProcedure(declared)) {
    const procedure = reach.procedures.find((one) => one.name === name.normalize("NFC") || one.name === name);
    return procedure === undefined ? null : performedText(view, procedure);
  }
  if (ast.isChoice(declared)) return choiceText(declared);
  if (ast.isLoopVariable(declared)) return `${strong(name)} — the number of this pass`;
  if (ast.isStateName(declared)) return `${strong(name)} — a state of the part's own`;
  if (ast.isInstanceName(declared)) return `${strong(name)} — one of several`;
  const thing = recordOf(view, reach, declared);
  if (thing === undefined) return null;
  return blocks([thingText(thing), stateText(view, reach, start, thing)]);
}

/** The record of a node that declares: the one whose name stands there. */
function recordOf(view: FileView, { things }: Reach, declared: AstNode): Declaration | undefined {
  const extent = declared.$cstNode;
  const isIt = ({ extent: own }: Declaration): boolean => own.start === extent?.offset;
  const { name } = declared as { readonly name?: unknown };
  return (
    things.find((thing) => thing.name === name && isIt(thing)) ??
    view.model.declarations.find((thing) => thing.name === name && isIt(thing)) ??
    things.find((thing) => thing.name === name)
  );
}

function hazardText(name: string): string {
  const forEquipment = HAZARDS.indexOf(name) >= HAZARDS.indexOf("damage");
  return `${strong(name)} — ${plain(en.hazards[name] ?? name)}, a hazard for ${forEquipment ? "equipment" : "people"}`;
}

function choiceText(choice: ast.Choice): string {
  const option = choice.$container;
  return blocks([
    `${strong(choice.title ?? choice.name)} — a choice of ${plain(option.name)}`,
    option.title === undefined ? null : plain(option.title),
  ]);
}

/* ---- quantities ---- */

function quantityAt(view: FileView, offset: number, units: Units): Said | null {
  let nearest: ReturnType<typeof valuesOf>[number] | undefined;
  for (const placed of valuesOf(view)) {
    const { start, end } = placed.value.span;
    const size = nearest === undefined ? Number.POSITIVE_INFINITY : nearest.value.span.end - nearest.value.span.start;
    if (start <= offset && offset <= end && end - start < size) nearest = placed;
  }
  if (nearest === undefined) return null;
  const { value, role } = nearest;
  return { text: quantityText(value, role, units), start: value.span.start, end: value.span.end };
}

/* ---- words of the language ---- */

function wordAt({ parsed }: FileView, offset: number): Said | null {
  const token = tokenAt(parsed, offset);
  if (token === undefined || token.offset > offset || token.end < offset) return null;
  const { text: word, offset: start, end, astNode } = token;
  const place = { start, end };
  const action = ast.isAction(astNode) && astNode.$cstNode?.offset === start ? ACTIONS[word] : undefined;
  if (action !== undefined) return { ...place, text: blocks([`**${action.form}**`, ...needsAndDoes(action)]) };
  const [phrase, line] = saidOfWord(astNode, typeName(token), start);
  return line === undefined ? null : { ...place, text: `**${phrase}** — ${line}` };
}

/** What the word belongs to, and what that says. */
function saidOfWord(node: AstNode, word: string, start: number): readonly [string, string | undefined] {
  if (ast.isAnyOrder(node) && ANY_ORDER.split(" ").includes(word)) return [ANY_ORDER, LINES[ANY_ORDER]];
  const isFirst = node.$cstNode?.offset === start;
  if (isFirst && Object.hasOwn(PROPERTIES, word)) return [word, PROPERTIES[word]];
  return [word, Object.hasOwn(LINES, word) ? LINES[word] : undefined];
}

const ANY_ORDER = "in any order";
