// A torque on a thread of which neither class nor nut factor is declared: no preload is worked out, and that is said. Design,
// checks.md: what could not be checked for want of data is listed; silence is never to be read as a pass.
import { expect, test } from "vitest";
import { leftOut } from "./whole-limits.ts";

const job = (part: string): string => `tool Wrench "wrench" { torque 1 .. 200 N·m }
part Cover "cover"
part Screw "screw" {
  secures Cover
  ${part}
}
procedure Close {
  step install Cover, Screw
  step tighten Screw to 45 ± 4 N·m with Wrench
}`;
const CLASS = ["preload | Screw | class or grade | Screw @ tighten Screw"];

test.each<[part: string, told: readonly string[]]>([
  ['thread "M10x1.5"', CLASS],
  ['thread "M10x1.5"  torque 45 ± 4 N·m dry', CLASS],
  ['thread "3/8-16 UNC"', CLASS],
  ['thread "M10x1.5"  class "8.8"', ["preload | Screw | nut factor | dry | Screw @ tighten Screw"]],
  // Nothing is left out where all is said, nor of a plug that says nothing of a thread.
  ['thread "M10x1.5"  class "8.8"  nut factor 0.2 dry', []],
  ["torque 45 ± 4 N·m dry", []],
])("%s", (part, told) => {
  expect(leftOut(job(part))).toEqual(told);
});
