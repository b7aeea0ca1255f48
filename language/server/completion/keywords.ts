// Keywords that the grammar allows at a place, less those that make no sense there, in the order in which a writer wants them.
import { CompletionItemKind } from "vscode-languageserver";
import { QUANTITIES } from "#model/lower-properties.ts";
import { ACTIONS, LINES, needsAndDoes, PROPERTIES } from "../hover/words.ts";
import { type Candidate, GROUP } from "./candidate.ts";
import { type Expected, isWord } from "./grammar-paths.ts";
import type { Place } from "./place.ts";
import { withinRule } from "./wanted.ts";

/** @param text that the place is in */
export function keywordCandidates(place: Place, text: string): readonly Candidate[] {
  const { expected } = place;
  const isBraceNext = /^\s*\{/.test(text.slice(place.offset, place.offset + 99));
  const found = new Map<string, Candidate>();
  for (const one of expected) {
    if (!isWord(one.token) || one.token === "DAMAGED") continue;
    for (const phrase of one.phrases) {
      if (!belongs(place, one, phrase)) continue;
      const candidate = candidateFor(place, one, phrase, isBraceNext ? undefined : BEHIND[phrase]);
      const known = found.get(phrase);
      if (known === undefined || candidate.group < known.group) found.set(phrase, candidate);
    }
  }
  return [...found.values()];
}

function candidateFor(place: Place, one: Expected, phrase: string, behind: string | undefined): Candidate {
  const isStart = startsStatement(place, one);
  return {
    label: phrase,
    kind: CompletionItemKind.Keyword,
    ...(behind === undefined ? {} : { snippet: phrase + behind }),
    ...saidOf(one, phrase, isStart),
    // On a line of its own a new statement is likelier, behind something what goes on with it.
    group: isStart === place.opensLine ? GROUP.fitting : place.opensLine ? GROUP.other : GROUP.starter,
    rank: rankOf(place, one, phrase),
  };
}

/** What the pointer would be told of the word: the form of an action, what a line says. */
function saidOf({ within }: Expected, phrase: string, isStart: boolean): Pick<Candidate, "detail" | "about"> {
  const word = phrase.replace(/ .*/, "");
  const action = withinRule(within, "Action") !== null && Object.hasOwn(ACTIONS, word) ? ACTIONS[word] : undefined;
  if (action !== undefined) return { detail: action.form, about: needsAndDoes(action).join("\n") };
  if (!isStart) return {};
  const known = isInProperty(within) && Object.hasOwn(PROPERTIES, word) ? PROPERTIES : LINES;
  const line = [phrase, word].filter((one) => Object.hasOwn(known, one)).map((one) => known[one])[0];
  return line === undefined ? {} : { detail: line };
}

/** Whether it is a line of a declaration. */
function isInProperty(within: Expected["within"]): boolean {
  for (let at: typeof within | null = within; at !== null; at = at.outer) if (at.rule.endsWith("Property")) return true;
  return false;
}

/** A snippet continues what a keyword begins, where nothing does yet. */
const BEHIND: Readonly<Record<string, string>> = {
  "if it fails": " {\n\t$0\n}",
  "if not": " {\n\t$0\n}",
  "in any order": " {\n\t$0\n}",
  otherwise: " {\n\t$0\n}",
};

function startsStatement({ tokens }: Place, { within }: Expected): boolean {
  for (let at: typeof within | null = within; at !== null; at = at.outer)
    if (STATEMENTS.has(at.rule)) return at.at === tokens.length;
  return within.at === tokens.length;
}

const STATEMENTS: ReadonlySet<string> = new Set([
  ...["FileItem", "ProcedureItem", "FlowItem", "StepLine", "PlainLine", "MaterialProperty", "PlaceProperty"],
  ...["PartProperty", "FitProperty", "ToolProperty", "ConsumableProperty", "EnergyProperty", "ArrangementProperty"],
  ...["CribEntry", "CribProperty"],
]);

const ORDER = [
  ...["step", "task", "install", "remove", "tighten", "loosen", "check", "record", "measure", "inspect"],
  ...["repeat", "when", "in any order", "perform", "warning", "danger", "caution", "note"],
  ...["sign", "hold for", "takes", "per", "needs", "gives", "critical"],
  ...["procedure", "part", "use", "document", "begin with", "finish with"],
];

/** Ways on from a check that failed. */
const JUMPS: ReadonlySet<string> = new Set(["return to", "go to", "stop"]);

function rankOf({ opener }: Place, { within }: Expected, phrase: string): number {
  if (opener === "check" && JUMPS.has(phrase)) return 0;
  const known = ORDER.indexOf(phrase);
  if (known >= 0) return known;
  return withinRule(within, "Declaration") === null ? ORDER.length : ORDER.length + 1;
}

/** A line of a declaration that the grammar takes anywhere and only some declarations have. */
function belongs({ block, opener, tokens }: Place, one: Expected, phrase: string): boolean {
  if (one.within.rule !== "QuantityWord" || one.within.at !== tokens.length) return true;
  const sort = block === "crib item" ? "tool" : block === "places" ? opener : block;
  const known = QUANTITIES[sort as keyof typeof QUANTITIES];
  return known === undefined || known.includes(phrase);
}
