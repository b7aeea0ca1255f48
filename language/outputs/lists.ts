// What stores has to lay out: parts handled, tools as requirements with what is used of them, consumables. Knows no format.
import type { Capability, Consumable, Part, Tool, Value } from "#model/declarations.ts";
import type { ExpandedAction, Thing } from "#model/expanded.ts";
import { instanceRange } from "#model/instances.ts";
import type { Action, ToolUse } from "#model/procedure.ts";
import type { Role } from "#quantity/display.ts";
import type { Magnitude, Quantity } from "#quantity/quantity.ts";
import { cmp } from "#quantity/rational.ts";
import type { ConsumableRow, PartRow, ToolRow } from "./document.ts";
import { choiceResult, valueText } from "./sentences.ts";
import { stockLines, type ToolStocks } from "./stock.ts";
import { thingsPhrase } from "./things.ts";
import type { Work } from "./work.ts";
import type { Writer } from "./writer.ts";

/** Parts that are handled, in the order in which they first come to hand. */
export function partRows(work: Work, writer: Writer): readonly PartRow[] {
  const handled = new Map<Part, Handled>();
  const handle = (part: Part, index: string): Handled => {
    const known = handled.get(part) ?? { indices: new Set(), fresh: new Set(), choices: new Set() };
    handled.set(part, known);
    known.indices.add(index);
    return known;
  };
  for (const { action, objects } of work.actions) {
    if (action.verb === "choose")
      for (const { part, index, choice } of chosenFrom(action, objects, writer))
        handle(part, index).choices.add(choice);
    if (!HANDLING.has(action.verb)) continue;
    for (const thing of objects) {
      if (thing.kind !== "part") continue;
      const { fresh } = handle(thing.part, indexKey(thing));
      if ((action.verb === "install" || action.verb === "press") && action.fresh) fresh.add(indexKey(thing));
    }
  }
  return [...handled].map(([part, { indices, fresh, choices }]) => ({
    title: part.title,
    name: nameWithRange(part),
    count: indices.size,
    fresh: fresh.size,
    remarks: [...partRemarks(part, indices.size, fresh.size, writer), ...choices],
  }));
}

interface Handled {
  readonly indices: Set<string>;
  readonly fresh: Set<string>;
  /** By which readings it is chosen, as remarks. */
  readonly choices: Set<string>;
}

/** What a choice may bring to hand: the parts that its rows name; where they give sizes, the part that has them. */
function chosenFrom(
  { reading, rows }: Extract<Action, { readonly verb: "choose" }>,
  objects: ExpandedAction["objects"],
  writer: Writer,
): readonly { readonly part: Part; readonly index: string; readonly choice: string }[] {
  const { lists, subject, oneOf } = writer.words;
  const by = subject(reading?.title ?? "");
  const named = rows.flatMap(({ result }) =>
    result !== null && "thing" in result && result.thing?.kind === "part" ? [result.thing] : [],
  );
  if (named.length > 0) return named.map((part) => ({ part, index: String(null), choice: lists.choice(by, null) }));
  const sizes = oneOf([...new Set(rows.map(({ result }) => choiceResult(result, writer)))]);
  return objects.flatMap((thing) =>
    thing.kind === "part" ? [{ part: thing.part, index: indexKey(thing), choice: lists.choice(by, sizes) }] : [],
  );
}

/** Tools as requirements: any that meets them may serve; with a crib, its items that do. */
export function toolRows(work: Work, writer: Writer, stock: ToolStocks | null = null): readonly ToolRow[] {
  const uses = new Map<Tool, Value[]>();
  const lifted = new Map<Tool, Thing[]>();
  const use = (tools: readonly ToolUse[], values: readonly (Value | null)[]): void => {
    for (const { tool } of tools) {
      const known = uses.get(tool) ?? [];
      uses.set(tool, known);
      for (const value of values) if (value !== null && answers(tool.capability, value.quantity)) known.push(value);
    }
  };
  for (const { action, objects } of work.actions) {
    if (!("tools" in action)) continue;
    use(action.tools, valuesOf(action));
    if (action.verb !== "lift" && action.verb !== "support") continue;
    for (const { tool } of action.tools) lifted.set(tool, [...(lifted.get(tool) ?? []), ...objects]);
  }
  for (const check of work.checks) use(check.tools, [check.expect]);
  for (const { step } of work.steps) {
    for (const record of step.records)
      use(
        record.tools.map((tool) => ({ tool, span: record.span })),
        [record.expect],
      );
  }
  return [...uses].map(([tool, values]) => ({
    title: tool.title,
    name: tool.name,
    asked: capabilityTexts(tool.capability, writer),
    lifts: liftedTexts(lifted.get(tool) ?? [], writer),
    used: usedTexts(values, writer),
    stock: stock === null ? null : stockLines(stock, tool, writer),
  }));
}

export function consumableRows(work: Work, writer: Writer): readonly ConsumableRow[] {
  const amounts = new Map<Consumable, { readonly texts: Set<string>; more: boolean }>();
  for (const { action } of work.actions) {
    const [consumable, amount] = consumedBy(action);
    if (consumable === null) continue;
    const known = amounts.get(consumable) ?? { texts: new Set(), more: false };
    amounts.set(consumable, known);
    if (amount === null) known.more = true;
    else known.texts.add(writer.value(amount.quantity, "nominal"));
  }
  return [...amounts].map(([consumable, { texts, more }]) => ({
    title: consumable.title,
    name: consumable.name,
    amounts: withMore([...texts], more, writer),
  }));
}

