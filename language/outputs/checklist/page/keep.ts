// Keeping a record in the browser over a reload, by document and content hash. A browser may refuse; then nothing is kept.
import type { Plan } from "../../record/plan.ts";
import { readRecord, recordText } from "../../record/read-record.ts";
import { type FilledRecord, RECORD_FORMAT, RECORD_VERSION } from "../../record/record.ts";
import { emptyFilling, type Filling, type Refusal, reduce } from "../../record/reduce.ts";

export function recordOf({ hash, procedure, title, document, options }: Plan, { events }: Filling): FilledRecord {
  return { format: RECORD_FORMAT, version: RECORD_VERSION, hash, procedure, title, document, options, events };
}

/** What a record comes to; an event that does not fit ends it. */
export function replay(
  plan: Plan,
  { events }: FilledRecord,
): { readonly filling: Filling; readonly fault: { readonly event: number; readonly refusal: Refusal } | null } {
  let filling = emptyFilling(plan);
  for (const [at, event] of events.entries()) {
    const outcome = reduce(plan, filling, event);
    if (!outcome.ok) return { filling, fault: { event: at, refusal: outcome.refusal } };
    filling = outcome.filling;
  }
  return { filling, fault: null };
}

export function keyOf({ document, procedure, hash }: Plan): string {
  return `sprag ${document} ${procedure} ${hash}`;
}

/** False where the browser does not keep anything. */
export function keep(plan: Plan, filling: Filling): boolean {
  return put(keyOf(plan), filling.events.length === 0 ? null : recordText(recordOf(plan, filling)));
}

/** Null where nothing was kept; `fits` is false where some of it does not fit. */
export function kept(plan: Plan): { readonly filling: Filling; readonly fits: boolean } | null {
  const text = get(keyOf(plan));
  if (text === null) return null;
  const read = readRecord(text);
  if (!read.ok || read.record.hash !== plan.hash) return { filling: emptyFilling(plan), fits: false };
  const { filling, fault } = replay(plan, read.record);
  return { filling, fits: fault === null };
}

export function get(key: string): string | null {
  try {
    return localStorage.getItem(key);
  } catch {
    return null;
  }
}

export function put(key: string, text: string | null): boolean {
  try {
    if (text === null) localStorage.removeItem(key);
    else localStorage.setItem(key, text);
    return text === null || localStorage.getItem(key) === text;
  } catch {
    return false;
  }
}
