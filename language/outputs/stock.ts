// The crib on an output: which items may serve for a tool, what each is to be set to with its own arm, and what that holds for.
// Knows no format.
import type { Stock, ToolStock } from "#analysis/crib/crib-facts.ts";
import type { ItemSetting } from "#analysis/crib/match.ts";
import type { Tool } from "#model/declarations.ts";
import type { Quantity } from "#quantity/quantity.ts";
import type { StockLine } from "./document.ts";
import { formulaText } from "./explanation.ts";
import type { Words } from "./words/en.ts";
import type { Writer } from "./writer.ts";

export interface ToolStocks extends Stock {
  readonly tools: readonly ToolStock[];
}

/** The items that meet what is used of the tool. One that is out of calibration is named and marked: it is not to be taken. */
export function stockLines(stocks: ToolStocks, tool: Tool, writer: Writer): readonly StockLine[] {
  const { stock } = writer.words;
  return itemsThatMeet(stocks, tool).map(({ item, unsaid, isOut, settings }) => {
    const { label, calibratedUntil: until } = item;
    const calibration = until === null ? null : isOut ? stock.outSince(until) : stock.calibratedUntil(until);
    return {
      label,
      remarks: [calibration, unsaid.length === 0 ? null : stock.unsaid(writer.words.list(unsaid))].filter(
        (remark) => remark !== null,
      ),
      // Several steps may tighten alike.
      settings: isOut ? [] : [...new Set(settings.flatMap((setting) => settingTexts(setting, writer)))],
    };
  });
}

function itemsThatMeet({ tools }: ToolStocks, tool: Tool): ToolStock["items"] {
  return (tools.find((one) => one.tool === tool)?.items ?? []).filter(({ misses }) => misses.length === 0);
}

/** The items that may be taken for the tool. */
export function usableItems(stocks: ToolStocks, tool: Tool): ToolStock["items"] {
  return itemsThatMeet(stocks, tool).filter(({ isOut }) => !isOut);
}

/** All items in one text, for a cell. */
export function stockText(items: readonly StockLine[], { stock }: Words): string {
  if (items.length === 0) return stock.none;
  const item = ({ label, remarks, settings }: StockLine): string =>
    [[label, ...remarks].join(", "), settings.join("; ")].filter((text) => text !== "").join(": ");
  return items.map(item).join("; ");
}

/** Which crib and day, what settings hold for, and each formula once that they come from. */
export function stockNotes({ cribs, day, tools }: ToolStocks, { words }: Writer): readonly string[] {
  const { stock } = words;
  const shown = tools
    .flatMap(({ items }) => items)
    .flatMap(({ misses, isOut, settings }) => (misses.length === 0 && !isOut ? settings.filter(changesSetting) : []));
  const formulas = shown.flatMap(({ explanation }) =>
    explanation === null
      ? []
      : stock.formula(formulaText(explanation, stock.term), explanation.source.replace(/ \(read\)$/, "")),
  );
  return [
    stock.source(words.list(cribs.map(({ title }) => title)), day),
    ...(shown.length === 0 ? [] : [stock.settingHolds]),
    ...new Set(formulas),
  ];
}

/** Where the setting is not the torque itself, or the wrench's error narrows the band, it has to be said. */
function settingTexts(setting: ItemSetting, writer: Writer): readonly string[] {
  const { stock } = writer.words;
  const { fastener, adapters, stages, window } = setting;
  const last = stages.at(-1);
  if (last === undefined) return [];
  const torque = writer.value(last.torque, "must be met");
  const tools = adapters.map(({ title }) => title);
  if (last.setting === null) return [stock.noArm(torque, fastener.title, writer.words.list(tools))];
  if (!changesSetting(setting))
    return window === null
      ? []
      : [stock.window(fastener.title, torque, writer.value(nominalless(window), "must be met"))];
  const values = writer.alike(
    stages.flatMap(({ setting: one }) => (one === null ? [] : [middleOf(one)])),
    "nominal",
  );
  const set = stock.setting(fastener.title, torque, writer.words.list(tools), values);
  return [window === null ? set : stock.keep(set, writer.value(nominalless(window), "must be met"))];
}

/** A wrench is set to one value: the middle, where there is a band. */
export function middleOf(setting: Quantity): Quantity {
  return setting.nominal === null ? setting : { ...setting, form: "nominal", low: null, high: null };
}

function changesSetting({ explanation }: ItemSetting): boolean {
  return explanation === null || explanation.inputs.length > 1;
}

function nominalless(window: NonNullable<ItemSetting["window"]>) {
  return window.low === null || window.high === null ? window : { ...window, form: "range" as const, nominal: null };
}
