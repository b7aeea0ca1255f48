// The flow graph of each form that a procedure is made of: what happens where, and which ways lead on under which conditions.
import { describe, expect, test } from "vitest";
import type { Graph } from "#analysis/graph.ts";
import { conditionText } from "#model/condition-text.ts";
import { onPaper } from "../run-on-paper.ts";

const HEAD = `part Hub "hub"
part Cover "cover"
fact Signed "the sheet is signed"
option Extent "extent of work" { Full Part None }
procedure Inner "Inner" { step "i." }
`;

function graphOf(items: string): { graph: Graph; text: string } {
  const text = `${HEAD}procedure Work "Work" {\n${items}\n}`;
  const run = onPaper(text, { damaged: true }).runs.find((one) => one.expanded.procedure.name === "Work");
  if (run === undefined) throw new Error(text);
  return { graph: run.graph, text };
}

/** `1 enter #2 → 2, 3 if Signed, 4 if not Signed`: the number of the step behind `#`. */
function ways(items: string): readonly string[] {
  return graphOf(items).graph.nodes.map(({ id, operation, number, next }) => {
    const led = next.map(({ to, guards }) => {
      const so = guards.map(({ condition, holds }) => `${holds ? "" : "not "}${conditionText(condition)}`);
      return so.length === 0 ? String(to) : `${to} if ${so.join(" and ")}`;
    });
    const of = number === null ? "" : ` #${number}`;
    return `${id} ${operation.kind}${of}${led.length === 0 ? "" : ` → ${led.join(", ")}`}`;
  });
}

describe("each form", () => {
  test.each<[name: string, items: string, found: readonly string[]]>([
    ["a step", 'step "a."', ["0 start → 1", "1 enter #1 → 2", "2 leave #1 → 3", "3 end"]],
    [
      "what it begins with, and its lines",
      "begin with Hub is removed and Cover is removed\nstep { install Hub  clean Hub }",
      ["0 start → 1", "1 begin → 2", "2 enter #1 → 3", "3 act #1 → 4", "4 act #1 → 5", "5 leave #1 → 6", "6 end"],
    ],
    [
      "a task",
      'task "T" { step "a." }',
      ["0 start → 1", "1 meet → 2", "2 enter #1.1 → 3", "3 leave #1.1 → 4", "4 end of task → 5", "5 end"],
    ],
    [
      "a performed procedure",
      'perform Inner\nstep "a."',
      ["0 start → 1", "1 ask #1 → 2", "2 act #1 → 3", "3 enter #2 → 4", "4 leave #2 → 5", "5 end"],
    ],
    [
      "a branch without otherwise",
      'when Signed { step "a." }',
      [
        "0 start → 1",
        "1 fork → 2 if Signed, 5 if not Signed",
        "2 meet → 3",
        "3 enter #1 → 4",
        "4 leave #1 → 5",
        "5 meet → 6",
        "6 end",
      ],
    ],
    [
      "cases, each where those before it do not hold",
      'when Extent is Full { note "x" } otherwise when Extent is Part { note "y" } otherwise { note "z" }',
      [
        "0 start → 1",
        "1 fork → 2 if Extent is Full, 3 if not Extent is Full and Extent is Part, 4 if not Extent is Full and not Extent is Part",
        "2 meet → 5",
        "3 meet → 5",
        "4 meet → 5",
        "5 meet → 6",
        "6 end",
      ],
    ],
    [
      "both arms stop: nothing follows",
      'when Signed { stop "a" } otherwise { stop "b" }',
      ["0 start → 1", "1 fork → 2 if Signed, 4 if not Signed", "2 meet → 3", "3 stop", "4 meet → 5", "5 stop", "6 end"],
    ],
    [
      "a check",
      'step { check "It is so" }',
      ["0 start → 1", "1 enter #1 → 2", "2 look #1 → 3", "3 leave #1 → 4", "4 end"],
    ],
    [
      "a check with a failing path",
      'step { check "It is so" if it fails { clean Hub } }',
      [
        "0 start → 1",
        "1 enter #1 → 2",
        "2 look #1 → 3",
        "3 fork #1 → 4, 5",
        "4 act #1 → 5",
        "5 meet #1 → 6",
        "6 leave #1 → 7",
        "7 end",
      ],
    ],
    [
      "back to a step, and to a task",
      'task T "T" { step A "a." }\nstep { check "It is so" if it fails { return to A } }\nstep { check "It is so" if it fails { return to T } }',
      [
        "0 start → 1",
        "1 meet → 2",
        "2 enter #1.1 → 3",
        "3 leave #1.1 → 4",
        "4 end of task → 5",
        "5 enter #2 → 6",
        "6 look #2 → 7",
        "7 fork #2 → 8, 9",
        "8 jump #2 → 2",
        "9 meet #2 → 10",
        "10 leave #2 → 11",
        "11 enter #3 → 12",
        "12 look #3 → 13",
        "13 fork #3 → 14, 15",
        "14 jump #3 → 1",
        "15 meet #3 → 16",
        "16 leave #3 → 17",
        "17 end",
      ],
    ],
    [
      "a jump that may not be leads nowhere",
      'step { check "It is so" if it fails { return to B } }\nstep B "b."',
      [
        "0 start → 1",
        "1 enter #1 → 2",
        "2 look #1 → 3",
        "3 fork #1 → 4, 5",
        "4 jump #1",
        "5 meet #1 → 6",
        "6 leave #1 → 7",
        "7 enter #2 → 8",
        "8 leave #2 → 9",
        "9 end",
      ],
    ],
    [
      "notes and what is only said: nothing happens",
      'note "x"\nstep { note "b" }',
      ["0 start → 1", "1 enter #1 → 2", "2 leave #1 → 3", "3 end"],
    ],
    [
      "a line that could not be read",
      "step { install ] }",
      ["0 start → 1", "1 enter #1 → 2", "2 damaged #1 → 3", "3 leave #1 → 4", "4 end"],
    ],
    [
      "in any order, with nothing to do with each other: as written",
      'in any order { step "a."  step "b." }',
      ["0 start → 1", "1 enter #1 → 2", "2 leave #1 → 3", "3 enter #2 → 4", "4 leave #2 → 5", "5 end"],
    ],
    [
      "in any order, of one part: both orders",
      "in any order { step install Hub  step remove Hub }",
      [
        "0 start → 1",
        "1 meet → 2, 9",
        "2 meet → 3",
        ...["3 enter #1 → 4", "4 act #1 → 5", "5 leave #1 → 6"],
        ...["6 enter #2 → 7", "7 act #2 → 8", "8 leave #2 → 16"],
        "9 meet → 10",
        ...["10 enter #2 → 11", "11 act #2 → 12", "12 leave #2 → 13"],
        ...["13 enter #1 → 14", "14 act #1 → 15", "15 leave #1 → 16"],
        "16 meet → 17",
        "17 end",
      ],
    ],
  ])("%s", (_name, items, found) => {
    expect(ways(items)).toEqual(found);
  });
});