/** Amounts as written, and whether some of it is used without one. */
export function withMore(texts: readonly string[], more: boolean, { words: { lists } }: Writer): readonly string[] {
  if (!more) return texts;
  return texts.length === 0 ? [lists.asNeeded] : [...texts, lists.moreAsNeeded];
}

/** What a tool must be able to do, as declared. */
function capabilityTexts(capability: Capability, writer: Writer): readonly string[] {
  const { lists } = writer.words;
  const rows: readonly (readonly [Value | null, Role, (value: string) => string])[] = [
    [capability.torque, "occurs", lists.torque],
    [capability.accuracy, "nominal", capability.accuracyOfFullScale ? lists.accuracyOfFullScale : lists.accuracy],
    [capability.arm, "nominal", lists.arm],
    [capability.offset, "nominal", lists.offset],
    [capability.angle, "nominal", lists.angle],
    [capability.heatsTo, "at least safe", lists.heatsTo],
    [capability.coolsTo, "at most safe", lists.coolsTo],
    [capability.lifts, "at least safe", lists.lifts],
    [capability.legLifts, "at least safe", lists.legLifts],
    [capability.measures, "occurs", lists.measures],
    [capability.resolution, "at most safe", lists.resolution],
    [capability.force, "at least safe", lists.force],
  ];
  return rows.flatMap(([value, role, say]) => (value === null ? [] : [say(writer.value(value.quantity, role))]));
}

/** Each of them once, in one phrase. */
function liftedTexts(things: readonly Thing[], writer: Writer): readonly string[] {
  const once = new Map(things.map((thing) => [thingsPhrase([thing], writer), thing]));
  return once.size === 0 ? [] : [thingsPhrase([...once.values()], writer)];
}

/**
 * Ranges of one kind become one range from the lowest to the highest value. What stands alone is a limit of a step, and is
 * rounded as it is there.
 */
function usedTexts(values: readonly Value[], writer: Writer): readonly string[] {
  const byKind = new Map<string, Quantity>();
  const alone = new Map<string, Set<string>>();
  const rest = new Set<string>();
  for (const value of values) {
    const { quantity } = value;
    const [low, high] = endsOf(quantity);
    if (low === null || high === null || value.workedOut !== undefined) {
      rest.add(valueText(value, "must be met", writer));
      continue;
    }
    const known = byKind.get(quantity.kind);
    byKind.set(quantity.kind, known === undefined ? quantity : joined(known, quantity));
    const texts = alone.get(quantity.kind) ?? new Set();
    alone.set(quantity.kind, texts.add(valueText(value, "must be met", writer)));
  }
  const ranges = [...byKind].map(([kind, quantity]) => {
    const [text, ...others] = alone.get(kind) ?? [];
    return text === undefined || others.length > 0 ? writer.value(quantity, "occurs") : text;
  });
  return [...ranges, ...rest];
}

function joined(a: Quantity, b: Quantity): Quantity {
  const [lowA, highA] = endsOf(a);
  const [lowB, highB] = endsOf(b);
  return { ...a, form: "range", low: lesser(lowA, lowB, 1), nominal: null, high: lesser(highA, highB, -1) };
}

function lesser(a: Magnitude | null, b: Magnitude | null, sign: 1 | -1): Magnitude | null {
  if (a === null || b === null) return a ?? b;
  return cmp(a.base, b.base) * sign <= 0 ? a : b;
}

function endsOf({ form, low, nominal, high }: Quantity): readonly [Magnitude | null, Magnitude | null] {
  return form === "nominal" ? [nominal, nominal] : [low, high];
}

/** Whether the tool is there for a value of this kind: a wrench for a torque, an adapter for none. */
function answers(capability: Capability, { kind }: Quantity): boolean {
  return [capability.torque, capability.heatsTo, capability.coolsTo, capability.measures].some(
    (value) => value?.quantity.kind === kind,
  );
}

function valuesOf(action: Action): readonly (Value | null)[] {
  if (action.verb === "tighten") return action.stages;
  if (action.verb === "heat" || action.verb === "cool") return [action.to];
  return action.verb === "measure" ? [action.expect] : [];
}

function consumedBy(action: Action): readonly [Consumable | null, Value | null] {
  if (action.verb === "clean" || action.verb === "lubricate") return [action.with, null];
  if (action.verb === "apply" || action.verb === "fill") return [action.dose.consumable, action.dose.amount];
  return [null, null];
}

function partRemarks(part: Part, count: number, fresh: number, writer: Writer): readonly string[] {
  const { lists } = writer.words;
  const mass = part.mass === null ? null : lists.mass(writer.value(part.mass.quantity, "at least safe"));
  const remarks = [
    fresh > 0 ? lists.newNeeded(fresh) : null,
    part.temporary ? lists.temporary : null,
    part.thread === null ? null : lists.thread(part.thread),
    part.propertyClass === null ? null : lists.propertyClass(part.propertyClass),
    part.grade === null ? null : lists.grade(part.grade),
    mass === null || count < 2 ? mass : lists.each(mass),
    part.sharp ? lists.sharp : null,
  ];
  return remarks.filter((remark) => remark !== null);
}

const HANDLING: ReadonlySet<string> = new Set(["install", "press", "remove", "discard", "lift"]);

function indexKey(thing: Thing & { readonly kind: "part" }): string {
  return String(thing.index);
}

function nameWithRange(part: Part): string {
  const range = instanceRange(part);
  return range === null ? part.name : `${part.name}[${range}]`;
}
