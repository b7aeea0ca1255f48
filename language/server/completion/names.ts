// Names that fit a place: things of the sorts wanted there, first those that could be acted on in the state reached, each with
// a few words on why. Knows no keywords.
import { CompletionItemKind } from "vscode-languageserver";
import type { State } from "#analysis/flow-state.ts";
import type { Run } from "#analysis/follow.ts";
import type { Declaration, Part, Tool, Value } from "#model/declarations.ts";
import { THRESHOLDS } from "#model/lower-declarations.ts";
import { show } from "#quantity/display.ts";
import type { Quantity } from "#quantity/quantity.ts";
import { cmp } from "#quantity/rational.ts";
import { allCodes } from "#rules/explain.ts";
import { ENERGY_STATES, PART_STATES } from "#syntax/built-in-states.ts";
import type { Reach } from "../reach.ts";
import { energySuits, nameOf, partSuits, type Suits } from "./acting.ts";
import { type Candidate, GROUP } from "./candidate.ts";
import type { Expected } from "./grammar-paths.ts";
import { hazardCandidates } from "./hazards.ts";
import type { Place } from "./place.ts";
import type { Token } from "./tokens.ts";
import { type Asked, addedFits, quantityIn, toolFits } from "./tools.ts";
import { type Sort, type Wanted, withinRule } from "./wanted.ts";

/** What there is to know of a place beyond its tokens. */
export interface Around {
  readonly text: string;
  readonly place: Place;
  readonly reach: Reach;
  readonly named: (name: string) => Declaration | undefined;
  /** The state reached where the statement stands; null where none can be told. */
  readonly state: () => { readonly run: Run; readonly states: readonly State[] } | null;
  /** Codes of what is found in this file. */
  readonly found: () => readonly string[];
}

export function nameCandidates(around: Around, expected: Expected, wanted: Wanted): readonly Candidate[] {
  switch (wanted?.form) {
    case "things":
      return around.reach.things
        .filter(({ kind }) => wanted.sorts.includes(kind))
        .map((thing) => thingCandidate(around, expected, wanted, thing));
    case "steps":
      return stepCandidates(around);
    case "procedures":
      return around.reach.procedures
        .filter((procedure) => procedure !== around.reach.procedure)
        .map(({ name, title }) => ({
          label: name,
          kind: CompletionItemKind.Function,
          detail: title,
          group: GROUP.best,
        }));
    case "hazards":
      return hazardCandidates(around);
    case "thresholds":
      return Object.entries(THRESHOLDS).map(([label, kind]) => ({
        label,
        kind: CompletionItemKind.EnumMember,
        detail: kind,
        group: GROUP.best,
      }));
    case "index":
      return indexCandidates(around, expected);
    case "codes":
    case undefined:
      return [];
  }
}

const KIND_OF: Readonly<Record<Sort, CompletionItemKind>> = {
  material: CompletionItemKind.Color,
  source: CompletionItemKind.Reference,
  role: CompletionItemKind.TypeParameter,
  ring: CompletionItemKind.Struct,
  holes: CompletionItemKind.Struct,
  part: CompletionItemKind.Variable,
  fit: CompletionItemKind.Interface,
  tool: CompletionItemKind.Module,
  consumable: CompletionItemKind.Property,
  energy: CompletionItemKind.Event,
  hazard: CompletionItemKind.EnumMember,
  option: CompletionItemKind.Enum,
  fact: CompletionItemKind.Field,
  value: CompletionItemKind.Constant,
  reading: CompletionItemKind.Constant,
  threshold: CompletionItemKind.Constant,
  arrangement: CompletionItemKind.Struct,
  crib: CompletionItemKind.Class,
};

/* ---- things ---- */

function thingCandidate(
  around: Around,
  expected: Expected,
  wanted: Extract<Wanted, { form: "things" }>,
  thing: Declaration,
): Candidate {
  const plain = { label: thing.name, kind: KIND_OF[thing.kind], group: GROUP.plain as number };
  const indexed = indexSnippet(around, thing);
  const base = indexed === null || wanted.use === "subject" ? plain : { ...plain, snippet: indexed };
  const about = thing.title === thing.name ? "" : thing.title;
  if (wanted.use === "tool" && thing.kind === "tool") return { ...base, ...toolSaid(around, expected, thing, about) };
  if (wanted.use === "object" && (thing.kind === "part" || thing.kind === "energy")) {
    const verb = verbOf(around, expected);
    const reached = verb === null ? null : around.state();
    const suits =
      verb === null || reached === null
        ? null
        : thing.kind === "part"
          ? partSuits(reached.run, reached.states, verb, thing)
          : energySuits(reached.run, reached.states, verb, thing);
    return { ...base, ...suitsSaid(suits, about, thing, verb) };
  }
  if (wanted.use === "consumable" && thing.kind === "consumable")
    return { ...base, detail: about, group: isCalledFor(around, expected, thing) ? GROUP.best : GROUP.fitting };
  const first = wanted.sorts.indexOf(thing.kind);
  const value = thing.kind === "value" && thing.value !== null ? show(thing.value.quantity) : about;
  return { ...base, detail: value, group: GROUP.fitting, rank: first };
}

