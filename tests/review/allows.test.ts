// An `allow` that is widened or narrowed is one change with its reason; and what a changed step takes along.
import { expect, test } from "vitest";
import { canonical, carriedOut } from "./carry-out.ts";
import { changesFrom, linesOf, reviewed, workspaceOf } from "./compare-texts.ts";

const REASON = `allow order.not-final because "closed on the next shift" by "Q. Lead"`;

function withAllow(where: "step" | "task" | "procedure" | "nowhere", reason = REASON): string {
  const at = (place: typeof where): string => (place === where ? reason : "");
  return `part Cover "cover" { mass 3 kg }
procedure Open "Open the housing" {
  begin with Cover is installed
  ${at("procedure")}
  task Taking "Take the cover off" {
    ${at("task")}
    step Off { remove Cover ${at("step")} }
  }
}`;
}

function told(old: string, now: string): readonly string[] {
  return linesOf(reviewed({ "a.sprag": old }, { "a.sprag": now }));
}

test.each([
  ["step", "task", "widened from step 1.1 to task 1 “Take the cover off”"],
  ["task", "procedure", "widened from task 1 “Take the cover off” to the whole procedure"],
  ["procedure", "step", "narrowed from the whole procedure to step 1.1"],
] as const)("from %s to %s it is %s", (from, to, words) => {
  const [line, ...more] = told(withAllow(from), withAllow(to));
  expect(more).toEqual([]);
  expect(line).toMatch(/^safety allow-(widened|narrowed) /);
  expect(line).toContain(`Allowed finding ${words}: order.not-final, because “closed on the next shift” (Q. Lead).`);
  const [old, now] = [from, to].map((where) => workspaceOf({ "a.sprag": withAllow(where) }));
  if (old === undefined || now === undefined) throw new Error("two sides are needed");
  const { changes, plain } = changesFrom(old, now);
  expect(canonical(carriedOut(plain.old, changes))).toEqual(canonical(plain.new));
});

test("one that is added takes its finding away, one that is dropped brings it back", () => {
  expect(told(withAllow("nowhere"), withAllow("step"))).toEqual([
    "safety allow-added [1.1] Allowed finding added: order.not-final, because “closed on the next shift” (Q. Lead). -order.not-final",
  ]);
  expect(told(withAllow("step"), withAllow("nowhere"))).toEqual([
    "safety allow-dropped [1.1] Allowed finding dropped: order.not-final, because “closed on the next shift” (Q. Lead). +order.not-final",
  ]);
});

test("another reason is a matter of safety", () => {
  const other = withAllow("step", REASON.replace("next shift", "same day"));
  expect(told(withAllow("step"), other).map((line) => line.slice(0, 31))).toEqual(["safety allow-changed [1.1] Allo"]);
});
