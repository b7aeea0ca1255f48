// Bare changes put into words, each in its group. Knows no findings and no margins.

import { isHazardBelow } from "#analysis/hazards/thresholds.ts";
import { show } from "#quantity/display.ts";
import type { Change, Group, StepName } from "./change.ts";
import { type Bare, type Both, type Compared, isInside } from "./compare.ts";
import { nodesUnder } from "./match.ts";
import { BLOCKS } from "./moved.ts";
import type { Node, Saying, Sort } from "./record.ts";
import { type EndChange, type ValueChange, valueChange } from "./value-change.ts";
import { ended, type Words } from "./words.ts";

/** A change with what else has to be known of it before it is told. */
export interface Entry {
  readonly change: Change;
  /** Steps that it is in, or that use what it is about. */
  readonly steps: readonly { readonly old: Node | null; readonly new: Node | null }[];
  /** What it is about, on each side. */
  readonly node: { readonly old: Node | null; readonly new: Node | null };
  readonly label: Saying["label"] | null;
  /** Set where it only went along with a step that came or went, which is told by itself. */
  readonly alongside?: true;
}

/** @param procedure whose tree it is; empty for shared declarations */
export function describe(bare: Bare, compared: Compared, procedure: string, words: Words): readonly Entry[] {
  const telling: Telling = { compared, procedure, words };
  switch (bare.what) {
    case "said":
      return [saidEntry(bare, telling)];
    case "added":
      return [
        nodeEntry({ old: null, new: bare.new }, "added", bare.edits, telling),
        ...allowedInside(bare.new, telling),
      ];
    case "removed":
      return [
        nodeEntry({ old: bare.old, new: null }, "removed", bare.edits, telling),
        ...signedInside(bare.old, telling),
      ];
    case "moved":
      return [movedEntry(bare.node, bare.edits, telling)];
  }
}

interface Telling {
  readonly compared: Compared;
  readonly procedure: string;
  readonly words: Words;
}

type Maybe = Entry["node"];

function entryOf(
  { procedure, compared }: Telling,
  node: Maybe,
  label: Entry["label"],
  change: Omit<Change, "procedure" | "step" | "edits">,
  edits: Change["edits"],
): Entry {
  const [olds, news] = [stepsOf(node.old, compared), stepsOf(node.new, compared)];
  const { toOld, toNew } = compared.pairs;
  const known = new Set(news.map((one) => toOld.get(one)));
  const steps = [
    ...news.map((one) => ({ old: toOld.get(one) ?? null, new: one })),
    ...olds.filter((one) => !known.has(one)).map((one) => ({ old: one, new: toNew.get(one) ?? null })),
  ];
  const step = stepName(news[0] ?? olds[0] ?? null);
  return {
    change: { ...change, procedure, ...(step === null ? {} : { step }), edits },
    steps,
    node,
    label,
  };
}

/** The step that it is or stands in; of a block round steps these; or else the task. */
function stepsOf(node: Node | null, compared: Compared): readonly Node[] {
  const inside = node !== null && isAround(node) ? numberedIn(node) : [];
  if (inside.length > 0) return inside;
  const step = stepOf(node, compared);
  return step === null ? [] : [step];
}

/** A block that has no number of its own. */
function isAround({ sort, number }: Node): boolean {
  return BLOCKS.has(sort) && number === null;
}

/** The outermost steps and tasks in it. */
function numberedIn({ holds }: Node): readonly Node[] {
  return holds.flatMap((inner) => (inner.number === null ? numberedIn(inner) : [inner]));
}

/** The step, or else the task, that it is or stands in. */
function stepOf(node: Node | null, { parents }: Compared): Node | null {
  for (let at: Node | undefined | null = node; at != null; at = parents.get(at)) if (at.number !== null) return at;
  return null;
}

export function stepName(node: Node | null): StepName | null {
  if (node === null || node.number === null) return null;
  const named = node.says.find(({ key }) => key === "name");
  return { ...(named === undefined ? {} : { name: named.text }), number: node.number };
}

/* ---- nodes ---- */

const GROUP_OF: Partial<Readonly<Record<Sort, Group>>> = { statement: "safety", note: "words", declaration: "items" };

function groupOf(node: Node): Group {
  if (node.name?.startsWith("threshold ")) return "safety";
  if (node.name?.startsWith("term ")) return "words";
  return GROUP_OF[node.sort] ?? "order";
}

