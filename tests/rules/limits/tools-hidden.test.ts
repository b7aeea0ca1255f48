// A tool that a procedure declares hides an outer one of its name (design: language.md, Text): a remedy names what its name leads to.
import { expect, test } from "vitest";
import { findingsIn, told, withFix } from "#harness/check.ts";

const wrench = (more: string): string => `part Cover "cover"
part Nut "nut" { secures Cover }
tool Wrench "outer wrench" { torque 5 .. 50 N·m }
${more}procedure Close {
  tool Wrench "own wrench" { torque 1 .. 2 N·m }
  begin with Cover is installed
  step install Nut
  step tighten Nut to 20 ± 2 N·m with Wrench
}`;

test("a hidden wrench is not offered, another is", () => {
  expect(told(wrench(""), "limits.tool-range")).toContain("→ Name a tool whose range holds the value.");
  const text = wrench('tool Long "long wrench" { torque 5 .. 60 N·m }\n');
  expect(told(text, "limits.tool-range")).toContain("→ Use Long.");
  const found = findingsIn(text).find(({ code }) => code === "limits.tool-range");
  expect(findingsIn(found === undefined ? "" : withFix(text, found)).map(({ code }) => code)).not.toContain(
    "limits.tool-range",
  );
});

test("nor one whose name a part of the procedure takes", () => {
  const text = `tool Depth "depth gauge" { measures 0 .. 50 mm }
tool Short "short gauge" { measures 0 .. 10 mm }
procedure Look {
  part Depth "depth stop"
  step inspect Depth
  step measure "gap" with Short expect 30 .. 31 mm
}`;
  expect(told(text, "limits.tool-range")).toContain("→ Name a tool whose range holds the value.");
});

test("nor a hidden hoist", () => {
  const text = (more: string): string => `part Motor "motor" { mass 300 kg }
tool Hoist "outer hoist" { lifts 500 kg }
${more}procedure Raise {
  tool Hoist "own hoist" { lifts 100 kg }
  step lift Motor with Hoist
}`;
  expect(told(text(""), "limits.overload")).not.toContain("Use Hoist");
  expect(told(text('tool Crane "crane" { lifts 1000 kg }\n'), "limits.overload")).toContain("Use Crane");
});
