// Whether a tool can do what it is named for: its range, its arm, its accuracy, its resolution; and whether one is named at all.
// What a tool says nothing of is not held against it. Knows no crib.
import { point, quantityOf } from "#engineering/ends.ts";
import type { Explanation } from "#engineering/explanation.ts";
import { type Adapter, beyondRange, type settingWindow, wrenchSetting } from "#engineering/wrench.ts";
import type { Capability, Tool, Value } from "#model/declarations.ts";
import type { TightenAction, ToolUse } from "#model/procedure.ts";
import type { Kind } from "#quantity/kind.ts";
import { band, type Quantity } from "#quantity/quantity.ts";
import { cmp, isNegative, isZero, mul, rational, sub } from "#quantity/rational.ts";
import type { Span } from "#syntax/span.ts";
import { NEVER } from "../decision.ts";
import { base } from "../raw-fact.ts";
import { instanceName } from "../world.ts";
import { type At, type Instance, limitBase, prevailingOf, toolsByName } from "./at-node.ts";
import { type HeatAction, hottestOf } from "./heating.ts";
import type { ToolFact } from "./limit-fact.ts";
import { canBeSetTo, windowOf } from "./settings.ts";
import { finalOf } from "./torques.ts";
import { createWorkedOut } from "./worked-out.ts";

type Bare = ToolFact extends infer Fact
  ? Fact extends unknown
    ? Omit<Fact, "options" | "pass" | "more">
    : never
  : never;

/** The wrench, its adapters, and the settings for one fastener. */
export function wrenchFacts(at: At, action: TightenAction, fastener: Instance): void {
  const { part, index } = fastener;
  const { tools, stages } = action;
  if (stages.length === 0 || tools.some(({ tool }) => tool.damaged) || part.damaged) return;
  const name = instanceName(part, index);
  const wrenches = tools.filter(({ tool }) => tool.capability.torque !== null);
  const [wrench] = wrenches;
  const final = finalOf(action);
  const adapters = adaptersOf(tools);
  const canBeSet = canBeSetTo(action, part, adapters);
  const serves = (tool: Tool): boolean =>
    canBeSet(tool) && (final === null || isFineEnough(tool.capability, final.quantity));
  if (wrench === undefined) {
    const last = stages.at(-1);
    const end = action.angle?.span.end ?? action.stagesSpan?.end ?? action.place.end;
    const after = { ...action.span, start: end + (action.toSeat ? " to seat".length : 0) };
    if (!action.byHand && last !== undefined && !namesMore(tools, after))
      noTool(at, {
        ...{ what: "torque", value: last.quantity, tools, span: action.place, subject: name },
        addAt: action.angle === null && !action.toSeat ? action.stagesSpan : null,
        fits: serves,
      });
    return;
  }
  const prevailing = prevailingOf(part);
  const arm = wrench.tool.capability.arm;
  const reach = { arm: arm && { value: arm.quantity }, adapters };
  const range = wrench.tool.capability.torque;
  const taken = prevailing?.value ?? null;
  const capabilities = [wrench, ...tools].map(({ tool }) => tool.capability);
  for (const stage of stages) {
    const { quantity } = stage;
    const torque = { torque: { value: quantity }, prevailing };
    const setting = settings.of([quantity, taken, ...capabilities], () => wrenchSetting(torque, reach));
    // Where nothing but the torque goes in, the setting is the torque: nothing was worked out.
    if (setting.ok && setting.explanation.inputs.length > 1)
      at.explain?.({ of: `${wrench.tool.name} for ${part.name}`, span: stage.span, explanation: setting.explanation });
    const isUnknown = !setting.ok && setting.refusal.why === "missing" && setting.refusal.input === "arm";
    if (isUnknown) {
      const adapter = tools.find(({ tool }) => tool.capability.offset !== null)?.tool.name ?? "";
      tell(
        at,
        {
          kind: "arm unknown",
          part: name,
          wrench: wrench.tool.name,
          adapter,
          declaredAt: wrench.tool.span,
          span: action.place,
        },
        `${base(name)} ${wrench.tool.name}`,
      );
    }
    // Without an arm there is no setting: the value itself is looked at.
    const value = setting.ok ? setting.value : isUnknown ? quantity : null;
    if (value === null || range === null) continue;
    const beyond = beyondRange(value, range.quantity);
    if (beyond === null) continue;
    const fitting = otherTool(at, wrench.tool, serves);
    const what = setting.ok && setting.explanation.inputs.length > 1 ? "setting" : "torque";
    const explanation: Explanation | null = setting.ok ? setting.explanation : null;
    outside(at, { how: beyond, what, asked: quantity, value, range, use: wrench, fitting, explanation }, action.place);
  }
  accuracyFact(at, action, fastener, wrench, serves);
  precision(at, [wrench], final, action.place);
}