function kindOf(node: Node, how: string): string {
  return `${node.sort.replaceAll(" ", "-")}-${how}`;
}

function nodeEntry(node: Maybe, how: "added" | "removed", edits: Change["edits"], telling: Telling): Entry {
  const one = (node.new ?? node.old) as Node;
  const { words } = telling;
  const what = words.sorts[one.sort];
  const title = one.title();
  const message = how === "added" ? words.nodeAdded(what, title) : words.nodeDropped(what, title);
  const side = { span: one.span, text: title };
  const sides = how === "added" ? { new: side } : { old: side };
  const verb = how === "removed" && DROPPED.has(one.sort) ? "dropped" : how;
  const text = [message, ...aroundTexts(one, how, telling)].map(ended).join(" ");
  const change = { group: groupOf(one), kind: kindOf(one, verb), message: text, ...sides };
  return entryOf(telling, node, null, change, edits);
}

const DROPPED: ReadonlySet<Sort> = new Set<Sort>(["statement", "failing"]);
/** So many steps are named in one entry. */
export const MOST_STEPS = 6;

/** What a block was put round that stood there before, or was taken from round; and what that means. */
function aroundTexts(node: Node, how: "added" | "removed", { compared, words }: Telling): readonly string[] {
  if (!isAround(node)) return [];
  const { toOld, toNew } = compared.pairs;
  const steps = numberedIn(node);
  const kept = (steps.length > 0 ? steps : linesIn(node)).flatMap((inner) =>
    how === "removed" ? (toNew.get(inner) ?? []) : toOld.has(inner) ? [inner] : [],
  );
  if (kept.length === 0) return [];
  const shown = kept.slice(0, MOST_STEPS).map((inner) => placeText(inner, words));
  return [words.around[node.sort as Around][how](words.steps(shown, kept.length - shown.length))];
}

type Around = keyof Words["around"];

/** What stands in a block of a step. */
function linesIn({ holds }: Node): readonly Node[] {
  return holds.flatMap((inner) => (BLOCKS.has(inner.sort) ? linesIn(inner) : [inner]));
}

function movedEntry(node: Both, edits: Change["edits"], telling: Telling): Entry {
  const { words, compared } = telling;
  const { new: now, old } = node;
  const holder = compared.parents.get(now);
  const place = placeIn(now, compared);
  const [before, after] = [besideOf(holder, place, -1), besideOf(holder, place, 1)];
  const where = [
    before === undefined ? words.nowFirst(placeText(holder, words)) : words.nowBehind(placeText(before, words)),
    ...(after === undefined ? [] : [words.nowAhead(placeText(after, words))]),
  ];
  const guards = now.sort === "statement" ? [guardsText(node, telling)] : [];
  const message = [words.nodeMoved(words.sorts[now.sort], now.title()), ...guards, ...where].map(ended).join(" ");
  const sides = { old: { span: old.span, text: old.title() }, new: { span: now.span, text: now.title() } };
  return entryOf(telling, node, null, { group: groupOf(now), kind: kindOf(now, "moved"), message, ...sides }, edits);
}

/** What a statement that moved now guards: it holds for what comes behind it, in what holds it. */
function guardsText({ old, new: now }: Both, { compared, words }: Telling): string {
  const { parents, pairs } = compared;
  const [was, to] = [keptHolder(old, compared), parents.get(now)];
  if (to === undefined || was === undefined) return words.statementAhead;
  if (was !== to && isInside(was, to, parents)) return words.statementAhead;
  if (was !== to && isInside(to, was, parents)) return words.statementNarrowed(placeText(to, words));
  if (was !== to) return words.statementElsewhere(placeText(to, words));
  const guarded = parents.get(old)?.holds.slice(placeIn(old, compared) + 1) ?? [];
  const isBehind = guarded.some((one) => {
    const partner = isHead(one) ? undefined : pairs.toNew.get(one);
    return partner !== undefined && parents.get(partner) === to && placeIn(partner, compared) < placeIn(now, compared);
  });
  return isBehind ? words.statementBehind : words.statementAhead;
}

/** What became of the nearest node round it that is still there. */
function keptHolder(old: Node, { parents, pairs }: Compared): Node | undefined {
  let holder = parents.get(old);
  while (holder !== undefined && !pairs.toNew.has(holder)) holder = parents.get(holder);
  return holder && pairs.toNew.get(holder);
}

