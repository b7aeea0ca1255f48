// A torque beside what is declared of its fastener, whole: stages, the declared band, the condition of the thread, and what is
// offered instead (checks.md: limits.torque-stages, torque-disagrees, torque-condition, no-condition).
import { describe, expect, test } from "vitest";
import { limitFacts, limitsAt } from "./whole-limits.ts";

const SHOP = `option Oiled { yes no }
tool Wrench "wrench" { torque 1 .. 200 N·m }
consumable Grease "grease"
consumable Oil "oil"
value Final = 45 ± 4 N·m
part Cover "cover"
`;
const IN = "step install Cover, Screw[all]\n";
const job = (torques: string, steps: string, begin = ""): string => `${SHOP}part Screw[1..2] "screw" {
  secures Cover
  ${torques}
}
procedure Close {
  ${begin}
  ${steps}
}`;
const tighten = (stages: string, which = "all"): string => `step tighten Screw[${which}] to ${stages} with Wrench\n`;
const DRY = "torque 45 ± 4 N·m dry";

describe("stages", () => {
  const found = (stages: string, torques = DRY): readonly object[] => limitFacts(job(torques, IN + tighten(stages)));
  const fault = (how: "falls" | "last", stage: string, other: string, span: string, text: string | null) => ({
    ...{ kind: "torque stages", how, part: "Screw", stage, other, span },
    instead: text === null ? null : { span, text },
  });
  test.each<[stages: string, fault: object]>([
    ["20 N·m, 15 N·m, 45 N·m", fault("falls", "15 N·m", "20 N·m", "20 N·m, 15 N·m, 45 N·m", "15 N·m, 20 N·m, 45 N·m")],
    ["20 N·m, 45 N·m, 30 N·m", fault("falls", "30 N·m", "45 N·m", "20 N·m, 45 N·m, 30 N·m", "20 N·m, 30 N·m, 45 N·m")],
    [
      "20 N·m, 15 N·m, 30 N·m",
      fault("falls", "15 N·m", "20 N·m", "20 N·m, 15 N·m, 30 N·m", "15 N·m, 20 N·m, 30 N·m, 45 ± 4 N·m"),
    ],
    ["15 N·m, 40.9 N·m", fault("last", "40.9 N·m", "45 ± 4 N·m", "15 N·m, 40.9 N·m", "15 N·m, 40.9 N·m, 45 ± 4 N·m")],
    // Shares of 45 ± 4 N·m.
    [
      "30 %, 70 % of Final",
      fault("last", "31.5 ± 2.8 N·m", "45 ± 4 N·m", "30 %, 70 % of Final", "30 %, 70 %, 100 % of Final"),
    ],
    [
      "90 %, 110 % of Final",
      fault("last", "49.5 ± 4.4 N·m", "45 ± 4 N·m", "90 %, 110 % of Final", "90 %, 100 % of Final"),
    ],
    [
      "50 %, 30 %, 30 %, 100 % of Final",
      fault(
        "falls",
        "13.5 ± 1.2 N·m",
        "22.5 ± 2 N·m",
        "50 %, 30 %, 30 %, 100 % of Final",
        "30 %, 50 %, 100 % of Final",
      ),
    ],
    // Not all are shares: what they would be is not said.
    ["20 N·m, 50 % of Final", fault("last", "22.5 ± 2 N·m", "45 ± 4 N·m", "20 N·m, 50 % of Final", null)],
  ])("%s", (stages, wanted) => {
    const [first, ...more] = found(stages);
    expect(first).toEqual(wanted);
    // The disagreement with the declared torque is the less telling of the two (language.md, Going on).
    expect(more).toEqual([]);
  });

  test("shares are of what they name, torques that are written out of what is declared; one span for the line", () => {
    // All of Final: the stages are whole, though the part declares another torque.
    expect(limitsAt(job("torque 60 N·m dry", IN + tighten("50 %, 100 % of Final")))).toEqual(
      ["torque disagrees: 50 %, 100 % of Final", "torque disagrees: 50 %, 100 % of Final"].slice(0, 1),
    );
    // With a torque for each condition nobody knows which of them is the whole.
    const two = `${DRY}\n  torque 30 ± 2 N·m with Grease`;
    expect(limitsAt(job(two, IN + tighten("10 N·m, 20 N·m")))).toEqual(["torque disagrees: 10 N·m, 20 N·m"]);
    expect(limitsAt(job("nut factor 0.2 dry", IN + tighten("10 N·m, 20 N·m")))).toEqual([]);
  });

  test.each<[lines: string, found: readonly string[]]>([
    [tighten("20 N·m, 30 N·m"), ["torque stages last: 20 N·m, 30 N·m"]],
    [tighten("20 N·m, 30 N·m") + tighten("45 N·m"), []],
    // Only what comes later, and only more, and only on the same screw.
    [tighten("45 N·m") + tighten("20 N·m, 30 N·m"), ["torque stages last: 20 N·m, 30 N·m"]],
    [tighten("20 N·m, 30 N·m") + tighten("30 N·m"), ["torque stages last: 20 N·m, 30 N·m", "torque disagrees: 30 N·m"]],
    [tighten("20 N·m, 30 N·m", "1") + tighten("45 N·m", "2"), ["torque stages last: 20 N·m, 30 N·m"]],
    [tighten("20 N·m, 30 N·m") + tighten("45 N·m", "1") + tighten("45 N·m", "2"), []],
    [`${tighten("20 N·m, 30 N·m")}step loosen Screw[all]\n`, ["torque stages last: 20 N·m, 30 N·m"]],
    [`${tighten("20 N·m, 30 N·m")}step tighten Cover to 60 N·m with Wrench\n`, ["torque stages last: 20 N·m, 30 N·m"]],
    [`${tighten("20 N·m, 30 N·m")}step tighten Cover, Screw[all] to 45 N·m with Wrench\n`, []],
    // Both say how much; one of them is read by its lower end.
    [tighten("20 N·m, 30 N·m") + tighten("41 .. 49 N·m"), []],
  ])("a later line that tightens further: %j", (lines, wanted) => {
    expect(limitsAt(job(DRY, IN + lines))).toEqual(wanted);
  });
});

