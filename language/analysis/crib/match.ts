// Whether an item of a crib does what a procedure uses of a tool, by what it misses, and what it is to be set to with its own arm.
// Pure: items and uses in, matches out. Knows no day, no severity and no wording.
import type { Explanation } from "#engineering/explanation.ts";
import { beyondRange, settingWindow, wrenchSetting } from "#engineering/wrench.ts";
import type { Capability, CribItem, Part, Tool, Value } from "#model/declarations.ts";
import type { Quantity } from "#quantity/quantity.ts";
import { cmp } from "#quantity/rational.ts";
import { limitBase } from "../limits/at-node.ts";
import { topGiven } from "../limits/settings.ts";
import { beyondReading, endsOf, isAlike } from "../limits/tools.ts";
import type { Requirement, TorqueUse, Use } from "./uses.ts";

/** What an item cannot do: what it has, and what is asked of it. */
export interface Miss {
  readonly what:
    | "setting"
    | "torque"
    | "window"
    | "reading"
    | "quantity"
    | "heat"
    | "cold"
    | "load"
    | "leg load"
    | "accuracy"
    | "resolution"
    | "force"
    | "offset"
    | "angle";
  /** Of a range, which end of it is passed. */
  readonly side: "above" | "below" | null;
  readonly has: Quantity;
  readonly asked: Quantity;
}

/** What an item is set to for one tightening. */
export interface ItemSetting {
  readonly fastener: Part;
  readonly adapters: readonly Tool[];
  /** Null for a stage without a setting: the arm is not known. */
  readonly stages: readonly { readonly torque: Quantity; readonly setting: Quantity | null }[];
  /** Between which settings the bolt stays inside its band whatever the item's error is; null where none is asked for. */
  readonly window: Quantity | null;
  readonly explanation: Explanation | null;
}

export interface ItemMatch {
  readonly item: CribItem;
  readonly misses: readonly Miss[];
  /** What it does not say and would have to, to be sure: `torque`, `measures`. */
  readonly unsaid: readonly string[];
  readonly settings: readonly ItemSetting[];
}

/** Items are there for a tool by its declaration, or where the crib has a declaration of its own by its name. */
export function itemsFor(tool: Tool, items: readonly CribItem[]): readonly CribItem[] {
  const own = items.filter((item) => item.tool?.id === tool.id);
  return own.length > 0 ? own : items.filter((item) => item.tool?.name === tool.name);
}

/** The item beside all that is used of the tool; what it says nothing of is not held against it. */
export function matchItem(item: CribItem, { tool, namings }: Requirement): ItemMatch {
  const uses = namings.flatMap((naming) => naming.uses);
  const found = [...uses.map((use) => missOf(item.capability, use)), ...declaredMisses(item.capability, tool, uses)];
  const misses = distinct(found.filter((miss) => miss !== null && typeof miss !== "string"));
  const unsaid = new Set(found.filter((miss) => typeof miss === "string"));
  const torques = uses.filter((use) => use.kind === "torque");
  return { item, misses, unsaid: [...unsaid], settings: torques.map((use) => settingOf(item.capability, use)) };
}

/** By what the item misses one use; a word for what it does not say; null where it does it. */
export function missOf(capability: Capability, use: Use): Miss | string | null {
  switch (use.kind) {
    case "torque":
      return torqueMiss(capability, use);
    case "reading":
      return readingMiss(capability, use.expect);
    case "heat":
      return limitMiss(capability.heatsTo, use.temperature, "heat", "heats to");
    case "cool":
      return limitMiss(capability.coolsTo, use.temperature, "cold", "cools to");
    case "load":
      return limitMiss(capability.lifts, use.mass, "load", "lifts");
    case "leg load":
      return limitMiss(capability.legLifts, use.mass, "leg load", "each leg lifts");
  }
}

function torqueMiss(capability: Capability, use: TorqueUse): Miss | string | null {
  const { torque: range } = capability;
  if (range === null) return "torque";
  for (const { quantity } of use.stages) {
    const setting = wrenchSetting(
      { torque: { value: quantity }, prevailing: use.prevailing },
      reachOf(capability, use),
    );
    // Without an arm there is no setting: the value itself is looked at.
    const value = setting.ok ? setting.value : quantity;
    const side = beyondRange(value, range.quantity);
    if (side === null) continue;
    const what = setting.ok && setting.explanation.inputs.length > 1 ? "setting" : "torque";
    return { what, side, has: range.quantity, asked: endAt(value, side) };
  }
  const window = windowOf(capability, use);
  if (window === null || window.ok || window.refusal.why !== "nothing left") return null;
  const accuracy = capability.accuracy?.quantity;
  return accuracy === undefined || use.final === null
    ? null
    : { what: "window", side: null, has: accuracy, asked: use.final.quantity };
}

function windowOf(capability: Capability, use: TorqueUse): ReturnType<typeof settingWindow> | null {
  const { accuracy, accuracyOfFullScale, torque } = capability;
  if (use.final === null || accuracy === null || use.final.quantity.form === "nominal") return null;
  const fullScale = accuracyOfFullScale ? topGiven(torque) : null;
  if (accuracyOfFullScale && fullScale === null) return null;
  const asked = { torque: { value: use.final.quantity }, prevailing: use.prevailing };
  return settingWindow(asked, reachOf(capability, use), { share: { value: accuracy.quantity }, fullScale });
}

