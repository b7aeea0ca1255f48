// Findings that came or went with a change: one that is graver now, or holds for other choices, is told; other numbers are not.
// Source: outputs.md, Review: “Each entry names … the findings that came or went with it”.
import { describe, expect, test } from "vitest";
import { reviewText } from "#review/forms/text.ts";
import { linesOf, reviewed } from "./compare-texts.ts";

const TIGHT = `source Manual "manual" revision "1"
part Cover "cover"
part Bolt "bolt" { secures Cover thread "M10" class "8.8" nut factor 0.2 dry }
tool Wrench "torque wrench" { torque 10 .. 200 N·m }
procedure Close "Close the cover" {
  begin with Cover is installed
  step install Bolt
  step { tighten Bolt to 60 ± 2 N·m with Wrench per Manual "1" }
}
`;

// Proof load of M10 in 8.8: 580 N/mm² · 58.0 mm² = 33.6 kN (ISO 898-1; from memory). With K = 0.2 the preload is T/(0.2 · 10 mm): at
// most 31 kN of 60 ± 2 N·m and 31.5 kN of 61 ± 2 N·m, both near the proof load; 46 kN of 90 ± 2 N·m, above it.
describe("severity", () => {
  const to = (torque: string): string => TIGHT.replace("60 ± 2 N·m", torque);
  const codes = (old: string, now: string): readonly string[] =>
    reviewed({ "a.sprag": old }, { "a.sprag": now }).changes.flatMap(({ findings }) => [
      ...(findings?.came ?? []).map(({ severity, code }) => `+${severity} ${code}`),
      ...(findings?.went ?? []).map(({ severity, code }) => `-${severity} ${code}`),
    ]);

  test("a warning that is an error now", () => {
    expect(codes(TIGHT, to("90 ± 2 N·m"))).toEqual(["+error limits.overtorque", "-warning limits.overtorque"]);
  });

  test("an error that is a warning now", () => {
    expect(codes(to("90 ± 2 N·m"), TIGHT)).toEqual(["+warning limits.overtorque", "-error limits.overtorque"]);
  });

  test("other numbers in the text of the finding alone are no news", () => {
    expect(codes(TIGHT, to("61 ± 2 N·m"))).toEqual([]);
    expect(codes(to("90 ± 2 N·m"), to("95 ± 2 N·m"))).toEqual([]);
  });

  test("goes with the change that it speaks of", () => {
    const lift = (crew: number, time: string): string => `part Ring "ring" { mass 40 kg }
part Cover "cover" {}
procedure Lift "Lift the ring" {
  crew ${crew}
  warning lifting "The ring is heavy." avoid "Lift together."
  step lift Ring by hand
  step set down Ring
  step { clean Cover takes ${time} }
}
`;
    // checks.md, limits.overload: 23 kg for each of the crew, of two a warning above two thirds of the sum (30.7 kg).
    expect(linesOf(reviewed({ "a.sprag": lift(2, "5 min") }, { "a.sprag": lift(1, "6 min") }))).toEqual([
      "values crew-changed Crew: 2 → 1. +limits.overload -limits.overload",
      expect.stringMatching(/^values time-changed \[3\] .*min\.$/),
    ]);
  });
});

describe("choices", () => {
  const text = (condition: string, choices = "a b c", also = ""): string => `option Extent "extent" { ${choices} }
${also}part Seal "seal"
part Cover "cover" { needs Seal }
procedure Close "Close the cover" {
  when ${condition} { step Put { install Seal } }
  step Get { install Cover }
}
`;
  const lines = (old: string, now: string): readonly string[] =>
    linesOf(reviewed({ "a.sprag": old }, { "a.sprag": now }));

  test("one that now holds for more choices is told with them", () => {
    const report = reviewed({ "a.sprag": text("Extent is a or Extent is b") }, { "a.sprag": text("Extent is a") });
    expect(report.changes).toHaveLength(1);
    expect(report.changes[0]?.findings?.came.map(({ options }) => options)).toEqual([
      [{ Extent: "b" }, { Extent: "c" }],
    ]);
    expect(report.changes[0]?.findings?.went.map(({ options }) => options)).toEqual([[{ Extent: "c" }]]);
    expect(reviewText(report)).toContain("which is not installed. (when Extent is b, or Extent is c)\n");
  });

  test("one that holds for fewer choices is told too", () => {
    expect(lines(text("Extent is a"), text("Extent is a or Extent is b"))).toEqual([
      expect.stringMatching(/^order condition-changed \[1\].* \+order\.missing-support -order\.missing-support$/),
    ]);
  });

  test("the same choices in another order or under another name are no news", () => {
    const old = text("Extent is a");
    expect(lines(old, text("Extent is a", "c b a")).filter((line) => line.includes("missing-support"))).toEqual([]);
    for (const renamed of [text("Extent is whole", "whole b c"), old.replaceAll("Extent", "Amount")])
      expect(lines(old, renamed).filter((line) => line.includes("missing-support"))).toEqual([]);
  });

  test("two options declared in the other order say the same in another partition", () => {
    const [one, other] = [`option Kind "kind" { d e }\n`, `option Extent "extent" { a b c }\n`];
    const rest = text("Extent is a and Kind is d").replace(other, "");
    expect(lines(one + other + rest, other + one + rest)).toEqual([expect.stringMatching(/^layout /)]);
  });

  test("a choice that is added and not provided for", () => {
    expect(lines(text("Extent is a", "a b"), text("Extent is a", "a b c"))).toEqual([
      expect.stringMatching(/ \+order\.missing-support -order\.missing-support$/),
    ]);
  });

  test("what none of several changes brought is told by itself, in one entry", () => {
    const spare = (choices: string, mass: string): string =>
      text("Extent is a", choices, `part Spare "spare" { mass ${mass} }\n`).replace(
        "  step Get",
        "  step clean Spare\n  step Get",
      );
    const told = lines(spare("a b", "2 kg"), spare("a b c", "3 kg"));
    expect(told.filter((line) => line.includes("missing-support"))).toEqual([
      expect.stringMatching(
        /^order finding-choices-changed \[3\] A finding holds for other choices than before: .* \+order\.missing-support -order\.missing-support$/,
      ),
    ]);
  });
});
