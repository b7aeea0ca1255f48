// What a step says of its own time. Knows no clocks and no state.
import type { SimLine } from "./shop.ts";

/** In minutes; `takes`: null where it says none, `waits`: all that it waits where no check fails. */
export interface StepTime {
  readonly takes: number | null;
  readonly waits: number;
  readonly isSaid: boolean;
}

export function timeOf(lines: readonly SimLine[]): StepTime {
  const takes = lines.find((line) => line.kind === "takes")?.high ?? null;
  const acts = lines.flatMap((line) => (line.kind === "act" ? [line.act] : []));
  const waits = acts.reduce((so, act) => so + (act.verb === "wait" ? act.minutes : 0), 0);
  const all = [...acts, ...lines.flatMap((line) => (line.kind === "check" ? line.fails : []))].map(({ verb }) => verb);
  // What is performed says its own times.
  const says = all.includes("wait") || all.includes("perform");
  return { takes, waits, isSaid: takes !== null || (says && !all.includes("wait until")) };
}

/** It takes what it says, or what it waits where that is longer. */
export function mostOf({ takes, waits }: Pick<StepTime, "takes" | "waits">): number {
  return Math.max(takes ?? 0, waits);
}
