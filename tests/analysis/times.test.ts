// `within`: exact for each choice against a plain walk of all its paths, and cheap with many steps, options and limits.

import fc from "fast-check";
import { expect, test } from "vitest";
import { tooLateFacts } from "#analysis/times.ts";
import { isThorough } from "#harness/thorough.ts";
import { onPaper } from "./run-on-paper.ts";

const SIZES = [2, 3, 2];
const RUNS = isThorough ? 2_000 : 200;

/** Numbers for a step: what it takes, what it waits for, where a failed check leads back to, what its limit is and from where. */
interface MadeStep {
  readonly kind: "step";
  readonly name: string;
  readonly takes: number | null;
  readonly waits: readonly number[];
  readonly until: boolean;
  readonly back: string | null;
  readonly within: { readonly limit: number; readonly after: string } | null;
}
interface MadeWhen {
  readonly kind: "when";
  readonly option: number;
  readonly choice: number;
  readonly items: readonly MadeStep[];
  readonly otherwise: readonly MadeStep[];
}
type Made = MadeStep | MadeWhen;

const numbers = fc.noBias(fc.array(fc.nat(9999), { minLength: 160, maxLength: 160 }));

/** A procedure from numbers; jumps lead back to steps outside branches, as only those may. */
function made(list: readonly number[]): readonly Made[] {
  let at = 0;
  const next = (below: number): number => (list[at++ % list.length] ?? 0) % below;
  const names: string[] = [];
  const all: string[] = [];
  const step = (isOutside: boolean): MadeStep => {
    const name = `S${all.length}`;
    all.push(name);
    if (isOutside) names.push(name);
    return {
      kind: "step",
      name,
      takes: next(8) === 0 ? null : next(3) * 20,
      waits: next(4) === 0 ? [next(50), next(50)] : [],
      until: next(16) === 0,
      back: next(6) === 0 ? (names[next(names.length)] ?? null) : null,
      within: all.length > 1 && next(2) === 0 ? { limit: 1 + next(150), after: all[next(all.length)] ?? name } : null,
    };
  };
  return Array.from({ length: 3 + next(4) }, (): Made => {
    if (names.length === 0 || next(3) > 0) return step(true);
    const option = next(SIZES.length);
    const choice = next(SIZES[option] ?? 1);
    const items = Array.from({ length: 1 + next(2) }, () => step(false));
    return { kind: "when", option, choice, items, otherwise: Array.from({ length: next(2) }, () => step(false)) };
  });
}

function textOf(items: readonly Made[]): { text: string; lineOf: ReadonlyMap<string, number> } {
  const lines = SIZES.map(
    (size, at) => `option O${at} "o" { ${[...Array(size).keys()].map((c) => `C${c}`).join(" ")} }`,
  );
  lines.push('part Pot "pot"', 'procedure Work "Work" {');
  const lineOf = new Map<string, number>();
  const write = (item: Made): void => {
    if (item.kind === "when") {
      lines.push(`when O${item.option} is C${item.choice} {`);
      item.items.forEach(write);
      lines.push("} otherwise {");
      item.otherwise.forEach(write);
      lines.push("}");
      return;
    }
    const { name, takes, waits, until, back, within } = item;
    lines.push(`step ${name} {`, ...waits.map((time) => `wait ${time} s`));
    if (until) lines.push("wait until Pot is at most 30 °C");
    if (takes !== null) lines.push(`takes ${takes} s`);
    lineOf.set(name, lines.length);
    if (within !== null) lines.push(`within ${within.limit} s after ${within.after}`);
    if (back !== null) lines.push(`check "It is so" if it fails { return to ${back} }`);
    lines.push("}");
  };
  items.forEach(write);
  return { text: [...lines, "}"].join("\n"), lineOf };
}

type Verdict = "late" | "not known" | "kept";

/** With one choice for each option: all paths from behind the one step to the end of the other, one after the other. */
function verdict(items: readonly Made[], so: readonly number[], step: MadeStep): Verdict {
  const { within } = step;
  const flat = items.flatMap((item) =>
    item.kind === "step" ? [item] : so[item.option] === item.choice ? item.items : item.otherwise,
  );
  const place = (name: string): number => flat.findIndex((one) => one.name === name);
  const [from, to] = [place(within?.after ?? ""), place(step.name)];
  if (within === null || from < 0 || to < 0) return "kept";
  const timeOf = ({ takes, waits }: MadeStep): number =>
    Math.max(
      takes ?? 0,
      waits.reduce((sum, one) => sum + one, 0),
    );
  const isOpen = ({ takes, waits, until }: MadeStep): boolean => takes === null && (until || waits.length === 0);
  let worst: Verdict = "kept";
  const atLeast = (one: Verdict): void => {
    if (one === "late" || worst === "kept") worst = one;
  };
  /** Whether the end of the step in question is still ahead, the time running on. */
  const leads = (at: number, seen = new Set<number>()): boolean => {
    if (at >= flat.length || seen.has(at)) return false;
    seen.add(at);
    return at === to || onward(at).some((next) => leads(next, seen));
  };
  const after = (at: number): readonly number[] => {
    const { back } = flat[at] ?? step;
    return [at + 1, ...(back === null ? [] : [place(back)])];
  };
  /** What comes after a step; where the one ends that the time counts from, it counts anew. */
  const onward = (at: number): readonly number[] => (at === from ? [] : after(at));
  const walk = (at: number, before: readonly number[]): void => {
    const one = flat[at];
    if (one === undefined || !leads(at)) return;
    if (before.includes(at)) {
      const loop = before.slice(before.indexOf(at)).map((each) => flat[each] ?? one);
      atLeast(loop.some((each) => timeOf(each) > 0) ? "late" : loop.some(isOpen) ? "not known" : "kept");
      return;
    }
    const way = [...before, at];
    if (at === to) {
      const steps = way.map((each) => flat[each] ?? one);
      if (steps.reduce((sum, each) => sum + timeOf(each), 0) > within.limit) atLeast("late");
      else if (steps.some(isOpen)) atLeast("not known");
    }
    for (const next of onward(at)) walk(next, way);
  };
  for (const next of after(from)) walk(next, []);
  return worst;
}

