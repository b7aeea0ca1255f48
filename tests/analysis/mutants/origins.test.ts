// Where a state came from, for each kind of place in a procedure, and what is only taken as so.
import { expect, test } from "vitest";
import { isSupposed, originOf } from "#analysis/origin.ts";
import { found, onPaper } from "../run-on-paper.ts";

const HEAD = `part Hub "hub"
part Cover "cover"
fact Signed "the sheet is signed"
option Extent "extent of work" { Full Part }
procedure Inner "Inner" { begin with Hub is installed  step "i." }
`;
const BODY = `procedure Work "Work" {
  begin with Cover is removed
  task "T" { step Fit { needs Signed  install Hub  check "It fits" if it fails { stop "Ask." } } }
  perform Inner
  when Extent is Full { step "Go." }
}`;

/** Of each node: what it is, whether what it gives is only supposed, the step's number, and the words it stands for. */
function origins(text: string): readonly (readonly [string, boolean, string | null, string])[] {
  const run = onPaper(text, { damaged: true }).runs.find((one) => one.expanded.procedure.name === "Work");
  if (run === undefined) throw new Error(text);
  return run.graph.nodes.map(({ id, operation }) => {
    const { step, span } = originOf(run, id);
    const words = text.slice(span.start, span.end).replace(/\s+/g, " ");
    return [operation.kind, isSupposed(run.graph, id), step, words] as const;
  });
}

test("each kind of place stands for its own words", () => {
  expect(origins(`${HEAD}${BODY}`)).toEqual([
    ["start", false, null, "Work"],
    ["begin", false, null, "Cover is removed"],
    ["meet", false, null, "Work"],
    ["enter", true, "1.1", "step Fit"],
    ["act", false, "1.1", "install Hub"],
    ["look", false, "1.1", "Work"],
    ["fork", false, "1.1", "Work"],
    ["stop", false, "1.1", "Work"],
    ["meet", false, "1.1", "Work"],
    ["leave", false, "1.1", "step Fit"],
    ["end of task", false, null, "Work"],
    ["ask", true, "2", "perform Inner"],
    ["act", false, "2", "perform Inner"],
    ["fork", false, null, "Work"],
    ["meet", false, null, "Work"],
    ["enter", true, "3", 'step "Go."'],
    ["leave", false, "3", 'step "Go."'],
    ["meet", false, null, "Work"],
    ["end", false, null, "Work"],
  ]);
});

test("a line that could not be read stands for itself", () => {
  expect(
    origins(`${HEAD}procedure Work "Work" {\nstep { install ] }\n}`).filter(([kind]) => kind === "damaged"),
  ).toEqual([["damaged", false, "1", "install ]"]]);
});

test("no such place is the whole procedure", () => {
  const text = `${HEAD}${BODY}`;
  const run = onPaper(text).runs.find((one) => one.expanded.procedure.name === "Work");
  expect(run && originOf(run, 999)).toEqual({ step: null, span: run?.expanded.procedure.span });
  expect(run && isSupposed(run.graph, 999)).toBe(false);
});

test("what was taken as so is held against nobody; what somebody did beside it is", () => {
  const work = (steps: string): readonly string[] => found(`${HEAD}procedure Work "Work" {\n${steps}\n}`);
  const needs = (condition: string): string => `step { needs ${condition}  do "Look." }`;
  // The second asks the contrary of what the first only supposed.
  expect(work(`${needs("Signed")}\n${needs("not Signed")}`)).toEqual(["order.unmet-need: Signed"]);
  expect(work(`when Extent is Full { ${needs("Signed")} }\n${needs("not Signed")}`)).toEqual([
    "order.unmet-need: Signed | Extent Full",
  ]);
  expect(
    work(
      `when Extent is Full { ${needs("Signed")} } otherwise { step { do "Sign."  gives Signed } }\n${needs("not Signed")}`,
    ),
  ).toEqual(["order.unmet-need: Signed | Extent Full", "order.unmet-need: not Signed | Extent Part"]);
});