const settings = createWorkedOut<ReturnType<typeof wrenchSetting>>();
const windows = createWorkedOut<ReturnType<typeof settingWindow> | null>();

/** A setting that keeps the bolt inside its band whatever the wrench's error is. */
function accuracyFact(
  at: At,
  action: TightenAction,
  { part, index }: Instance,
  wrench: ToolUse,
  serves: (tool: Tool) => boolean,
): void {
  const { accuracy } = wrench.tool.capability;
  const final = finalOf(action);
  if (final === null || accuracy === null || final.quantity.form === "nominal") return;
  const adapters = adaptersOf(action.tools);
  const windowFor = ({ capability }: Tool): ReturnType<typeof windowOf> => windowOf(capability, final, part, adapters);
  const taken = prevailingOf(part)?.value ?? null;
  const capabilities = [wrench, ...action.tools].map(({ tool }) => tool.capability);
  const window = windows.of([final.quantity, taken, ...capabilities], () => windowFor(wrench.tool));
  if (window?.ok === true)
    at.explain?.({ of: `${wrench.tool.name} for ${part.name}`, span: final.span, explanation: window.explanation });
  if (window === null || window.ok || window.refusal.why !== "nothing left") return;
  const { low: least, high: most } = window.refusal;
  // Of a wrench that says nothing of its error nobody knows that it is better.
  const fitting = otherTool(at, wrench.tool, (tool) => windowFor(tool)?.ok === true && serves(tool));
  const name = instanceName(part, index);
  tell(
    at,
    {
      kind: "tool accuracy",
      part: name,
      tool: wrench.tool.name,
      torque: final.quantity,
      accuracy: accuracy.quantity,
      least,
      most,
      declaredAt: accuracy.span,
      fitting,
      instead: fitting === null ? null : { span: wrench.span, text: fitting },
      span: action.place,
    },
    `${base(name)} ${wrench.tool.name}`,
  );
}

export function adaptersOf(tools: readonly ToolUse[]): readonly Adapter[] {
  return tools.flatMap(({ tool: { capability } }) =>
    capability.offset === null
      ? []
      : [
          {
            offset: { value: capability.offset.quantity },
            angle: capability.angle && { value: capability.angle.quantity },
          },
        ],
  );
}

// ---- measuring

