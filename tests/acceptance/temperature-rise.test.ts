// A rise in temperature that is read: “a temperature is not a temperature difference” (design: language.md, Quantities). 1 K = 1.8 °F
// as an interval (NIST; read), so that 30 K is 54 °F and 1 °C of a thermometer's steps 1.8 °F.
import { expect, test } from "vitest";
import { findingsIn } from "#harness/check.ts";
import { exportText } from "#harness/export.ts";
import { openWorkspace } from "#workspace/workspace.ts";

const job = (line: string, tool = "measures -20 .. 250 °C  resolution 0.5 °C"): string => `part Bearing "bearing"
tool Meter "thermometer" { ${tool} }
crib MainShop { item "T-1" for Meter { measures 0 .. 150 °C  resolution 0.1 K } }
procedure Run "Run the pump" {
  step { inspect Bearing ${line} }
}
`;
const codes = (line: string, tool?: string): readonly string[] =>
  findingsIn(job(line, tool), {}, { crib: "main.sprag" }).map(({ code }) => code);

function checklist(text: string, units: "si" | "us" | "both"): string {
  const texts = new Map([["main.sprag", text]]);
  const workspace = openWorkspace({ texts, present: new Set(), absent: new Set(), today: "2026-05-04" });
  return exportText(workspace, {
    ...{ path: "main.sprag", as: "checklist", format: "md", units },
    ...{ repeats: "compact", draft: false },
  });
}

test.each([
  'check "temperature rise" with Meter expect at most 30 K',
  'check "temperature rise" with Meter expect 20 .. 30 K',
  'measure "temperature rise" with Meter expect at most 30 K',
  'record "temperature rise" 0 .. 30 K with Meter',
  'measure Rise "temperature rise" with Meter expect at most 40 K when Rise at most 30 K { clean Bearing }',
])("within any thermometer's range: %s", (line) => {
  expect(codes(line)).toEqual([]);
});

test("a temperature is held against the range", () => {
  expect(codes('check "temperature" with Meter expect 240 .. 260 °C')).toContain("limits.tool-range");
  expect(codes('check "temperature" with Meter expect 240 .. 245 °C')).toEqual(["trace.no-crib-item"]);
  // What is read in kelvins all along is held against kelvins.
  expect(codes('check "temperature" with Meter expect 70 .. 80 K', "measures 90 .. 300 K")).toContain(
    "limits.tool-range",
  );
});

test("it is printed as a difference in both systems", () => {
  const text = job('measure "temperature rise" with Meter expect at most 30 K record');
  expect(checklist(text, "both")).toContain("at most 30 K (at most 54 °F)");
  expect(checklist(text, "us")).toContain("at most 54 °F");
  for (const units of ["si", "us", "both"] as const) expect(checklist(text, units)).not.toContain("-406 °F");
});

test("so are the steps of a thermometer", () => {
  // Rounded to the safe side: 0.5 °C is 0.9 °F.
  const text = job('check "temperature" with Meter expect 80 .. 90 °C');
  expect(checklist(text, "both")).toContain("resolution 0.5 °C (0.9 °F)");
});
