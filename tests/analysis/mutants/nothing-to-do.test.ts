// Blocks that hold nothing to do, and repeats that are done no time: which of them are told, where, and once.
import { describe, expect, test } from "vitest";
import { found, onPaper } from "../run-on-paper.ts";

const HEAD = `option Extent "extent of work" { Full Part }
part Hub "hub"
part Cover "cover"
fact Signed "the sheet is signed"
`;
const INNER = 'procedure Inner "Inner" {\nstep "i."\n}\n';

function work(items: string, before = ""): readonly string[] {
  return found(`${HEAD}${before}procedure Work "Work" {\n${items}\nstep "Last."\n}`, { damaged: true }).filter((one) =>
    one.startsWith("flow."),
  );
}

describe("between steps: without a step it is empty", () => {
  test.each<[items: string, empty: readonly string[]]>([
    ['task "T" { }', ['"T"']],
    ['task "T" { note "Rags are at the bench." }', ['"T"']],
    ['task "T" { task "U" { } }', ['"T"']],
    ['task "T" { step "a."  task "U" { } }', ['"U"']],
    ['task "T" { step "a." }', []],
    ['task "T" { task "U" { step "a." } }', []],
    ['task "T" { when Extent is Full { step "a." } }', []],
    ['task "T" { repeat n from 1 to 2 { step "a." } }', []],
    ['task "T" { in any order { step "a."  step "b." } }', []],
    ['task "T" { perform Inner }', []],
    ['task "T" { stop "Ask." }', []],
    ["repeat n from 1 to 2 { }", ["repeat n from 1 to 2"]],
    ['repeat n from 1 to 2 { note "Look." }', ["repeat n from 1 to 2"]],
    ["in any order { }", ["in any order"]],
    ['in any order { note "Look." }', ["in any order"]],
    ["when Extent is Full { }", ["when Extent is Full"]],
    ['when Extent is Full { step "a." } otherwise { }', ["otherwise"]],
    ['when Extent is Full { } otherwise { step "a." }', ["when Extent is Full"]],
    ["when Extent is Full { } otherwise { }", ["when Extent is Full", "otherwise"]],
    ['when Extent is Full { task "U" { } } otherwise { step "a." }', ["when Extent is Full"]],
    ['when Extent is Full { step "a."  repeat n from 1 to 2 { } }', ["repeat n from 1 to 2"]],
  ])("%s", (items, empty) => {
    const told = work(items, INNER).filter((one) => one.startsWith("flow.empty"));
    expect(told.map((one) => one.replace("flow.empty: ", "").trim())).toEqual(empty);
  });
});

describe("in a step: without a line it is empty", () => {
  test.each<[lines: string, empty: readonly string[]]>([
    ["when Extent is Full { }", ["when Extent is Full"]],
    ['when Extent is Full { note "Look." }', []],
    ["when Extent is Full { inspect Hub } otherwise { }", ["otherwise"]],
    ["in any order { }", ["in any order"]],
    ["repeat n from 1 to 2 { }", ["repeat n from 1 to 2"]],
    ["when Extent is Full { repeat n from 1 to 2 { } }", ["repeat n from 1 to 2"]],
    ['check "It is so" if it fails { }', []],
    ['check "It is so" if it fails { when Extent is Full { } }', ["when Extent is Full"]],
    ["when Extent is Full { takes 5 min }", []],
    // Where nothing stands behind it, it may have stood inside.
    ["when Extent is Full { } takes 5 min", []],
    ["when Extent is Full { } inspect Hub  takes 5 min", ["when Extent is Full"]],
    ["takes 5 min  when Extent is Full { }", ["when Extent is Full"]],
    ["when Extent is Full { takes 5 min } otherwise { }", ["otherwise"]],
    ["when Extent is Full { } otherwise { takes 5 min }", ["when Extent is Full"]],
    ["when Extent is Full { } when Extent is Part { takes 5 min }", ["when Extent is Full"]],
    ["when Extent is Full { within 5 min after Before }", []],
    ['when Extent is Full { hold "Ask." }', []],
    ['when Extent is Full { why "It is so." }', []],
    ["when Extent is Full { critical }", []],
  ])("%s", (lines, empty) => {
    const told = work(`step Before "b."\nstep { do "It."  ${lines} }`).filter((one) => one.startsWith("flow.empty"));
    expect(told.map((one) => one.replace("flow.empty: ", "").trim())).toEqual(empty);
  });
});

describe("a repeat that is done no time", () => {
  /** The first step or action of it, what it is of, and how many stand in it. */
  function idle(items: string): readonly string[] {
    const text = `${HEAD}${INNER}procedure Work "Work" {\n${items}\nstep "Last."\n}`;
    return onPaper(text, { damaged: true }).facts.flatMap(({ fact }) =>
      fact.kind === "unreachable" && fact.why === "no pass"
        ? [
            `${text.slice(fact.span.start, fact.span.end)} of ${text.slice(fact.cause.start, fact.cause.end).split(" {")[0]}: ${fact.steps}`,
          ]
        : [],
    );
  }
  test.each<[items: string, told: readonly string[]]>([
    ['repeat n from 3 to 1 { step A "a."  step B "b." }', ["step A of repeat n from 3 to 1: 2"]],
    ['repeat n from 1 to 1 { step A "a." }', []],
    ['task "T" { repeat n from 2 to 1 { step A "a." } }', ["step A of repeat n from 2 to 1: 1"]],
    ['when Extent is Full { repeat n from 2 to 1 { step A "a." } }', ["step A of repeat n from 2 to 1: 1"]],
    [
      'when Extent is Full { step "x." } otherwise { repeat n from 2 to 1 { step A "a." } }',
      ["step A of repeat n from 2 to 1: 1"],
    ],
    ['in any order { step "x."  repeat n from 2 to 1 { step A "a." } }', ["step A of repeat n from 2 to 1: 1"]],
    ['repeat m from 1 to 2 { repeat n from 2 to 1 { step A "a." } }', ["step A of repeat n from 2 to 1: 1"]],
    [
      'repeat m from 2 to 1 { repeat n from 2 to 1 { step A "a." }  step B "b." }',
      ["step A of repeat m from 2 to 1: 2"],
    ],
    ["repeat n from 2 to 1 { perform Inner }", ["perform Inner of repeat n from 2 to 1: 1"]],
    [
      'repeat n from 2 to 1 { task "T" { step A "a." }  when Extent is Full { step B "b." } otherwise { step C "c." } }',
      ["step A of repeat n from 2 to 1: 3"],
    ],
    ['repeat n from 2 to 1 { in any order { step A "a."  step B "b." } }', ["step A of repeat n from 2 to 1: 2"]],
    ["step S { repeat n from 2 to 1 { inspect Hub  inspect Cover } }", ["inspect Hub of repeat n from 2 to 1: 2"]],
    [
      'step S { repeat n from 2 to 1 { check "It is so" if it fails { inspect Hub } } }',
      ["inspect Hub of repeat n from 2 to 1: 1"],
    ],
    [
      'step S { check "It is so" if it fails { repeat n from 2 to 1 { inspect Hub } } }',
      ["inspect Hub of repeat n from 2 to 1: 1"],
    ],
    ['step S { do "It."  repeat n from 2 to 1 { note "Look." } }', []],
  ])("%s", (items, told) => {
    expect(idle(items)).toEqual(told);
  });
});