/** A check, a measurement or a record with limits. `needsTool`: whether one without a tool is told of. */
export function readingFacts(
  at: At,
  reading: {
    readonly expect: Value | null;
    readonly tools: readonly ToolUse[];
    readonly place: Span;
    readonly needsTool: boolean;
  },
): void {
  const { expect, tools, place } = reading;
  if (expect === null || tools.some(({ tool }) => tool.damaged)) return;
  const shows = ({ capability }: Tool): boolean =>
    canDo("reading", capability, expect.quantity) && isFineEnough(capability, expect.quantity);
  const gauges = tools.filter(({ tool: { capability } }) => (rangeOf(capability) ?? capability.resolution) !== null);
  if (gauges.length === 0 || showsOtherKind(gauges, expect.quantity)) {
    const between = { ...place, start: place.end, end: expect.span.start - " expect ".length };
    const isAsked = reading.needsTool || gauges.some(({ tool }) => tool.capability.measures !== null);
    if (isAsked && expect.workedOut === undefined && !namesMore(tools, between))
      noTool(at, {
        what: "reading",
        value: expect.quantity,
        tools,
        span: place,
        subject: "",
        addAt: null,
        fits: shows,
      });
    return;
  }
  for (const use of gauges) {
    const range = rangeOf(use.tool.capability);
    if (range === null || !isAlike(expect.quantity, range.quantity)) continue;
    const beyond = beyondReading(expect.quantity, range.quantity);
    if (beyond === null) continue;
    const fitting = otherTool(at, use.tool, shows);
    const { quantity } = expect;
    outside(
      at,
      {
        how: beyond,
        what: "reading",
        asked: quantity,
        value: quantity,
        range,
        use,
        fitting,
        explanation: null,
      },
      place,
    );
  }
  precision(at, gauges, expect, place);
}

/**
 * Whether what is named shows something else. What a volume and a time are read for together may be anything, and so what a tool is
 * read for that does not say what it shows.
 */
function showsOtherKind(gauges: readonly ToolUse[], asked: Quantity): boolean {
  const shown = gauges.map(({ tool: { capability } }) => kindsShown(rangeOf(capability)?.quantity ?? null));
  const [first = [], ...others] = shown;
  return first.length > 0 && others.every((kinds) => isEither(first, kinds)) && !isEither(first, kindsShown(asked));
}

/** What can be read on a tool; a torque wrench shows torques. */
function rangeOf({ measures, torque }: Capability): Value | null {
  return measures ?? torque;
}

function kindsShown(of: Quantity | null): readonly Kind[] {
  return of === null ? [] : [of.kind, ...(of.alternatives ?? [])].map(kindOfSteps);
}

function isEither(some: readonly Kind[], others: readonly Kind[]): boolean {
  return some.some((kind) => others.includes(kind));
}

/** Where limits leave what a tool can show; between readings that it shows, any difference may be asked. */
export function beyondReading(asked: Quantity, range: Quantity): "below" | "above" | null {
  return asked.kind !== range.kind || isDifference(asked, range) ? null : beyondRange(endsOf(asked), range);
}

/**
 * “Out of round at most 0.1 mm”, with a micrometer for 200 to 350 mm: a limit from zero up, and far below all sizes of the tool, is
 * on how far its readings lie apart. From a tenth of its smallest size on it may be a size (project rule).
 */
function isDifference({ low, high }: Quantity, { low: least }: Quantity): boolean {
  if (high === null || least === null || (low !== null && !isZero(low.base))) return false;
  if (isNegative(high.base)) return false;
  return cmp(high.base, mul(least.base, rational(1, 10))) <= 0;
}

function reaches(range: Quantity, value: Quantity): boolean {
  return isAlike(value, range) && (value.kind !== range.kind || beyondRange(value, range) === null);
}

/** The limit of a one-sided value has to be seen, too. */
export function endsOf(quantity: Quantity): Quantity {
  if (quantity.form !== "at least" && quantity.form !== "at most") return quantity;
  return { ...quantity, form: "nominal", low: null, nominal: quantity.low ?? quantity.high, high: null };
}

/** A temperature and a difference of two are read on one scale. */
export function isAlike(a: Quantity, b: Quantity): boolean {
  return kindOfSteps(a.kind) === kindOfSteps(b.kind) && (a.qualifier ?? "gauge") === (b.qualifier ?? "gauge");
}

