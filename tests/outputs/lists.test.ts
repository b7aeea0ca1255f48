// The lists ahead of the work. Source: outputs.md: “tool list …, consumables, parts, time”.
import { expect, test } from "vitest";
import { documentAs, make } from "./make.ts";

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
