// Options as path conditions: exactly the assignments for which a finding holds, whatever their number.
import { describe, expect, test } from "vitest";
import { found, onPaper } from "./run-on-paper.ts";

const PARTS = `part Cover "cover"
part Plug "plug"
option Extent "extent of work" { Full Part None }
option Kept "the seals are kept" { yes no }
`;

function work(steps: string): readonly string[] {
  return found(`${PARTS}procedure Work "Work" {\n${steps}\n}`);
}

describe("exactly the assignments", () => {
  test("of one choice of three, and of the two others", () => {
    expect(work("when Extent is Part { step remove Cover }")).toEqual([
      "order.not-installed: remove Cover | Extent Part",
    ]);
    expect(work("when Extent is Part { step install Cover }\nstep remove Cover")).toEqual([
      "order.not-installed: remove Cover | Extent Full or Extent None",
    ]);
    expect(work("when Extent is not Part { step remove Cover }")).toEqual([
      "order.not-installed: remove Cover | Extent Full or Extent None",
    ]);
  });
  test("of two options at once", () => {
    expect(work("when Extent is Full { step install Cover }\nwhen Kept is yes { step remove Cover }")).toEqual([
      "order.not-installed: remove Cover | Extent Part, Kept yes or Extent None, Kept yes",
    ]);
    expect(work("when Extent is Full or Kept is yes { step install Cover }\nstep remove Cover")).toEqual([
      "order.not-installed: remove Cover | Extent Part, Kept no or Extent None, Kept no",
    ]);
    expect(
      work("when Extent is Full and Kept is yes { step install Cover }\nwhen Extent is Full { step remove Cover }"),
    ).toEqual(["order.not-installed: remove Cover | Extent Full, Kept no"]);
  });
  test("for all of them nothing is said", () => {
    expect(
      work("when Kept is yes { step install Cover } otherwise { step install Cover }\nstep install Cover"),
    ).toEqual(["order.already-installed: install Cover"]);
    expect(work("when Kept is yes { step install Plug }\nstep remove Cover")).toEqual([
      "order.not-installed: remove Cover",
    ]);
  });
  test("none that no path allows", () => {
    expect(work("when Extent is Full { step install Cover }\nwhen Extent is Full { step remove Cover }")).toEqual([]);
    expect(
      work(
        "when Extent is Full { step install Cover }\nwhen not (Extent is Part or Extent is None) { step remove Cover }",
      ),
    ).toEqual([]);
  });
  test("a finding in two places of one line is one, for the paths of both", () => {
    expect(work("repeat n from 1 to 2 { when Kept is yes { step remove Cover } }")).toEqual([
      "order.not-installed: remove Cover (n = 1, and 1 more) | Kept yes",
    ]);
  });
});

describe("when … otherwise when … otherwise", () => {
  const cases = (then: string): string =>
    `when Extent is Full { step install Cover } otherwise when Kept is yes { step install Plug } otherwise { ${then} }`;
  test("each case begins where the others end", () => {
    expect(work(cases("step remove Plug"))).toEqual([
      "order.not-installed: remove Plug | Extent Part, Kept no or Extent None, Kept no",
    ]);
    expect(work(`${cases('step "Go on."')}\nstep remove Plug`)).toEqual([
      "order.not-installed: remove Plug | Extent Full or Extent Part, Kept no or Extent None, Kept no",
    ]);
  });
  test("a case that the earlier ones leave no room for", () => {
    expect(
      work(
        'when Extent is Full { step "A." } otherwise when Extent is Full { step "B." step "C." } otherwise { step "D." }',
      ),
    ).toEqual(["flow.impossible-condition: Extent is Full", 'flow.unreachable: step "B."']);
    expect(
      work('when Kept is yes { step "A." } otherwise when Kept is no { step "B." } otherwise { step "C." }'),
    ).toEqual(["flow.impossible-condition: otherwise", 'flow.unreachable: step "C."']);
    expect(
      work('when Extent is Full { step "A." } otherwise when Extent is Part { step "B." } otherwise { step "C." }'),
    ).toEqual([]);
  });
  test("inside a branch, what the branch has ruled out", () => {
    expect(work('when Extent is Full { when Extent is Part { step "A." step "B." } otherwise { step "C." } }')).toEqual(
      ["flow.impossible-condition: Extent is Part", 'flow.unreachable: step "A."'],
    );
    expect(work('when Extent is not Full { when Extent is Part { step "A." } otherwise { step "C." } }')).toEqual([]);
  });
  test("a branch in an impossible branch is not told again", () => {
    expect(
      work('when Extent is Full and Extent is Part { when Kept is yes { step "A." } otherwise { step "B." } }'),
    ).toEqual(["flow.impossible-condition: Extent is Full and Extent is Part", 'flow.unreachable: step "A."']);
  });
});

