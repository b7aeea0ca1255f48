// `within` on short procedures whose longest time can be added up by hand: what counts as time, what is not said, which ends
// of a step count, and where the step that it counts from stands.
import { describe, expect, test } from "vitest";
import { onPaper } from "../run-on-paper.ts";

const HEAD = `option Extent "extent of work" { Full Part }
part Pot "pot"
`;
const INNER = (steps: string): string => `procedure Inner "Inner" {\n${steps}\n}\n`;

interface Late {
  readonly certain: boolean;
  /** In seconds. */
  readonly time: number | null;
  /** The words of the steps that do not say how long they take. */
  readonly unsaid: readonly string[];
  readonly options: readonly Readonly<Record<string, string>>[] | null;
  /** The words of the step or task it counts from. */
  readonly from: string;
}

function late(steps: string, before = ""): readonly Late[] {
  const text = `${HEAD}${before}procedure Work "Work" {\n${steps}\n}`;
  const at = ({ start, end }: { start: number; end: number }): string => text.slice(start, end);
  return onPaper(text, { damaged: true }).facts.flatMap(({ fact }) =>
    fact.kind !== "too late"
      ? []
      : [
          {
            certain: fact.certain,
            time: fact.time,
            unsaid: fact.undeclared.map(({ span }) => at(span)),
            options: fact.options ?? null,
            from: at(fact.afterSpan),
          },
        ],
  );
}
const certain = (time: number | null, more: Partial<Late> = {}): Late => ({
  certain: true,
  time,
  unsaid: [],
  options: null,
  from: "step A",
  ...more,
});
const unknown = (unsaid: readonly string[], more: Partial<Late> = {}): Late => ({
  certain: false,
  time: null,
  unsaid,
  options: null,
  from: "step A",
  ...more,
});

const A = "step A { takes 5 min }\n";
const last = (limit: string): string => `\nstep Last { takes 1 min  within ${limit} after A }`;

describe("ten minutes between, and one for the step itself", () => {
  test.each<[between: string, before: string]>([
    ["step B { takes 10 min }", ""],
    ["step B { takes 8 .. 10 min }", ""],
    ["step B { wait 10 min }", ""],
    ["step B { wait 4 min  wait 6 min  takes 5 min }", ""],
    ["step B { wait 4 min  takes 10 min }", ""],
    ["step B { wait 10 min  takes 10 min }", ""],
    ["step B { wait 3 min }\nstep C { wait 2 min  takes 7 min }", ""],
    ["step B { wait 4 min  wait 2 min  takes 5 min }\nstep C { wait 1 min  takes 4 min }", ""],
    ["perform Inner", INNER("step { takes 4 min }\nstep { wait 6 min }")],
    ["step { takes 3 min }\nperform Inner", INNER("step { takes 7 min }")],
    // What the step says is for all that it performs; as a wait, that counts where it is longer.
    ["step B { perform Inner  takes 10 min }", INNER("step { takes 7 min }")],
    ["step B { perform Inner  wait 3 min  takes 9 min }", INNER("step { takes 7 min }")],
    ["step B { perform Inner  takes 10 min }", INNER('step "i."')],
    ["perform Inner", INNER("when Extent is Full { step { takes 10 min } } otherwise { step { takes 10 min } }")],
    ["in any order {\nstep { takes 4 min }\nstep { takes 6 min }\n}", ""],
    ["repeat n from 1 to 5 { step { takes 2 min } }", ""],
    ["when Extent is Full { step { takes 10 min } } otherwise { step { wait 10 min } }", ""],
  ])("%s", (between, before) => {
    expect(late(`${A}${between}${last("11 min")}`, before)).toEqual([]);
    expect(late(`${A}${between}${last("10.9 min")}`, before)).toEqual([certain(660)]);
  });
  test("only for the choice that takes so long", () => {
    const branch = "when Extent is Full { step { takes 10 min } } otherwise { step { takes 2 min } }";
    const full = certain(660, { options: [{ Extent: "Full" }] });
    expect(late(`${A}${branch}${last("10 min")}`)).toEqual([full]);
    expect(late(`${A}${branch}${last("3 min")}`)).toEqual([full]);
    expect(late(`${A}${branch}${last("2 min")}`)).toEqual([certain(660)]);
    expect(late(`${A}perform Inner${last("10 min")}`, INNER(branch))).toEqual([full]);
    expect(late(`${A}perform Inner${last("11 min")}`, INNER(branch))).toEqual([]);
  });
  test("both parts of two branches", () => {
    const branch = "when Extent is Full { step { takes 6 min } } otherwise { step { takes 2 min } }\n";
    expect(late(`${A}${branch}${branch}${last("12 min")}`)).toEqual([certain(780, { options: [{ Extent: "Full" }] })]);
    expect(late(`${A}${branch}${branch}${last("13 min")}`)).toEqual([]);
  });
});