function reachOf({ arm }: Capability, { adapters }: TorqueUse) {
  return { arm: arm && { value: arm.quantity }, adapters };
}

/** What the item is to be set to; for its own arm only. */
function settingOf(capability: Capability, use: TorqueUse): ItemSetting {
  const reach = reachOf(capability, use);
  const computed = use.stages.map(({ quantity }) =>
    wrenchSetting({ torque: { value: quantity }, prevailing: use.prevailing }, reach),
  );
  const last = computed.at(-1);
  const window = windowOf(capability, use);
  return {
    fastener: use.fastener,
    adapters: use.adapterTools,
    stages: use.stages.map(({ quantity }, at) => {
      const one = computed[at];
      return { torque: quantity, setting: one?.ok === true ? one.value : null };
    }),
    window: window?.ok === true ? window.value : null,
    explanation: last?.ok === true ? last.explanation : null,
  };
}

function readingMiss({ measures, resolution }: Capability, { quantity }: Value): Miss | string | null {
  if (measures === null) return resolution === null ? "measures" : null;
  const range = measures.quantity;
  if (!isAlike(quantity, range)) return { what: "quantity", side: null, has: range, asked: quantity };
  const side = beyondReading(quantity, range);
  return side === null ? null : { what: "reading", side, has: range, asked: endAt(endsOf(quantity), side) };
}

/** A heater, a freezer, a hoist: one end that must reach the value. */
function limitMiss(
  limit: Value | null,
  asked: Quantity,
  what: "heat" | "cold" | "load" | "leg load" | "force",
  unsaid: string,
): Miss | string | null {
  if (limit === null) return unsaid;
  const [has, wanted] = [limitBase(limit.quantity), highest(asked)];
  if (has === null || wanted === null) return null;
  const isShort = what === "cold" ? cmp(has, wanted) > 0 : cmp(has, wanted) < 0;
  return isShort ? { what, side: what === "cold" ? "below" : "above", has: limit.quantity, asked } : null;
}

/** What the requirement itself asks for, where no value that is used says it. */
function declaredMisses(capability: Capability, tool: Tool, uses: readonly Use[]): readonly (Miss | string | null)[] {
  const wanted = tool.capability;
  const isUsed = (kind: Use["kind"]): boolean => uses.some((use) => use.kind === kind);
  const least = (
    value: Value | null,
    own: Value | null,
    what: Parameters<typeof limitMiss>[2],
    unsaid: string,
    kind?: Use["kind"],
  ) => (value === null || (kind !== undefined && isUsed(kind)) ? null : limitMiss(own, value.quantity, what, unsaid));
  return [
    coarser(
      wanted.accuracy,
      capability.accuracy,
      "accuracy",
      !wanted.accuracyOfFullScale !== !capability.accuracyOfFullScale,
    ),
    coarser(wanted.resolution, capability.resolution, "resolution", false),
    least(wanted.heatsTo, capability.heatsTo, "heat", "heats to", "heat"),
    least(wanted.coolsTo, capability.coolsTo, "cold", "cools to", "cool"),
    least(wanted.lifts, capability.lifts, "load", "lifts", "load"),
    least(wanted.legLifts, capability.legLifts, "leg load", "each leg lifts", "leg load"),
    least(wanted.force, capability.force, "force", "force"),
    other(wanted.offset, capability.offset, "offset"),
    other(wanted.angle, capability.angle, "angle"),
  ];
}

/** Accuracies of reading and of full scale cannot be compared. */
function coarser(
  wanted: Value | null,
  own: Value | null,
  what: "accuracy" | "resolution",
  isOtherScale: boolean,
): Miss | string | null {
  if (wanted === null || isOtherScale) return null;
  if (own === null) return what;
  const [most, has] = [highest(wanted.quantity), highest(own.quantity)];
  if (most === null || has === null || wanted.quantity.kind !== own.quantity.kind || cmp(has, most) <= 0) return null;
  return { what, side: "above", has: own.quantity, asked: wanted.quantity };
}

/** Of an adapter only the same does: the setting is worked out for it. */
function other(wanted: Value | null, own: Value | null, what: "offset" | "angle"): Miss | string | null {
  if (wanted === null) return null;
  if (own === null) return what;
  const [asked, has] = [highest(wanted.quantity), highest(own.quantity)];
  if (asked === null || has === null || cmp(asked, has) === 0) return null;
  return { what, side: null, has: own.quantity, asked: wanted.quantity };
}

function highest({ high, nominal, low }: Quantity) {
  return (high ?? nominal ?? low)?.base ?? null;
}

/** The end of a value that passes a limit, alone. */
function endAt(value: Quantity, side: "above" | "below"): Quantity {
  const end = side === "above" ? (value.high ?? value.nominal) : (value.low ?? value.nominal);
  return { ...value, form: "nominal", low: null, nominal: end, high: null };
}

/** One of each sort is enough to turn an item down. */
function distinct(misses: readonly Miss[]): readonly Miss[] {
  return [...new Map(misses.map((miss) => [`${miss.what} ${miss.side}`, miss])).values()];
}