describe("choices fixed from outside", () => {
  const text = `${PARTS}procedure Work "Work" {
  when Extent is Full { step remove Cover } otherwise { step remove Plug }
}`;
  test("only what holds for them, and without a word of them", () => {
    expect(found(text, { chosen: { Extent: "Full" } })).toEqual(["order.not-installed: remove Cover"]);
    expect(found(text, { chosen: { Extent: "None" } })).toEqual(["order.not-installed: remove Plug"]);
    expect(found(text, { chosen: { Kept: "yes" } })).toHaveLength(2);
  });
  test("a branch that they leave out is not impossible for that", () => {
    expect(found(text.replaceAll("remove", "inspect"), { chosen: { Extent: "Full" } })).toEqual([]);
  });
});

describe("many options", () => {
  /** Each of `count` options puts in a part of its own, which the end asks for where it was chosen. */
  function procedure(count: number, isOptional: boolean): string {
    const numbers = Array.from({ length: count }, (_, at) => at + 1);
    const optional = (at: number, steps: string): string => (isOptional ? `when Want${at} is yes { ${steps} }` : steps);
    return [
      ...numbers.flatMap((at) => [
        `part Part${at} "part ${at}"`,
        ...(isOptional ? [`option Want${at} "want ${at}" { yes no }`] : []),
      ]),
      'procedure Work "Work" {',
      ...numbers.map((at) => optional(at, `step install Part${at}`)),
      ...numbers.map((at) =>
        optional(at, `step inspect Part${at}\nstep Use${at} { needs Part${at} is installed\n do "Use it." }`),
      ),
      ...numbers.map((at) => optional(at, `step remove Part${at}`)),
      "}",
    ].join("\n");
  }

  test("forty that each toggle a part needed later cost as much as forty times one", () => {
    const [one, forty] = [onPaper(procedure(1, true)), onPaper(procedure(40, true))];
    expect(forty.facts.filter(isInTheWay)).toEqual([]);
    expect(forty.asked).toBeLessThan(2 * 40 * one.asked);
  });
  test("forty take at most three times as long as none", () => {
    const time = (text: string): number => {
      const start = performance.now();
      for (let round = 0; round < 3; round++) expect(onPaper(text).facts.filter(isInTheWay)).toEqual([]);
      return performance.now() - start;
    };
    time(procedure(40, false));
    // Small times on a busy machine: a floor that an exponential growth could never keep.
    expect(time(procedure(40, true))).toBeLessThan(3 * time(procedure(40, false)) + 500);
  });
  test("forty, and one finding for exactly one of them", () => {
    const text = procedure(40, true).replace("when Want17 is yes { step install Part17 }", "");
    expect(found(text)).toEqual(["order.unmet-need: Part17 is installed | Want17 yes"]);
  });
});

describe("long procedures", () => {
  function procedure(pairs: number): string {
    const numbers = Array.from({ length: pairs }, (_, at) => at);
    const steps = numbers.map((at) =>
      at % 10 === 0
        ? `step Look${at} { check "It fits" if it fails { stop "Call." } }\nstep install Plug\nstep remove Plug`
        : "step install Cover\nstep remove Cover",
    );
    return `${PARTS}procedure Work "Work" {\n${steps.join("\n")}\n}`;
  }
  test("four times the steps are four times the work", () => {
    const [short, long] = [onPaper(procedure(500)), onPaper(procedure(2000))];
    expect([...short.facts, ...long.facts].filter(isInTheWay)).toEqual([]);
    expect(long.asked).toBeGreaterThan(0);
    expect(long.asked / short.asked).toBeLessThan(4.4);
    const values = (run: typeof short): number =>
      run.runs.reduce((so, { before }) => so + before.filter((state) => state !== undefined).length, 0);
    expect(values(long) / values(short)).toBeLessThan(4.4);
  });
});

/** Anything but a part that is left out at the end, of which these procedures say nothing. */
function isInTheWay({ code }: { readonly code: string }): boolean {
  return code !== "order.not-final";
}
