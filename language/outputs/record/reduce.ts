// Filling a checklist: from what was done so far and one event to what holds then, or why that is refused. The page and `sprag verify`
// both go through here, so they cannot differ. Pure; knows no words.
import type { Rational } from "#quantity/rational.ts";
import { isWithin, readTyped } from "./amount.ts";
import { isSamePerson, type Person } from "./person.ts";
import type { Entry, Plan, ReadingEntry, Timer } from "./plan.ts";
import type { RecordEvent } from "./record.ts";
import { entriesBetween, type Marked, type Position, walk } from "./walk.ts";

/** What holds after some events, and before the last of them. Never changed: each event makes another. */
export interface Filling extends Held {
  /** What held before each of the last events that are not taken back, the latest last. */
  readonly earlier: readonly Held[];
}

export interface Held {
  readonly events: readonly RecordEvent[];
  /** By entry; what is to be done again is gone from here, and stays in the events. */
  readonly marks: ReadonlyMap<string, Mark>;
  /** By role. */
  readonly people: ReadonlyMap<string, Person>;
  /** Everybody who was named or has signed for work, and for looking at it. */
  readonly performers: readonly Person[];
  readonly inspectors: readonly Person[];
  /** When each timer was started last. */
  readonly started: ReadonlyMap<string, string>;
  readonly position: Position;
  /** Entries that the last event opened again, by going back. */
  readonly again: readonly string[];
}

/** So many events can be taken back one after the other. */
const MOST_UNDONE = 100;

export interface Mark {
  readonly at: string;
  /** False: out of limits, or not passed. Null: nothing was held against it. */
  readonly passed: boolean | null;
  /** In the coherent unit. */
  readonly value: Rational | null;
  /** As typed, chosen or signed. */
  readonly text: string;
  /** Places done of a round. */
  readonly places: number;
}

export type Refusal =
  | { readonly why: "unknown" | "wrong kind" | "done" | "no name" | "no number" | "no text" | "unknown unit" }
  | { readonly why: "unknown role" | "unknown choice" | "nothing to undo" | "stopped" | "complete" }
  /** Something else comes first. */
  | { readonly why: "not next"; readonly next: readonly string[] }
  /** Who looks at work has done some of it, or the other way round. */
  | { readonly why: "same person"; readonly role: string }
  /** The record says another result than its value gives. */
  | { readonly why: "other result"; readonly passed: boolean | null };

export type Outcome =
  | { readonly ok: true; readonly filling: Filling }
  | { readonly ok: false; readonly refusal: Refusal };

/** Nothing done yet. */
export function emptyFilling(plan: Plan): Filling {
  const nobody = { people: new Map(), performers: [], inspectors: [] };
  return { ...settled(plan, { events: [], marks: new Map(), ...nobody, started: new Map(), again: [] }), earlier: [] };
}

/** Total: an event that cannot be is refused with the reason, and changes nothing. */
export function reduce(plan: Plan, filling: Filling, event: RecordEvent): Outcome {
  const events = [...filling.events, event];
  const { earlier, ...held } = filling;
  if (event.kind === "undo") {
    const last = earlier.at(-1);
    if (last === undefined) return { ok: false, refusal: { why: "nothing to undo" } };
    return { ok: true, filling: { ...last, events, again: [], earlier: earlier.slice(0, -1) } };
  }
  const changed = changedBy(plan, filling, event);
  if ("why" in changed) return { ok: false, refusal: changed };
  const next = settled(plan, { ...held, ...changed, events, again: [] });
  return { ok: true, filling: { ...next, earlier: [...earlier, held].slice(-MOST_UNDONE) } };
}

/** The entry of an id; looked for in a list that is made once for each plan. */
export function entryOf(plan: Plan, id: string): Entry | null {
  const known = entries.get(plan) ?? new Map(plan.entries.map((entry) => [entry.id, entry]));
  entries.set(plan, known);
  return known.get(id) ?? null;
}

const entries = new WeakMap<Plan, ReadonlyMap<string, Entry>>();

