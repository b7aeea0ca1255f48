// How long a step takes at most, as far as it says so: its `takes`, or its waits where they come to more. Knows no ways.
import type { Value } from "#model/declarations.ts";
import type { ExpandedLine, ExpandedStep } from "#model/expanded.ts";
import { magnitudeNumber } from "./readings.ts";

export interface StepTime {
  /** Upper end of `takes`, in seconds; null where it is not said. */
  readonly takes: number | null;
  /** Whether it waits for a time that is said. */
  readonly waits: boolean;
  /** Without `takes`: it waits for no time that is said, or until something is so. It may take any time. */
  readonly isOpen: boolean;
}

export function stepTime({ step, lines }: ExpandedStep): StepTime {
  const takes = upperSeconds(step.takes);
  const { plain, until, unread } = waitsIn(lines);
  // Where a line could not be read, it may be the one that says the time.
  return { takes, waits: plain, isOpen: !unread && takes === null && (until || !plain) };
}

/** The upper end in seconds; null where there is none. */
export function upperSeconds(value: Value | null): number | null {
  if (value === null) return null;
  const { form, nominal, high } = value.quantity;
  return magnitudeNumber(form === "nominal" ? nominal : high);
}

function waitsIn(lines: readonly ExpandedLine[]): { plain: boolean; until: boolean; unread: boolean } {
  const all = { plain: false, until: false, unread: false };
  for (const line of lines) {
    for (const inner of insideOf(line)) {
      const { plain, until, unread } = waitsIn(inner);
      all.plain ||= plain;
      all.until ||= until;
      all.unread ||= unread;
    }
    if (line.kind === "damaged") all.unread = true;
    // What is performed says its own times.
    if (line.kind === "action" && line.action.verb === "perform") all.plain = true;
    if (line.kind !== "action" || line.action.verb !== "wait") continue;
    if (line.action.until !== null) all.until = true;
    else if (upperSeconds(line.action.time) !== null) all.plain = true;
    // A time that could not be read was told; one without an upper end says none.
    else if (line.action.time === null) all.unread = true;
  }
  return all;
}

function insideOf(line: ExpandedLine): readonly (readonly ExpandedLine[])[] {
  switch (line.kind) {
    case "check":
      return [line.fails ?? []];
    case "when":
      return [...line.arms.map((arm) => arm.items), line.otherwise ?? []];
    case "any order":
      return [line.items];
    default:
      return [];
  }
}
