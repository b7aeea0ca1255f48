// A threshold that the shop set and nobody can read may be any: nothing is said that rests on it, and what does not rest on it stands
// (checks.md: a rule is quiet where it can't know). Defaults: 90 % of the proof load, 23 kg for one person (NIOSH 94-110; second).
import { describe, expect, test } from "vitest";
import { limitsAt } from "./whole-limits.ts";

const UNREADABLE = { damaged: true };

describe("preload", () => {
  const job = (threshold: string, torque: string): string => `${threshold}
tool Wrench "wrench" { torque 1 .. 200 N·m }
part Cover "cover"
part Screw "screw" { secures Cover  thread "M10x1.5"  class "8.8"  nut factor 0.2 dry }
procedure Close {
  step install Cover, Screw
  step tighten Screw to ${torque} with Wrench
}`;
  // F = T/(K·d), proof load 33.6 kN (ISO 898-1; second): 64 N·m are 95.1 %, 80 N·m 119 %, 20 N·m 29.7 %.
  test.each<[threshold: string, torque: string, found: readonly string[]]>([
    ["", "64 N·m", ["preload above share: 64 N·m"]],
    ["threshold preload 85 N", "64 N·m", []],
    // A name that is none may be meant for it, where the kind is right.
    ["threshold prelaod 97 %", "64 N·m", []],
    ["threshold liftng 30 kg", "64 N·m", ["preload above share: 64 N·m"]],
    ["threshold preload 97 %", "64 N·m", []],
    // The proof load itself, and two fifths of it, are not the shop's to set.
    ["threshold preload 85 N", "80 N·m", ["preload above proof: 80 N·m"]],
    ["threshold preload 85 N", "20 N·m", ["preload low: 20 N·m"]],
  ])("%j: %s", (threshold, torque, found) => {
    expect(limitsAt(job(threshold, torque), UNREADABLE)).toEqual(found);
  });
});

describe("lifting", () => {
  const job = (threshold: string): string => `${threshold}
part Load "load" { mass 30 kg }
procedure Lift {
  step lift Load by hand
}`;
  test.each<[threshold: string, found: readonly string[]]>([
    ["", ["overload hands: lift Load"]],
    ["threshold lifting 25 N", []],
    ["threshold lifting -3 kg", []],
    ["threshold liftng 30 kg", []],
    ["threshold prelaod 97 %", ["overload hands: lift Load"]],
    ["threshold burn 55 °C", ["overload hands: lift Load"]],
  ])("%j", (threshold, found) => {
    expect(limitsAt(job(threshold), UNREADABLE)).toEqual(found);
  });
});