function suitsSaid(
  suits: Suits | null,
  about: string,
  thing: Declaration,
  verb: string | null,
): Pick<Candidate, "detail" | "group"> {
  const isFastener = thing.kind === "part" && thing.fastener;
  const isOdd = (verb === "tighten" || verb === "loosen") && !isFastener && thing.kind === "part";
  if (suits === null) return { detail: about, group: isOdd ? GROUP.doubtful : GROUP.fitting };
  if (suits.how === "not") return { detail: joined(about, suits.why), group: GROUP.doubtful };
  const { instance } = suits;
  const which = instance === null || instance.index === null ? "" : `${nameOf(instance)} first`;
  if (isOdd) return { detail: about, group: GROUP.doubtful };
  return { detail: joined(about, which), group: suits.how === "ready" ? GROUP.best : GROUP.fitting };
}

function joined(...words: readonly string[]): string {
  return words.filter((word) => word !== "").join(" · ");
}

/** `CoverScrew[all]`, with the index to choose: an action wants one on a part of several, unless it stands there already. */
function indexSnippet({ text, place }: Around, thing: Declaration): string | null {
  if (thing.kind !== "part" || thing.instances.form === "single") return null;
  if (/^[\p{L}\p{N}\p{M}_]*\[/u.test(text.slice(place.offset, place.offset + 99))) return null;
  const loop = place.loops[place.loops.length - 1];
  return `${thing.name}[\${1:${loop ?? "all"}}]`;
}

/** The verb of the action that the name is an object of. */
function verbOf({ place }: Around, { within }: Expected): string | null {
  const action = withinRule(within, "Action") ?? withinRule(within, "Perform");
  const verb = action === null ? undefined : place.tokens[action.at]?.type;
  return verb === "set" ? "set down" : (verb ?? null);
}

/** Whether a part of the action asks for it: a torque that holds with it. */
function isCalledFor({ place, named }: Around, { within }: Expected, thing: Declaration): boolean {
  const action = withinRule(within, "Action");
  const parts = place.tokens.slice(action?.at ?? 0).flatMap(({ image }) => {
    const part = named(image);
    return part?.kind === "part" ? [part] : [];
  });
  return parts.some((part) =>
    [...part.torques, ...part.nutFactors, ...part.frictions].some(
      ({ condition }) => condition !== null && "with" in condition && condition.with === thing,
    ),
  );
}

/* ---- tools ---- */

function toolSaid(around: Around, expected: Expected, tool: Tool, about: string): Pick<Candidate, "detail" | "group"> {
  const { place, named } = around;
  const before = place.tokens.slice(withinRule(expected.within, "Tools")?.at ?? place.tokens.length);
  if (before.some(({ image }) => named(image) === tool)) return { detail: about, group: GROUP.doubtful };
  const asked = askedOfTool(around, expected);
  // Behind `+` stands what is put on the tool before it, or hangs from it.
  const { fits, why } = before.at(-1)?.type === "+" ? addedFits(tool, asked) : toolFits(tool, asked);
  const group = fits === "yes" ? GROUP.best : fits === "unknown" ? GROUP.plain : GROUP.doubtful;
  return { detail: joined(why, about), group };
}

function askedOfTool({ text, place, named }: Around, { within }: Expected): Asked {
  const rule = withinRule(within, "Tools")?.outer;
  const tokens = place.tokens.slice(rule?.at ?? 0);
  const verb = tokens[0]?.type ?? "";
  const parts = tokens.flatMap(({ image }) => {
    const thing = named(image);
    return thing?.kind === "part" ? [thing] : [];
  });
  return { verb, value: valueAsked(text, place, verb, tokens, parts, named), mass: heaviest(parts) };
}

function valueAsked(
  text: string,
  place: Place,
  verb: string,
  tokens: readonly Token[],
  parts: readonly Part[],
  named: Around["named"],
): Quantity | null {
  const before = (word: string): readonly Token[] => {
    const at = tokens.findIndex(({ type }) => type === word);
    const end = tokens.findIndex(({ type }, index) => index > at && (type === "with" || type === "then"));
    return at < 0 ? [] : tokens.slice(at + 1, end < 0 ? tokens.length : end);
  };
  switch (verb) {
    case "tighten":
      return quantityIn(text, before("to"), "torque", named) ?? parts[0]?.torques[0]?.value.quantity ?? null;
    case "heat":
    case "cool":
      return quantityIn(text, before("to"), "temperature", named);
    case "record":
      return quantityIn(text, before("record").slice(1), null, named);
    case "check":
    case "measure": {
      // What is expected stands behind the tool, and may have been written before it.
      const rest = text.slice(place.offset).split(/\r?\n/, 1)[0] ?? "";
      const expect = /\bexpect\s+(.*?)(?:\s+(?:record|if)\b|$)/.exec(rest)?.[1];
      return expect === undefined ? null : quantityOf(expect);
    }
    default:
      return null;
  }
}

function quantityOf(text: string): Quantity | null {
  return quantityIn(
    text,
    [{ type: "", image: "", start: 0, end: text.length, line: 0, opensLine: false }],
    null,
    () => undefined,
  );
}

function heaviest(parts: readonly Part[]): Value | null {
  let most: Value | null = null;
  for (const { mass } of parts) {
    const [old, now] = [most?.quantity.nominal ?? null, mass?.quantity.nominal ?? null];
    if (mass !== null && (old === null || (now !== null && cmp(now.base, old.base) > 0))) most = mass;
  }
  return most;
}

/* ---- steps, hazards, indices, states, codes ---- */

function stepCandidates({ place, reach }: Around): readonly Candidate[] {
  const words = place.tokens.slice(-2).map(({ type }) => type);
  const backward = words[0] === "return" || words[1] === "after";
  const forward = words[0] === "go" || words[1] === "before";
  return reach.steps.map(({ name, number, title, span }, at) => {
    const isBefore = span.end < place.start;
    const isHere = span.start <= place.start && place.start <= span.end;
    const fits = (!backward || isBefore || (isHere && words[0] === "return")) && (!forward || (!isBefore && !isHere));
    return {
      label: name,
      kind: CompletionItemKind.Reference,
      detail: joined(number, title),
      group: fits ? GROUP.best : GROUP.doubtful,
      // The nearest first.
      rank: isBefore ? reach.steps.length - at : at,
    };
  });
}

const MOST_NUMBERS = 16;

function indexCandidates({ place, named }: Around, { within }: Expected): readonly Candidate[] {
  const loops = [...place.loops].reverse().map((label, rank) => ({
    label,
    kind: CompletionItemKind.Variable,
    detail: "of the repeat",
    group: GROUP.best as number,
    rank,
  }));
  const target = withinRule(within, "Target");
  if (target === null) return loops;
  const thing = named(place.tokens[target.at]?.image ?? "");
  const row = (label: string, rank: number, detail = ""): Candidate => ({
    label,
    kind: CompletionItemKind.Value,
    detail,
    group: GROUP.fitting,
    rank,
  });
  if (thing?.kind === "part" && thing.instances.form === "named")
    return [...loops, ...thing.instances.names.map((name, at) => row(name, at))];
  const [first, last] =
    thing?.kind === "part" && thing.instances.form === "numbered"
      ? [thing.instances.first, thing.instances.last]
      : thing?.kind === "ring" || thing?.kind === "holes"
        ? [1, thing.count]
        : [1, 0];
  const numbers = Array.from({ length: Math.min(Math.max(last - first + 1, 0), MOST_NUMBERS) }, (_, at) => first + at);
  const whole = numbers.length > 1 ? [row(`${first}..${last}`, 0, "each of them")] : [];
  return [...loops, ...whole, ...numbers.map((number, at) => row(String(number), at + 1))];
}

/** States that the subject of the condition can have, or an option's choices. */
export function stateCandidates({ place, named }: Around, { within }: Expected): readonly Candidate[] {
  const condition = withinRule(within, "StateCondition");
  const subject = condition === null ? undefined : named(place.tokens[condition.at]?.image ?? "");
  const item = (label: string, group: number, rank: number, detail = ""): Candidate => ({
    label,
    kind: CompletionItemKind.EnumMember,
    detail,
    group,
    rank,
  });
  if (subject?.kind === "option")
    return subject.choices.map(({ name, title }, at) => item(name, GROUP.best, at, title === name ? "" : title));
  if (subject?.kind === "energy") return ENERGY_STATES.map((state, at) => item(state, GROUP.best, at));
  if (subject !== undefined && subject.kind !== "part") return [];
  const own = (subject?.states ?? []).map((state, at) => item(state, GROUP.best, at, "its own"));
  const isFastener = subject?.fastener !== false;
  const common = PART_STATES.map((state, at) =>
    item(state, isFastener || !FOR_FASTENERS.has(state) ? GROUP.fitting : GROUP.doubtful, at),
  );
  return [...own, ...common];
}

const FOR_FASTENERS: ReadonlySet<string> = new Set(["loose", "tightened"]);

/** What may not be allowed is not offered. */
export function codeCandidates({ found }: Around, from: number): readonly Candidate[] {
  const here = new Set(found());
  return allCodes()
    .filter(({ code }) => !/^(?:syntax|names)\.|^units\.mismatch$|^trace\.unused-allow$/.test(code))
    .map(({ code, finds }, rank) => ({
      label: code,
      kind: CompletionItemKind.EnumMember,
      detail: here.has(code) ? "found in this file" : "",
      about: finds,
      group: here.has(code) ? GROUP.best : GROUP.plain,
      rank,
      from,
    }));
}
