// What a reader wants to see beside the text: step numbers, values in the other system's units, what a wrench with an adapter is
// set to, how often a repeat is done. From the model; each with its setting.
import { type InlayHint, InlayHintKind } from "vscode-languageserver";
import type { Value } from "#model/declarations.ts";
import type { FileModel, Item, Line, RepeatBlock } from "#model/procedure.ts";
import { countSteps, passCount } from "#model/repeat-passes.ts";
import { type Role, show, showBoth } from "#quantity/display.ts";
import type { Quantity } from "#quantity/quantity.ts";
import type { Range } from "#syntax/lines.ts";
import { computedValues } from "#workspace/explain-line.ts";
import type { Feature } from "./feature.ts";
import type { Settings } from "./protocol.ts";
import { type FileView, offsetOf } from "./view.ts";
import type { Say } from "./words.ts";

export const inlayHints: Feature = {
  capabilities: () => ({ inlayHintProvider: { resolveProvider: false } }),
  start: (session, say) => {
    session.connection.languages.inlayHint.on(async ({ textDocument: { uri }, range }, token) => {
      await session.settingsKnown();
      return session.ask<InlayHint[]>(uri, token, (view) => [...hintsIn(view, range, session.settings(), say)], []);
    });
  },
};

/** Those that stand in the range, in the order of the text. */
function hintsIn(view: FileView, range: Range, settings: Settings, say: Say): readonly InlayHint[] {
  const [from, to] = [offsetOf(view, range.start), offsetOf(view, range.end)];
  const { stepNumbers, repeats, otherUnits, settings: wrenches } = settings.inlayHints;
  const found: Hint[] = [];
  if (stepNumbers || repeats)
    for (const item of itemsOf(view.model)) {
      const hint = isRepeat(item) ? repeats && repeatHint(item, say) : stepNumbers && numberHint(item);
      if (hint !== false && hint !== null) found.push(hint);
    }
  if (otherUnits) found.push(...valueHints(view, settings.units, from, to));
  if (wrenches && usesAdapter(view.model)) found.push(...settingHints(view, say));
  return found
    .filter(({ at }) => at >= from && at <= to)
    .sort((a, b) => a.at - b.at)
    .map(({ at, label, kind }) => ({
      position: view.lines.position(at),
      label,
      paddingLeft: true,
      ...(kind === undefined ? {} : { kind }),
    }));
}

interface Hint {
  readonly at: number;
  readonly label: string;
  readonly kind?: InlayHintKind;
}

// ---- steps and repeats

/** All that stands in the procedures, blocks before what is in them, lines of steps too. */
function* itemsOf({ procedures }: FileModel): Generator<Item | Line> {
  const waiting: (Item | Line)[] = procedures.flatMap(({ items }) => items);
  for (let item = waiting.pop(); item !== undefined; item = waiting.pop()) {
    yield item;
    if ("items" in item) waiting.push(...item.items);
    else if (item.kind === "step") waiting.push(...item.lines);
    else if (item.kind === "check") waiting.push(...(item.fails ?? []));
    else if (item.kind === "when")
      for (const items of [...item.arms.map((arm) => arm.items), item.otherwise ?? []]) waiting.push(...items);
  }
}

function isRepeat(item: Item | Line): item is RepeatBlock<Item> | RepeatBlock<Line> {
  return item.kind === "repeat";
}

/** Behind the keyword, so that the edge of the text stays straight. */
function numberHint(item: Exclude<Item | Line, { readonly kind: "repeat" }>): Hint | null {
  switch (item.kind) {
    case "step":
    case "task":
    case "perform":
      return { at: item.span.start + item.kind.length, label: item.number };
    default:
      return null;
  }
}

/** Behind its bounds: `8 times` in a step, `8 steps` or `4 times, 8 steps` between steps. */
function repeatHint(block: RepeatBlock<Item> | RepeatBlock<Line>, say: Say): Hint | null {
  const times = passCount(block.range);
  if (times === 0) return null;
  const { steps } = countSteps([block as RepeatBlock<Item>], Number.POSITIVE_INFINITY);
  const parts = [
    ...(steps === times ? [] : [times === 1 ? say("once") : say("{0} times", times)]),
    ...(steps === 0 ? [] : [steps === 1 ? say("1 step") : say("{0} steps", steps)]),
  ];
  return { at: block.span.end, label: parts.join(", ") };
}

// ---- wrenches

/** Where nothing does, nothing has to be followed for it. */
function usesAdapter(model: FileModel): boolean {
  for (const item of itemsOf(model))
    if (item.kind === "action" && item.verb === "tighten" && item.tools.length > 1) return true;
  return false;
}