function placeIn(node: Node, { places }: Compared): number {
  return places.get(node) ?? 0;
}

function isHead({ sort }: Node): boolean {
  return sort === "statement" || sort === "note";
}

/** The next in that direction that is no statement and no note. */
function besideOf(holder: Node | undefined, place: number, way: 1 | -1): Node | undefined {
  let at = place + way;
  for (let next = holder?.holds[at]; next !== undefined && isHead(next); next = holder?.holds[at]) at += way;
  return holder?.holds[at];
}

function placeText(node: Node | undefined, words: Words): string {
  if (node === undefined || node.sort === "procedure") return words.inProcedure(node?.name ?? "");
  if (node.sort === "task") return words.task(node.number ?? "", node.title());
  const step = stepName(node);
  return step === null ? words.block(node.title()) : words.step(step.number, step.name ?? null);
}

/** A hold point that went with its step is a hold point dropped. */
function signedInside(node: Node, telling: Telling): readonly Entry[] {
  return toldBy(node, telling).flatMap((inner): readonly Entry[] => {
    const shownOf = (label: Saying["label"]) =>
      inner.says.filter((said) => said.label === label).map(({ shown }) => shown());
    const [holds, signs] = [shownOf("hold"), shownOf("sign-off")];
    if (holds.length + signs.length === 0) return [];
    const message = ended(telling.words.signedWithStep(holds, signs));
    const kind = holds.length > 0 ? "hold-dropped" : "sign-off-dropped";
    const old = { span: inner.span, text: inner.title() };
    const entry = entryOf(telling, { old: inner, new: null }, "hold", { group: "safety", kind, message, old }, []);
    return [{ ...entry, alongside: true }];
  });
}

/** One that came with a new step is one added. */
function allowedInside(node: Node, telling: Telling): readonly Entry[] {
  return toldBy(node, telling).flatMap((inner) =>
    inner.says
      .filter(({ label }) => label === "allow")
      .map((said): Entry => {
        const now = { span: said.span, text: said.shown() };
        const message = ended(telling.words.allowedInNew(now.text));
        const change = { group: "safety", kind: "allow-added", message, new: now } as const;
        return { ...entryOf(telling, { old: null, new: inner }, said.label, change, []), alongside: true };
      }),
  );
}

/** It and what came or went with it. */
function toldBy(node: Node, { compared: { pairs, ownerOf } }: Telling): readonly Node[] {
  return nodesUnder(node).filter((one) => !pairs.toOld.has(one) && !pairs.toNew.has(one) && ownerOf(one) === node);
}

/* ---- what a node says ---- */

function saidEntry(bare: Extract<Bare, { what: "said" }>, telling: Telling): Entry {
  const { node, old, new: now, edits } = bare;
  const one = (now ?? old) as Saying;
  const what = subjectOf(node.new, one, telling.words);
  const told = saidChange(old, now, what, node.new, telling.words);
  const { group, kind, message } =
    one.label === "threshold" && old !== null && now !== null ? thresholdChange(node.new, old, now, told) : told;
  const side = (said: Saying | null) => said && { span: said.span, text: said.shown() };
  const [before, after] = [side(old), side(now)];
  const sides = { ...(before === null ? {} : { old: before }), ...(after === null ? {} : { new: after }) };
  return entryOf(telling, node, one.label, { group, kind, message: ended(message), ...sides }, edits);
}

function subjectOf({ sort, subject, says }: Node, { label, within }: Saying, words: Words): string {
  const what = words.labels[label];
  const whole = says.find(({ key }) => key === within);
  if (whole !== undefined) return words.valueIn(words.labels[whole.label], whole.shown());
  if (subject === "") return what;
  // What is reworded is no name for itself.
  if (label === "own-words" && sort !== "action") return words.of(words.sorts[sort], what);
  // A value's value, a threshold's threshold: that goes without saying.
  return subject.startsWith(`${label} `) ? words.alone(subject) : words.of(subject, what);
}

type Told = Pick<Change, "group" | "kind" | "message">;

