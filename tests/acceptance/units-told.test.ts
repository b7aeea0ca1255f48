// One sentence, one unit: what is to be compared stands in the writer's unit on both sides.
import { expect, test } from "vitest";
import { told } from "#harness/check.ts";

// M8 of class 8.8 bears 21.2 kN (ISO 898-1; second), which is 4766 lbf at 4.4482216 N each (NIST SP 811; from memory).
const tighten = (torque: string): string => `part Cover "cover"
part Screw "screw" { secures Cover  thread "M8"  class "8.8"  nut factor 0.2 dry }
tool Wrench "wrench" { torque 1 .. 300 lbf·in }
procedure Close {
  begin with Cover is installed
  step install Screw
  step tighten Screw to ${torque} with Wrench
}`;

test("preload and proof load, above and below", () => {
  const over = told(tighten("270 .. 290 lbf·in"), "limits.overtorque");
  expect(over).toMatch(/the preload is \d+ lbf, [\d.]+ % of the proof load of 4770 lbf/);
  const under = told(tighten("60 .. 80 lbf·in"), "limits.undertorque");
  expect(under).toMatch(/the preload is \d+ lbf, [\d.]+ % of the proof load of 4770 lbf/);
  expect(told(tighten("32 .. 33 N·m"), "limits.overtorque")).toMatch(
    /is [\d.]+ kN, [\d.]+ % of the proof load of 21\.\d kN/,
  );
});

test("a time limit and the time that it takes", () => {
  const late = (within: string, takes: string): string => `part Cover "cover"
procedure Look {
  step Coat { inspect Cover takes 1 min }
  step { inspect Cover within ${within} after Coat takes ${takes} }
}`;
  expect(told(late("60 s", "130 s"), "order.too-late")).toContain("Wanted: at most 60 s\n  Found: up to 130 s");
  expect(told(late("90 s", "130 s"), "order.too-late")).toContain("Wanted: at most 90 s\n  Found: up to 130 s");
  expect(told(late("5 min", "390 s"), "order.too-late")).toContain("Wanted: at most 5 min\n  Found: up to 6.5 min");
});
