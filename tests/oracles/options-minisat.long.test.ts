// Option conditions against MiniSat, by way of logic-solver: which sets of assignments are empty, and which arms of a
// procedure no choice leads into. The solver is told the text's conditions with exactly one choice for each option.
import fc from "fast-check";
import Logic, { type Operand } from "logic-solver";
import { expect, test } from "vitest";
import { createDecisions, type Decision, type Decisions, NEVER } from "#analysis/decision.ts";
import { onPaper } from "../analysis/run-on-paper.ts";

/** How many choices each option has. */
const SIZES = [2, 3, 2, 5, 4];

type Term =
  | { readonly op: "is" | "is not"; readonly option: number; readonly choice: number }
  | { readonly op: "and" | "or"; readonly terms: readonly Term[] }
  | { readonly op: "not"; readonly term: Term };

const atom: fc.Arbitrary<Term> = fc
  .record({ op: fc.constantFrom("is" as const, "is not" as const), option: fc.nat(4), choice: fc.nat(4) })
  .map(({ op, option, choice }) => ({ op, option, choice: choice % (SIZES[option] ?? 1) }));
const term = (deepest: number): fc.Arbitrary<Term> =>
  deepest === 0
    ? atom
    : fc.oneof(
        { weight: 2, arbitrary: atom },
        {
          weight: 3,
          arbitrary: fc.record({
            op: fc.constantFrom("and" as const, "and" as const, "or" as const),
            terms: fc.array(term(deepest - 1), { minLength: 2, maxLength: 3, size: "max" }),
          }),
        },
        { weight: 1, arbitrary: fc.record({ op: fc.constant("not" as const), term: term(deepest - 1) }) },
      );

function inLogic(of: Term): Operand {
  switch (of.op) {
    case "is":
      return `O${of.option}=${of.choice}`;
    case "is not":
      return Logic.not(`O${of.option}=${of.choice}`);
    case "not":
      return Logic.not(inLogic(of.term));
    default:
      return Logic[of.op](of.terms.map(inLogic));
  }
}

function solver(): (formula: Operand) => boolean {
  const minisat = new Logic.Solver();
  SIZES.forEach((size, option) => {
    minisat.require(Logic.exactlyOne(Array.from({ length: size }, (_, choice) => `O${option}=${choice}`)));
  });
  return (formula) => minisat.solveAssuming(formula) !== null;
}

function inDecisions(decisions: Decisions, of: Term): Decision {
  switch (of.op) {
    case "is":
      return decisions.where(of.option, (_, at) => at === of.choice);
    case "is not":
      return decisions.where(of.option, (_, at) => at !== of.choice);
    case "not":
      return decisions.not(inDecisions(decisions, of.term));
    default:
      return of.terms.map((one) => inDecisions(decisions, one)).reduce(decisions[of.op]);
  }
}

test("a set of assignments is empty exactly where MiniSat finds none, alone and against another", () => {
  const isSatisfiable = solver();
  let compared = 0;
  let empty = 0;
  const same = (ours: Decision, theirs: Operand): void => {
    const wanted = isSatisfiable(theirs);
    expect(ours !== NEVER).toBe(wanted);
    compared++;
    if (!wanted) empty++;
  };
  fc.assert(
    fc.property(term(4), term(3), (one, other) => {
      const decisions = createDecisions();
      SIZES.forEach((size, option) => {
        decisions.variable(
          `o${option}`,
          `O${option}`,
          Array.from({ length: size }, (_, choice) => `C${choice}`),
        );
      });
      const { and, or, not } = decisions;
      const [a, b] = [inDecisions(decisions, one), inDecisions(decisions, other)];
      const [x, y] = [inLogic(one), inLogic(other)];
      same(a, x);
      same(not(a), Logic.not(x));
      same(and(a, b), Logic.and([x, y]));
      same(and(a, not(b)), Logic.and([x, Logic.not(y)]));
      same(not(or(a, b)), Logic.not(Logic.or([x, y])));
    }),
    { numRuns: 300 },
  );
  console.log(`minisat: ${compared} sets of assignments, ${empty} of them empty`);
  expect(compared).toBeGreaterThan(1000);
  expect(empty).toBeGreaterThan(100);
});

