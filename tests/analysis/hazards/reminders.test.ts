// Which statement is said again at which step: after five steps, as written, without its being read (practice). In the procedure and
// in all that it performs.
import { describe, expect, test } from "vitest";
import { remindersOf, stepKey } from "#analysis/hazards/reminders.ts";
import { onPaper } from "../run-on-paper.ts";

const SHOP = `hazard Dust "dust"
part Seat "seat"
part Blade[1..4] "blade" { sharp }
part Lining "lining" { hazard Dust, eye }
tool Hoist "hoist" { lifts 90 kg }
`;
const CUT = 'warning cutting "Sharp." avoid "Hold it by its back."\n';
const DUST = 'warning Dust "Dust." avoid "Wet it."\n';
const EYE = 'warning eye "Splinters." avoid "Look away."\n';
const plain = (count: number): string => 'step { inspect Seat "for dirt" }\n'.repeat(count);
const BLADE = (n: number): string => `step install Blade[${n}]\n`;

/** `step: text, …` of the first procedure of the file, with the name of another where it is not its own. */
function reminders(lines: string, before = ""): readonly string[] {
  const { runs } = onPaper(`${SHOP}procedure Work "Work" {\n${lines}}\n${before}`);
  const [run] = runs;
  if (run === undefined) throw new Error("nothing to follow");
  const names = new Map(runs.map((one) => [one.expanded.procedure.id, one.expanded.procedure]));
  return [...remindersOf(run)].map(([key, statements]) => {
    const procedure = [...names.values()].find(({ id }) => key.startsWith(`${id} `));
    const number = key.slice(key.lastIndexOf(" ") + 1);
    expect(key).toBe(stepKey({ id: procedure?.id ?? "" }, number));
    return `${procedure?.name === "Work" ? "" : `${procedure?.name} `}${number}: ${statements.map(({ text }) => text).join(" ")}`;
  });
}

describe("how far", () => {
  test.each<[title: string, lines: string, told: readonly string[]]>([
    ["four steps between", `${CUT}${plain(4)}${BLADE(1)}`, []],
    ["five steps between", `${CUT}${plain(5)}${BLADE(1)}`, ["6: Sharp."]],
    ["the statement stands behind the first steps", `${plain(3)}${CUT}${plain(4)}${BLADE(1)}`, []],
    ["and far enough from it", `${plain(3)}${CUT}${plain(5)}${BLADE(1)}`, ["9: Sharp."]],
    ["said again, it was read again", `${CUT}${plain(5)}${BLADE(1)}${plain(3)}${BLADE(2)}`, ["6: Sharp."]],
    ["and once more, far from that", `${CUT}${plain(5)}${BLADE(1)}${plain(4)}${BLADE(2)}`, ["6: Sharp.", "11: Sharp."]],
    // What was read with the steps that follow it closely was not read again for that.
    [
      "counted from where it was read, not from where it was wanted",
      `${CUT}${plain(4)}${BLADE(1)}${BLADE(2)}`,
      ["6: Sharp."],
    ],
    [
      "steps of a task count as they stand",
      `${CUT}${plain(2)}task A "A" { ${plain(3)}${BLADE(1)} }\n`,
      ["3.4: Sharp."],
    ],
  ])("%s", (_title, lines, told) => {
    expect(reminders(lines)).toEqual(told);
  });
});

describe("which statement", () => {
  test("the nearest that warns of it, for each hazard; each once, in one step", () => {
    const lining = "step install Lining\n";
    expect(reminders(`${DUST}${EYE}${plain(5)}${lining}`)).toEqual(["6: Dust. Splinters."]);
    expect(reminders(`${DUST}${EYE}${plain(2)}${DUST.replace("Dust.", "More dust.")}${plain(3)}${lining}`)).toEqual([
      "6: Splinters.",
    ]);
    expect(reminders(`warning Dust, eye "Both." avoid "Wait."\n${plain(5)}${lining}`)).toEqual(["6: Both."]);
  });
  test("of hazards of which one is enough, one", () => {
    const load = 'warning crush "Load." avoid "Stand clear."\nwarning lifting "Heavy." avoid "Take care."\n';
    expect(reminders(`${load}${plain(5)}step lift Seat with Hoist\nstep install Seat\n`)).toEqual(["6: Heavy."]);
  });
  test("not one that is for something else, nor one that does not hold there", () => {
    expect(reminders(`${CUT}${DUST}${plain(5)}${BLADE(1)}`)).toEqual(["6: Sharp."]);
    expect(reminders(`task A "A" { ${CUT}${BLADE(1)} }\n${plain(5)}${BLADE(2)}`)).toEqual([]);
    expect(reminders(`${plain(6)}`)).toEqual([]);
  });
  test("what another line of the same step raises, is not another reminder; another step's is its own", () => {
    expect(reminders(`${CUT}${plain(5)}step { install Blade[1] install Blade[2] }\n`)).toEqual(["6: Sharp."]);
    expect(reminders(`${CUT}${DUST}${plain(5)}${BLADE(1)}step install Lining\n`)).toEqual(["6: Sharp.", "7: Dust."]);
  });
});

test("also in what is performed, each procedure once, with the steps of its own", () => {
  const inner = `procedure Inner "Inner" {\n${CUT}${plain(5)}${BLADE(2)}}\n`;
  expect(reminders(`${CUT}${plain(5)}${BLADE(1)}perform Inner\n`, inner)).toEqual(["6: Sharp.", "Inner 6: Sharp."]);
  const twice = inner.replace("install Blade[2]", 'do "Look at it."').replace(CUT, "");
  expect(reminders(`${CUT}${plain(5)}${BLADE(1)}perform Inner\nperform Inner\n`, twice)).toEqual(["6: Sharp."]);
});
