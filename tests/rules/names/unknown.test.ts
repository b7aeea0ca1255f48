// names.unknown: names of every sort of thing, the nearest offered, and names that are something else.
import { expect, test } from "vitest";
import { expectFindings, findingsIn, told, withFix } from "#harness/check.ts";

const FIT = (line: string): string => `part Cover "bearing cover"
part Seal "shaft seal"
tool Puller "bearing puller"

procedure CloseUp "Close the housing" {
  step install Cover, Seal with Puller
  ${line}
}
`;

test("a part that is misspelt", () => {
  expectFindings(
    FIT(`step inspect Covr
  //           ^^^^ names.unknown`),
  );
  expect(told(FIT("step inspect Covr"), "names.unknown")).toMatchInlineSnapshot(`
    "“Covr” is not declared.
      The name of a part belongs here.
    → Probably Cover is meant.
    + Write Cover"
  `);
});

test("a capital that is missing is told, and the right one offered first", () => {
  expect(told(FIT("step inspect cover"), "names.unknown")).toContain("Probably Cover is meant.");
});

test("nothing near: what belongs there, and nothing offered", () => {
  expect(told(FIT("step inspect Impeller"), "names.unknown")).toMatchInlineSnapshot(`
    "“Impeller” is not declared.
      The name of a part belongs here.
    → Declare Impeller, or write the name of a part."
  `);
});

test("a tool where a part belongs, with where it is declared", () => {
  expectFindings(
    FIT(`step inspect Puller
  //           ^^^^^^ names.unknown`),
  );
  expect(told(FIT("step inspect Puller"), "names.unknown")).toMatchInlineSnapshot(`
    "Puller is a tool, and a part belongs here.
    → Write the name of a part.
    &3 Puller is declared here as a tool"
  `);
});

test.each([
  ["a tool", "step clean Cover with Puler", "Puler"],
  ["a state", "step { needs Cover is instaled }", "instaled"],
  ["a role", "step { inspect Cover sign Fiter }", "Fiter"],
  ["a source", 'step { inspect Cover per Manuel "2" }', "Manuel"],
  ["a step", "step { inspect Cover after Closing }", "Closing"],
  ["a loop variable", "repeat n in 1, 2 { step inspect Cover, Seal[m] }", "m"],
  ["a hazard", 'warning burnt "Hot." step inspect Cover', "burnt"],
  ["a value", "step wait SoakTime", "SoakTime"],
])("%s that is not declared", (_title, line, name) => {
  const text = FIT(line);
  const found = findingsIn(text).filter(({ code }) => code === "names.unknown");
  expect(found.map(({ message }) => message)).toEqual([`“${name}” is not declared.`]);
});

test("silent: built-in states and hazards, names of steps and of used files", () => {
  expectFindings(`use "shop/tools.sprag"

part Cover "bearing cover"

procedure CloseUp "Close the housing" {
  warning burn "The cover is hot." avoid "Wear gloves." wear "gloves"
  step Fit { install Cover with Puller }
  step {
    needs Cover is installed
    inspect Cover
    after Fit
  }
}
// file: shop/tools.sprag
tool Puller "bearing puller"
`);
});

test("names of a used file's used file are not passed on", () => {
  expectFindings(`use "shop/tools.sprag"

part Cover "bearing cover"

procedure CloseUp "Close the housing" {
  step install Cover with Puller
  step inspect Cover with Lamp
  //                      ^^^^ names.unknown
}
// file: shop/tools.sprag
use "lamps.sprag"

tool Puller "bearing puller"
// file: shop/lamps.sprag
tool Lamp "inspection lamp"
`);
});

test("inside hides outside, and only inside", () => {
  expectFindings(`part Shaft "pump shaft"

procedure One "Look at one" {
  part Plug "plug"
  step inspect Plug, Shaft
}
procedure Two "Look at another" {
  step inspect Plug
  //           ^^^^ names.unknown
}`);
});

test("the fix writes the nearest, and nothing is left", () => {
  const text = FIT("step inspect Covr");
  const [found] = findingsIn(text);
  const mended = found === undefined ? "" : withFix(text, found);
  expect(mended).toBe(FIT("step inspect Cover"));
  expect(findingsIn(mended)).toEqual([]);
});

test("one finding a name: what was meant is gone on with", () => {
  expectFindings(`part Cover "bearing cover"

procedure CloseUp "Close the housing" {
  finish with Cover is installed
  step install Covr
  //           ^^^^ names.unknown
}`);
});
