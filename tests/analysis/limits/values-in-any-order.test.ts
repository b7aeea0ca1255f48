// Inside `in any order` every order must be right (language.md): also where an action needs nothing that the other one gives, and
// only what is found of its values, or of its hazards, rests on the order. Each block is written in the order that is right.
import { describe, expect, test } from "vitest";
import { findingsIn } from "#harness/check.ts";

const SHOP = `material Steel "steel" { expansion 11.7 µm/(m·K)  heat limit 300 °C }
tool Wrench "wrench" { torque 5 .. 60 N·m }
tool Heater "heater" { heats to 300 °C }
tool Hoist "hoist" { lifts 41 kg }
consumable Grease "grease"
energy Supply "supply" { voltage 400 V AC }
part Shaft "shaft" { material Steel }
part Seal "seal"
part Key "key"
part Frame "frame" { mass 40 kg }
part Bush "bush" { mass 2 kg }
part Cover "cover" { mass 60 kg }
part Screw[1..2] "screw" { secures Cover }
part Rotor "rotor" { driven by Supply }
part Guard "guard" { encloses Rotor }
part Stud "stud"
part Nut "nut" { nut factor 0.2 dry  torque 45 N·m with Grease }
part Hub "hub" { material Steel  cools 0.1 K/s }
part Rim "rim" { material Steel }
fit Hub over Shaft { diameter 60 mm  interference 11 .. 36 µm  slip clearance 15 µm }
fit Rim over Hub { diameter 90 mm  interference 10 .. 40 µm }
`;

/** What is found of values and hazards, but what needs no order to be so. */
function found(before: string, children: readonly string[], inAnyOrder = true): readonly string[] {
  const block = children.map((child) => `  step ${child}\n`).join("");
  const text = `${SHOP}procedure Work "Work" {\n${before}\n${inAnyOrder ? `in any order {\n${block}}` : block}\n}\n`;
  return findingsIn(text)
    .filter(({ code }) => /^(?:limits|safety)\./.test(code))
    .filter(({ code }) => !["limits.no-tool", "limits.no-heat-limit", "limits.no-condition"].includes(code))
    .map(({ code, range: { start, end } }) => {
      const line = text.split("\n")[start.line] ?? "";
      return `${code}: ${line.slice(start.character, end.line === start.line ? end.character : undefined)}`;
    });
}

describe.each<[title: string, before: string, children: readonly string[], found: readonly string[]]>([
  [
    "hands on what another step makes hot",
    "step install Shaft",
    ["clean Shaft", "heat Shaft to 80 .. 90 °C with Heater"],
    ["safety.missing: clean Shaft"],
  ],
  [
    "hands on what it goes on",
    "step install Shaft",
    ["install Seal over Shaft", "heat Shaft to 80 .. 90 °C with Heater"],
    ["safety.missing: install Seal"],
  ],
  [
    "what is lined up with what another step makes hot",
    "step install Shaft\nstep install Seal",
    ["align Seal with Shaft", "heat Shaft to 80 .. 90 °C with Heater"],
    ["safety.missing: align Seal"],
  ],
  [
    "a guard taken off what is live",
    "begin with Guard is installed",
    ["isolate Supply", "remove Guard"],
    ["safety.missing: remove Guard"],
  ],
  [
    "the same, thrown away",
    "begin with Guard is installed",
    ["isolate Supply", "discard Guard"],
    ["safety.missing: discard Guard"],
  ],
  [
    "what is on a part that is supported",
    "",
    ["support Frame with Hoist", "install Bush in Frame"],
    ["limits.overload: support Frame"],
  ],
  [
    "what is on the stud that a nut goes on",
    "step install Stud\nstep install Nut on Stud",
    ["lubricate Stud with Grease", "tighten Nut to 45 N·m with Wrench"],
    ["limits.torque-condition: tighten Nut"],
  ],
  [
    "one of several that cools on the way",
    "step install Shaft\nstep Hot { heat Hub to 98 .. 110 °C with Heater }",
    ["install Hub, Key", "{ inspect Frame takes 1 min }"],
    ["limits.too-cool-to-fit: 98 .. 110 °C", "safety.missing: install Hub, Key"],
  ],
  [
    "what it goes into cools on the way",
    "step Hot { heat Hub to 98 .. 110 °C with Heater }",
    ["install Shaft in Hub", "{ inspect Frame takes 1 min }"],
    ["limits.too-cool-to-fit: 98 .. 110 °C"],
  ],
])("%s", (_title, before, children, wanted) => {
  test("in any order", () => {
    for (const one of wanted) expect(found(before, children)).toContain(one);
  });
  test("as written, without it, only what does not rest on the order", () => {
    const written = found(before, children, false);
    const [first = ""] = wanted;
    expect(written).not.toContain(first);
  });
  test("and with the other order written, the same", () => {
    expect(found(before, [...children].reverse(), false)).toContain(wanted[0]);
  });
});

test("what shares nothing is found nothing of, in whatever order", () => {
  expect(found("step install Shaft", ["clean Key", "heat Shaft to 80 .. 90 °C with Heater"])).toEqual([]);
  expect(found("", ["support Frame with Hoist", "install Bush in Seal"])).toEqual([]);
  expect(found("begin with Guard is installed", ["isolate Supply", "remove Key"].slice(0, 1))).toEqual([]);
});
