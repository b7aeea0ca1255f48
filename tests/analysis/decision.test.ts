// Decision diagrams against plain enumeration of all assignments.
import fc from "fast-check";
import { expect, test } from "vitest";
import { ALWAYS, createDecisions, type Decision, type Decisions, NEVER } from "#analysis/decision.ts";

const SIZES = [2, 3, 2, 4];

type Term =
  | { readonly op: "is"; readonly variable: number; readonly value: number }
  | { readonly op: "and" | "or"; readonly left: Term; readonly right: Term }
  | { readonly op: "not"; readonly of: Term };

const term: fc.Arbitrary<Term> = fc.letrec<{ term: Term }>((tie) => ({
  term: fc.oneof(
    { depthSize: "small", withCrossShrink: true },
    fc
      .nat(SIZES.length - 1)
      .chain((variable) => fc.nat((SIZES[variable] ?? 1) - 1).map((value): Term => ({ op: "is", variable, value }))),
    fc.record({ op: fc.constantFrom("and" as const, "or" as const), left: tie("term"), right: tie("term") }),
    fc.record({ op: fc.constant("not" as const), of: tie("term") }),
  ),
})).term;

function holds(of: Term, so: readonly number[]): boolean {
  if (of.op === "is") return so[of.variable] === of.value;
  if (of.op === "not") return !holds(of.of, so);
  return of.op === "and" ? holds(of.left, so) && holds(of.right, so) : holds(of.left, so) || holds(of.right, so);
}

function world(): Decisions {
  const decisions = createDecisions();
  SIZES.forEach((size, at) => {
    const values = Array.from({ length: size }, (_, value) => `v${value}`);
    decisions.variable(`o${at}`, `O${at}`, values);
  });
  return decisions;
}

function build(decisions: Decisions, of: Term): Decision {
  if (of.op === "is") return decisions.where(of.variable, (_, at) => at === of.value);
  if (of.op === "not") return decisions.not(build(decisions, of.of));
  return decisions[of.op](build(decisions, of.left), build(decisions, of.right));
}

function* everything(): Generator<number[]> {
  for (let at = 0; at < SIZES.reduce((a, b) => a * b, 1); at++) {
    let rest = at;
    yield SIZES.map((size) => {
      const value = rest % size;
      rest = Math.floor(rest / size);
      return value;
    });
  }
}

test("the assignments are disjoint and their union is exactly where it holds", () => {
  fc.assert(
    fc.property(term, (of) => {
      const decisions = world();
      const cubes = decisions.assignments(build(decisions, of)).listed;
      for (const so of everything()) {
        const covering = cubes.filter((cube) =>
          so.every((value, at) => [undefined, `v${value}`].includes(cube[`O${at}`])),
        );
        expect(covering.length).toBe(holds(of, so) ? 1 : 0);
      }
    }),
    { numRuns: 150 },
  );
});

test("equal sets are one number", () => {
  fc.assert(
    fc.property(term, term, (one, other) => {
      const decisions = world();
      const same = [...everything()].every((so) => holds(one, so) === holds(other, so));
      expect(build(decisions, one) === build(decisions, other)).toBe(same);
    }),
    { numRuns: 200 },
  );
});

test("forgetting a variable leaves what some value of it allows", () => {
  fc.assert(
    fc.property(term, fc.nat(SIZES.length - 1), (of, variable) => {
      const decisions = world();
      const forgotten = decisions.forget(build(decisions, of), variable);
      expect(decisions.dependsOn(forgotten, variable)).toBe(false);
      const cubes = decisions.assignments(forgotten).listed;
      for (const so of everything()) {
        const some = Array.from({ length: SIZES[variable] ?? 0 }, (_, value) =>
          holds(of, so.with(variable, value)),
        ).some(Boolean);
        expect(cubes.some((cube) => so.every((value, at) => [undefined, `v${value}`].includes(cube[`O${at}`])))).toBe(
          some,
        );
      }
    }),
    { numRuns: 100 },
  );
});

test("hidden variables do not show", () => {
  const decisions = createDecisions();
  const option = decisions.variable("o", "Extent", ["Full", "Reseal"]);
  const hidden = decisions.variable("r", "Gap", ["low", "high"], true);
  const both = decisions.and(
    decisions.where(option, (value) => value === "Full"),
    decisions.where(hidden, (value) => value === "low"),
  );
  expect(decisions.assignments(both).listed).toEqual([{ Extent: "Full" }]);
  expect(decisions.assignments(NEVER).listed).toEqual([]);
  expect(decisions.assignments(ALWAYS).listed).toEqual([{}]);
});

test("forty options that each stand alone stay small", () => {
  const decisions = createDecisions();
  let some: Decision = NEVER;
  for (let at = 0; at < 40; at++) {
    const level = decisions.variable(`o${at}`, `O${at}`, ["yes", "no"]);
    some = decisions.or(
      some,
      decisions.where(level, (value) => value === "yes"),
    );
  }
  expect(decisions.assignments(some).listed).toHaveLength(40);
  expect(decisions.assignments(decisions.not(some)).listed).toHaveLength(1);
});