/** Behind the line: what the wrench is set to, round by round. How far it may be off, the hover says. */
function settingHints({ workspace, path }: FileView, say: Say): readonly Hint[] {
  const lines = new Map<number, Set<string>>();
  for (const { line, explanation } of computedValues(workspace, path)) {
    const { name, value } = explanation.result;
    if (name !== "setting") continue;
    const texts = lines.get(line.end) ?? new Set();
    lines.set(line.end, texts.add(show(middleOf(value))));
  }
  return [...lines].map(([at, texts]) => ({ at, label: say("set to {0}", [...texts].join(", ")) }));
}

/** A wrench is set to one value, as on the checklist: the middle, where there is a band. */
function middleOf(setting: Quantity): Quantity {
  return setting.nominal === null ? setting : { ...setting, form: "nominal", low: null, high: null };
}

// ---- values

function valueHints(view: FileView, units: Settings["units"], from: number, to: number): readonly Hint[] {
  return valuesOf(view).flatMap(({ value, role }) => {
    const { end } = value.span;
    if (end < from || end > to) return [];
    const label = otherUnits(value, role, units);
    return label === null ? [] : [{ at: end, label, kind: InlayHintKind.Type }];
  });
}

/** `≈ 33.2 lbf·ft`; null where the other system has no other unit, or the reader wants the writer's alone. */
function otherUnits({ quantity, workedOut }: Value, role: Role, units: Settings["units"]): string | null {
  if (workedOut !== undefined) return null;
  const system = (quantity.nominal ?? quantity.low ?? quantity.high)?.unit.system;
  if ((units === "si" && system === "metric") || (units === "us" && system === "customary")) return null;
  const own = show(quantity);
  const both = showBoth(quantity, role);
  if (both === own) return null;
  // “At most” stands before the writer's own value already.
  return `≈ ${both.slice(own.length + " (".length, -")".length).replace(/^at (?:least|most) /, "")}`;
}

interface PlacedValue {
  readonly value: Value;
  readonly role: Role;
}

const known = new WeakMap<FileModel, readonly PlacedValue[]>();

/** Every value that is written in the file, once, with what it is for. */
export function valuesOf({ model, path }: FileView): readonly PlacedValue[] {
  const before = known.get(model);
  if (before !== undefined) return before;
  const found = new Map<number, PlacedValue>();
  const seen = new Set<object>();
  const waiting: Waiting[] = [];
  const wait = (inside: object, key: string, isStock: boolean): void => {
    if (!seen.has(inside)) waiting.push({ inside, key, isStock });
    seen.add(inside);
  };
  for (const declared of model.declarations) wait(declared, "", declared.kind === "crib");
  for (const procedure of model.procedures) wait(procedure, "", false);
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    const { inside, key, isStock } = next;
    if (isValue(inside)) {
      if (inside.span.path === path) found.set(inside.span.start, { value: inside, role: roleOf(key, isStock) });
      continue;
    }
    for (const [name, held] of Object.entries(inside)) {
      if (typeof held !== "object" || held === null || SKIPPED.has(name)) continue;
      // What is only spoken of here is looked at where it is declared.
      if ("extent" in held) continue;
      wait(held, Array.isArray(inside) ? key : name, isStock);
    }
  }
  const values = [...found.values()];
  known.set(model, values);
  return values;
}

interface Waiting {
  readonly inside: object;
  /** The property that leads to it. */
  readonly key: string;
  /** Whether it says what the shop's own tool can do. */
  readonly isStock: boolean;
}

const SKIPPED: ReadonlySet<string> = new Set([
  ...["span", "place", "extent", "headSpan", "codeSpan", "stagesSpan", "stateSpan", "indexSpan", "per", "cites"],
  ...["terms", "problems"],
]);

function isValue(inside: object): inside is Value {
  return "quantity" in inside && "span" in inside;
}

/** To which side a value may be rounded: what describes outwards, a load upwards, a limit downwards, what is to be met inwards. */
function roleOf(key: string, isStock: boolean): Role {
  if (OCCURS.has(key)) return "occurs";
  if (CAPACITY.has(key)) return isStock ? "at most safe" : "at least safe";
  if (LOAD.has(key)) return "at least safe";
  return LIMIT.has(key) ? "at most safe" : "must be met";
}

const OCCURS: ReadonlySet<string> = new Set([
  ...["ambient", "interference", "accuracy", "torque", "measures", "expansionRange", "cools", "expands"],
  ...["reach", "height", "endHeight", "turned"],
]);
const CAPACITY: ReadonlySet<string> = new Set(["lifts", "legLifts", "force", "heatsTo"]);
const LOAD: ReadonlySet<string> = new Set(["mass", "cure", "time", "pressure", "stored", "hot", "voltage"]);
const LIMIT: ReadonlySet<string> = new Set(["heatLimit", "flashPoint", "coolsTo", "resolution", "room"]);