function saidChange(old: Saying | null, now: Saying | null, what: string, node: Node, words: Words): Told {
  const { label, group } = (now ?? old) as Saying;
  const isText = group === "words" || TEXTS.has(label);
  const text = (said: Saying | null): string => {
    const shown = said?.shown() ?? "";
    return isText && shown !== "" ? words.quoted(shown) : shown;
  };
  if (now === null) return { group, kind: `${label}-dropped`, message: words.dropped(what, text(old)) };
  if (old === null) return { group, kind: `${label}-added`, message: words.added(what, text(now)) };
  if (label === "signal-word") return signalChange(old, now, node, words);
  if (now.values.length > 0) return valuesChange(old, now, what, words);
  if (label === "table-rows")
    return { group, kind: `${label}-changed`, message: words.rows(what, ...rowsChanged(old, now)) };
  const [verb] = node.about;
  const message =
    label === "object" && verb !== undefined
      ? words.instead(verb, old.shown(), now.shown())
      : words.changed(what, text(old), text(now));
  return { group, kind: `${label}-changed`, message };
}

/** Rows that are on one side only, with their places among the others. */
function rowsChanged(old: Saying, now: Saying): readonly [gone: readonly string[], come: readonly string[]] {
  const [before, after] = [rowsOf(old), rowsOf(now)];
  const only = (some: ReadonlyMap<string, string>, others: ReadonlyMap<string, string>): readonly string[] =>
    [...some].flatMap(([text, shown]) => (others.has(text) ? [] : [shown]));
  return [only(before, after), only(after, before)];
}

function rowsOf({ text, shown }: Saying): ReadonlyMap<string, string> {
  const all = shown().split("\n");
  return new Map(text.split("\n").map((row, at) => [row, all[at] ?? row]));
}

const TEXTS: ReadonlySet<Saying["label"]> = new Set<Saying["label"]>(["statement-text", "avoidance", "protection"]);
const SIGNALS = ["caution", "warning", "danger"];

function signalChange(old: Saying, now: Saying, { about }: Node, words: Words): Told {
  const isWeaker = SIGNALS.indexOf(now.text) < SIGNALS.indexOf(old.text);
  const [kind, head] = isWeaker
    ? (["weakened", words.weakened] as const)
    : (["strengthened", words.strengthened] as const);
  return { group: "safety", kind: `signal-word-${kind}`, message: words.changed(head(about), old.text, now.text) };
}

function valuesChange(old: Saying, now: Saying, what: string, words: Words): Told {
  const changes = now.values.map((one, at) => {
    const before = old.values[at];
    return before === undefined ? null : valueChange(before, one);
  });
  const isKept =
    old.values.length === now.values.length && changes.every((one) => one !== null && one.how !== "changed");
  if (isKept) {
    const moved = changes.flatMap((one) => (one?.how === "restated" ? one.ends : []));
    const rounding = moved.map((end) => endText(end, words)).join(", ");
    return { group: "values", kind: "restated", message: words.restated(what, old.shown(), now.shown(), rounding) };
  }
  const differing = changes.filter((one) => one?.how === "changed");
  // Of stages the last is what counts.
  const last = differing.at(-1);
  const by = last == null || old.values.length !== now.values.length ? "" : differenceText(last, words);
  const message = `${words.changed(what, old.shown(), now.shown())}${by === "" ? "" : `: ${by}`}`;
  return { group: now.group, kind: `${now.label}-changed`, message };
}

/** Raising one makes fewer things a hazard, but where less is the hazard: there lowering it does. */
function thresholdChange({ name }: Node, old: Saying, now: Saying, told: Told): Told {
  const [before, after] = [old.values[0], now.values[0]];
  const change = before === undefined || after === undefined ? null : valueChange(before, after);
  if (change?.how !== "changed") return told;
  const rises = change.ends.some((end) => end.rises);
  const isLooser = rises !== isHazardBelow((name ?? "").slice("threshold ".length));
  return { ...told, group: isLooser ? "safety" : "values", kind: rises ? "threshold-raised" : "threshold-lowered" };
}

function differenceText(change: ValueChange, words: Words): string {
  if (change.how !== "changed") return "";
  const { ends, width } = change;
  const texts = ends.map((end) => endText(end, words));
  if (width === null) return texts.join(", ");
  const wide = width.wider ? words.wider : words.narrower;
  return [...texts, wide(show(width.old), show(width.new))].join(", ");
}

function endText({ end, by, rises, percent }: EndChange, words: Words): string {
  const told = (rises ? words.rises : words.falls)(show(by), percent === null ? null : words.percent(percent));
  if (end === "both") return told;
  return end === "low" ? words.lowEnd(told) : words.highEnd(told);
}
