// What is said of a need that is not met and of a declared order that is broken: whole facts, with every place in the words of the text.
import { describe, expect, test } from "vitest";
import { wholeFacts } from "../actions/whole-facts.ts";

const HEAD = `part Hub "hub"
part Cover "cover"
fact Signed "the sheet is signed"
fact Seen "it was seen"
option Extent "extent of work" { Full Part }
procedure Inner "Inner" { begin with Hub is installed  step lubricate Cover }
`;

function told(items: string, kind: "unmet need" | "declared"): readonly object[] {
  return wholeFacts(`${HEAD}procedure Work "Work" {\n${items}\n}`).filter(
    (fact) => "kind" in fact && fact.kind === kind,
  );
}
const needs = (items: string): readonly object[] => told(items, "unmet need");

const START = { step: null, span: "Work" };
const UNMET = {
  ...{ kind: "unmet need", since: START, givers: [], undone: false, performed: null, implied: false, askedAt: null },
  mend: null,
};
const SIGNED = { ...UNMET, span: "Signed", condition: "Signed", state: "Signed is not given" };
const A = 'step A { needs Signed do "a." }';
const gives = (what: string): string => `step { do "It."  gives ${what} }`;

describe("a need of a step", () => {
  test("given later: which step gives it, and that it was never given before", () => {
    expect(needs(`${A}\n${gives("Signed")}`)).toEqual([
      { ...SIGNED, givers: [{ step: "2", span: "step" }], stepSpan: A },
    ]);
  });
  test("given and undone: since which step it is so", () => {
    expect(needs(`${gives("Signed")}\n${gives("not Signed")}\n${A}`)).toEqual([
      {
        ...SIGNED,
        since: { step: "2", span: "step" },
        givers: [{ step: "1", span: "step" }],
        undone: true,
        stepSpan: A,
      },
    ]);
  });
  test("undone and given again later: both ways", () => {
    expect(needs(`${gives("not Signed")}\n${A}\n${gives("Signed")}`)).toEqual([
      { ...SIGNED, givers: [{ step: "3", span: "step" }], stepSpan: A },
    ]);
  });
  test("no more than three that give it, and each step once", () => {
    const often = ["1", "2", "3", "4"].map(() => gives("Signed")).join("\n");
    expect(needs(`${often}\n${gives("not Signed")}\n${A}`)).toEqual([
      {
        ...SIGNED,
        since: { step: "5", span: "step" },
        givers: ["1", "2", "3"].map((step) => ({ step, span: "step" })),
        ...{ undone: true, stepSpan: A },
      },
    ]);
    expect(needs(`repeat n from 1 to 2 { ${gives("Signed")} }\n${gives("not Signed")}\n${A}`)).toEqual([
      {
        ...SIGNED,
        since: { step: "2", span: "step" },
        givers: [{ step: "1", span: "step" }],
        ...{ undone: true, stepSpan: A },
      },
    ]);
  });
  test("of several it is the first that fails, and only what gives that one is named", () => {
    const both = 'step A { needs Signed and Seen do "a." }';
    expect(needs(`${gives("Signed")}\n${both}\n${gives("Signed")}\n${gives("Seen")}`)).toEqual([
      {
        ...UNMET,
        ...{ span: "Signed and Seen", condition: "Signed and Seen", state: "Seen is not given", stepSpan: both },
        givers: [{ step: "4", span: "step" }],
      },
    ]);
  });
  test("an action would mend it, where it never holds", () => {
    const asks = 'step A { needs Hub is installed do "a." }';
    const fact = {
      ...UNMET,
      span: "Hub is installed",
      condition: "Hub is installed",
      state: "Hub is removed",
      stepSpan: asks,
    };
    expect(needs(asks)).toEqual([{ ...fact, mend: "install Hub" }]);
    expect(needs(`when Extent is Full { step install Hub }\n${asks}`)).toEqual([
      { ...fact, givers: [{ step: "1", span: "install Hub" }], options: [{ Extent: "Part" }] },
    ]);
  });
  test("in any order no single step is to be left out", () => {
    expect(needs(`in any order { ${A}\nstep "b." }`)).toEqual([{ ...SIGNED, stepSpan: null }]);
  });
  test("for each pass by itself, told with the first", () => {
    expect(needs(`repeat n from 1 to 3 { step { needs Seen  do "a." }\n${gives("not Seen")} }`)).toEqual([
      {
        ...UNMET,
        ...{ span: "Seen", condition: "Seen", state: "Seen is not given", stepSpan: 'step { needs Seen do "a." }' },
        pass: [{ variable: "n", value: 1 }],
        more: 2,
      },
    ]);
  });
});

describe("a need of a performed procedure", () => {
  const fact = {
    ...UNMET,
    ...{ span: "perform Inner", condition: "Hub is installed", state: "Hub is removed", performed: "Inner" },
    ...{ askedAt: "Hub is installed", stepSpan: "perform Inner", mend: "install Hub" },
  };
  test("is told where it is performed, with what it asks for", () => {
    expect(needs("perform Inner")).toEqual([fact]);
    expect(needs("perform Inner\nstep install Hub")).toEqual([
      // That line has to come first: one more would put it in twice.
      { ...fact, givers: [{ step: "2", span: "install Hub" }], mend: null },
    ]);
  });
});

describe("a declared order", () => {
  const declared = (items: string): readonly object[] => told(items, "declared");
  test("after what comes later: both steps by their names", () => {
    expect(declared('step First { do "a."  after Second }\nstep Second "b."')).toEqual([
      {
        kind: "declared",
        span: "after Second",
        step: "First",
        other: "Second",
        wanted: "after",
        otherSpan: "step Second",
      },
    ]);
  });
  test("before what came earlier: a step without a name by its number", () => {
    expect(declared('step Second "b."\nstep { do "a."  before Second }')).toEqual([
      {
        kind: "declared",
        span: "before Second",
        step: "2",
        other: "Second",
        wanted: "before",
        otherSpan: "step Second",
      },
    ]);
  });
  test("the right way round nothing is told", () => {
    expect(declared('step { do "a."  before Second }\nstep Second "b."')).toEqual([]);
    expect(declared('step Second "b."\nstep { do "a."  after Second }')).toEqual([]);
  });
  test("of each pass with the same of the other", () => {
    expect(declared('repeat n from 1 to 2 { step Second "b {n}."\nstep First { do "a."  before Second } }')).toEqual([
      {
        ...{ kind: "declared", span: "before Second", step: "First", other: "Second", wanted: "before" },
        ...{ otherSpan: "step Second", pass: [{ variable: "n", value: 1 }], more: 1 },
      },
    ]);
  });
  test("for the choices with which it is so", () => {
    const items = 'when Extent is Full { step Second "b." }\nstep { do "a."  before Second }';
    expect(declared(items)).toEqual([
      {
        ...{ kind: "declared", span: "before Second", step: "2", other: "Second", wanted: "before" },
        ...{ otherSpan: "step Second", options: [{ Extent: "Full" }] },
      },
    ]);
  });
});