/** What is known of a declared reading: the last value taken that still holds. */
export function readingsIn(plan: Plan, marks: Held["marks"]): (reading: string) => Rational | null {
  return (reading) => {
    const values = plan.entries.flatMap((entry) =>
      entry.kind === "reading" && entry.reading === reading ? (marks.get(entry.id)?.value ?? []) : [],
    );
    return values.at(-1) ?? null;
  };
}

type Changed = Partial<Held>;
type Change = Exclude<RecordEvent, { readonly kind: "undo" }>;

function changedBy(plan: Plan, filling: Held, event: Change): Changed | Refusal {
  if (event.kind === "name") return named(plan, filling, event.role, event);
  if (event.kind === "start") return started(plan, filling, event);
  const entry = entryOf(plan, event.of);
  if (entry === null) return { why: "unknown" };
  if (!TAKES[event.kind].includes(entry.kind)) return { why: "wrong kind" };
  return whyNotNow(filling, entry.id) ?? marked(plan, filling, entry, event);
}

function started(plan: Plan, filling: Held, { of, at }: Change & { readonly kind: "start" }): Changed | Refusal {
  const timer = plan.timers.find(({ id }) => id === of);
  if (timer === undefined) return { why: "unknown" };
  const refusal = mayStart(filling, timer) ? null : whyNotNow(filling, timer.entries[0] ?? "");
  return refusal ?? { started: new Map(filling.started).set(of, at) };
}

/** A step or wait while it is in hand, a coat once its line is. */
export function mayStart(filling: Pick<Held, "marks" | "position">, { of, entries }: Timer): boolean {
  return entries.some((id) => filling.position.next.includes(id) || (of === "cure" && isMarked(filling, id)));
}

/** Whether an entry is marked so that nothing more is to be done at it. */
export function isMarked({ marks, position }: Pick<Held, "marks" | "position">, id: string): boolean {
  return marks.has(id) && !position.next.includes(id);
}

/** Why an entry cannot be marked now; null where it can. */
export function whyNotNow({ marks, position }: Held, id: string): Refusal | null {
  const { next, stopped, isComplete } = position;
  if (next.includes(id)) return null;
  if (marks.has(id)) return { why: "done" };
  return stopped !== null ? { why: "stopped" } : isComplete ? { why: "complete" } : { why: "not next", next };
}

const TAKES: Readonly<Record<Exclude<Change["kind"], "name" | "start">, readonly Entry["kind"][]>> = {
  tick: ["tick", "round"],
  place: ["round"],
  read: ["reading"],
  judge: ["judgement"],
  answer: ["answer"],
  choose: ["option"],
  sign: ["sign"],
};

function marked(
  plan: Plan,
  filling: Held,
  entry: Entry,
  event: Exclude<Change, { readonly kind: "name" | "start" }>,
): Changed | Refusal {
  const { at } = event;
  const put = (mark: Partial<Mark>): Changed => ({
    marks: new Map(filling.marks).set(entry.id, { at, passed: null, value: null, text: "", places: 0, ...mark }),
  });
  const performing = plan.roles.filter(({ inspects }) => !inspects);
  const isWork = event.kind !== "choose" && event.kind !== "answer" && event.kind !== "sign";
  if (isWork && performing.length > 0 && !performing.some(({ role }) => filling.people.has(role)))
    return { why: "no name" };
  switch (event.kind) {
    case "tick":
      return put({ places: entry.kind === "round" ? entry.places.length : 0 });
    case "place":
      return put({ places: (filling.marks.get(entry.id)?.places ?? 0) + 1 });
    case "judge":
      return put({ passed: event.passed });
    case "answer":
      return put({ passed: event.holds });
    case "choose":
      return entry.kind === "option" && entry.choices.includes(event.choice)
        ? put({ text: event.choice })
        : { why: "unknown choice" };
    case "read": {
      const read = readingOf(plan, filling, entry as Entry & ReadingEntry, event);
      if ("why" in read) return read;
      return read.passed === event.passed ? put(read) : { why: "other result", passed: read.passed };
    }
    case "sign": {
      const { role } = entry as Entry & { readonly kind: "sign" };
      const signed = named(plan, filling, role, event);
      return "why" in signed ? signed : { ...signed, ...put({ text: personText(event) }) };
    }
  }
}

