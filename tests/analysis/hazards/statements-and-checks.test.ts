// Safety statements as they are written, second checks of critical steps, the same work on parts that back each other up, and reasons
// that say nothing: whole findings, by the façade (checks.md: safety.*, trace.weak-allow; notes: outputs.md).
import { describe, expect, test } from "vitest";
import { findingsIn } from "#harness/check.ts";

const SHOP = `role Fitter "fitter"
role Lead "lead hand"
role Inspector "inspector"
option Deep { yes no }
consumable Oil "oil"
part Main "main pump"
part Standby "standby pump" { backs up Main }
`;
/** `code line: message` for the codes of one family or rule. */
function told(code: string, lines: string): readonly string[] {
  const text = `${SHOP}procedure Work "Work" {\nbegin with Main is installed, Standby is installed\n${lines}\n}\n`;
  const head = SHOP.split("\n").length + 1;
  return findingsIn(text)
    .filter((finding) => finding.code.startsWith(code))
    .map(
      ({ code: own, message, range }) =>
        `${own.slice(own.indexOf(".") + 1)} ${range.start.line + 1 - head}: ${message}`,
    );
}

describe("signal words", () => {
  const CAUTION = 'caution burn "It is hot."';
  const WARNING = 'warning burn "It is hot." avoid "Keep off." wear "gloves"';
  test.each<[title: string, lines: string, count: number]>([
    ["a hazard to people under caution alone", `${CAUTION}\nstep inspect Main`, 1],
    ["two cautions do not make a warning", `${CAUTION}\n${CAUTION}\nstep inspect Main`, 2],
    ["a warning of the same holds, too", `${WARNING}\n${CAUTION}\nstep inspect Main`, 0],
    ["also from the block around", `${WARNING}\ntask A "A" {\n${CAUTION}\nstep inspect Main }`, 0],
    [
      "not from another block",
      `task A "A" {\n${WARNING}\nstep inspect Main }\ntask B "B" {\n${CAUTION}\nstep inspect Main }`,
      1,
    ],
    ["in a step of a task in a branch", `when Deep is yes { task A "A" { step {\n${CAUTION}\ninspect Main } } }`, 1],
    ["in a repeat", `repeat n from 1 to 2 { step {\n${CAUTION}\ninspect Main } }`, 1],
    ["a line that could not be read may be the warning", `warnin burn "It is hot."\n${CAUTION}\nstep inspect Main`, 0],
    ["a line of work is none", `${CAUTION}\nstep { instal Main }\nstep { pu Main on Standby }`, 1],
    ["only equipment, under warning", 'warning damage "It breaks." avoid "Hold it."\nstep inspect Main', 1],
    [
      "equipment and people, under warning",
      'warning damage, burn "It breaks." avoid "Hold it." wear "gloves"\nstep inspect Main',
      0,
    ],
  ])("%s", (_title, lines, count) => {
    expect(told("safety.signal-word", lines)).toHaveLength(count);
  });
  test("what it says of equipment and of people is not the same", () => {
    const [people] = told("safety.signal-word", `${CAUTION}\nstep inspect Main`);
    const [equipment] = told("safety.signal-word", 'warning damage "It breaks." avoid "Hold it."\nstep inspect Main');
    expect(people).toMatch(/^signal-word 1: .*people/);
    expect(equipment).toMatch(/^signal-word 1: .*equipment/);
  });
});

describe("what is worn", () => {
  const BARE = 'warning burn, cold "Hot and cold." avoid "Keep off."';
  test.each<[title: string, lines: string, count: number]>([
    ["nothing is said", `${BARE}\nstep inspect Main`, 1],
    [
      "another statement in force says it for both",
      `warning burn, cold "Hot." avoid "Keep off." wear "gloves"\n${BARE}\nstep inspect Main`,
      0,
    ],
    [
      "another says it for one of them",
      `warning burn "Hot." avoid "Keep off." wear "gloves"\n${BARE}\nstep inspect Main`,
      1,
    ],
    ["another that says nothing of it is none", `${BARE}\n${BARE}\nstep inspect Main`, 2],
    [
      "another that says it later",
      `${BARE}\nstep { warning burn, cold "Hot." avoid "Keep off." wear "later"\n inspect Main }`,
      2,
    ],
  ])("%s", (_title, lines, count) => {
    expect(told("safety.protection", lines)).toHaveLength(count);
  });
});