function everyChoice(): readonly (readonly number[])[] {
  return SIZES.reduce<readonly (readonly number[])[]>(
    (so, size) => so.flatMap((each) => Array.from({ length: size }, (_, choice) => [...each, choice])),
    [[]],
  );
}

test("for each choice what a plain walk of all paths says", { timeout: 120_000 }, () => {
  const count: Record<Verdict, number> = { late: 0, "not known": 0, kept: 0 };
  let divided = 0;
  fc.assert(
    fc.property(numbers, (list) => {
      const items = made(list);
      const { text, lineOf } = textOf(items);
      const facts = onPaper(text).facts.flatMap(({ line, fact }) => (fact.kind === "too late" ? [{ line, fact }] : []));
      const steps = items.flatMap((item) => (item.kind === "step" ? [item] : [...item.items, ...item.otherwise]));
      for (const step of steps.filter(({ within }) => within !== null)) {
        const told = facts.filter(({ line }) => line === lineOf.get(step.name));
        const seen = new Set<Verdict>();
        for (const so of everyChoice()) {
          const holding = told.filter(({ fact: { options = [{}] } }) =>
            options.some((cube) => so.every((choice, at) => [undefined, `C${choice}`].includes(cube[`O${at}`]))),
          );
          const ours = holding.map(({ fact }): Verdict => (fact.certain ? "late" : "not known"));
          const wanted = verdict(items, so, step);
          expect({ text, so, step: step.name, ours }).toEqual({
            text,
            so,
            step: step.name,
            ours: wanted === "kept" ? [] : [wanted],
          });
          count[wanted]++;
          seen.add(wanted);
        }
        if (seen.size > 1) divided++;
      }
    }),
    { numRuns: RUNS },
  );
  console.log(
    `times: ${count.late} too late, ${count["not known"]} not known, ${count.kept} kept; ${divided} that depend on options`,
  );
  expect(Math.min(count.late, count["not known"], count.kept)).toBeGreaterThan(0.75 * RUNS);
  expect(divided).toBeGreaterThan(RUNS / 8);
});

const options = (count: number): string =>
  Array.from({ length: count }, (_, at) => `option O${at} "option ${at}" { yes no }`).join("\n");

/** The milliseconds that all limits of the one procedure take, once it has been followed. */
function timed(name: string, text: string): number {
  const [run] = onPaper(text).runs;
  const began = performance.now();
  if (run !== undefined) tooLateFacts(run);
  const took = performance.now() - began;
  console.log(`times: ${name}: ${Math.round(took)} ms`);
  return took;
}

test("a thousand steps, forty options and twenty limits that all of them lie within", () => {
  for (const limit of ["1 h", "61.6 h", "1000 h"]) {
    const steps = Array.from({ length: 1000 }, (_, at) => {
      const within = at > 900 && at % 5 === 0 ? `within ${limit} after S${at % 100}` : "";
      const step = `step S${at} { takes ${(at % 7) + 1} min ${within} }`;
      return at % 25 === 7 ? `when O${(at - 7) / 25} is yes { ${step} }` : step;
    });
    const text = `${options(40)}\nprocedure Work "Work" {\n${steps.join("\n")}\n}`;
    expect(timed(`1000 steps, 40 options, 20 limits of ${limit}`, text)).toBeLessThan(8000);
  }
});

test("forty options, each with a time of its own, and a limit that few choices break", () => {
  const steps = Array.from({ length: 40 }, (_, at) => `when O${at} is yes { step { takes ${at + 1} min } }`);
  const text = `${options(40)}\nprocedure Work "Work" {\nstep S "S."\n${steps.join("\n")}\nstep { takes 1 s  within 812 min after S }\n}`;
  const { facts } = onPaper(text);
  expect(timed("40 options of 1 to 40 min", text)).toBeLessThan(8000);
  const fact = facts.find((one) => one.code === "order.too-late")?.fact;
  // All 820 minutes but at most 7: the subsets of 1, 2, 3, … that come to no more than 7, of which there are 19.
  const left = (fact?.options ?? []).map((cube) => Object.values(cube).filter((choice) => choice === "no").length);
  expect(fact?.options).toHaveLength(19);
  expect(Math.max(...left)).toBe(3);
});
