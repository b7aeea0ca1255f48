// The crib beside a followed procedure: tools that nothing in it meets, and such as are all out of calibration on the day; and for an
// output all matches. Knows no severity and no wording.
import type { Crib, CribItem, Tool } from "#model/declarations.ts";
import type { FileModel } from "#model/procedure.ts";
import type { Span } from "#syntax/span.ts";
import type { AnalysisFact, Found } from "../fact.ts";
import type { Run } from "../follow.ts";
import type { Raw } from "../raw-fact.ts";
import { together } from "../report.ts";
import { type ItemMatch, itemsFor, type Miss, matchItem, missOf } from "./match.ts";
import { type Naming, type Requirement, requirementsOf } from "./uses.ts";

/** A shop's stock, and the day of the work. */
export interface Stock {
  readonly cribs: readonly Crib[];
  /** ISO date. */
  readonly day: string;
}

export type CribFact =
  | (Found & {
      readonly kind: "no crib item";
      readonly tool: string;
      readonly crib: string;
      /** Each item that is there for it, and by what it misses. */
      readonly items: readonly { readonly label: string; readonly span: Span; readonly misses: readonly Miss[] }[];
    })
  | (Found & {
      readonly kind: "calibration";
      readonly tool: string;
      readonly crib: string;
      readonly day: string;
      readonly items: readonly { readonly label: string; readonly span: Span; readonly until: string }[];
    });

/** A tool with the items that are there for it. */
export interface ToolStock {
  readonly tool: Tool;
  readonly items: readonly (ItemMatch & { readonly isOut: boolean })[];
}

/** The cribs of a file; null where it has none. */
export function stockOf(model: FileModel | undefined, day: string): Stock | null {
  const cribs = (model?.declarations ?? []).filter((declared) => declared.kind === "crib");
  return cribs.length === 0 ? null : { cribs, day };
}

/** What the crib lacks for the procedure; what it performs is looked at by itself. */
export function cribFactsOf(run: Run, stock: Stock): readonly AnalysisFact[] {
  // What a line says that could not be read may be the very item.
  if (stock.cribs.some(({ damaged, items }) => damaged || items.some(({ tool }) => tool === null))) return [];
  const raws = requirementsOf(run).flatMap((requirement) => rawOf(requirement, stock) ?? []);
  return together(run, raws);
}

/** Every tool of the procedure, and of those it performs, with the items that are there for it. */
export function toolStocksOf(run: Run, stock: Stock): readonly ToolStock[] {
  const byTool = new Map<Tool, readonly Naming[]>();
  const runs = new Set([run]);
  for (const one of runs) {
    for (const { tool, namings } of requirementsOf(one)) byTool.set(tool, [...(byTool.get(tool) ?? []), ...namings]);
    for (const node of one.graph.nodes) {
      const callee = one.calleeAt(node);
      if (callee !== null) runs.add(callee.run);
    }
  }
  return [...byTool].map(([tool, namings]) => ({
    tool,
    items: itemsFor(tool, itemsIn(stock)).map((item) => ({
      ...matchItem(item, { tool, namings }),
      isOut: isOutOfDate(item, stock.day),
    })),
  }));
}

/** Good for the whole of the last day. */
function isOutOfDate({ calibratedUntil }: CribItem, day: string): boolean {
  return calibratedUntil !== null && calibratedUntil < day;
}

function itemsIn({ cribs }: Stock): readonly CribItem[] {
  return cribs.flatMap(({ items }) => items);
}

function rawOf(requirement: Requirement, stock: Stock): Raw | null {
  const { tool, namings } = requirement;
  const [first] = namings;
  if (first === undefined) return null;
  const matches = itemsFor(tool, itemsIn(stock)).map((item) => matchItem(item, requirement));
  const crib = stock.cribs.map(({ name }) => name).join(", ");
  const meeting = matches.filter(({ misses }) => misses.length === 0);
  if (meeting.length === 0) {
    const { span, where, node } = namings.find((naming) => isMissedByAll(naming, matches)) ?? first;
    const items = matches.map(({ item, misses }) => ({ label: item.label, span: item.span, misses }));
    return {
      fact: { kind: "no crib item", tool: tool.name, crib, items, span },
      where,
      pass: [],
      subject: tool.name,
      node,
    };
  }
  if (!meeting.every(({ item }) => isOutOfDate(item, stock.day))) return null;
  const items = meeting.map(({ item }) => ({ label: item.label, span: item.span, until: item.calibratedUntil ?? "" }));
  const { span, where, node } = first;
  const fact = { kind: "calibration", tool: tool.name, crib, day: stock.day, items, span } as const;
  return { fact, where, pass: [], subject: tool.name, node };
}

/** The place to be told of: the one that nothing does, where there is one. */
function isMissedByAll({ uses }: Naming, matches: readonly ItemMatch[]): boolean {
  return (
    matches.length > 0 &&
    matches.every(({ item }) =>
      uses.some((use) => {
        const miss = missOf(item.capability, use);
        return miss !== null && typeof miss !== "string";
      }),
    )
  );
}
