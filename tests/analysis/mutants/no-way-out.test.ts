// Loops that nothing leads out of, and jumps that lead where none may: short ones, told from near misses.
import { describe, expect, test } from "vitest";
import { found, onPaper } from "../run-on-paper.ts";

const HEAD = `option Extent "extent of work" { Full Part }
option Kind "kind" { Wet Dry }
part Hub "hub"
fact Signed "the sheet is signed"
`;

function flow(items: string, before = ""): readonly string[] {
  return found(`${HEAD}${before}procedure Work "Work" {\n${items}\n}`)
    .filter((one) => one.startsWith("flow.endless") || one.startsWith("flow.bad-jump"))
    .map((one) => one.replace("flow.", ""));
}
const A = 'step A "a."\n';
const back = "return to A";

describe("no way out", () => {
  test.each<[items: string, told: readonly string[]]>([
    [`${A}${back}`, [`endless: ${back}`]],
    [`${A}step B "b."\n${back}\nstep C "c."`, [`endless: ${back}`]],
    [`${A}when Extent is Full { ${back} }`, [`endless: ${back} | Extent Full`]],
    [
      `${A}when Extent is Full { ${back} } otherwise { ${back} }`,
      [`endless: ${back} | Extent Full`, `endless: ${back} | Extent Part`],
    ],
    [`${A}when Extent is Full { when Kind is Wet { ${back} } }`, [`endless: ${back} | Extent Full, Kind Wet`]],
    [`step Z "z."\n${A}step B "b."\n${back}`, [`endless: ${back}`]],
  ])("%s", (items, told) => {
    expect(flow(items)).toEqual(told);
  });
  test("what may be so or not leads out", () => {
    expect(flow(`${A}step { do "It."  check "It is so" if it fails { ${back} } }`)).toEqual([]);
    expect(flow(`${A}step { do "It."  check "It is so" if it fails { stop "Ask." } }\n${back}`)).toEqual([]);
    expect(flow(`step Z "z."\n${A}stop "Ask."`)).toEqual([]);
  });
  test("a stop in what is performed leads out, at any depth; for the choices with which it is there", () => {
    const deep = (steps: string): string =>
      `procedure Deep "Deep" {\n${steps}\n}\nprocedure Inner "Inner" {\nperform Deep\nstep "i."\n}\n`;
    const loop = `${A}perform Inner\n${back}`;
    const stop = 'step { do "It."  check "It is so" if it fails { stop "Ask." } }';
    expect(flow(loop, deep('step "d."'))).toEqual([`endless: ${back}`]);
    expect(flow(loop, deep(stop))).toEqual([]);
    expect(flow(loop, deep(`when Extent is Full { ${stop} }`))).toEqual([`endless: ${back} | Extent Part`]);
  });
  test("of two loops in one another the last jump is told, and only where it has no way out", () => {
    const inner = `step B { do "It."  check "It is so" if it fails { ${back} } }`;
    expect(flow(`${A}${inner}\nreturn to B`)).toEqual(["endless: return to B"]);
    expect(flow(`${A}step B { do "It."  check "It is so" if it fails { return to B } }\n${back}`)).toEqual([
      `endless: ${back}`,
    ]);
    expect(flow(`${A}${inner}\nwhen Extent is Full { return to B }`)).toEqual(["endless: return to B | Extent Full"]);
  });
  test("a loop that leads on into another: the other is told", () => {
    expect(
      flow(`${A}step { do "It."  check "It is so" if it fails { ${back} } }\nstep B "b."\nstep C "c."\nreturn to B`),
    ).toEqual(["endless: return to B"]);
  });
  test("one that is never come to is not told", () => {
    expect(flow(`${A}stop "Ask."\n${back}`)).toEqual([]);
    expect(flow(`${A}when Signed { ${back} }`)).toEqual([]);
  });
  test("shows the head it leads back to, wherever that stands", () => {
    for (const items of [
      `${A}${back}`,
      `step Z "z."\ntask "T" { ${A}${back} }`,
      `task A "the first" { step "x." }\n${back}`,
      `task "T" { task "U" { ${A} } }\n${back}`,
    ]) {
      const text = `${HEAD}procedure Work "Work" {\n${items}\n}`;
      const heads = onPaper(text).facts.flatMap(({ fact }) =>
        fact.kind === "endless" ? [text.slice(fact.toSpan.start, fact.toSpan.end)] : [],
      );
      expect(heads).toEqual([items.includes("task A") ? "A" : "step A"]);
    }
  });
});

describe("jumps that may not be", () => {
  /** Why, with the head it leads to. */
  function bad(items: string): readonly string[] {
    const text = `${HEAD}procedure Work "Work" {\n${items}\nstep Last "Last."\n}`;
    return onPaper(text).facts.flatMap(({ fact }) =>
      fact.kind === "bad jump" ? [`${fact.why}: ${text.slice(fact.toSpan.start, fact.toSpan.end)}`] : [],
    );
  }
  const fails = (jump: string): string => `step { do "It."  check "It is so" if it fails { ${jump} } }`;
  test.each<[items: string, told: readonly string[]]>([
    [`${A}${fails("return to A")}`, []],
    [`${fails("go to Last")}`, []],
    [`${fails("return to A")}\n${A}`, ["forwards: step A"]],
    [`${A}${fails("go to A")}`, ["backwards: step A"]],
    [`when Extent is Full { ${A} }\n${fails("return to A")}`, ["into a branch: step A"]],
    [`when Extent is Full { ${A}${fails("return to A")} }`, []],
    [`when Extent is Full { ${A} } otherwise { ${fails("return to A")} }`, ["into a branch: step A"]],
    [`when Extent is Full { step "x." } otherwise { ${A} }\n${fails("return to A")}`, ["into a branch: step A"]],
    [`when Extent is Full { step "x." } otherwise { ${A}${fails("return to A")} }`, []],
    [`repeat n from 1 to 2 { ${A} }\n${fails("return to A")}`, ["into a repeat: step A"]],
    [`repeat n from 1 to 2 { ${A}${fails("return to A")} }`, []],
    [`in any order { ${A}step B "b." }\n${fails("return to A")}`, ["into any order: step A"]],
    [`in any order { ${A}${fails("return to A")} }`, ["into any order: step A"]],
    [`in any order { task "T" { ${A}${fails("return to A")} }  step B "b." }`, []],
    [`task "T" { ${A} }\n${fails("return to A")}`, []],
  ])("%s", (items, told) => {
    expect(bad(items)).toEqual(told);
  });
});
