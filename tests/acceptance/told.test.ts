// What a finding tells: the order that goes wrong, a fix that makes it right and not worse, and no word that is untrue.
import { expect, test } from "vitest";
import type { ReportedFinding } from "#workspace/report.ts";
import { findingsOf } from "./compare.ts";

const SHOP = `energy Supply "motor supply" { voltage 400 V AC }
part Motor "motor" { driven by Supply }
part Shaft "shaft"
part Key "key" { needs Shaft }
part Wheel "wheel" { needs Key }
part Screw[1..4] "screw" { secures Motor  thread "M8x1.25" }
consumable Grease "grease"
tool Tester "voltage tester"
`;

test.each([
  ["Supply is isolated", "", "isolate"],
  ["not Supply is live", "", "isolate"],
  ["Supply is not live", "", "isolate"],
  ["Supply is live", "begin with Supply is isolated", "restore"],
  ["Key is removed", "begin with Shaft is installed, Key is installed", "remove"],
  ["Key is not removed", "begin with Shaft is installed", "install"],
  ["Key is installed", "begin with Shaft is installed", "install"],
])("a fix for “needs %s” does that and not its opposite", (need, begin, verb) => {
  const text = `${SHOP}procedure Work "Work" {\n${begin}\nstep "Look." { needs ${need} }\n}`;
  const [finding, ...others] = findingsOf(text, "order.unmet-need");
  expect(others).toEqual([]);
  const verbs = (finding?.fixes ?? []).flatMap(({ edits }) => edits.map(({ newText }) => verbIn(newText)));
  expect(verbs.filter((word) => word !== verb)).toEqual([]);
});

test("in any order: the finding says in which order it goes wrong", () => {
  const text = `${SHOP}procedure Work "Work" {
  begin with Shaft is installed
  finish with Wheel is installed
  in any order {
    step install Key
    step install Wheel
  }
}`;
  const [finding] = findingsOf(text, "order.missing-support");
  expect(finding === undefined ? "" : wordsOf(finding)).toMatch(/\border\b|\bfirst\b|before step 1/);
});

test("proved once, isolated again: nothing is said of another energy", () => {
  const text = `${SHOP}procedure Work "Work" {
  begin with Motor is installed
  step isolate Supply
  step prove Supply dead with Tester
  step clean Motor
  step restore Supply
  step isolate Supply
  step clean Motor
  step restore Supply
}`;
  const [finding] = findingsOf(text, "order.not-proved");
  expect(finding === undefined ? "another energy" : wordsOf(finding)).not.toMatch(/another energy/i);
});

test("a branch that can never be taken is so for every choice", () => {
  const text = `option Extent "extent" { Full Part Look }
part Disc "disc"
procedure Work "Work" {
  when Extent is Look { stop "Hand it over." }
  step {
    clean Disc
    when Extent is Look { inspect Disc }
  }
}`;
  const [finding] = findingsOf(text, "flow.impossible-condition");
  expect(finding?.message).toContain("Extent is Look");
  expect(finding?.options ?? []).toEqual([]);
});

test("wiped off unused: it was not cleaned before, so it is not cleaned “again”", () => {
  const text = `${SHOP}procedure Work "Work" {
  begin with Shaft is installed
  step lubricate Shaft with Grease
  step clean Shaft
}`;
  const [finding] = findingsOf(text, "order.wasted");
  expect(finding === undefined ? "again" : finding.message).not.toMatch(/\bagain\b/);
});

test("four screws left loose in one action are all named or counted", () => {
  const text = `${SHOP}procedure Work "Work" {
  begin with Motor is installed, Supply is isolated
  finish with Supply is isolated
  step install Screw[all]
}`;
  const [finding, ...others] = findingsOf(text, "order.not-final");
  expect(others).toEqual([]);
  expect(finding === undefined ? "" : wordsOf(finding)).toMatch(
    /3 more|Screw\[(?:all|1\.\.4)\]|Screw\[2\], Screw\[3\] and Screw\[4\]|4 screws/,
  );
});

test("lifted wet, the sentence begins with a capital", () => {
  const text = `consumable Sealant "sealant" { cure 1 h }
energy Supply "supply" { voltage 400 V AC }
part Cover "cover" { mass 40 kg }
part Pump "pump" { driven by Supply }
tool Hoist "hoist" { lifts 100 kg }
procedure Work "Work" {
  begin with Pump is installed, Supply is isolated
  step apply Sealant to Pump, Cover
  step lift Cover with Hoist
  step set down Cover
  step restore Supply
}`;
  const messages = findingsOf(text, "order.uncured").map(({ message }) => message);
  expect(messages.length).toBeGreaterThan(0);
  expect(messages.filter((message) => !/^\p{Lu}/u.test(message))).toEqual([]);
});

function verbIn(text: string): string {
  return /\b(?:install|remove|isolate|restore|prove)\b/.exec(text)?.[0] ?? text;
}

function wordsOf({ message, why = "", remedy = "", witness = [] }: ReportedFinding): string {
  return [message, why, remedy, ...witness.map((remark) => remark.message)].join("\n");
}
