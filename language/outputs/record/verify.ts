// A filled record held against its plan: what is missing, out of order, out of limits or signed by the wrong one. Every event goes
// through the same reducer as on the tablet; one that it refuses is a finding. Total; knows no files.
import type { Plan } from "./plan.ts";
import type { FilledRecord, RecordEvent } from "./record.ts";
import { emptyFilling, entryOf, type Filling, type Refusal, reduce } from "./reduce.ts";
import { boundsOf, durationText, endOf, keptOf, secondsBetween } from "./times.ts";

export interface RecordFinding {
  readonly code:
    | "record.other-inputs"
    | "record.options"
    | "record.unknown"
    | "record.order"
    | "record.limits"
    | "record.person"
    | "record.late"
    | "record.early"
    | "record.time"
    | "record.stopped"
    | "record.incomplete";
  readonly message: string;
  /** Which event, from 0; null where it is about the whole. */
  readonly event: number | null;
  /** The number of the step; null where it is none's. */
  readonly step: string | null;
}

export interface Verified {
  readonly findings: readonly RecordFinding[];
  readonly filling: Filling | null;
}

/** Whether the record is of these inputs and this procedure at all; where not, nothing else is compared. */
export function verifyRecord(plan: Plan, record: FilledRecord): Verified {
  const other = otherInputs(plan, record);
  if (other !== null)
    return { findings: [{ code: "record.other-inputs", message: other, event: null, step: null }], filling: null };
  const findings: RecordFinding[] = [...optionFindings(plan, record)];
  const refusals = refusalsInto(findings, plan);
  let filling = emptyFilling(plan);
  let before = Number.NEGATIVE_INFINITY;
  record.events.forEach((event, at) => {
    const time = Date.parse(event.at);
    if (time < before)
      findings.push(found(plan, "record.time", event, at, "its time is before that of the event ahead of it"));
    before = time;
    const outcome = reduce(plan, filling, event);
    if (outcome.ok) filling = outcome.filling;
    else {
      refusals.add(event, at, outcome.refusal);
      // What a value really comes to is what counts from there on.
      if (outcome.refusal.why === "other result" && event.kind === "read") {
        const again = reduce(plan, filling, { ...event, passed: outcome.refusal.passed });
        if (again.ok) filling = again.filling;
      }
    }
  });
  refusals.end();
  return { findings: [...findings, ...atTheEnd(plan, filling)], filling };
}

/** Why it cannot be compared with what is here; null where it can. */
function otherInputs(plan: Plan, record: FilledRecord): string | null {
  if (record.hash !== plan.hash) {
    const hashes = `content hash ${short(record.hash)}; here ${short(plan.hash)}`;
    const from = `It was filled in on a checklist made from other inputs (${record.document}, ${hashes}).`;
    return `${from} Verify it with the texts, tables, pictures and crib as they were then.`;
  }
  if (record.procedure !== plan.procedure)
    return `It says that it is of ${record.procedure}, and is held against ${plan.procedure}.`;
  const [said, own] = record.document === plan.document ? [record.title, plan.title] : [record.document, plan.document];
  if (said === own) return null;
  return `It says that it is of “${said}”, and the checklist of these inputs is “${own}”: the record was changed. Ask for it as it was saved.`;
}

/**
 * Tells of entries that are refused. One that is missing has all refused that wait for it: the first is told, the others are counted,
 * and so are those with which one and the same thing is wrong.
 */
function refusalsInto(findings: RecordFinding[], plan: Plan) {
  let last: { readonly cause: string; readonly at: number; more: number } | null = null;
  const end = (): void => {
    const first = last === null ? undefined : findings[last.at];
    if (last === null || first === undefined || last.more === 0) return;
    const count = last.more === 1 ? "one more entry" : `${last.more} more entries`;
    findings[last.at] = { ...first, message: `${first.message} Likewise ${count} after it.` };
  };
  const add = (event: RecordEvent, at: number, refusal: Refusal): void => {
    const finding = refused(plan, event, at, refusal);
    const cause = refusal.why === "not next" ? refusal.next.join(" ") : `${finding.code} ${finding.message}`;
    if (last?.cause === cause) {
      last.more++;
      return;
    }
    end();
    last = { cause, at: findings.push(finding) - 1, more: 0 };
  };
  return { add, end };
}

function short(hash: string): string {
  return hash.slice(0, 12);
}

function optionFindings(plan: Plan, { options }: FilledRecord): readonly RecordFinding[] {
  const names = [...new Set([...Object.keys(plan.options), ...Object.keys(options)])].sort();
  const value = (of: FilledRecord["options"], name: string) =>
    (Object.hasOwn(of, name) ? of[name] : undefined) ?? "open";
  return names
    .filter((name) => value(plan.options, name) !== value(options, name))
    .map((name) => ({
      code: "record.options",
      message: `${name} is ${value(options, name)} in the record and ${value(plan.options, name)} here.`,
      event: null,
      step: null,
    }));
}

