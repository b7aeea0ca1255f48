// limits.overload: 23 kg for one person (NIOSH 94-110, second); two lift two thirds of the sum with care, three half (HSE, read).
import { expect, test } from "vitest";
import { expectFindings, findingsIn, told } from "#harness/check.ts";

const hand = (mass: string, crew: string, severity: string | null, shop = ""): string => `${shop}
part Cover "cover" { mass ${mass} }
procedure Lift {
  ${crew}
  step lift Cover by hand
${severity === null ? "" : `  //   ^^^^^^^^^^ limits.overload ${severity}\n`}  step install Cover
}`;

test.each([
  ["23.1 kg", "", "error"],
  ["23 kg", "", null],
  ["51 lb", "", "error"],
  ["50 lb", "", null],
  ["46.1 kg", "crew 2", "error"],
  ["46 kg", "crew 2", "warning"],
  ["30.7 kg", "crew 2", "warning"],
  ["30.6 kg", "crew 2", null],
  ["69.1 kg", "crew 3", "error"],
  ["34.6 kg", "crew 3", "warning"],
  ["34.5 kg", "crew 3", null],
  ["22 .. 24 kg", "crew 1", "error"],
])("by hand: %s, %s: %s", (mass, crew, severity) => {
  expectFindings(hand(mass, crew, severity));
});

test("the shop's own limit", () => {
  expectFindings(hand("20.5 kg", "crew 1", "error", "threshold lifting 20 kg"));
  expectFindings(hand("20 kg", "crew 1", null, "threshold lifting 20 kg"));
});

const hoist = (lifts: string, verb: string, found: boolean): string => `tool Hoist "hoist" { lifts ${lifts} }
part Housing "housing" { mass 58 kg }
part Bush "bush" { mass 2 kg }
part Pin "pin" { mass 0.5 kg }
option WithBush { yes no }
procedure Lift {
  when WithBush is yes {
    step install Bush in Housing
    step install Pin in Bush
  }
  step ${verb} Housing with Hoist
${found ? `  //   ${"^".repeat(verb.length + 8)} limits.overload error\n` : ""}  step install Housing
}`;

test("a tool, with all that is on the part", () => {
  expectFindings(hoist("57 kg", "lift", true));
  expectFindings(hoist("60 kg", "lift", true));
  expectFindings(hoist("60.4 kg", "support", true));
  expectFindings(hoist("60.5 kg", "lift", false));
});

test("for the choice that puts something on it, and only for that", () => {
  const found = findingsIn(hoist("60 kg", "lift", false)).filter(({ code }) => code !== "safety.missing");
  expect(found.map(({ code, options }) => [code, options])).toEqual([["limits.overload", [{ WithBush: "yes" }]]]);
  expect(told(hoist("60 kg", "lift", true), "limits.overload")).toMatchInlineSnapshot(`
    "Housing is too heavy for Hoist.
      The load is 60.5 kg, with Bush and Pin on it. The limit is 60 kg.
      This happens when WithBush is yes.
    → Name a tool that lifts as much.
    &1 The limit is declared here"
  `);
});

test("silent: no mass, or a tool that says nothing", () => {
  expectFindings(hoist("57 kg", "lift", false).replace(" { mass 58 kg }", ""));
  expectFindings(hoist("57 kg", "lift", false).replace(" { lifts 57 kg }", ""));
});
