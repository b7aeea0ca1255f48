// The id of every place to be marked: the number of its step, its line in the step and the pass of its repeat. The same whichever
// way the checklist is laid out. Knows no format.
import type { Pass } from "#model/problem.ts";
import type { Item, Line, Procedure, Step } from "#model/procedure.ts";
import type { Span } from "#syntax/span.ts";

export interface Ids {
  /** Of a line or a performed procedure, by its place in the text. */
  readonly line: (span: Span, pass: Pass) => string;
  /** Of one arm of a `when`. */
  readonly arm: (span: Span, arm: number, pass: Pass) => string;
  /** Of the own words of a step in which nothing else is to be ticked. */
  readonly words: (step: Step, pass: Pass) => string;
  readonly record: (step: Step, at: number, pass: Pass) => string;
  readonly sign: (step: Step, at: number, pass: Pass) => string;
  readonly hold: (step: Step, pass: Pass) => string;
  /** Of the timer for what a step takes. */
  readonly takes: (step: Step, pass: Pass) => string;
}

/** @param prefix what stands before each number, where the procedure is performed inside another */
export function idsOf(procedure: Procedure, prefix: string): Ids {
  const places = placesIn(procedure);
  const inStep = (step: Step, part: string, pass: Pass): string => `${prefix}${step.number}:${part}${passText(pass)}`;
  const placed = (span: Span): string => prefix + (places.get(span.start) ?? `at-${span.start}`);
  return {
    line: (span, pass) => placed(span) + passText(pass),
    arm: (span, arm, pass) => `${placed(span)}.${arm + 1}${passText(pass)}`,
    words: (step, pass) => inStep(step, "0", pass),
    record: (step, at, pass) => inStep(step, `record-${at + 1}`, pass),
    sign: (step, at, pass) => inStep(step, `sign-${at + 1}`, pass),
    hold: (step, pass) => inStep(step, "hold", pass),
    takes: (step, pass) => inStep(step, "takes", pass),
  };
}

/** Of a round of tightening. */
export function roundId(line: string, round: number): string {
  return `${line}#${round + 1}`;
}

/** Of the timer of a line. */
export function timerId(line: string, of: "wait" | "cure"): string {
  return `${line}:${of}`;
}

/** Of what has to hold before the first step, or after the last. */
export function conditionId(where: "start" | "end", at: number): string {
  return `${where}:${at + 1}`;
}

export function optionId(option: string): string {
  return `option:${option}`;
}

function passText(pass: Pass): string {
  return pass.length === 0 ? "" : `@${pass.map(({ variable, value }) => `${variable}=${value}`).join(",")}`;
}

const known = new WeakMap<Procedure, ReadonlyMap<number, string>>();

/** Where each line stands, by the start of its text; looked for once. */
function placesIn(procedure: Procedure): ReadonlyMap<number, string> {
  const made = known.get(procedure) ?? placesOf(procedure.items);
  known.set(procedure, made);
  return made;
}

function placesOf(items: readonly Item[]): ReadonlyMap<number, string> {
  const places = new Map<number, string>();
  let branches = 0;
  const enter = (inner: readonly (Item | Line)[], number: string | null, lines: { so: number }): void => {
    for (const item of inner) {
      switch (item.kind) {
        case "task":
          enter(item.items, null, lines);
          break;
        case "step":
          enter(item.lines, item.number, { so: 0 });
          break;
        case "perform":
          places.set(item.action.span.start, `${item.number}:1`);
          break;
        case "when":
          places.set(item.span.start, number === null ? `when-${++branches}` : `${number}:${++lines.so}`);
          for (const arm of item.arms) enter(arm.items, number, lines);
          enter(item.otherwise ?? [], number, lines);
          break;
        case "repeat":
        case "any order":
          enter(item.items, number, lines);
          break;
        case "action":
        case "check":
          places.set(item.span.start, `${number ?? ""}:${++lines.so}`);
          if (item.kind === "check") enter(item.fails ?? [], number, lines);
          break;
      }
    }
  };
  enter(items, null, { so: 0 });
  return places;
}
