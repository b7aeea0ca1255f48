// Every word that a reviewer reads, in English. Knows no format. Another language is another object of the same shape.
import type { Group } from "./change.ts";

/** The fixed words of one language. */
export type Words = typeof en;
/** What a record can say, by the property that says it; also the first part of a kind of change. */
export type Label = keyof typeof labels;

/** As the subject of a sentence. */
const labels = {
  accuracy: "Accuracy",
  action: "Action",
  allow: "Allowed finding",
  ambient: "Ambient temperature",
  amount: "Amount",
  angle: "Angle",
  "applies-to": "Applicability",
  arm: "Arm length",
  arranged: "Arranged parts",
  avoidance: "Avoidance",
  "based-on": "Source it is based on",
  "backs-up": "Part that it backs up",
  beside: "What it goes with",
  "by-hand": "“by hand”",
  "calibrated-until": "Calibrated until",
  choice: "Choice",
  "choice-rows": "Rows to choose by",
  remainder: "Remainder",
  clock: "Clock position",
  condition: "Condition",
  "condition-value": "Value in a condition",
  consumable: "Consumable",
  "cools-to": "Lowest temperature of the tool",
  "cooling-rate": "Cooling rate",
  count: "Number of positions",
  crew: "Crew",
  "crib-item": "Crib item",
  critical: "Mark “critical”",
  cure: "Curing time",
  date: "Date of the document",
  "declared-order": "Declared order",
  density: "Density",
  diameter: "Diameter",
  "document-number": "Document number",
  "done-by": "Performing role",
  "driven-by": "Driving energy",
  encloses: "Enclosed part",
  "end-condition": "State at the end",
  "energy-kind": "Kind of energy",
  expansion: "Expansion",
  expected: "Expected reading",
  figure: "Figure",
  "fill-direction": "Direction of filling",
  "fit-part": "Part of the fit",
  "flash-point": "Flash point",
  force: "Force",
  friction: "Friction",
  grade: "Grade",
  hazard: "Hazard",
  "heat-limit": "Heat limit",
  "heats-to": "Highest temperature of the tool",
  height: "Height of the hands",
  hold: "Hold point",
  hot: "Temperature of the energy",
  instances: "Number of parts",
  interference: "Interference",
  jump: "Jump",
  "leg-lifts": "Lifting capacity of each leg",
  length: "Length",
  lifts: "Lifting capacity",
  locks: "Locked part",
  mass: "Mass",
  material: "Material",
  measures: "Measuring range",
  name: "Name",
  needs: "Needed part",
  "new-part": "“new”",
  "note-text": "Note",
  numbering: "Direction of numbering",
  "nut-factor": "Nut factor",
  object: "Object",
  "of-full-scale": "“of full scale”",
  off: "“off” at the start",
  offset: "Offset",
  "own-words": "Wording",
  passes: "Passes of the repeat",
  pattern: "Tightening pattern",
  performed: "Performed procedure",
  place: "Place",
  precondition: "Precondition",
  pressure: "Pressure",
  "prevailing-torque": "Prevailing torque",
  "property-class": "Property class",
  protection: "Protection to wear",
  radius: "Radius",
  raises: "Raised hazard",
  reach: "Reach of the hands",
  reading: "Reading",
  record: "“record”",
  replaced: "Replaced word",
  resolution: "Resolution",
  result: "Result",
  retains: "Retained part",
  "reverse-order": "“in reverse order”",
  revision: "Revision of the document",
  room: "Air of the room",
  seat: "Seat",
  secures: "Secured part",
  "seen-from": "Viewing side",
  sharp: "“sharp”",
  stands: "“stands”",
  "sign-off": "Sign-off",
  "signal-word": "Signal word",
  "single-use": "“single use”",
  "slip-clearance": "Slip clearance",
  "sling-legs": "Legs of the sling",
  source: "Source",
  "source-revision": "Revision of the source",
  speed: "Speed",
  "start-condition": "State at the start",
  "start-position": "Position at the start",
  "statement-text": "Text of the statement",
  states: "States",
  "stored-energy": "Stored energy",
  table: "Table",
  "table-rows": "Rows of the table",
  temperature: "Temperature",
  temporary: "“temporary”",
  thread: "Thread",
  threshold: "Threshold",
  "tightening-order": "Tightening order",
  time: "Time",
  "time-limit": "Time limit",
  "time-limit-start": "Start of the time limit",
  title: "Title",
  "to-seat": "“to seat”",
  tolerance: "Tolerance class",
  tool: "Tool",
  "tool-torque": "Torque range of the tool",
  torque: "Torque",
  twist: "Twist of the body",
  unbalance: "Unbalance",
  unreadable: "Line that could not be read",
  value: "Value",
  vessel: "Vessel",
  voltage: "Voltage",
  wait: "Wait",
  why: "Reason",
} as const;

const sorts = {
  procedure: "Procedure",
  task: "Task",
  step: "Step",
  repeat: "Repeat",
  when: "Branch",
  arm: "Case of the branch",
  "any order": "Block",
  check: "Check",
  failing: "Path for a failed check",
  declaration: "Declaration",
  perform: "Performed procedure",
  jump: "Jump",
  statement: "Safety statement",
  note: "Note",
  action: "Action",
  record: "Record field",
  damaged: "Line that could not be read",
} as const;