describe("what a place knows of itself", () => {
  test("the arms it stands in, innermost last, and each arm its words", () => {
    const { graph, text } = graphOf(
      'when Signed { step "a."  when Extent is Full { step "b." } } otherwise { step "c." }\nstep "d."',
    );
    const within = graph.nodes.flatMap(({ operation, number, arms }) =>
      operation.kind === "enter" ? [`${number}: ${arms.join(" ")}`] : [],
    );
    expect(within).toEqual(["1: 0", "2: 0 1", "3: 2", "4: "]);
    expect(
      graph.arms.map(({ fork, edge, which, span, condition }) => [
        fork,
        edge.to,
        which,
        text.slice(span.start, span.end).split("{")[0]?.trim(),
        condition === null ? null : conditionText(condition),
      ]),
    ).toEqual([
      [1, 2, "when", "Signed", "Signed"],
      [5, 6, "when", "Extent is Full", "Extent is Full"],
      [1, 10, "otherwise", "otherwise", null],
    ]);
  });
  test("its step, and no step between steps", () => {
    const { graph } = graphOf('step A "a."\nwhen Signed { step B { check "It is so" } }');
    expect(graph.nodes.map(({ step }) => step?.step.name ?? null)).toEqual([
      null,
      "A",
      "A",
      null,
      null,
      "B",
      "B",
      "B",
      null,
      null,
    ]);
  });
  test("its turn in a block, and whether it stands in one at all", () => {
    const { graph } = graphOf('in any order { step install Hub  step remove Hub  step "c." }\nstep "d."');
    const turns = graph.nodes.flatMap(({ operation, number, turns: of, anyOrder }) =>
      operation.kind === "enter"
        ? [
            `${number}: ${of.map(({ done, group, block }) => `${done.join("")} of ${group.join("")} in ${block}`)} ${anyOrder}`,
          ]
        : [],
    );
    expect(turns).toEqual([
      "1: 0 of 01 in 0 true",
      "2: 01 of 01 in 0 true",
      "2: 1 of 01 in 0 true",
      "1: 10 of 01 in 0 true",
      "3:  true",
      "4:  false",
    ]);
    const [turn] = graph.nodes.flatMap(({ turns: of }) => of);
    expect(turn?.children.map(({ number }) => number)).toEqual(["1", "2", "3"]);
  });
  test("each child of a block has its number, where it has one, and its own words", () => {
    const children = (items: string): readonly (readonly [string | null, string])[] => {
      const { graph, text } = graphOf(items);
      const [turn] = graph.nodes.flatMap(({ turns }) => turns);
      return (turn?.children ?? []).map(({ number, span }) => [number, text.slice(span.start, span.end)] as const);
    };
    const both = "step install Hub  step remove Hub";
    expect(
      children(`in any order { ${both}  task T "T" { step "a." }  perform Inner  when Signed { step "b." } }`),
    ).toEqual([
      ["1", "step"],
      ["2", "step"],
      ["3", "T"],
      ["4", "perform Inner"],
      [null, "when Signed"],
    ]);
    expect(
      children('step { in any order { install Hub  remove Hub  check "It is so"  note "n" } }').slice(0, 3),
    ).toEqual([
      [null, "install Hub"],
      [null, "remove Hub"],
      [null, 'check "It is so"'],
    ]);
  });
  test("blocks one in the other, and one after the other", () => {
    const { graph } = graphOf(
      'in any order { task "T" { in any order { step install Hub  step remove Hub } }  step install Hub }\nin any order { step install Cover  step remove Cover }',
    );
    const blocks = graph.nodes.flatMap(({ operation, turns }) =>
      operation.kind === "enter" ? [turns.map(({ block }) => block).join(" ")] : [],
    );
    const four = (block: string): readonly string[] => [block, block, block, block];
    expect(blocks).toEqual([...four("0 1"), "0", "0", ...four("0 2"), ...four("3")]);
  });
  test("where each step and task is entered and left, in each pass", () => {
    const { graph, text } = graphOf('task T "T" { repeat n from 1 to 2 { step A "a{n}." } }');
    const found = [...graph.entries].map(([key, places]) => {
      const start = Number(key.split(":")[1]);
      return [
        text.slice(start, start + 6),
        ...places.map(({ node, leave, pass }) => `${node}-${leave} ${pass.map(({ value }) => value).join()}`),
      ];
    });
    expect(found).toEqual([
      ["step A", "2-3 1", "4-5 2"],
      ["task T", "1-6 "],
    ]);
  });
});