describe("what is not said", () => {
  test.each<[lines: string, said: boolean]>([
    ['do "It."', false],
    ["wait until Pot is at most 30 °C", false],
    ["wait 1 min  wait until Pot is at most 30 °C", false],
    ['when Extent is Full { do "It." } otherwise { do "It." }', false],
    ['check "It is so" if it fails { do "It." }', false],
    ['in any order { do "It."  do "That." }', false],
    ["takes 1 min  wait until Pot is at most 30 °C", true],
    ["wait 1 min", true],
    ["when Extent is Full { wait 1 min } otherwise { wait 2 min }", true],
    ['when Extent is Full { do "It." } otherwise { wait 2 min }', true],
    ['check "It is so" if it fails { wait 1 min }', true],
    ['in any order { do "It."  wait 2 min }', true],
  ])("%s", (lines, said) => {
    expect(late(`${A}step B { ${lines} }${last("5 min")}`)).toEqual(said ? [] : [unknown(["step B"])]);
  });
  test.each([
    "wait ]",
    "polish ]",
    'in any order { do "It."  polish ] }',
    'check "It is so" if it fails { polish ] }',
    "when Extent is Full { polish ] }",
    'when Extent is Full { do "It." } otherwise { polish ] }',
  ])("what cannot be read may say it: %s", (lines) => {
    expect(late(`${A}step B { ${lines} }${last("5 min")}`)).toEqual([]);
  });
  test("each such step once, in the order of the text, and only with the choices that lead over it", () => {
    const steps = `step B "b."\nwhen Extent is Full { step C "c." }`;
    expect(late(`${A}${steps}${last("5 min")}`)).toEqual([unknown(["step B", "step C"])]);
    expect(late(`${A}when Extent is Full { step C "c." }${last("5 min")}`)).toEqual([
      unknown(["step C"], { options: [{ Extent: "Full" }] }),
    ]);
  });
  test("in a performed procedure: told of the step that performs it", () => {
    expect(late(`${A}perform Inner${last("5 min")}`, INNER('step "i."'))).toEqual([unknown(["perform Inner"])]);
    expect(late(`${A}perform Inner${last("5 min")}`, INNER('when Extent is Full { step "i." }'))).toEqual([
      unknown(["perform Inner"], { options: [{ Extent: "Full" }] }),
    ]);
  });
  test("where it is late anyway, with what may come on top", () => {
    expect(late(`${A}step B "b."\nstep C { takes 9 min }${last("5 min")}`)).toEqual([
      certain(600, { unsaid: ["step B"] }),
    ]);
  });
});

