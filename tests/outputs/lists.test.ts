// The lists ahead of the work. Source: outputs.md: “tool list …, consumables, parts, time”.
import { expect, test } from "vitest";
import { documentAs, make } from "./make.ts";
import { around } from "./procedures.ts";

const TEXT = `tool Hoist "chain hoist" { lifts 500 kg }
tool Gauge "feeler gauge" { measures 0.03 .. 1 mm }
part Base "base"
part Cover[1..3] "cover" { mass 60 kg }
part Pump "pump" { mass 80 kg }
procedure Move "Move the covers" {
  begin with Cover[all] are installed, Pump is installed
  repeat n from 1 to 3 {
    step lift Cover[n] with Hoist
    step remove Cover[n]
    step { check "Gap" with Gauge expect at most 0.1 mm }
  }
  step lift Pump with Hoist
  step lift Cover[1] with Hoist
}
`;

test("a hoist is there for what it lifts, each once", () => {
  const { document, md } = make(TEXT);
  expect(document.tools.map(({ name, lifts, used }) => [name, lifts, used])).toEqual([
    ["Hoist", ["covers 1–3 and the pump"], []],
    ["Gauge", [], ["at most 0.1 mm (at most 0.003 in)"]],
  ]);
  expect(md).toContain("| chain hoist | lifts 500 kg (1103 lb) | covers 1–3 and the pump | Hoist |");
});

test("of a trainee only values are asked", () => {
  const tools = documentAs("trainee", TEXT).tools;
  expect(tools.map(({ lifts, used }) => [lifts, used])).toEqual([
    [["covers 1–3 and the pump"], []],
    [[], ["asked for in the steps"]],
  ]);
});

test("a limit that stands alone is said as at its step, several as the range that the tool has to have", () => {
  const used = (lines: string): readonly string[] =>
    make(around(lines)).document.tools.flatMap(({ used: told }) => told);
  // 22 and 26 N·m are 16.23 and 19.18 lbf·ft (1.355 818 N·m, NIST SP 811): inwards, and never 16.2 .. 19.2.
  const one = "step tighten Screw[1] to 24 ± 2 N·m with Wrench";
  expect(used(one)).toEqual(["24 ± 2 N·m (16.3 .. 19.1 lbf·ft)"]);
  expect(used(`${one} step tighten Screw[2] to 24 ± 2 N·m with Wrench`)).toEqual(["24 ± 2 N·m (16.3 .. 19.1 lbf·ft)"]);
  // 42 N·m are 30.98 lbf·ft: outwards.
  expect(used(`${one} step tighten Screw[2] to 40 ± 2 N·m with Wrench`)).toEqual([
    "22 .. 42 N·m (16.2 .. 31.0 lbf·ft)",
  ]);
});
