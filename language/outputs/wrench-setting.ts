// What a torque wrench is to be set to for one tightening, where that is not the torque itself: the words at the step. With a crib by
// item, else for the arm that the wrench is declared with. Knows no format.
import { partsOf, prevailingOf } from "#analysis/limits/at-node.ts";
import { adaptersOf } from "#analysis/limits/tools.ts";
import { wrenchSetting } from "#engineering/wrench.ts";
import type { Part, Tool } from "#model/declarations.ts";
import type { ExpandedAction } from "#model/expanded.ts";
import type { TightenAction } from "#model/procedure.ts";
import type { Quantity } from "#quantity/quantity.ts";
import { cmp } from "#quantity/rational.ts";
import { middleOf, type ToolStocks, usableItems } from "./stock.ts";
import { thingsPhrase } from "./things.ts";
import type { Writer } from "./writer.ts";

export interface SettingWords {
  /** Of each round; empty where they stand in the details. */
  readonly rounds: readonly string[];
  readonly details: readonly string[];
}

const NOTHING: SettingWords = { rounds: [], details: [] };

/** Nothing where the torque itself is set, or no wrench is known. */
export function settingWords(
  line: ExpandedAction,
  action: TightenAction,
  writer: Writer,
  stock: ToolStocks | null,
): SettingWords {
  const { tools, stages } = action;
  const wrench = tools.find(({ tool }) => tool.capability.torque !== null)?.tool;
  const parts = [...new Set(partsOf(line).map(({ part }) => part))];
  const adapters = adaptersOf(tools);
  if (wrench === undefined || stages.length === 0 || parts.length === 0 || tools.some(({ tool }) => tool.damaged))
    return NOTHING;
  const { arm } = wrench.capability;
  const computed = parts.map((part) => settingsFor(action, part, { arm: arm && { value: arm.quantity }, adapters }));
  if (computed.every((one) => one === "the torque")) return NOTHING;
  const say = writer.words.wrench;
  const at = say.atFastener(stages.length > 1);
  const ofItems = stock === null ? [] : itemTexts(action, parts, wrench, stock, writer);
  if (ofItems.length > 0) return { rounds: [], details: [at, ...ofItems] };
  const title = thingsPhrase([{ kind: "other", thing: wrench, span: wrench.span }], writer);
  const usesArm = computed.some((one) => typeof one !== "string" && one.usesArm);
  const length = arm === null || !usesArm ? null : writer.value(arm.quantity, "nominal");
  const texts = computed.map((one) => (typeof one === "string" ? null : shown(one.settings, writer)));
  const [first, ...others] = texts;
  const isOne = first != null && others.every((other) => other?.join("\n") === first.join("\n"));
  if (isOne && first.length > 1)
    return { rounds: first.map(say.round), details: [at, ...(length === null ? [] : [say.forArm(title, length)])] };
  if (isOne) return { rounds: [], details: [`${at} ${say.set(title, first, length)}`] };
  const own = parts.flatMap((part, index): readonly string[] => {
    const text = texts[index];
    if (text != null) return [say.setFor(writer.words.subject(part.title), title, text, length)];
    return computed[index] === "unknown" ? [say.workOut(title)] : [];
  });
  return { rounds: [], details: [at, ...new Set(own)] };
}

interface Settings {
  readonly settings: readonly Quantity[];
  /** Whether they hold for one arm alone. */
  readonly usesArm: boolean;
}

/** The setting of each round; `the torque` where nothing but it goes in. */
function settingsFor(
  action: TightenAction,
  part: Part,
  reach: Parameters<typeof wrenchSetting>[1],
): Settings | "the torque" | "unknown" {
  const prevailing = prevailingOf(part);
  if (reach.adapters.length === 0 && prevailing === null) return "the torque";
  if (action.stages.some(({ workedOut }) => workedOut !== undefined)) return "unknown";
  const all = action.stages.map(({ quantity }) => wrenchSetting({ torque: { value: quantity }, prevailing }, reach));
  const known = all.flatMap((one) => (one.ok ? [one] : []));
  if (known.length < all.length) return "unknown";
  const settings = known.map(({ value }) => value);
  if (settings.every((setting, at) => isTorque(setting, action.stages[at]?.quantity))) return "the torque";
  const usesArm = known.some(({ explanation }) => explanation.inputs.some(({ name }) => name === "arm"));
  return { settings: settings.map(middleOf), usesArm };
}

/** Without a prevailing torque, and with all adapters at a right angle or with none, it is. */
function isTorque({ low, nominal, high }: Quantity, torque: Quantity | undefined): boolean {
  return [
    [low, torque?.low],
    [nominal, torque?.nominal],
    [high, torque?.high],
  ].every(([a, b]) => a == null || b == null || cmp(a.base, b.base) === 0);
}

function shown(settings: readonly Quantity[], writer: Writer): readonly string[] {
  return writer.alike(settings, "must be met");
}

/** Of each item that may be taken, what it is to be set to. */
function itemTexts(
  action: TightenAction,
  parts: readonly Part[],
  wrench: Tool,
  stock: ToolStocks,
  writer: Writer,
): readonly string[] {
  const say = writer.words.wrench;
  const torques = action.stages.map(({ quantity }) => quantity);
  const adapters = action.tools.flatMap(({ tool }) => (tool.capability.offset === null ? [] : [tool]));
  return usableItems(stock, wrench).flatMap(({ item, settings }) =>
    settings
      .filter(
        (one) =>
          parts.includes(one.fastener) &&
          one.adapters.length === adapters.length &&
          one.adapters.every((tool, at) => tool === adapters[at]) &&
          one.stages.length === torques.length &&
          one.stages.every(({ torque }, at) => torque === torques[at]),
      )
      .map((one) => {
        const values = one.stages.flatMap(({ setting }) => (setting === null ? [] : [middleOf(setting)]));
        const label = parts.length > 1 ? say.itemFor(item.label, writer.words.subject(one.fastener.title)) : item.label;
        return values.length < torques.length ? say.itemUnknown(label) : say.item(label, shown(values, writer));
      }),
  );
}
