// Completion: what may stand at a place, the likeliest first. The place is known from the tokens before it, the names from
// the model, what could be acted on from the state reached there.
import {
  type ClientCapabilities,
  type CompletionItem,
  CompletionItemKind,
  type CompletionList,
  InsertTextFormat,
  MarkupKind,
  type Position,
} from "vscode-languageserver";
import type { Candidate } from "./completion/candidate.ts";
import { fileCandidates } from "./completion/files.ts";
import { keywordCandidates } from "./completion/keywords.ts";
import { type Around, codeCandidates, nameCandidates, stateCandidates } from "./completion/names.ts";
import { type Place, placeAt } from "./completion/place.ts";
import { filled, snippetCandidates } from "./completion/snippets.ts";
import { unitCandidates } from "./completion/units.ts";
import { wantedKinds, wantedName } from "./completion/wanted.ts";
import type { Feature } from "./feature.ts";
import { reachAt } from "./reach.ts";
import { runWhileTyped, statesWhereTyped } from "./state-at.ts";
import { type FileView, offsetOf } from "./view.ts";

export const completion: Feature = {
  capabilities: () => ({
    completionProvider: { triggerCharacters: [" ", '"', "[", "·", "/", ".", "-"], resolveProvider: false },
  }),
  start: (session) => {
    const can = abilitiesOf(session.client);
    session.connection.onCompletion(({ textDocument, position, context }, token) =>
      session.ask<CompletionList>(
        textDocument.uri,
        token,
        (view) => completionsAt(view, position, can, context?.triggerCharacter ?? null),
        NONE,
      ),
    );
  },
};

const NONE: CompletionList = { isIncomplete: false, items: [] };

/** What the client can take. */
export interface Abilities {
  readonly snippets: boolean;
  readonly markdown: boolean;
}

function abilitiesOf({ textDocument }: ClientCapabilities): Abilities {
  const item = textDocument?.completion?.completionItem;
  return {
    snippets: item?.snippetSupport === true,
    markdown: item?.documentationFormat?.includes(MarkupKind.Markdown) === true,
  };
}

/** @param trigger the character typed last, where that is why the client asks */
export function completionsAt(
  view: FileView,
  position: Position,
  can: Abilities,
  trigger: string | null = null,
): CompletionList {
  const offset = offsetOf(view, position);
  const place = placeAt(view.text, offset, keyOf(view));
  if (place === null || !isAskedFor(place, trigger)) return NONE;
  const candidates = place.text !== null ? fileCandidates(view, place) : candidatesAt(view, place, can);
  const items = distinct(candidates).map((candidate) => itemOf(view, place, can, candidate));
  // Units go on being found as more of them is typed.
  return { isIncomplete: candidates.some(({ kind }) => kind === CompletionItemKind.Unit), items };
}

/** One for each file, the same over all of its texts. */
function keyOf({ folder, path }: FileView): object {
  const keys = keysOf.get(folder) ?? new Map<string, object>();
  keysOf.set(folder, keys);
  const key = keys.get(path) ?? {};
  keys.set(path, key);
  return key;
}

const keysOf = new WeakMap<FileView["folder"], Map<string, object>>();

/** Typing on within a text or a number is no question. */
function isAskedFor({ text, tokens, touches, prefix }: Place, trigger: string | null): boolean {
  if (trigger === null) return true;
  const last = tokens[tokens.length - 1]?.type;
  if (trigger === '"') return text !== null;
  if (trigger === ".") return last === "." || tokens.some(({ type }) => type === "allow");
  if (trigger === "-") return tokens.some(({ type }) => type === "allow");
  if (trigger === "·" || trigger === "/") return prefix !== "";
  return trigger !== " " || (!touches && tokens.length > 0);
}

function candidatesAt(view: FileView, place: Place, can: Abilities): readonly Candidate[] {
  const around = aroundOf(view, place);
  const code = codeBegun(place, view.text);
  if (code !== null) return codeCandidates(around, code);
  const found: Candidate[] = [];
  for (const expected of place.expected) {
    switch (expected.token) {
      case "Name":
        found.push(...nameCandidates(around, expected, wantedName(expected)));
        break;
      case "Word":
        found.push(...stateCandidates(around, expected));
        break;
      case "UnitText":
        found.push(...unitCandidates(place, wantedKinds(expected.within, place.tokens, around.named)));
        break;
      case "Text":
        found.push(...fileCandidates(view, place));
        break;
    }
  }
  // Behind a number without a blank only its unit can go on.
  if (place.touches) return found.filter(({ insert }) => insert !== undefined);
  const snippets = can.snippets ? snippetCandidates(place, around.reach.things) : [];
  return [...found, ...keywordCandidates(place, view.text), ...snippets];
}

function aroundOf(view: FileView, place: Place): Around {
  const reach = reachAt(view, place.start);
  const things = new Map(reach.things.map((thing) => [thing.name, thing]));
  let state: ReturnType<Around["state"]> | undefined;
  return {
    text: view.text,
    place,
    reach,
    named: (name) => things.get(name.normalize("NFC")),
    state: () => {
      state ??= stateFor(view, place, reach.procedure);
      return state;
    },
    found: () => [...new Set(view.workspace.findings([view.path]).map(({ code }) => code))],
  };
}

function stateFor(view: FileView, place: Place, procedure: ReturnType<typeof reachAt>["procedure"]) {
  const run = procedure === null ? null : runWhileTyped(view.workspace, procedure);
  if (run === null) return null;
  // A statement that is being written begins with its verb.
  const start = statementStart(place);
  return { run, states: statesWhereTyped(run, start) };
}

function statementStart({ expected, tokens, start }: Place): number {
  const deepest = expected.find(({ within }) => within.outer !== null)?.within ?? null;
  for (let at = deepest; at !== null; at = at.outer)
    if (at.rule === "Action" && at.at < tokens.length) return tokens[at.at]?.start ?? start;
  return start;
}

/** Where a code behind `allow` begins: it is one word to a writer, and several to the grammar. */
function codeBegun({ tokens, offset }: Place, text: string): number | null {
  const at = tokens.findLastIndex(({ type }) => type === "allow");
  if (at < 0 || tokens.slice(at + 1).some(({ type }) => type === "because")) return null;
  const line = text.slice(tokens[at]?.end ?? offset, offset);
  const typed = /^\s+([\w.-]*)$/.exec(line)?.[1];
  return typed === undefined ? null : offset - typed.length;
}

function distinct(candidates: readonly Candidate[]): readonly Candidate[] {
  const best = new Map<string, Candidate>();
  for (const candidate of candidates) {
    const known = best.get(candidate.label);
    if (known === undefined || candidate.group < known.group) best.set(candidate.label, candidate);
  }
  return [...best.values()];
}

function itemOf(view: FileView, place: Place, can: Abilities, candidate: Candidate): CompletionItem {
  const { label, kind, insert, snippet, detail, about, group, rank = 0, from = place.start } = candidate;
  const isSnippet = snippet !== undefined && can.snippets;
  const newText = isSnippet ? snippet : (insert ?? (snippet === undefined ? label : filled(snippet)));
  const item: CompletionItem = {
    label,
    kind,
    sortText: `${group}${String(rank).padStart(4, "0")}${label}`,
    filterText: newText.startsWith(" ") ? label : (insert ?? label),
    textEdit: { range: view.lines.range(from, place.offset), newText },
  };
  if (isSnippet) item.insertTextFormat = InsertTextFormat.Snippet;
  if (detail !== undefined && detail !== "") item.detail = detail;
  if (about !== undefined) item.documentation = { kind: MarkupKind.PlainText, value: about };
  return item;
}