/* ---- whole procedures ---- */

/** A `when` with its arms, each with what stands in it; a stop at the end of an arm takes its choices out of what follows. */
interface Branch {
  readonly arms: readonly { readonly condition: Term; readonly inside: readonly Branch[]; readonly stops: boolean }[];
  readonly otherwise: { readonly inside: readonly Branch[]; readonly stops: boolean } | null;
}

const branch = (deepest: number): fc.Arbitrary<Branch> => {
  const inside = deepest === 0 ? fc.constant([]) : fc.array(branch(deepest - 1), { maxLength: 2, size: "max" });
  const arm = { inside, stops: fc.nat(4).map((number) => number === 0) };
  return fc.record({
    arms: fc.array(fc.record({ condition: term(2), ...arm }), { minLength: 1, maxLength: 3, size: "max" }),
    otherwise: fc.oneof(fc.constant(null), fc.record(arm)),
  });
};

interface Writing {
  readonly lines: string[];
  readonly isSatisfiable: (formula: Operand) => boolean;
  /** Lines, from 0, of the conditions that nothing leads into. */
  readonly dead: number[];
  arms: number;
}

/** Writes the branches, asks MiniSat for each arm, and gives what leads on behind them. */
function write(writing: Writing, branches: readonly Branch[], before: Operand): Operand {
  return branches.reduce((here, { arms, otherwise }) => {
    const { lines } = writing;
    const isReached = writing.isSatisfiable(here);
    const ends: Operand[] = [];
    let left = here;
    const arm = (head: string, leads: Operand, inside: readonly Branch[], stops: boolean): void => {
      writing.arms++;
      if (isReached && !writing.isSatisfiable(leads)) writing.dead.push(lines.length);
      lines.push(head, 'step "Look."');
      const end = write(writing, inside, leads);
      if (stops) lines.push('stop "Ask."');
      else ends.push(end);
      lines.push("}");
    };
    arms.forEach(({ condition, inside, stops }, at) => {
      const own = inLogic(condition);
      arm(`${at === 0 ? "" : "otherwise "}when ${inText(condition)} {`, Logic.and([left, own]), inside, stops);
      left = Logic.and([left, Logic.not(own)]);
    });
    if (otherwise === null) ends.push(left);
    else arm("otherwise {", left, otherwise.inside, otherwise.stops);
    return ends.length === 0 ? Logic.FALSE : Logic.or(ends);
  }, before);
}

function inText(of: Term): string {
  switch (of.op) {
    case "not":
      return `not (${inText(of.term)})`;
    case "and":
    case "or":
      return `(${of.terms.map(inText).join(` ${of.op} `)})`;
    default:
      return `O${of.option} ${of.op} C${of.choice}`;
  }
}

const OPTIONS = SIZES.map(
  (size, option) =>
    `option O${option} "option ${option}" { ${Array.from({ length: size }, (_, choice) => `C${choice}`).join(" ")} }`,
);

test("flow.impossible-condition comes exactly where MiniSat says that nothing leads into the arm", () => {
  let compared = 0;
  let dead = 0;
  fc.assert(
    fc.property(fc.array(branch(2), { minLength: 1, maxLength: 3, size: "max" }), (branches) => {
      // What it has been asked stays in the solver, so each procedure gets its own.
      const isSatisfiable = solver();
      const writing: Writing = { lines: [...OPTIONS, 'procedure Work "Work" {'], isSatisfiable, dead: [], arms: 0 };
      write(writing, branches, Logic.TRUE);
      const { facts } = onPaper([...writing.lines, "}"].join("\n"));
      const ours = facts.flatMap(({ code, line }) => (code === "flow.impossible-condition" ? [line] : []));
      expect(ours.sort((a, b) => a - b)).toEqual(writing.dead);
      compared += writing.arms;
      dead += writing.dead.length;
    }),
    { numRuns: 60 },
  );
  console.log(`minisat: ${compared} arms of branches, ${dead} of them never taken`);
  expect(compared).toBeGreaterThan(1000);
  expect(dead).toBeGreaterThan(100);
});