/** With a full stop, unless there is one. */
export function ended(text: string): string {
  return /[.!?…]["”]?$/.test(text) ? text : `${text}.`;
}

/** From a limit, and on which side of it. */
interface Distance {
  readonly text: string;
  readonly over: boolean;
}

export const en = {
  language: "en",
  labels,
  sorts,
  title: "Review",
  groups: {
    safety: "Safety",
    values: "Values",
    order: "Order",
    items: "Parts, tools, consumables, sources, options",
    words: "Words",
    layout: "Layout only",
  } as Readonly<Record<Group, string>>,
  nothing: "Nothing changed.",
  onlyLayout: "Nothing to review: only layout, comments, spellings or the order of independent lines differ.",

  added: (what: string, text: string): string => sentence(`${what} added`, text),
  dropped: (what: string, text: string): string => sentence(`${what} dropped`, text),
  changed: (what: string, old: string, now: string): string => `${what}: ${old} → ${now}`,
  quoted: (text: string): string => `“${text}”`,
  /** Another thing is acted on: `Inspect Cover instead of Bearing`. */
  instead: (verb: string, old: string, now: string): string => `${upperFirst(verb)} ${now} instead of ${old}`,
  /** The value in a condition: `Precondition “Bearing is at least 90 °C”, value`. */
  valueIn: (what: string, whole: string): string => `${what} “${whole}”, value`,
  /** @param moved by how much rounding has moved it, where that is plain to see; else empty */
  restated: (what: string, old: string, now: string, moved: string): string =>
    `${what} restated, the value kept${moved === "" ? "" : " within its last digit"}: ${old === now ? now : `${old} → ${now}`}${moved === "" ? "" : `: ${moved}`}`,
  /** Rows of a table: the serial, then its position and weight. */
  rows: (what: string, gone: readonly string[], come: readonly string[]): string => {
    const some = (rows: readonly string[]): string =>
      rows.length > MOST_ROWS
        ? `${rows.slice(0, MOST_ROWS).join(", ")} and ${rows.length - MOST_ROWS} more`
        : rows.join(", ");
    if (gone.length === 0) return `${what}, added: ${some(come)}`;
    return come.length === 0 ? `${what}, dropped: ${some(gone)}` : `${what}: ${some(gone)} → ${some(come)}`;
  },
  /** What is said of something that is no step: `Part Cover, mass`. */
  of: (of: string, what: string): string => upperFirst(`${of}, ${lowerFirst(what)}`),
  alone: (of: string): string => upperFirst(of),

  nodeAdded: (what: string, text: string): string => sentence(`${what} added`, text),
  nodeDropped: (what: string, text: string): string => sentence(`${what} removed`, text),
  nodeMoved: (what: string, text: string): string => sentence(`${what} moved`, text),
  nowBehind: (what: string): string => `It now comes after ${what}`,
  nowFirst: (where: string): string => `It now comes first in ${where}`,
  nowAhead: (what: string): string => `It now comes before ${what}`,
  statementBehind: "It now stands behind what it guarded",
  statementAhead: "It now guards more than before",
  statementNarrowed: (to: string): string => `It now holds only for ${to}`,
  statementElsewhere: (to: string): string => `It now holds for ${to}, and no longer where it stood`,
  /** What a block does to what it was put round, or was taken from round. */
  around: {
    when: {
      added: (steps: string): string => `Now done only in some cases: ${steps}`,
      removed: (steps: string): string => `No longer tied to that branch: ${steps}`,
    },
    arm: {
      added: (steps: string): string => `Now done only in that case: ${steps}`,
      removed: (steps: string): string => `No longer tied to that case: ${steps}`,
    },
    repeat: {
      added: (steps: string): string => `Now repeated: ${steps}`,
      removed: (steps: string): string => `No longer repeated: ${steps}`,
    },
    "any order": {
      added: (steps: string): string => `Now in any order: ${steps}`,
      removed: (steps: string): string => `Now only in the order written: ${steps}`,
    },
  },
  steps: (first: readonly string[], more: number): string =>
    `${first.join(", ")}${more === 0 ? "" : ` and ${more} more`}`,
  weakened: (hazards: readonly string[]): string => `Signal word for ${hazards.join(", ")} weakened`,
  strengthened: (hazards: readonly string[]): string => `Signal word for ${hazards.join(", ")} strengthened`,
  allowWidened: (text: string, from: string, to: string): string =>
    `Allowed finding widened from ${from} to ${to}: ${text}`,
  allowNarrowed: (text: string, from: string, to: string): string =>
    `Allowed finding narrowed from ${from} to ${to}: ${text}`,
  wholeProcedure: "the whole procedure",
  inProcedure: (name: string): string => `procedure ${name}`,
  step: (number: string, name: string | null): string => `step ${number}${name === null ? "" : ` (${name})`}`,
  task: (number: string, title: string): string => `task ${number}${title === "" ? "" : ` “${title}”`}`,
  block: (title: string): string => `“${title}”`,
  /** What became of a finding that no change brought, by the kind of its entry. */
  found: {
    "hazard-uncovered": "A hazard is no longer covered in time",
    "finding-came": "A finding came",
    "finding-went": "A finding went",
    "finding-graver": "A finding is graver than before",
    "finding-milder": "A finding is less grave than before",
    "finding-choices-changed": "A finding holds for other choices than before",
  },
  signedWithStep: (holds: readonly string[], signs: readonly string[]): string => {
    const told = [
      ...(holds.length === 0 ? [] : [`hold point for ${holds.join(", ")}`]),
      ...(signs.length === 0 ? [] : [`sign-off by ${signs.join(", ")}`]),
    ];
    return `Dropped with its step: ${told.join(", ")}`;
  },
  allowedInNew: (text: string): string => `Finding allowed in a new step: ${text}`,
  renamedFile: (old: string, now: string): string => `File renamed: ${old} → ${now}`,

  rises: (by: string, percent: string | null): string => `+${by}${percent === null ? "" : ` (+${percent})`}`,
  falls: (by: string, percent: string | null): string => `−${by}${percent === null ? "" : ` (−${percent})`}`,
  lowEnd: (text: string): string => `low end ${text}`,
  highEnd: (text: string): string => `high end ${text}`,
  wider: (old: string, now: string): string => `band widened from ${old} to ${now}`,
  narrower: (old: string, now: string): string => `band narrowed from ${old} to ${now}`,
  percent: (tenths: number): string => `${tenths >= 100 ? Math.round(tenths / 10) : tenths / 10} %`,
  usedIn: (steps: readonly { readonly number: string; readonly name?: string }[], more: number): string => {
    const names = steps.map(({ number, name }) => (name === undefined ? number : `${number} (${name})`));
    const rest = more === 0 ? "" : ` and ${more} more`;
    return `Used in ${names.length + more === 1 ? "step" : "steps"} ${names.join(", ")}${rest}`;
  },
  preload: (of: string, old: string, now: string): string => `Preload of ${of}: ${old} → ${now} of proof`,
  heat: (of: string, limitOf: string, old: Distance, now: Distance): string => {
    const side = ({ over }: Distance): string => (over ? "above" : "below");
    const before = side(old) === side(now) ? old.text : `${old.text} ${side(old)}`;
    return `${of}: ${before} → ${now.text} ${side(now)} the heat limit${limitOf === of ? "" : ` of ${limitOf}`}`;
  },
  kitAdded: (items: readonly string[]): string => `Added to the kit: ${items.join(", ")}`,
  kitDropped: (items: readonly string[]): string => `No longer in the kit: ${items.join(", ")}`,
  kitCount: (item: string, old: number, now: number): string => `In the kit: ${item}, ${old} → ${now}`,
  longest: (old: string, now: string): string => `Longest time of the procedure: ${old} → ${now}`,
  unsaid: "not known",

  old: "Old",
  new: "New",
  came: (finding: FindingWords): string => `came: ${findingText(finding)}`,
  went: (finding: FindingWords): string => `went: ${findingText(finding)}`,
  signAgain: (roles: readonly string[]): string => `To be signed again by: ${roles.join(", ")}`,
  procedure: (name: string): string => `Procedure ${name}`,
  noProcedure: "Reaches no procedure here",
  counts: (counts: Readonly<Record<Group, number>>, restated: number): string => {
    const some = Object.entries(counts).filter(([, count]) => count > 0);
    if (some.length === 0) return "No changes.";
    const told = some.map(
      ([group, count]) => `${group} ${count}${group === "values" && restated > 0 ? ` (${restated} restated)` : ""}`,
    );
    return `${told.join(", ")}.`;
  },
};

/** What is told of a finding. */
export interface FindingWords {
  readonly severity: string;
  readonly code: string;
  readonly message: string;
  /** The choices that it holds for; absent where it always does. */
  readonly options?: readonly Readonly<Record<string, string>>[];
  /** How many further ones are not listed. */
  readonly moreOptions?: number;
}

function findingText({ severity, code, message, options = [], moreOptions = 0 }: FindingWords): string {
  const shown = options.slice(0, MOST_CHOICES).map((choices) =>
    Object.entries(choices)
      .map(([option, choice]) => `${option} is ${choice}`)
      .join(" and "),
  );
  const more = options.length - shown.length + moreOptions;
  const when = [...shown, ...(more > 0 ? [`${more} more ways`] : [])].join(", or ");
  return `${severity} ${code}: ${message}${when === "" ? "" : ` (when ${when})`}`;
}

/** More than these are only counted. */
const MOST_CHOICES = 3;
const MOST_ROWS = 4;

function sentence(head: string, text: string): string {
  return text === "" ? head : `${head}: ${text}`;
}

function upperFirst(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}

/** `Time` → `time`, `“By hand”` as it is. */
function lowerFirst(text: string): string {
  return text.slice(0, 1).toLowerCase() + text.slice(1);
}