describe("the declared torque", () => {
  const declaration = (torque: string, declared: string, instead: string | null, part = "Screw[1]") => ({
    ...{ kind: "torque disagrees", part, torque, declared, declaredAt: declared, span: torque },
    instead: instead === null ? null : { span: torque, text: instead },
  });
  test("each screw of a set is named once, the torque is offered for the one stage there is", () => {
    const found = limitFacts(job(DRY, IN + tighten("60 N·m")));
    expect(found).toEqual([{ ...declaration("60 N·m", "45 ± 4 N·m", "45 ± 4 N·m"), also: ["Screw[2]"] }]);
    const staged = limitFacts(job(DRY, IN + tighten("20 N·m, 60 N·m")));
    expect(staged).toMatchObject([
      { kind: "torque disagrees", torque: "60 N·m", span: "20 N·m, 60 N·m", instead: null },
    ]);
  });

  test.each<[title: string, steps: string, declared: string]>([
    ["the one for the thread as it is", "step lubricate Screw[all] with Oil\n", "24 ± 2 N·m"],
    [
      "the first, where none is for the thread in all ways",
      "when Oiled is yes { step lubricate Screw[all] with Oil }\n",
      "30 ± 2 N·m",
    ],
  ])("of several: %s", (_title, steps, declared) => {
    const torques = "torque 30 ± 2 N·m with Grease  torque 45 ± 4 N·m dry  torque 24 ± 2 N·m with Oil";
    const found = limitFacts(job(torques, IN + steps + tighten("90 N·m"))).filter(
      (fact) => "kind" in fact && fact.kind === "torque disagrees",
    );
    expect(found).toMatchObject([{ declared }]);
  });

  test.each<[lines: string, found: readonly string[]]>([
    [tighten("20 N·m"), ["torque disagrees: 20 N·m"]],
    [tighten("20 N·m") + tighten("45 N·m"), []],
    [tighten("20 N·m", "1") + tighten("45 N·m", "2"), ["torque disagrees: 20 N·m"]],
    // What is too much stays too much.
    [tighten("60 N·m") + tighten("70 N·m"), ["torque disagrees: 60 N·m", "torque disagrees: 70 N·m"]],
    [tighten("20 N·m to seat") + tighten("45 N·m"), []],
    [tighten("20 N·m then 90 ± 5°"), []],
  ])("%j", (lines, wanted) => {
    expect(limitsAt(job(DRY, IN + lines))).toEqual(wanted);
  });
});

