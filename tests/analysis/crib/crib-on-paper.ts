// A text with a crib, followed, and what is told of each item for a tool of it. For the tests of this folder.
import { type Stock, stockOf, toolStocksOf } from "#analysis/crib/crib-facts.ts";
import type { Run } from "#analysis/follow.ts";
import { openWorkspace } from "#workspace/workspace.ts";
import { inWords } from "../limits/whole-limits.ts";

export const DAY = "2026-05-04";

export const SHOP = `option Warm { yes no }
part Screw "screw" { mass 20 kg  heat limit 400 °C }
part Nut "nut" { prevailing torque 2 N·m }
part Frame "frame" { mass 120 kg }
part Cap "cap" { mass 5 kg }
tool Crow "crowfoot" { offset 6 in }
tool Gauge "gauge" { measures 0 .. 10 mm }
`;

export interface Match {
  readonly item: string;
  readonly misses: readonly object[];
  readonly unsaid: readonly string[];
  readonly settings: readonly object[];
  readonly isOut: boolean;
}

/** The procedure of that name, else the first, with the cribs of its file. */
export function open(
  text: string,
  used: Readonly<Record<string, string>> = {},
  name: string | null = null,
): { readonly run: Run; readonly stock: Stock } {
  const workspace = openWorkspace({
    texts: new Map([["main.sprag", text], ...Object.entries(used)]),
    present: new Set(),
    absent: new Set(),
    today: DAY,
  });
  const model = workspace.loaded.models.get("main.sprag");
  const procedure = model?.procedures.find((one) => name === null || one.name === name);
  const run = procedure === undefined ? null : workspace.run(procedure);
  const stock = stockOf(model, DAY);
  if (run === null || stock === null) throw new Error("nothing to follow, or no crib");
  return { run, stock };
}

/** The items for the tool of that name, whole. */
export function matches(text: string, name = "Tool", used: Readonly<Record<string, string>> = {}): readonly Match[] {
  const { run, stock } = open(text, used);
  const found = toolStocksOf(run, stock).find(({ tool }) => tool.name === name);
  return (found?.items ?? []).map(({ item, misses, unsaid, settings, isOut }) => ({
    item: item.label,
    misses: inWords(text, misses) as readonly object[],
    unsaid,
    settings: settings.map(({ fastener, adapters, stages, window, explanation }) =>
      inWords(text, {
        ...{ fastener: fastener.name, adapters: adapters.map((tool) => tool.name), stages, window, explanation },
      }),
    ) as readonly object[],
    isOut,
  }));
}

/** What the tool says, what its one item says, and the steps that use it. */
export const job = (
  tool: string,
  item: string,
  ...steps: readonly string[]
): string => `${SHOP}tool Tool "tool" { ${tool} }
crib MainShop { item "X-1" for Tool { ${item} } }
procedure Work "Work" {
${steps.map((step) => `  step ${step}\n`).join("")}}
procedure Rest { step inspect Frame with Crow + Gauge }
`;
