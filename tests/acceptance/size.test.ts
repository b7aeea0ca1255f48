// Large texts: forty options that act on the same parts, many things in any order, long repeats. Right, and in good time.
import { expect, test } from "vitest";
import { compare, findingsOf } from "./compare.ts";

const forty = Array.from({ length: 40 }, (_, at) => at + 1);
const OPTIONS = forty.map((n) => `option Has${n} "port ${n} is there" { yes no }`).join("\n");
const SHOP = `energy Supply "supply" { voltage 400 V AC }
part Motor "motor" { driven by Supply }
part Plug "plug"
part Lever "lever" { states shut, open }
part Screw[1..40] "screw" { secures Motor  thread "M8x1.25"  driven by Supply }
tool Tester "tester"
tool Wrench "torque wrench" { torque 5 .. 60 N·m }
consumable Oil "oil"
`;

function work(head: string, steps: readonly string[]): string {
  return `${OPTIONS}\n${SHOP}procedure Work "Work" {\n${head}\n${steps.join("\n")}\n}`;
}

test("forty options that put the same plug in and out: silent", () => {
  const steps = forty.map((n) => `when Has${n} is yes { step install Plug\nstep "Test port ${n}."\nstep remove Plug }`);
  const { found, wanted } = compare(work("finish with Plug is removed", steps));
  expect(found).toBe(wanted);
});

// Fourteen, not forty: as long as every way is written out one by one, forty end the test run for want of memory.
const fourteen = forty.slice(0, 14);

test("options that each turn the lever over: found, and short enough to read", () => {
  const steps = fourteen.map(
    (n) =>
      `when Has${n} is yes { when Lever is shut { step "Open." { gives Lever is open } } otherwise { step "Shut." { gives Lever is shut } } }`,
  );
  const need = 'step "Look." { needs Lever is shut }';
  const found = findingsOf(work("begin with Lever is installed", [...steps, need]), "order.unmet-need");
  expect(found).toHaveLength(1);
  expect(JSON.stringify(found).length).toBeLessThan(100_000);
});

test("stops for what cannot be chosen together, and a mistake after them: short enough to read", () => {
  const stops = fourteen.map((n) => `when Has${n} is no and Has${n + 14} is no { stop "Nothing to do at ${n}." }`);
  const found = findingsOf(work("", [...stops, "step remove Plug"]), "order.not-installed");
  expect(found).toHaveLength(1);
  expect(JSON.stringify(found).length).toBeLessThan(100_000);
});

test("forty options, one screw each: loose at the end only where it was chosen and not tightened", () => {
  const fit = forty.map((n) => `when Has${n} is yes { step install Screw[${n}] }`);
  const tight = forty
    .filter((n) => n !== 23)
    .map((n) => `when Has${n} is yes { step tighten Screw[${n}] to 20 N·m with Wrench }`);
  const head = "begin with Motor is installed, Supply is isolated\nfinish with Supply is isolated";
  const found = findingsOf(work(head, [...fit, ...tight]), "order.not-final");
  expect(found.map(({ options }) => options)).toEqual([[{ Has23: "yes" }]]);
});

test("forty options on the way of a time limit: the longest way counts", () => {
  const between = forty.map((n) => `when Has${n} is yes { step "Wipe port ${n}." { takes 10 s } }`);
  const oil = "step Oiling { lubricate Plug with Oil  takes 1 min }";
  const last = (limit: string) => `step { install Plug  takes 20 s  within ${limit} after Oiling }`;
  const head = "finish with Plug is installed";
  expect(findingsOf(work(head, [oil, ...between, last("420 s")]), "order.too-late")).toEqual([]);
  expect(findingsOf(work(head, [oil, ...between, last("419 s")]), "order.too-late")).toHaveLength(1);
});

test("forty options that each isolate, and one that does not restore", () => {
  const steps = forty.map((n) => {
    const end = n === 31 ? "" : "\nstep restore Supply";
    return `when Has${n} is yes and Has1 is no { step isolate Supply\nstep prove Supply dead with Tester\nstep clean Motor${end} }`;
  });
  const later = 'when Has31 is yes and Has1 is no { step "Hand over." }';
  const found = findingsOf(work("begin with Motor is installed", [...steps, later]), "order.left-behind");
  const expected = forty.filter((n) => n > 31).map((n) => [`Has${n}`, "no"]);
  expect(found.map(({ options }) => options)).toEqual([
    [Object.fromEntries([["Has1", "no"], ["Has31", "yes"], ...expected])],
  ]);
});

test("forty things in any order, each for itself: silent", () => {
  const steps = forty.map((n) => `step install Screw[${n}]`);
  const head =
    "begin with Motor is installed, Supply is isolated\nfinish with Supply is isolated, Screw[all] are loose";
  const { found, wanted } = compare(work(head, ["in any order {", ...steps, "}"]));
  expect(found).toBe(wanted);
});

test("forty things in any order, and two that want one before the other", () => {
  const steps = forty.map((n) => `step "Do ${n}." { ${n === 7 ? "gives Done" : n === 30 ? "needs Done" : ""} }`);
  const text = `fact Done "done"\n${work("", ["in any order {", ...steps, "}"])}`;
  expect(findingsOf(text, "order.unmet-need")).toHaveLength(1);
});

test("a repeat of forty in a repeat of forty: one finding with its first pass", () => {
  const text = work("finish with Plug is installed", [
    "repeat k from 1 to 40 { repeat n from 1 to 40 { step install Plug } }",
  ]);
  const found = findingsOf(text, "order.already-installed");
  expect(found).toHaveLength(1);
  expect(found[0]?.why).toContain("1598 more");
});
