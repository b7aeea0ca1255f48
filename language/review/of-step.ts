// Steps, tasks, blocks and what stands in them as nodes. Knows no heads of procedures and no declarations.

import type { Role } from "#model/declarations.ts";
import type {
  Allow,
  Condition,
  Item,
  Jump,
  Line,
  OrderRef,
  RepeatBlock,
  Statement,
  Step,
  Task,
  Text,
  WhenBlock,
} from "#model/procedure.ts";
import { passValues } from "#model/repeat-passes.ts";
import type { Span } from "#syntax/span.ts";
import {
  cited,
  each,
  type Facet,
  type Facets,
  flag,
  named,
  saying,
  sayingsOf,
  thing,
  value,
  values,
  type Where,
  word,
} from "./facets.ts";
import { actionNode, checkNode, recordNode } from "./of-action.ts";
import { conditionText, otherChoice, placeKey, type Reading, squeezed, stepRefText } from "./reading.ts";
import { createNode, type Node, type Saying, type Sort } from "./record.ts";
import type { Label } from "./words.ts";

/** Each condition by itself; its values are values. */
export function conditions(label: Label): Facet<readonly Condition[]> {
  return (all, at) =>
    all.flatMap((condition) => {
      const { text, values: some } = conditionText(condition, at.reading);
      const { span } = condition;
      const shown = (): string => squeezed(at.reading.textAt(span));
      const own = saying("order", label, at, { key: text, text, shown, span });
      const itsValues = values("condition-value", "must be met")(some, { ...at, key: `${own.key} value`, span });
      return [own, ...itsValues.map((said) => ({ ...said, within: own.key }))];
    });
}

/** Of one code for each reason; `everywhere` where it holds for the whole step, task or procedure. */
export const allows: Facet<readonly Allow[]> = (all, at) =>
  all.map(({ code, reason, by, span, scope }) => {
    const isWhole = scope.start <= at.span.start && scope.end >= at.span.end;
    const text = [code, squeezed(reason), by ?? "", isWhole ? "everywhere" : "in a block"].join(" | ");
    const shown = `${code}, because “${squeezed(reason)}”${by === null ? "" : ` (${by})`}`;
    return saying("safety", "allow", at, { key: code, text, shown, span });
  });

const ORDER: Facet<readonly OrderRef[]> = each((ref, at) => [
  saying("order", "declared-order", at, {
    text: stepRefText(ref, at.reading),
    shown: `${at.key} ${ref.name}`,
    span: ref.said,
  }),
]);

/** A role, at the line that names it. */
function signing(label: Label, role: Role, span: Span | undefined, at: Where): readonly Saying[] {
  return thing("safety", label)(role, { ...at, span: span ?? at.span });
}

const STEP: Facets<Step> = {
  kind: null,
  number: null,
  span: null,
  headSpan: null,
  criticalSpan: null,
  signSpans: null,
  holdSpan: null,
  bySpan: null,
  hasUnknownRole: null,
  lines: null,
  records: null,
  name: word("words", "name"),
  words: word("words", "own-words"),
  needs: conditions("precondition"),
  gives: conditions("result"),
  signs: (roles, at, { signSpans }) =>
    roles.flatMap((role, nth) =>
      signing("sign-off", role, signSpans[nth], { ...at, key: `${at.key} ${at.reading.nameOf(role)}` }),
    ),
  hold: (role, at, { holdSpan }) => (role === null ? [] : signing("hold", role, holdSpan ?? undefined, at)),
  by: (role, at, { bySpan }) => (role === null ? [] : signing("done-by", role, bySpan ?? undefined, at)),
  critical: (isSo, at, { criticalSpan }) => flag("safety", "critical")(isSo, { ...at, span: criticalSpan ?? at.span }),
  takes: value("time", "nominal"),
  within: (within, at) => {
    if (within === null) return [];
    const { step, value: limit, span } = within;
    return [
      saying("order", "time-limit-start", at, { text: stepRefText(step, at.reading), shown: step.name, span }),
      ...value("time-limit", "must be met")(limit, { ...at, key: "within value" }),
    ];
  },
  after: ORDER,
  before: ORDER,
  raises: each(named("safety", "raises")),
  cites: each(cited),
  whys: each(word("words", "why")),
  figures: each(({ path, caption, span }, at) => [
    saying("words", "figure", at, { text: `${path} ${caption ?? ""}`, shown: caption ?? path, span }),
  ]),
  allows,
};

