// What a change does beyond its own line: margins that shrink, what stores lay out, the time, and who has to sign again. Knows
// no findings.
import type { Entry } from "./describe.ts";
import { nodesUnder } from "./match.ts";
import type { Node, Saying } from "./record.ts";
import type { Kit, Margin } from "./side.ts";
import { ended, type Words } from "./words.ts";

/** Both sides of one procedure. */
export interface Sides {
  readonly margins: { readonly old: readonly Margin[]; readonly new: readonly Margin[] };
  readonly kit: { readonly old: Kit; readonly new: Kit };
  /** The step of the new side that has that number on the side named; null where it has no partner. */
  readonly step: (number: string, side: "old" | "new") => Node | null;
  /** The name that something of the new side had. */
  readonly oldName: (name: string) => string;
}

/** The entries of a procedure with what they do beyond their own line; what belongs to none is an entry of its own. */
export function withEffects(
  entries: readonly Entry[],
  sides: Sides,
  procedure: string,
  words: Words,
): readonly Entry[] {
  const more = new Map<Entry, Set<string>>();
  const tell = (entry: Entry, text: string): void => void more.set(entry, (more.get(entry) ?? new Set()).add(text));
  for (const { step, text } of marginTexts(sides, words)) {
    const owner = (["values", "order", "items"] as const)
      .map((group) => entries.find((entry) => entry.change.group === group && !isRestated(entry) && isIn(entry, step)))
      .find((entry) => entry !== undefined);
    if (owner !== undefined) tell(owner, text);
  }
  const left = kitTexts(entries, sides, tell, words);
  const { old, new: now } = sides.kit;
  if (old.time !== now.time) {
    const owner = entries.find(takesTime);
    if (owner !== undefined) tell(owner, words.longest(old.time ?? words.unsaid, now.time ?? words.unsaid));
  }
  const told = entries.map((entry) => {
    const texts = more.get(entry);
    if (texts === undefined) return entry;
    return {
      ...entry,
      change: { ...entry.change, message: [entry.change.message, ...[...texts].map(ended)].join(" ") },
    };
  });
  return [...told, ...left.map((message) => kitEntry(ended(message), procedure))];
}

function isRestated({ change }: Entry): boolean {
  return change.kind === "restated";
}

function isIn(entry: Entry, step: Node): boolean {
  return entry.steps.some((one) => one.old === step || one.new === step);
}

/* ---- margins ---- */

function marginTexts(
  { margins, step }: Sides,
  words: Words,
): readonly { readonly step: Node; readonly text: string }[] {
  const keyOf = ({ of, part, limitOf, step: number }: Margin, side: "old" | "new"): string | null => {
    const at = step(number, side);
    return at === null ? null : JSON.stringify([at.number, of, part, limitOf]);
  };
  const before = new Map(margins.old.map((margin) => [keyOf(margin, "old"), margin]));
  return margins.new.flatMap((margin) => {
    const at = step(margin.step, "new");
    const was = before.get(keyOf(margin, "new"));
    if (at === null || was === undefined || (was.text === margin.text && was.over === margin.over)) return [];
    return [{ step: at, text: marginText(was, margin, words) }];
  });
}

function marginText(old: Margin, now: Margin, words: Words): string {
  if (now.of === "preload") return words.preload(now.part, old.text, now.text);
  return words.heat(now.part, now.limitOf, old, now);
}

/* ---- the kit ---- */

/** Says of each change what it puts into the kit or takes out; what no change shows is left. */
function kitTexts(
  entries: readonly Entry[],
  { kit: { old, new: now }, oldName }: Sides,
  tell: (entry: Entry, text: string) => void,
  words: Words,
): readonly string[] {
  const told = new Map<Entry | null, { added: string[]; dropped: string[]; counted: string[] }>();
  const items = new Map([...now.items].map(([name, item]) => [oldName(name), item]));
  for (const item of new Set([...old.items.keys(), ...items.keys()])) {
    const [before, after] = [old.items.get(item), items.get(item)];
    if (before?.count === after?.count) continue;
    const side = after === undefined ? "old" : "new";
    const owner =
      entries.find((entry) => names(entry, item, side)) ?? entries.find((entry) => names(entry, item, "old"));
    const own = told.get(owner ?? null) ?? { added: [], dropped: [], counted: [] };
    told.set(owner ?? null, own);
    if (before === undefined) own.added.push(after?.title ?? item);
    else if (after === undefined) own.dropped.push(before.title);
    else own.counted.push(words.kitCount(after.title, before.count, after.count));
  }
  const left: string[] = [];
  for (const [owner, { added, dropped, counted }] of told) {
    const texts = [
      ...(added.length === 0 ? [] : [words.kitAdded(added)]),
      ...(dropped.length === 0 ? [] : [words.kitDropped(dropped)]),
      ...counted,
    ];
    if (owner === null) left.push(...texts);
    else for (const text of texts) tell(owner, text);
  }
  return left;
}

/** Whether what came, went or changed names it. */
function names({ node, change, label }: Entry, item: string, side: "old" | "new"): boolean {
  const at = node[side];
  if (at === null || change.group === "words" || change.group === "safety") return false;
  if (label !== null) return KIT_LABELS.has(label) && says(at, item);
  return nodesUnder(at).some((inner) => says(inner, item));
}

const KIT_LABELS: ReadonlySet<Saying["label"]> = new Set<Saying["label"]>([
  ...(["tool", "consumable", "object", "beside", "action", "passes", "place"] as const),
]);

function says({ about, says: all }: Node, item: string): boolean {
  return about.includes(item) || all.some(({ label, text }) => KIT_LABELS.has(label) && text === item);
}

function kitEntry(message: string, procedure: string): Entry {
  const change = { group: "items", kind: "kit-changed", message, procedure, edits: [] } as const;
  return { change, steps: [], node: { old: null, new: null }, label: null };
}

const TIMED: ReadonlySet<Saying["label"]> = new Set<Saying["label"]>(["time", "wait", "passes", "performed"]);

function takesTime({ label, change }: Entry): boolean {
  return label === null ? change.group === "order" : TIMED.has(label);
}

/* ---- who signs again ---- */

const SIGNED: ReadonlySet<Saying["label"]> = new Set<Saying["label"]>(["hold", "sign-off", "critical", "done-by"]);

/** Roles that sign a critical step, or one whose signatures changed, have to look again. */
export function signedAgain(entry: Entry): readonly string[] {
  const { change, steps, label } = entry;
  const { group } = change;
  if (isRestated(entry) || group === "words" || group === "layout") return [];
  const nodes = steps.flatMap((step) => [step.old, step.new]).filter((step) => step !== null);
  const some = label !== null && SIGNED.has(label) ? nodes : nodes.filter(({ critical }) => critical);
  return [...new Set(some.flatMap(({ signers }) => signers))];
}
