// How much oxygen a liquefied gas leaves in the room: worked out where all is said, else told what is lacking. 20.9 %·(1 − Vg/Vr): 10 L that
// become 694 times as much leave 18.5 % in 60 m³ (engineering.md; computed).
import { expect, test } from "vitest";
import { leftOut, workedOut } from "./whole-limits.ts";

const job = (
  line: string,
  head = "room 60 m³",
  says = "expands 694",
): string => `consumable Nitrogen "liquid nitrogen" { ${says} }
part Bush "bush"
procedure Cool {
  ${head}
  step ${line}
}`;

test.each(["apply 10 L of Nitrogen to Bush", "fill Bush with 10 L of Nitrogen"])("%s", (line) => {
  expect(workedOut(job(line))).toEqual([expect.stringMatching(/^1: Nitrogen @ (?:apply|fill) .*: .* 18\.5\d* %$/)]);
  expect(leftOut(job(line))).toEqual([]);
  expect(workedOut(job(line, ""))).toEqual([]);
  expect(leftOut(job(line, ""))).toEqual([expect.stringMatching(/^oxygen \| Nitrogen \| room \| Nitrogen @ /)]);
});

test.each(["apply Nitrogen to Bush", "fill Bush with Nitrogen"])("%s: of how much is not said", (line) => {
  expect(leftOut(job(line))).toEqual([expect.stringMatching(/^oxygen \| Nitrogen \| amount \| Nitrogen @ /)]);
});

test("nothing of what does not expand, nor of what could not be read", () => {
  const line = "apply 10 L of Nitrogen to Bush";
  expect([...workedOut(job(line, "", "flash point 200 °C")), ...leftOut(job(line, "", "flash point 200 °C"))]).toEqual(
    [],
  );
  expect(leftOut(job(line, "", "expands 694  density"), { damaged: true })).toEqual([]);
});