/** A tolerance narrower than one step of the tool that must hold it. */
function precision(at: At, uses: readonly ToolUse[], value: Value | null, place: Span): void {
  if (value === null || value.quantity.form === "nominal" || value.workedOut !== undefined) return;
  const { low, high } = band(value.quantity);
  if (low === null || high === null) return;
  const width = sub(high, low);
  const kind = kindOfSteps(value.quantity.kind);
  for (const use of uses) {
    const { resolution } = use.tool.capability;
    const step = resolution === null ? null : limitBase(resolution.quantity);
    if (resolution === null || step === null || isFineEnough(use.tool.capability, value.quantity)) continue;
    const fitting = otherTool(at, use.tool, ({ capability }) => {
      const measures = capability.measures?.quantity;
      const says = capability.resolution?.quantity.kind === kind && measures !== undefined;
      return says && isFineEnough(capability, value.quantity) && reaches(measures, value.quantity);
    });
    const unit = (resolution.quantity.nominal ?? resolution.quantity.low ?? resolution.quantity.high)?.unit;
    if (unit === undefined) continue;
    tell(
      at,
      {
        kind: "precision",
        tool: use.tool.name,
        value: value.quantity,
        width: quantityOf(kind, point(width), unit),
        resolution: resolution.quantity,
        declaredAt: resolution.span,
        fitting,
        instead: fitting === null ? null : { span: use.span, text: fitting },
        span: place,
      },
      use.tool.name,
    );
  }
}

/** Whether one step of the tool is no more than what the value may be off by, as far as both are said. */
function isFineEnough({ resolution }: Capability, value: Quantity): boolean {
  const { low, high } = band(value);
  const step = resolution === null ? null : limitBase(resolution.quantity);
  if (value.form === "nominal" || low === null || high === null) return true;
  return step === null || resolution?.quantity.kind !== kindOfSteps(value.kind) || cmp(sub(high, low), step) >= 0;
}

/** Steps of a thermometer are differences. */
function kindOfSteps(of: Kind): Kind {
  return of === "temperature" ? "temperature difference" : of;
}

// ---- heating

/** The range of a heater, or of what cools. */
export function heaterFacts(at: At, action: HeatAction, heated: Instance): void {
  const { tools, to, by, place } = action;
  if (tools.some(({ tool }) => tool.damaged) || heated.part.damaged) return;
  const cooling = action.verb === "cool";
  const limitOf = ({ capability }: Tool): Value | null => (cooling ? capability.coolsTo : capability.heatsTo);
  const heaters = tools.filter(({ tool }) => limitOf(tool) !== null);
  const asked = to ?? by;
  if (asked === null) return;
  if (heaters.length === 0) {
    if (!cooling && !namesMore(tools, { ...action.span, start: asked.span.end }))
      noTool(at, {
        ...{ what: "heating", value: asked.quantity, tools, span: place, subject: heated.part.name, addAt: asked.span },
        fits: ({ capability }) => canDo("heating", capability, asked.quantity),
      });
    return;
  }
  for (const hottest of cooling ? coldestOf(at, action) : hottestOf(at, action, heated)) {
    for (const use of heaters) {
      const range = limitOf(use.tool);
      const limit = range === null ? null : limitBase(range.quantity);
      if (range === null || limit === null || range.quantity.kind !== "temperature") continue;
      const isBeyond = cooling ? cmp(hottest.base, limit) < 0 : cmp(hottest.base, limit) > 0;
      if (!isBeyond) continue;
      const fitting = otherTool(at, use.tool, (tool) => {
        const other = limitOf(tool);
        const reach = other === null ? null : limitBase(other.quantity);
        return reach !== null && (cooling ? cmp(hottest.base, reach) >= 0 : cmp(hottest.base, reach) <= 0);
      });
      const how = cooling ? "below" : "above";
      outside(
        at,
        {
          how,
          what: "temperature",
          asked: asked.quantity,
          value: hottest.shown,
          range,
          use,
          fitting,
          explanation: null,
        },
        place,
        hottest.where,
      );
    }
  }
}

/** The low end of the range; of a fall nothing is asked. */
export function coldestOf(at: At, { to }: HeatAction): ReturnType<typeof hottestOf> {
  const low = to === null ? null : band(to.quantity).low;
  if (to === null || low === null) return [];
  const end = to.quantity.low ?? to.quantity.nominal;
  return end === null
    ? []
    : [
        {
          base: low,
          shown: { ...to.quantity, form: "nominal", low: null, nominal: end, high: null },
          where: at.state.reach,
        },
      ];
}

