// What an output says of temperatures that fits are worked out from. Source: engineering.md, Heat and fits: “With no ambient declared,
// 20 °C, and the output says so”; Cautions: “if it sticks, take it off and heat again” is said of heating.
import { expect, test } from "vitest";
import { de } from "#outputs/words/de.ts";
import { en, type Words } from "#outputs/words/en.ts";
import { make, type Wishes } from "./make.ts";

const text = (lines: string): string => `part Ring "ring"
tool Heater "heater" { heats to 200 °C }
procedure Fit "Fit the ring" { ${lines} }
`;
const HEAT = "step heat Ring to 100 .. 110 °C with Heater";
const COOL = "step cool Ring to -60 .. -50 °C";

function ambient(lines: string, words: Words = en, wishes: Wishes = {}): readonly string[] {
  const { facts } = make(text(lines), wishes, words).document.head;
  return facts.find(({ label }) => label === words.labels.ambient)?.values ?? [];
}

test.each([
  ["heated", HEAT],
  ["cooled", COOL],
])("no ambient is declared: 20 °C, and it says so (%s)", (_, lines) => {
  expect(ambient(lines)).toEqual(["20 °C (68 °F), taken since none is declared"]);
  expect(ambient(lines, en, { units: "us" })).toEqual(["68 °F, taken since none is declared"]);
  expect(ambient(lines, de)).toEqual(["20 °C (68 °F), angenommen, weil keine angegeben ist"]);
});

test("one that is declared stands alone", () => {
  expect(ambient(`ambient 15 .. 25 °C ${HEAT}`, en, { units: "si" })).toEqual(["15 .. 25 °C"]);
});

test("where nothing is heated or cooled it is not asked for", () => {
  expect(ambient("step clean Ring")).toEqual([]);
});

test.each([
  [HEAT, true, false],
  [COOL, false, true],
  [`${HEAT} ${COOL}`, true, true],
])("%s: what is cold is not treated as hot", (lines, hot, cold) => {
  for (const words of [en, de]) {
    const { cautions } = make(text(lines), {}, words).document;
    expect([cautions.includes(words.cautions.heating), cautions.includes(words.cautions.cooling)]).toEqual([hot, cold]);
  }
  expect(en.cautions.cooling).not.toMatch(/\bhot\b|\bheat/);
});