/** What a typed reading comes to. */
export function readingOf(
  plan: Plan,
  { marks }: Pick<Held, "marks">,
  { units, limits }: ReadingEntry,
  { text, unit }: { readonly text: string; readonly unit: string },
): Pick<Mark, "passed" | "value" | "text"> | Refusal {
  if (text.trim() === "") return { why: "no text" };
  const [first] = units;
  if (first === undefined) return { passed: null, value: null, text: text.trim() };
  const chosen = units.find((one) => one.text === unit);
  if (chosen === undefined) return { why: "unknown unit" };
  const typed = readTyped(text, chosen, units);
  if (typed === null) return { why: "no number" };
  const passed = limits === null ? null : isWithin(typed.base, limits, readingsIn(plan, marks));
  return { passed, value: typed.base, text: typed.shown };
}

/** A name for a role, unless it is that of somebody on the other side. */
function named(plan: Plan, filling: Held, role: string, { name, badge }: Person): Changed | Refusal {
  const known = plan.roles.find((one) => one.role === role);
  if (known === undefined) return { why: "unknown role" };
  const person = { name: name.trim(), badge: badge.trim() };
  if (person.name === "") return { why: "no name" };
  const { performers, inspectors } = filling;
  const [own, others] = known.inspects ? [inspectors, performers] : [performers, inspectors];
  if (others.some((other) => isSamePerson(person, other)))
    return { why: "same person", role: roleOf(plan, filling, person, !known.inspects) };
  const people = new Map(filling.people).set(role, person);
  const all = own.some((one) => one.name === person.name && one.badge === person.badge) ? own : [...own, person];
  return known.inspects ? { people, inspectors: all } : { people, performers: all };
}

/** The role in which somebody works, or looks at work; empty where another has taken it over since. */
function roleOf({ roles }: Plan, { people }: Held, person: Person, inspects: boolean): string {
  const found = roles.find((one) => {
    const other = one.inspects === inspects ? people.get(one.role) : undefined;
    return other !== undefined && isSamePerson(person, other);
  });
  return found?.role ?? "";
}

export function personText({ name, badge }: Person): string {
  return badge.trim() === "" ? name.trim() : `${name.trim()} (${badge.trim()})`;
}

/** With its position; where the work goes back, what is to be done again is opened. */
function settled(plan: Plan, filling: Omit<Held, "position">): Held {
  const position = walk(plan, markedBy(plan, filling.marks));
  if (position.back === null) return { ...filling, position };
  const part = entriesBetween(plan, position.back.from, position.back.end);
  const again = [...filling.marks.keys()].filter((id) => part.has(id));
  // A way back with nothing on it would never end.
  if (again.length === 0) return { ...filling, position: { ...position, back: null } };
  const marks = new Map([...filling.marks].filter(([id]) => !part.has(id)));
  const over = plan.timers.filter(({ entries }) => entries.some((id) => part.has(id)));
  const started = new Map([...filling.started].filter(([id]) => !over.some((timer) => timer.id === id)));
  return settled(plan, { ...filling, marks, started, again: [...filling.again, ...again] });
}

function markedBy(plan: Plan, marks: Held["marks"]): Marked {
  const entry = (id: string): Entry | null => entryOf(plan, id);
  return {
    isBegun: (id) => marks.has(id),
    hasFailed: (id) => marks.get(id)?.passed === false,
    isDone: (id) => {
      const mark = marks.get(id);
      const one = entry(id);
      if (mark === undefined || one === null) return false;
      if (one.kind === "round") return mark.places >= one.places.length;
      return one.kind !== "reading" || one.fails || mark.passed !== false;
    },
    answer: (id) => marks.get(id)?.passed ?? null,
    choice: (option) => {
      const one = plan.entries.find((each) => each.kind === "option" && each.option === option);
      if (one !== undefined) return marks.get(one.id)?.text ?? null;
      return Object.hasOwn(plan.options, option) ? (plan.options[option] ?? null) : null;
    },
    readings: readingsIn(plan, marks),
  };
}
