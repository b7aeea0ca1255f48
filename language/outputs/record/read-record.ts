// A record as somebody hands it in: reads JSON that may be anything, and says what is wrong with its form. Total. Knows no plan.
import { type FilledRecord, RECORD_FORMAT, RECORD_VERSION, type RecordEvent } from "./record.ts";

export type RecordRead =
  | { readonly ok: true; readonly record: FilledRecord }
  | { readonly ok: false; readonly fault: RecordFault };

export type RecordFault =
  | { readonly kind: "too large" | "no json" | "no record" }
  | { readonly kind: "other version"; readonly version: string }
  /** A part that is missing or of another type: `events[3].at`. */
  | { readonly kind: "part"; readonly part: string };

/** Far above any checklist that people fill in. */
const LONGEST_RECORD = 8_000_000;
const MOST_EVENTS = 50_000;

export function readRecord(text: string): RecordRead {
  if (text.length > LONGEST_RECORD) return fault({ kind: "too large" });
  const value = parsed(text);
  if (value === undefined) return fault({ kind: "no json" });
  if (!isObject(value) || value.format !== RECORD_FORMAT) return fault({ kind: "no record" });
  if (typeof value.version !== "number") return fault({ kind: "part", part: "version" });
  if (value.version !== RECORD_VERSION) return fault({ kind: "other version", version: String(value.version) });
  const wrong = wrongIn(value, HEAD);
  if (wrong !== null) return fault({ kind: "part", part: wrong });
  const { events, options } = value as { readonly events: readonly unknown[]; readonly options: object };
  if (events.length > MOST_EVENTS) return fault({ kind: "too large" });
  const option = Object.entries(options).find(([, choice]) => !isText(choice));
  if (option !== undefined) return fault({ kind: "part", part: `options.${option[0]}` });
  for (const [at, event] of events.entries()) {
    const part = wrongInEvent(event);
    if (part !== null) return fault({ kind: "part", part: `events[${at}]${part}` });
  }
  return { ok: true, record: value as unknown as FilledRecord };
}

/** The JSON of a record, laid out so that people can read it too. */
export function recordText(record: FilledRecord): string {
  const { events, ...head } = record;
  const lines = Object.entries(head).map(([key, value]) => `  ${JSON.stringify(key)}: ${JSON.stringify(value)},`);
  const rows = events.map((event) => `    ${JSON.stringify(event)}`);
  return `{\n${lines.join("\n")}\n  "events": [${rows.length === 0 ? "" : `\n${rows.join(",\n")}\n  `}]\n}\n`;
}

function fault(fault: RecordFault): RecordRead {
  return { ok: false, fault };
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text.replace(/^\uFEFF/, ""));
  } catch {
    return undefined;
  }
}

type Loose = Readonly<Record<string, unknown>>;
type Shape = Readonly<Record<string, (value: unknown) => boolean>>;

const HEAD: Shape = {
  hash: isText,
  procedure: isText,
  title: isText,
  document: isText,
  options: isObject,
  events: Array.isArray,
};

const OF: Shape = { of: isText };
const EVENTS: Readonly<Record<RecordEvent["kind"], Shape>> = {
  name: { role: isText, name: isText, badge: isText },
  tick: OF,
  place: OF,
  read: { ...OF, text: isText, unit: isText, passed: (value) => value === null || isTruth(value) },
  judge: { ...OF, passed: isTruth },
  answer: { ...OF, holds: isTruth },
  choose: { ...OF, choice: isText },
  sign: { ...OF, name: isText, badge: isText },
  start: OF,
  undo: {},
};

/** Where an event is not as it should be, behind its number; null where it is. */
function wrongInEvent(event: unknown): string | null {
  if (!isObject(event)) return "";
  const { kind } = event;
  if (!isText(kind) || !Object.hasOwn(EVENTS, kind)) return ".kind";
  const wrong = wrongIn(event, { at: isTime, ...EVENTS[kind as RecordEvent["kind"]] });
  return wrong === null ? null : `.${wrong}`;
}

/** The first part that is missing or wrong. */
function wrongIn(value: Loose, shape: Shape): string | null {
  const wrong = Object.entries(shape).find(([part, fits]) => !Object.hasOwn(value, part) || !fits(value[part]));
  return wrong?.[0] ?? null;
}

function isObject(value: unknown): value is Loose {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

/** Longer than anything that a page takes in. */
const LONGEST_TEXT = 2000;

function isText(value: unknown): value is string {
  return typeof value === "string" && value.length <= LONGEST_TEXT;
}

function isTruth(value: unknown): value is boolean {
  return typeof value === "boolean";
}

function isTime(value: unknown): value is string {
  return (
    isText(value) && /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(?:\.\d{1,3})?Z$/.test(value) && !Number.isNaN(Date.parse(value))
  );
}