function refused(plan: Plan, event: RecordEvent, at: number, refusal: Refusal): RecordFinding {
  switch (refusal.why) {
    case "unknown":
      return found(plan, "record.unknown", event, at, "the checklist has no such place");
    case "wrong kind":
      return found(plan, "record.unknown", event, at, `the checklist has nothing there for “${event.kind}”`);
    case "unknown role":
      return found(plan, "record.unknown", event, at, "the checklist has no such role");
    case "unknown choice":
      return found(plan, "record.unknown", event, at, "the checklist has no such choice");
    case "unknown unit":
      return found(plan, "record.unknown", event, at, "the checklist takes no reading in this unit there");
    case "not next":
      return found(plan, "record.order", event, at, `${firstText(plan, event, refusal.next)} came first`);
    case "done":
      return found(plan, "record.order", event, at, "it was marked already");
    case "stopped":
    case "complete":
      return found(plan, "record.order", event, at, "the work had come to its end");
    case "nothing to undo":
      return found(plan, "record.order", event, at, "there was nothing to take back");
    case "no name":
      return found(plan, "record.person", event, at, "no name was given for it");
    case "same person":
      return found(plan, "record.person", event, at, "who did the work and who looked at it are one person");
    case "no number":
    case "no text":
      return found(plan, "record.limits", event, at, "the reading is no number that can be understood");
    case "other result":
      return found(plan, "record.limits", event, at, resultText(refusal.passed));
  }
}

function resultText(passed: boolean | null): string {
  if (passed === null) return "the record says a result, and nothing here sets limits for it";
  return passed ? "the record says out of limits, and it is within" : "the record says within limits, and it is not";
}

function firstText(plan: Plan, event: RecordEvent, [next = ""]: readonly string[]): string {
  const step = entryOf(plan, next)?.step ?? "";
  const own = "of" in event ? entryOf(plan, event.of)?.step : undefined;
  if (step === "") return "something else";
  return step === own ? "something else in this step" : `step ${step}`;
}

function found(plan: Plan, code: RecordFinding["code"], event: RecordEvent, at: number, what: string): RecordFinding {
  const entry = "of" in event ? entryOf(plan, event.of) : null;
  const step = entry === null || entry.step === "" ? null : entry.step;
  return { code, message: `${subjectOf(event, step)}: ${what}.`, event: at, step };
}

function subjectOf(event: RecordEvent, step: string | null): string {
  if (step !== null) return `Step ${step}`;
  if (!("of" in event)) return event.kind === "name" ? `The name of the ${event.role}` : "Taking back";
  if (event.of.startsWith("start:")) return "Before the start";
  return event.of.startsWith("end:") ? "At the end" : event.of;
}

/** What the record as a whole comes to. */
function atTheEnd(plan: Plan, filling: Filling): readonly RecordFinding[] {
  const { position, marks } = filling;
  const out: RecordFinding[] = [...late(plan, filling), ...early(plan, filling)];
  for (const [id, mark] of marks) {
    const entry = entryOf(plan, id);
    if (entry?.kind !== "reading" || mark.passed !== false || entry.fails) continue;
    const message = `Step ${entry.step}: ${mark.text} is out of limits, and no reading within them was taken after it.`;
    out.push({ code: "record.limits", message, event: null, step: entry.step });
  }
  if (position.stopped !== null)
    out.push({ code: "record.stopped", message: `The work was stopped: ${position.stopped}`, event: null, step: null });
  else if (!position.isComplete) {
    const [next] = position.next;
    const step = next === undefined ? "" : (entryOf(plan, next)?.step ?? "");
    const missing = missingIn(plan, { position, marks });
    const message = `It is not complete: ${missing < 2 ? "one place is" : `up to ${missing} places are`} not marked, the first ${step === "" ? "outside the steps" : `in step ${step}`}.`;
    out.push({ code: "record.incomplete", message, event: null, step: step === "" ? null : step });
  }
  return out;
}

/** Steps that were not done as soon after another as they have to be. What was done again since counts by its last time. */
function late(plan: Plan, filling: Filling): readonly RecordFinding[] {
  return plan.deadlines.flatMap((deadline) => {
    const kept = keptOf(plan, filling, deadline);
    if (kept === null || kept.taken === null || kept.taken <= kept.most) return [];
    const { step, after } = deadline;
    const message = `Step ${step}: it was done ${durationText(Math.ceil(kept.taken))} after the end of ${after}, and at most ${durationText(kept.most)} are allowed.`;
    return [{ code: "record.late" as const, message, event: null, step }];
  });
}

/** Waits that were marked before their timer had run down; where none was started, nothing is known. */
function early(plan: Plan, filling: Filling): readonly RecordFinding[] {
  return plan.timers.flatMap((timer) => {
    const { step, of, id, entries } = timer;
    const from = of === "wait" ? filling.started.get(id) : undefined;
    const end = endOf(filling, entries);
    const { low } = boundsOf(plan, filling, timer);
    if (from === undefined || end === null || low === null || secondsBetween(from, end) >= low) return [];
    const message = `Step ${step}: it was marked ${durationText(secondsBetween(from, end))} after its timer was started, and ${durationText(low)} are to be waited.`;
    return [{ code: "record.early" as const, message, event: null, step }];
  });
}

/** An upper bound: a branch that is not decided yet may leave some out. */
function missingIn({ program }: Plan, { position, marks }: Pick<Filling, "position" | "marks">): number {
  return program.filter((op) => op.op === "mark" && !marks.has(op.of) && !position.leftOut.has(op.of)).length;
}
