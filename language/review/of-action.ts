// What an action, a check and a record field say. Knows no steps.
import type {
  Action,
  Check,
  ChooseRow,
  Dose,
  Hands,
  RecordField,
  SlingLegs,
  Target,
  ToolUse,
} from "#model/procedure.ts";
import { objectsOf, secondOf } from "#model/spoken-of.ts";
import type { Span } from "#syntax/span.ts";
import {
  each,
  type Facet,
  type Facets,
  flag,
  saying,
  sayingsOf,
  shownValue,
  thing,
  value,
  values,
  word,
} from "./facets.ts";
import { conditionText, type Reading, squeezed, targetsText, targetText, valueText } from "./reading.ts";
import { createNode, type Node } from "./record.ts";
import { ended } from "./words.ts";

/** Every property that some action has, with all that it can be. */
type AnyAction = { readonly [Key in KeysOf<Action>]: ValueOf<Action, Key> };
type KeysOf<Union> = Union extends unknown ? keyof Union : never;
type ValueOf<Union, Key> = Union extends { readonly [K in Key & string]?: infer Value } ? Value : never;

const OBJECTS: Facet<readonly Target[]> = (targets, at) => [
  saying("items", "object", at, {
    text: targetsText(targets, at.reading),
    shown: () => shownTargets(targets, at.reading),
  }),
];
const OBJECT: Facet<Target> = (target, at) => OBJECTS([target], { ...at, span: target.span });
const BESIDE: Facet<Target | null> = (target, at) =>
  target === null ? [] : OBJECT(target, at).map((said) => ({ ...said, label: "beside" }));

const TOOLS: Facet<readonly ToolUse[]> = each(({ tool, span }, at) => thing("items", "tool")(tool, { ...at, span }));

const DOSE: Facet<Dose> = ({ consumable, amount }, at) => [
  ...thing("items", "consumable")(consumable, at),
  ...value("amount", "nominal")(amount, { ...at, key: `${at.key} amount` }),
];

const HANDS: Facet<Hands | null> = (hands, at) => {
  if (hands === null) return [];
  const { reach, height, endHeight, turned } = hands;
  return [
    ...value("reach", "occurs")(reach, { ...at, key: "reach" }),
    ...value("height", "occurs")(height, { ...at, key: "height" }),
    ...value("height", "occurs")(endHeight, { ...at, key: "end height" }),
    ...value("twist", "occurs")(turned, { ...at, key: "turned" }),
  ];
};

const LEGS: Facet<SlingLegs | null> = (legs, at) => {
  if (legs === null) return [];
  const { count, angle, span } = legs;
  return [
    saying("values", "sling-legs", at, { text: String(count ?? "?"), span }),
    ...value("angle", "occurs")(angle, { ...at, key: "leg angle" }),
  ];
};

const ROWS: Facet<readonly ChooseRow[]> = (rows, at) => {
  const texts = rows.map(({ range, result }) => {
    const from = range === null ? ["?", "?"] : [valueText(range, at.reading), shownValue(range, "nominal")];
    if (result === null) return [...from, "?", "?"];
    if ("quantity" in result) return [...from, valueText(result, at.reading), shownValue(result, "nominal")];
    return [...from, targetText(result, at.reading), squeezed(at.reading.textAt(result.span))];
  });
  const text = texts.map(([range, , result]) => `${range}: ${result}`).join("; ");
  const shown = texts.map(([, range, , result]) => `${range}: ${result}`).join("; ");
  return [saying("values", "choice-rows", at, { text, shown })];
};