// ---- what they share

interface Outside {
  readonly how: "below" | "above";
  readonly what: "setting" | "torque" | "reading" | "temperature";
  readonly asked: Quantity;
  readonly value: Quantity;
  readonly range: Value;
  readonly use: ToolUse;
  readonly fitting: string | null;
  readonly explanation: Explanation | null;
}

function outside(at: At, { use, range, ...rest }: Outside, span: Span, where = at.state.reach): void {
  const { name } = use.tool;
  const instead = rest.fitting === null ? null : { span: use.span, text: rest.fitting };
  tell(
    at,
    { kind: "tool range", ...rest, tool: name, range: range.quantity, declaredAt: range.span, instead, span },
    name,
    where,
  );
}

interface Toolless {
  readonly what: "torque" | "reading" | "heating";
  readonly value: Quantity;
  readonly tools: readonly ToolUse[];
  readonly span: Span;
  readonly subject: string;
  /** Behind what a tool can be put in; null where that is not plain. */
  readonly addAt: Span | null;
  readonly fits: (tool: Tool) => boolean;
}

/** No tool at all, or only such as are declared to do something else: what says nothing of itself may do anything. */
function noTool(at: At, { what, value, tools, span, subject, addAt, fits }: Toolless): void {
  if (tools.some(({ tool }) => saysNothing(tool))) {
    for (const { tool } of tools)
      if (saysNothing(tool))
        at.leaveOut({ matter: MATTER[what], of: tool.name, lacks: "range", when: null, in: tool.name, span });
    return;
  }
  const fitting = otherTool(at, null, fits);
  const named = tools.map(({ tool }) => tool.name);
  tell(at, { kind: "no tool", what, value, named, fitting, addAt: named.length === 0 ? addAt : null, span }, subject);
}

/** Whether more is written where tools stand than the tools that are known: a name that means nothing was told of. */
function namesMore(tools: readonly ToolUse[], written: Span): boolean {
  const [first] = tools;
  return first === undefined ? written.end > written.start : first.span.start > written.start + " with ".length;
}

const MATTER = { torque: "tool range", reading: "measurement range", heating: "heating range" } as const;

export function saysNothing({ capability }: Tool): boolean {
  return Object.values(capability).every((said) => said === null || said === false);
}

function canDo(what: "reading" | "heating", capability: Capability, value: Quantity): boolean {
  if (what === "reading") {
    const range = rangeOf(capability)?.quantity;
    return range !== undefined && reaches(range, endsOf(value));
  }
  const most = capability.heatsTo === null ? null : limitBase(capability.heatsTo.quantity);
  const top = band(value).high;
  return value.kind === "temperature" && most !== null && top !== null && cmp(top, most) <= 0;
}

/** The first other tool that is declared and fits: of a sort, so the one whose range is the narrowest comes first. */
function otherTool({ run }: At, but: Tool | null, fits: (tool: Tool) => boolean): string | null {
  const found = toolsByName(run).filter((tool) => tool !== but && !tool.damaged && fits(tool));
  const top = ({ capability }: Tool) =>
    (capability.torque ?? capability.heatsTo ?? capability.measures)?.quantity.high?.base ?? null;
  const [nearest] = [...found].sort((a, b) => {
    const [x, y] = [top(a), top(b)];
    return x === null || y === null || isZero(sub(x, y)) ? 0 : cmp(x, y);
  });
  return nearest?.name ?? null;
}

function tell(at: At, fact: Bare, subject: string, where = at.state.reach): void {
  const { operation, id } = at.node;
  const reached = at.run.decisions.and(at.state.reach, where);
  if (reached === NEVER) return;
  const pass = operation.kind === "act" ? operation.line.pass : operation.kind === "look" ? operation.pass : [];
  at.collect({ fact, where: reached, pass, subject, node: id });
}
