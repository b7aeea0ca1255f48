// Loops without a way out: for each choice what plain reachability says, from a walk of its own over what was made up.
import fc from "fast-check";
import { expect, test } from "vitest";
import { onPaper } from "./run-on-paper.ts";

const SIZES = [2, 3, 2];

/** A step, with what a failed check in it does; what stands behind it is always done. */
interface MadeStep {
  readonly name: string;
  readonly fails: Exit | null;
  readonly behind: Exit | null;
  /** The branch it stands in. */
  readonly only: { readonly option: number; readonly choice: number } | null;
}
/** `to`: null for a stop. */
interface Exit {
  readonly to: string | null;
  readonly id: string;
}

const numbers = fc.noBias(fc.array(fc.nat(9999), { minLength: 120, maxLength: 120 }));

/** A procedure from numbers; jumps lead back to steps outside branches, as only those may. */
function made(list: readonly number[]): readonly MadeStep[] {
  let at = 0;
  const next = (below: number): number => (list[at++ % list.length] ?? 0) % below;
  const names: string[] = [];
  return Array.from({ length: 3 + next(6) }, (_, number): MadeStep => {
    const name = `S${number}`;
    const option = next(SIZES.length);
    const only = number > 0 && next(2) === 0 ? { option, choice: next(SIZES[option] ?? 1) } : null;
    if (only === null) names.push(name);
    const exit = (id: string): Exit => ({ id, to: next(5) === 0 ? null : (names[next(names.length)] ?? null) });
    const fails = next(3) === 0 ? exit(`fails ${name}`) : null;
    return { name, fails, behind: next(only === null ? 8 : 3) === 0 ? exit(`behind ${name}`) : null, only };
  });
}

function textOf(steps: readonly MadeStep[]): { text: string; lineOf: ReadonlyMap<string, number> } {
  const lines = SIZES.map(
    (size, at) => `option O${at} "o" { ${[...Array(size).keys()].map((c) => `C${c}`).join(" ")} }`,
  );
  lines.push('procedure Work "Work" {');
  const lineOf = new Map<string, number>();
  const leave = ({ id, to }: Exit): void => {
    lineOf.set(id, lines.length);
    lines.push(to === null ? 'stop "Ask."' : `return to ${to}`);
  };
  for (const { name, fails, behind, only } of steps) {
    if (only !== null) lines.push(`when O${only.option} is C${only.choice} {`);
    lines.push(`step ${name} {`, 'do "It."');
    if (fails !== null) {
      lines.push('check "It is so" if it fails {');
      leave(fails);
      lines.push("}");
    }
    lines.push("}");
    if (behind !== null) leave(behind);
    if (only !== null) lines.push("}");
  }
  return { text: [...lines, "}"].join("\n"), lineOf };
}

/** The jumps that nothing leads out of, with one choice for each option. */
function endless(steps: readonly MadeStep[], so: readonly number[]): ReadonlySet<string> {
  const flat = steps.filter(({ only }) => only === null || so[only.option] === only.choice);
  const place = (name: string): number => flat.findIndex((one) => one.name === name);
  // A place is a number: 2n where step n begins, 2n + 1 behind it; below 0 where the path ends.
  const target = ({ to }: Exit): number => (to === null ? -1 : 2 * place(to));
  const onward = (at: number): readonly number[] => {
    const one = flat[Math.floor(at / 2)];
    if (at < 0 || one === undefined) return [];
    if (at % 2 === 0) return [at + 1, ...(one.fails === null ? [] : [target(one.fails)])];
    if (one.behind !== null) return [target(one.behind)];
    return [at + 1 < 2 * flat.length ? at + 1 : -1];
  };
  const reached = (from: number): ReadonlySet<number> => {
    const seen = new Set([from]);
    for (const at of seen) for (const next of onward(at)) seen.add(next);
    return seen;
  };
  const jumps = flat
    .flatMap(({ fails, behind }, at) => [
      { exit: fails, from: 2 * at },
      { exit: behind, from: 2 * at + 1 },
    ])
    .filter(({ exit }) => exit !== null && exit.to !== null);
  const found = jumps.filter(({ exit, from }) => {
    if (exit === null || !reached(0).has(from)) return false;
    const after = reached(target(exit));
    const isClosed = !after.has(-1) && [...after].every((at) => reached(at).has(from));
    // The last of the loop.
    return isClosed && !jumps.some((other) => other.from > from && after.has(other.from));
  });
  return new Set(found.map(({ exit }) => exit?.id ?? ""));
}

test("for each choice what plain reachability says", () => {
  let found = 0;
  let compared = 0;
  let divided = 0;
  fc.assert(
    fc.property(numbers, (list) => {
      const steps = made(list);
      const { text, lineOf } = textOf(steps);
      const facts = onPaper(text).facts.filter(({ code }) => code === "flow.endless");
      const choices = SIZES.reduce<readonly (readonly number[])[]>(
        (so, size) => so.flatMap((each) => Array.from({ length: size }, (_, choice) => [...each, choice])),
        [[]],
      );
      const counts = choices.map((so) => {
        const ours = facts.filter(({ fact: { options = [{}] } }) =>
          options.some((cube) => so.every((choice, at) => [undefined, `C${choice}`].includes(cube[`O${at}`]))),
        );
        const wanted = [...endless(steps, so)].map((id) => lineOf.get(id) ?? -1).sort((a, b) => a - b);
        expect({ text, so, ours: ours.map(({ line }) => line).sort((a, b) => a - b) }).toEqual({
          text,
          so,
          ours: wanted,
        });
        return wanted.length;
      });
      compared += counts.length;
      found += counts.reduce((sum, one) => sum + one, 0);
      if (new Set(counts).size > 1) divided++;
    }),
    { numRuns: 500 },
  );
  console.log(`endless: ${found} jumps for ${compared} choices; ${divided} procedures where it depends on options`);
  expect(found).toBeGreaterThan(300);
  expect(divided).toBeGreaterThan(100);
});