const TASK: Facets<Task> = {
  kind: null,
  number: null,
  span: null,
  headSpan: null,
  items: null,
  name: word("words", "name"),
  title: word("words", "title"),
  cites: each(cited),
  allows,
};

const STATEMENT: Facets<Statement> = {
  span: null,
  signal: word("safety", "signal-word"),
  hazards: each(named("safety", "hazard")),
  text: word("safety", "statement-text"),
  avoid: word("safety", "avoidance"),
  wear: each(word("safety", "protection")),
};

/** What stands in a procedure, a task, a step or a block. */
export function nodesOf(items: readonly (Item | Line)[], reading: Reading): readonly Node[] {
  return items.flatMap((item) => nodeOf(item, reading));
}

function nodeOf(item: Item | Line, reading: Reading): readonly Node[] {
  switch (item.kind) {
    case "task":
      return [taskNode(item, reading)];
    case "step":
      return [stepNode(item, reading)];
    case "action":
      return [actionNode(item, reading)];
    case "perform":
      return [{ ...actionNode(item.action, reading), sort: "perform", number: item.number }];
    case "check":
      return [checkNode(item, item.fails && nodesOf(item.fails, reading), reading)];
    case "repeat":
      return repeatNodes(item, reading);
    case "when":
      return [whenNode(item, reading)];
    case "any order": {
      const holds = nodesOf(item.items, reading);
      return [blockNode("any order", [], holds, item.span, () => "in any order")];
    }
    case "statement":
      return [statementNode(item.statement, reading)];
    case "note":
      return [noteNode(item.note, reading)];
    case "damaged":
      return [damagedNode(item.span, reading)];
    default:
      return [jumpNode(item, reading)];
  }
}

function stepNode(step: Step, reading: Reading): Node {
  const holds = [...nodesOf(step.lines, reading), ...step.records.map((field) => recordNode(field, reading))];
  const does = doneIn(holds);
  const signers = [...step.signs, ...(step.hold === null ? [] : [step.hold])].map(({ title }) => title);
  return createNode({
    sort: "step",
    name: step.name === null ? null : reading.stepName(step.name),
    does: does === "" ? null : does,
    about: aboutIn(holds),
    says: sayingsOf(STEP, step, reading, step.headSpan),
    holds,
    span: step.span,
    title: () => squeezed(step.words ?? "") || saidIn(step.lines, reading),
    number: step.number,
    signers,
    critical: step.critical,
  });
}

/** Its actions as sentences. */
function saidIn(lines: readonly Line[], reading: Reading): string {
  return lines
    .flatMap((line) =>
      line.kind === "action" ? [reading.say(line)] : line.kind === "check" ? [squeezed(line.words)] : [],
    )
    .join(" ");
}

function taskNode(task: Task, reading: Reading): Node {
  const holds = nodesOf(task.items, reading);
  const { span, number } = task;
  return {
    ...blockNode("task", sayingsOf(TASK, task, reading, span), holds, span, () => squeezed(task.title)),
    ...{ name: task.name === null ? null : reading.stepName(task.name), number },
  };
}

function blockNode(
  sort: Sort,
  says: readonly Saying[],
  holds: readonly Node[],
  span: Span,
  title: Node["title"],
): Node {
  return createNode({ sort, does: doneIn(holds), about: aboutIn(holds), says, holds, span, title });
}

function doneIn(holds: readonly Node[]): string {
  return holds.flatMap(({ does }) => does ?? []).join("; ");
}