describe("the condition that it is stated for", () => {
  const TWO = `${DRY}\n  torque 30 ± 2 N·m with Grease`;
  const OIL = "step lubricate Screw[all] with Oil\n";
  const GREASE = "step lubricate Screw[all] with Grease\n";
  const common = { kind: "torque condition", part: "Screw[1]", span: "tighten Screw[all]", also: ["Screw[2]"] };

  test.each<[title: string, torques: string, steps: string, facts: readonly object[]]>([
    [
      "the torque that is meant is the one whose band holds the one asked",
      TWO,
      OIL + tighten("30 N·m"),
      [
        {
          ...common,
          ...{ stated: { with: "Grease" }, found: { with: "Oil" }, torque: "30 ± 2 N·m", declaredAt: "30 ± 2 N·m" },
          ...{ fitting: null, instead: null },
        },
      ],
    ],
    [
      "with one for the thread as it is, that is offered",
      TWO,
      GREASE + tighten("45 N·m"),
      [
        {
          ...common,
          ...{ stated: { dry: true }, found: { with: "Grease" }, torque: "45 ± 4 N·m", declaredAt: "45 ± 4 N·m" },
          ...{ fitting: "30 ± 2 N·m", instead: { span: "45 N·m", text: "30 ± 2 N·m" } },
        },
      ],
    ],
    [
      "but not in place of several stages",
      TWO,
      GREASE + tighten("20 N·m, 45 N·m"),
      [
        {
          ...common,
          ...{ stated: { dry: true }, found: { with: "Grease" }, torque: "45 ± 4 N·m", declaredAt: "45 ± 4 N·m" },
          ...{ fitting: "30 ± 2 N·m", instead: null },
        },
      ],
    ],
    [
      "cleaned is dry",
      "torque 30 ± 2 N·m with Grease",
      `step clean Screw[all]\n${tighten("30 N·m")}`,
      [
        {
          ...common,
          ...{ stated: { with: "Grease" }, found: { dry: true }, torque: "30 ± 2 N·m", declaredAt: "30 ± 2 N·m" },
          ...{ fitting: null, instead: null },
        },
      ],
    ],
    [
      "one of two bands that both hold it is enough",
      "torque 40 .. 50 N·m dry\n  torque 30 .. 45 N·m with Grease",
      GREASE + tighten("42 N·m"),
      [],
    ],
  ])("%s", (_title, torques, steps, facts) => {
    expect(limitFacts(job(torques, IN + steps))).toEqual(facts);
  });

  test("in none of the bands: only where the thread is in none of the conditions either", () => {
    expect(limitsAt(job(TWO, IN + OIL + tighten("60 N·m")))).toEqual([
      "torque condition: tighten Screw[all]",
      "torque disagrees: 60 N·m",
    ]);
    expect(limitsAt(job(TWO, IN + GREASE + tighten("60 N·m")))).toEqual(["torque disagrees: 60 N·m"]);
  });

  test("for the choice that makes it so", () => {
    const text = job(DRY, `${IN}when Oiled is yes { ${OIL} }\n${tighten("45 N·m")}`);
    expect(limitFacts(text)).toMatchObject([{ kind: "torque condition", options: [{ Oiled: "yes" }] }]);
  });

  const plain = "torque 45 ± 4 N·m";
  test.each<[title: string, torques: string, steps: string, begin: string, found: readonly string[]]>([
    ["put in here", plain, IN, "", ["no condition: tighten Screw[all]"]],
    [
      "in before",
      plain,
      "step loosen Screw[all]\n",
      "begin with Cover is secured",
      ["no condition: tighten Screw[all]"],
    ],
    ["cleaned says so itself", plain, `${IN}step clean Screw[all]\n`, "", []],
    ["lubricated says so itself", plain, IN + OIL, "", []],
    ["the factor says so", `${plain}\n  nut factor 0.2 dry`, IN, "", []],
    ["the friction says so", `${plain}\n  friction 0.12 with Oil`, IN, "", []],
    [
      "a factor for no condition says nothing",
      `${plain}\n  nut factor 0.2`,
      IN,
      "",
      ["no condition: tighten Screw[all]"],
    ],
    ["no torque is declared", 'thread "M10"', IN, "", ["no condition: tighten Screw[all]"]],
    ["no torque, but a factor", 'thread "M10"\n  nut factor 0.2 dry', IN, "", []],
    ["one of two says what for", `${plain}\n  torque 30 ± 2 N·m with Grease`, IN, "", []],
  ])("said of no condition: %s", (_title, torques, steps, begin, wanted) => {
    expect(limitsAt(job(torques, steps + tighten("45 N·m"), begin))).toEqual(wanted);
  });

  test("what is no fastener says nothing of a thread", () => {
    const text = job("nut factor 0.2 dry", "step install Cover\nstep tighten Cover to 45 N·m with Wrench\n");
    expect(limitFacts(text)).toEqual([]);
  });
});