describe("loops", () => {
  const back = 'check "It is so" if it fails { return to B }';
  test.each<[loop: string, before: string]>([
    [`step B { takes 1 s }\nstep C { takes 0 s  ${back} }`, ""],
    [`step B { wait 1 s }\nstep C { takes 0 s  ${back} }`, ""],
    [`step B { takes 0 s }\nstep C { wait 1 s  ${back} }`, ""],
    [`step B { takes 0 s }\nperform Inner\nstep C { takes 0 s  ${back} }`, INNER("step { takes 1 s }")],
    ["perform Inner", INNER(`step B { takes 1 s }\nstep C { takes 0 s  ${back} }`)],
  ])("that take time take any time: %s", (loop, before) => {
    expect(late(`${A}${loop}${last("5 h")}`, before)).toEqual([certain(null)]);
  });
  test.each<[loop: string, before: string]>([
    [`step B { takes 0 s }\nstep C { takes 0 s  ${back} }`, ""],
    [`step B { takes 0 s }\nperform Inner\nstep C { takes 0 s  ${back} }`, INNER("step { takes 0 s }")],
  ])("that take no time are none: %s", (loop, before) => {
    expect(late(`${A}${loop}${last("1 min")}`, before)).toEqual([]);
  });
  test("only for the choices with which they are gone round", () => {
    const loop = `step B { takes 1 s }\nwhen Extent is Full { step C { takes 0 s  ${back} } }`;
    expect(late(`${A}${loop}${last("5 h")}`)).toEqual([certain(null, { options: [{ Extent: "Full" }] })]);
    expect(late(`${A}perform Inner${last("5 h")}`, INNER(loop))).toEqual([
      certain(null, { options: [{ Extent: "Full" }] }),
    ]);
  });
  test("back to before the step it counts from, the time begins anew", () => {
    const again = 'check "It is so" if it fails { return to A }';
    expect(late(`${A}step B { takes 3 min  ${again} }${last("4 min")}`)).toEqual([]);
    expect(late(`${A}step B { takes 3 min  ${again} }${last("3 min")}`)).toEqual([certain(240)]);
  });
});

describe("where the step in question ends", () => {
  const ends = (fails: string, limit: string): readonly Late[] =>
    late(
      `${A}step B { takes 1 min }\nstep Last { wait 1 min  check "It is so" if it fails { ${fails} }  within ${limit} after A }`,
    );
  test.each(['wait 8 min  stop "Ask."', "wait 8 min  return to A", "wait 8 min"])("%s", (fails) => {
    expect(ends(fails, "10 min")).toEqual([]);
    expect(ends(fails, "9 min")).toEqual([certain(600)]);
  });
});

describe("where it counts from", () => {
  const rest = "\nstep B { takes 3 min }\nstep Last { takes 1 min  within 2 min after A }";
  test.each<[first: string, more: Partial<Late>]>([
    ['step A "a"', {}],
    ['task "T" { step A "a" }', {}],
    ['in any order { step A "a"  step { takes 1 s } }', { time: 241 }],
    ['when Extent is Full { step A "a" }', { options: [{ Extent: "Full" }] }],
    ['when Extent is Full { step "z" } otherwise { step A "a" }', { options: [{ Extent: "Part" }] }],
    ['task A "the first" { step { takes 9 min }  step { takes 9 min } }', { from: "A" }],
  ])("%s", (first, more) => {
    expect(late(`${first}${rest}`)).toEqual([certain(240, more)]);
  });
  const fails = (jump: string): string => `step { takes 1 min  check "It is so" if it fails { ${jump} } }`;
  const slow = "\ngo to Last\nstep Slow { takes 3 min }\nstep Last { takes 1 min  within 2 min after A }";
  test("where a jump leads out of it", () => {
    expect(late(`${fails("go to Slow").replace("step", "step A")}${slow}`)).toEqual([certain(240)]);
    expect(late(`task A "the first" { ${fails("go to Slow")} }${slow}`)).toEqual([certain(240, { from: "A" })]);
    expect(late(`${fails("go to Last").replace("step", "step A")}${slow}`)).toEqual([]);
  });
  test("not where a jump stays within it", () => {
    const inside = `${fails("go to Late")}  step { takes 9 min }  step Late { takes 9 min }`;
    expect(late(`task A "the first" { ${inside} }${slow}`)).toEqual([]);
  });
  test("in a repeat, of the same pass", () => {
    const text = `${HEAD}procedure Work "Work" {\nrepeat n from 1 to 2 { step A "a"${rest} }\n}`;
    expect(onPaper(text).facts.map(({ fact }) => [fact.pass[0]?.value, fact.more])).toEqual([[1, 1]]);
    expect(late(`repeat n from 1 to 2 { step A "a"${rest} }`)).toEqual([certain(240)]);
    expect(
      late(`repeat n from 1 to 2 { step A { takes 9 min }\nstep Last { takes 1 min  within 2 min after A } }`),
    ).toEqual([]);
  });
});