const ACTION: Facets<AnyAction> = {
  kind: null,
  place: null,
  span: null,
  verb: (verb, at) => [saying("order", "action", at, { text: verb })],
  objects: OBJECTS,
  fresh: flag("items", "new-part"),
  relation: word("order", "place"),
  on: BESIDE,
  clock: value("clock", "must be met"),
  tools: TOOLS,
  pattern: word("order", "pattern"),
  byHand: flag("order", "by-hand"),
  hands: HANDS,
  legs: LEGS,
  stages: values("torque", "must be met"),
  stagesSpan: null,
  angle: value("angle", "must be met"),
  toSeat: flag("order", "to-seat"),
  back: value("angle", "nominal"),
  setBack: null,
  reverse: flag("order", "reverse-order"),
  to: value("temperature", "must be met"),
  by: value("temperature", "must be met"),
  time: value("wait", "at least safe"),
  until: (condition, at) => {
    if (condition === null) return [];
    const { text, values: some } = conditionText(condition, at.reading);
    return [
      saying("order", "condition", at, { text, shown: () => squeezed(at.reading.textAt(condition.span)) }),
      ...values("wait", "must be met")(some, { ...at, key: "until value" }),
    ];
  },
  with: thing("items", "consumable"),
  dose: DOSE,
  cure: value("cure", "at least safe"),
  into: thing("items", "vessel"),
  put: BESIDE,
  other: BESIDE,
  mark: word("words", "own-words"),
  words: word("words", "own-words"),
  reading: thing("words", "reading"),
  expect: value("expected", "must be met"),
  record: flag("order", "record"),
  subject: OBJECT,
  leaving: value("remainder", "must be met"),
  rows: ROWS,
  procedure: (procedure, at) =>
    procedure === null ? [] : [saying("order", "performed", at, { text: procedure.name })],
};

export function actionNode(action: Action, reading: Reading): Node {
  const things = [...objectsOf(action), secondOf(action)].filter((target) => target !== null);
  const extra = action.verb === "perform" ? [action.procedure?.name ?? ""] : [];
  const targets = [...things.map((target) => targetText(target, reading)), ...extra];
  const names = [...things.map(({ thing: named, name }) => (named === null ? name : reading.nameOf(named))), ...extra];
  return createNode({
    sort: "action",
    does: `${action.verb} ${targets.join(", ")}`,
    about: [action.verb, ...names],
    says: sayingsOf(ACTION as Facets<Action>, action, reading, action.place),
    span: action.span,
    title: () => reading.say(action) || squeezed(reading.textAt(action.span)),
    subject: subjectOf(action, reading),
  });
}

/** What a table says of both, so that nothing of a check is left out; what is done if it fails is a node of its own. */
const CHECK: Facets<Check> = {
  kind: null,
  place: null,
  span: null,
  fails: null,
  words: word("words", "own-words"),
  tools: TOOLS,
  expect: value("expected", "must be met"),
  record: flag("order", "record"),
};

/** @param fails what is done if it fails, read; null where nothing is said of that */
export function checkNode(check: Check, fails: readonly Node[] | null, reading: Reading): Node {
  return createNode({
    sort: "check",
    does: `check ${squeezed(check.words)}`,
    about: ["check"],
    says: sayingsOf(CHECK, check, reading, check.place),
    holds: fails === null ? [] : [failingNode(fails, check.span)],
    span: check.span,
    title: () => squeezed(check.words),
    subject: squeezed(check.words),
  });
}

/** What is done if a check fails, as one thing that comes and goes. */
function failingNode(holds: readonly Node[], beside: Span): Node {
  const [first, last] = [holds[0], holds.at(-1)];
  const span = first === undefined || last === undefined ? beside : { ...first.span, end: last.span.end };
  return createNode({
    sort: "failing",
    says: [],
    holds,
    span,
    title: () => holds.map(({ title }) => ended(title())).join(" "),
  });
}

const RECORD: Facets<RecordField> = {
  span: null,
  label: word("words", "own-words"),
  expect: value("expected", "must be met"),
  tools: each((tool, at) => thing("items", "tool")(tool, at)),
};

export function recordNode(field: RecordField, reading: Reading): Node {
  const says = sayingsOf(RECORD, field, reading, field.span);
  const title = squeezed(field.label);
  const { span } = field;
  return createNode({
    sort: "record",
    does: `record ${title}`,
    about: ["record"],
    says,
    span,
    title: () => title,
    subject: title,
  });
}

/** Without what may change. */
function subjectOf(action: Action, reading: Reading): string {
  const objects = objectsOf(action);
  if (objects.length > 0) return `${action.verb} ${shownTargets(objects, reading)}`;
  if (action.verb === "wait") {
    const { until } = action;
    return until !== null && "subject" in until ? `wait for ${shownTargets([until.subject], reading)}` : "";
  }
  if ("words" in action && action.words !== null) return `${action.verb} “${squeezed(action.words)}”`;
  return squeezed(reading.textAt(action.place));
}

function shownTargets(targets: readonly Target[], reading: Reading): string {
  return targets.map(({ span }) => squeezed(reading.textAt(span))).join(", ");
}