/** A few tell enough, and a task may hold thousands. */
const MOST_ABOUT = 12;

function aboutIn(holds: readonly Node[]): readonly string[] {
  const found = new Set<string>();
  for (const { about } of holds) {
    for (const one of about) found.add(one);
    if (found.size >= MOST_ABOUT) break;
  }
  return [...found];
}

/** One node with its passes, or each pass written out. */
function repeatNodes(block: RepeatBlock<Item> | RepeatBlock<Line>, reading: Reading): readonly Node[] {
  const { variable, range, items, span } = block;
  const numbers = [...passValues(range)];
  if (reading.writtenOut.has(placeKey(span)))
    return numbers.flatMap((number) =>
      nodesOf(items, { ...reading, pass: [...reading.pass, { variable, value: number }] }),
    );
  const inside = { ...reading, loops: [...reading.loops, variable] };
  const at = { reading, key: "passes", span };
  const shown = (): string => squeezed(reading.textAt(span));
  const says = [saying("order", "passes", at, { text: numbers.join(", "), shown })];
  return [blockNode("repeat", says, nodesOf(items, inside), span, shown)];
}

function whenNode(block: WhenBlock<Item> | WhenBlock<Line>, reading: Reading): Node {
  const arms = block.arms.map(({ condition, items }) => {
    const { text, values: some } = conditionText(condition, reading);
    const at = { reading, key: "condition", span: condition.span };
    const shown = (): string => {
      const left = otherChoice(condition);
      return `${squeezed(reading.textAt(condition.span))}${left === null ? "" : ` (${left})`}`;
    };
    const itsValues = values("condition-value", "nominal")(some, { ...at, key: "condition value" });
    const says = [
      saying("order", "condition", at, { text, shown }),
      ...itsValues.map((said) => ({ ...said, within: at.key })),
    ];
    return { ...blockNode("arm", says, nodesOf(items, reading), condition.span, shown), name: text };
  });
  const { otherwise } = block;
  const span = block.otherwiseSpan ?? block.span;
  const last: readonly Node[] =
    otherwise === null
      ? []
      : [{ ...blockNode("arm", [], nodesOf(otherwise, reading), span, () => "otherwise"), name: "otherwise" }];
  return blockNode("when", [], [...arms, ...last], block.span, () => squeezed(reading.textAt(block.span)));
}

function statementNode(statement: Statement, reading: Reading): Node {
  const { signal, hazards, text, span } = statement;
  const names = hazards.map(({ name }) => name);
  const says = sayingsOf(STATEMENT, statement, reading, span);
  const subject = `${signal} (${names.join(", ")})`;
  const title = (): string => `${subject}: ${squeezed(text)}`;
  return createNode({ sort: "statement", about: names, says, span, title, subject });
}

function noteNode({ text, span }: Text, reading: Reading): Node {
  const says = word("words", "note-text")(text, { reading, key: "text", span });
  return createNode({ sort: "note", about: ["note"], says, span, title: () => squeezed(text) });
}

function jumpNode(jump: Jump, reading: Reading): Node {
  const { kind, span } = jump;
  const at = { reading, key: "jump", span };
  const shown = (): string => squeezed(reading.textAt(span));
  if (kind === "stop") {
    const says = [
      saying("order", "jump", at, { text: kind }),
      ...word("words", "own-words")(jump.text, { ...at, key: "text" }),
    ];
    return createNode({ sort: "jump", about: [kind], says, span, title: shown });
  }
  const says = [saying("order", "jump", at, { text: `${kind} to ${stepRefText(jump.step, reading)}`, shown })];
  return createNode({ sort: "jump", about: [kind], says, span, title: shown });
}

function damagedNode(span: Span, reading: Reading): Node {
  const text = squeezed(reading.textAt(span));
  const says = [saying("order", "unreadable", { reading, key: "text", span }, { text })];
  return createNode({ sort: "damaged", about: ["damaged"], says, span, title: () => text });
}