test.each<[reason: string, isWeak: boolean]>([
  ["", true],
  ["...", true],
  ["TBD", true],
  ["to - do", true],
  ["xxx", true],
  ["n/a", true],
  ["Box", false],
  ["X-rayed before.", false],
  ["Checked by the maker, see 4.2.", false],
])("an allow because %j says nothing: %s", (reason, isWeak) => {
  const lines = `step {\n allow wording.passive because "${reason}"\n inspect Main\n}`;
  expect(told("trace.weak-allow", lines)).toHaveLength(isWeak ? 1 : 0);
});

describe("a second check", () => {
  const critical = (more: string): string => `step {\n inspect Main\n critical\n ${more}\n}`;
  const others = (lines: string): readonly string[] => {
    const text = `${SHOP}procedure Work "Work" {\n${lines}\n}\n`;
    const [found] = findingsIn(text).filter(({ code }) => code === "safety.no-second-check");
    return (found?.fixes ?? []).map(({ title }) => title);
  };
  test("who looks at other steps comes first, and nobody who signs", () => {
    expect(others(critical("sign Fitter"))).toEqual(["Hold for Lead", "Hold for Inspector"]);
    expect(others(`${critical("sign Fitter")}\nstep { inspect Standby sign Fitter hold for Inspector }`)).toEqual([
      "Hold for Inspector",
      "Hold for Lead",
    ]);
    expect(others(critical("sign Fitter, Lead"))).toEqual(["Hold for Inspector"]);
    expect(others(critical("by Inspector"))).toEqual(["Hold for Fitter", "Hold for Lead"]);
  });
  test.each<[more: string, count: number]>([
    ["sign Fitter", 1],
    ["sign Fitter hold for Fitter", 1],
    ["sign Fitter hold for Inspector", 0],
    // One of two who sign is another than the one it is held for.
    ["sign Fitter, Lead hold for Lead", 0],
    ["by Fitter sign Lead hold for Lead", 1],
    ["by Fitter hold for Fitter", 1],
    ["by Fitter hold for Lead", 0],
    ["hold for Lead", 0],
    ["", 1],
    ["sign Nobody", 0],
    ["sign Fitter\n hold fro Lead", 0],
  ])("critical, %s: %d", (more, count) => {
    expect(told("safety.no-second-check", critical(more))).toHaveLength(count);
  });
});

describe("the same work on parts that back each other up", () => {
  const fill = (part: string, role = "Fitter"): string => `step { fill ${part} with Oil sign ${role} }\n`;
  test.each<[title: string, lines: string, found: readonly string[]]>([
    ["once for the pair, in whatever order", fill("Main") + fill("Standby") + fill("Main"), ["2: Standby"]],
    ["the second one is named", fill("Standby") + fill("Main"), ["2: Main"]],
    [
      "other work by another role is no look",
      `${fill("Main")}${fill("Standby")}step { clean Standby sign Inspector }\n`,
      ["2: Standby"],
    ],
    [
      "an inspection held for another role is one",
      `${fill("Main")}${fill("Standby")}step { inspect Main sign Fitter hold for Inspector }\n`,
      [],
    ],
    [
      "an inspection held for the same role is none",
      `${fill("Main")}${fill("Standby")}step { inspect Main sign Fitter hold for Fitter }\n`,
      ["2: Standby"],
    ],
    [
      "an inspection by nobody that is known",
      `${fill("Main")}${fill("Standby")}step { inspect Main }\n`,
      ["2: Standby"],
    ],
    ["two roles, one each", fill("Main") + fill("Standby", "Lead"), []],
  ])("%s", (_title, lines, found) => {
    expect(
      told("safety.dual-maintenance", lines).map((one) => one.replace(/^\S+ /, "").replace(/ gets.*/, "")),
    ).toEqual(found);
  });
  test("work on both in one choice is told for that choice, and again for the other", () => {
    const text = `${SHOP}procedure Work "Work" {
  begin with Main is installed, Standby is installed
  step { fill Main with Oil sign Fitter }
  when Deep is yes { step { fill Standby with Oil sign Fitter } } otherwise { step { fill Standby with Oil sign Fitter } }
}
`;
    const found = findingsIn(text).filter(({ code }) => code === "safety.dual-maintenance");
    expect(found.map(({ options }) => options)).toEqual([[{ Deep: "yes" }], [{ Deep: "no" }]]);
  });
});
