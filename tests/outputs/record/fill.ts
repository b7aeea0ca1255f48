// Fills in checklists without a page, by the same reducer: one event after the other, or all that comes next until the end.
import type { Entry, Plan } from "#outputs/record/plan.ts";
import { type FilledRecord, RECORD_FORMAT, RECORD_VERSION, type RecordEvent } from "#outputs/record/record.ts";
import { emptyFilling, entryOf, type Filling, type Refusal, readingOf, reduce } from "#outputs/record/reduce.ts";
import { make, type Wishes } from "../make.ts";

/** An event without its time; the harness counts seconds. */
export type Act = RecordEvent extends infer Event ? (Event extends RecordEvent ? Omit<Event, "at"> : never) : never;

/** The plan of the first procedure, whatever a check finds in it. */
export function planFor(text: string, wishes: Wishes = {}): Plan {
  const { record } = make(text, { findings: [], ...wishes }).document;
  if (record === null) throw new Error("it is a draft");
  return record;
}

/** After these acts, all of which have to be taken. */
export function doing(plan: Plan, acts: readonly Act[], from: Filling = emptyFilling(plan)): Filling {
  return acts.reduce((filling, act) => {
    const outcome = tried(plan, filling, act);
    if ("why" in outcome) throw new Error(`${JSON.stringify(act)} is refused: ${JSON.stringify(outcome)}`);
    return outcome;
  }, from);
}

/** What an act comes to, or why it is refused. */
export function tried(plan: Plan, filling: Filling, act: Act): Filling | Refusal {
  const outcome = reduce(plan, filling, { ...act, at: timeOf(filling.events.length) } as RecordEvent);
  return outcome.ok ? outcome.filling : outcome.refusal;
}

export const FITTER: Act = { kind: "name", role: "Fitter", name: "A. Moran", badge: "11" };

/** By id: the text of a reading, whether a judgement is passed or an answer is yes, the choice of an option. */
export type Given = Readonly<Record<string, string | boolean>>;

/** Does whatever comes next, up to the end or so many events. Roles sign with names of their own. */
export function fillIn(plan: Plan, given: Given = {}, from: Filling = emptyFilling(plan), most = 500): Filling {
  let filling = from;
  for (let turn = 0; turn < most; turn++) {
    const [next] = filling.position.next;
    if (next === undefined) return filling;
    filling = doing(plan, [nextAct(plan, filling, entryOf(plan, next) as Entry, given[next])], filling);
  }
  return filling;
}

function nextAct(plan: Plan, filling: Filling, entry: Entry, given: string | boolean | undefined): Act {
  const { id: of } = entry;
  const unnamed = plan.roles.find(({ role, inspects }) => !inspects && !filling.people.has(role));
  if (unnamed !== undefined) return { kind: "name", role: unnamed.role, name: `${unnamed.role} One`, badge: "" };
  switch (entry.kind) {
    case "tick":
    case "round":
      return { kind: "tick", of };
    case "judgement":
      return { kind: "judge", of, passed: given !== false };
    case "answer":
      return { kind: "answer", of, holds: given === true };
    case "option":
      return { kind: "choose", of, choice: String(given ?? entry.choices[0]) };
    case "sign":
      return { kind: "sign", of, name: `${entry.role} One`, badge: "" };
    case "reading": {
      const [text, unit] = [String(given ?? "1"), entry.units[0]?.text ?? ""];
      const read = readingOf(plan, filling, entry, { text, unit });
      return { kind: "read", of, text, unit, passed: "why" in read ? null : read.passed };
    }
  }
}

export function recordFrom(plan: Plan, { events }: Filling): FilledRecord {
  const { hash, procedure, title, document, options } = plan;
  return { format: RECORD_FORMAT, version: RECORD_VERSION, hash, procedure, title, document, options, events };
}

function timeOf(second: number): string {
  return new Date(Date.UTC(2026, 4, 4, 8, 0, second)).toISOString();
}
