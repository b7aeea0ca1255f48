// What has been applied and must rest: how long, what shortens that, and what comes too early.
import { describe, expect, test } from "vitest";
import { found } from "../run-on-paper.ts";
import { wholeFacts } from "./whole-facts.ts";

const PARTS = `consumable Bond "bond" { cure 2 h }
consumable Paste "paste"
energy Supply "supply" { pressure 6 bar }
part Seal "seal"
part Base "base"
part Motor "motor" { driven by Supply }
part Lid "lid" { encloses Seal }
part Screw "screw" { secures Seal }
part Pad[1..2] "pad"
tool Hoist "hoist" { lifts 100 kg }
`;
const procedure = (steps: string): string => `${PARTS}procedure Work "Work" { ${steps} }`;
const work = (steps: string): readonly string[] => found(procedure(steps));
const whole = (steps: string): readonly object[] => wholeFacts(procedure(steps));

type Case = [steps: string, ...told: string[]];
const TOLD = "order.uncured: fill Seal";
const FILL = "step fill Seal with Paste";

/** Seconds that are left when the seal is filled after these steps; null where nothing is said. */
function left(steps: string): number | null {
  const [fact, ...others] = whole(`${steps} ${FILL}`);
  expect(others).toEqual([]);
  return fact !== undefined && "left" in fact ? Number(fact.left) : null;
}

describe("how long", () => {
  test.each<[apply: string, seconds: number | null]>([
    ["apply Bond to Seal", 7200],
    ["apply Bond to Seal cure 1 h", 3600],
    ["apply Bond to Seal cure 10 min .. 1 h", 600],
    ["apply Bond to Seal cure 20 ± 5 min", 900],
    ["apply Bond to Seal cure 20 min (10 .. 30 min)", 600],
    ["apply Bond to Seal cure at least 5 min", 300],
    ["apply Bond to Seal cure at most 5 min", 300],
    ["apply Bond to Seal cure 1 s", 1],
    ["apply Bond to Seal cure 0 s", null],
    ["apply Paste to Seal", null],
    ["apply Paste to Seal cure 3 s", 3],
    ["apply Bond to Base", null],
  ])("%s: %s s", (apply, seconds) => {
    expect(left(`step ${apply}`)).toBe(seconds);
  });
  test.each<[after: string, seconds: number | null]>([
    ["step wait 30 min", 5400],
    ["step wait 30 .. 60 min", 5400],
    ["step wait 1 h step wait 59 min", 60],
    ["step wait 7199 s", 1],
    ["step wait 2 h", null],
    ["step wait 3 h", null],
    ["step wait 0 s", 7200],
    ["step wait at most 1 h", 7200],
    ["step wait at least 1 h", 3600],
    ["step wait until Seal is at most 30 °C", 7200],
    ['step "Sit down." takes 20 min', 6000],
    ['step "Sit down." takes 20 .. 30 min', 6000],
    ['step "Sit down." takes at most 1 h', 7200],
    ['step "Sit down."', 7200],
    // What is applied again rests anew; what needs no time changes nothing, and so do cleaning and taking out.
    ["step apply Bond to Seal cure 1 h", 3600],
    ["step wait 1 h step apply Bond to Seal", 7200],
    ["step apply Paste to Seal", 7200],
    ["step wait 1 h step apply Bond to Base", 3600],
    ["step wait 1 h step apply Paste to Seal", 3600],
  ])("then %s: %s s", (after, seconds) => {
    expect(left(`step apply Bond to Seal ${after}`)).toBe(seconds);
  });
  test("the time of the step that applies it is over before it rests", () => {
    expect(left("step apply Bond to Seal takes 1 h")).toBe(7200);
    expect(left("step { apply Bond to Base takes 1 h }")).toBe(null);
    expect(left("step apply Bond to Seal step apply Bond to Base takes 30 min")).toBe(5400);
    expect(left("step apply Bond to Seal step apply Paste to Seal takes 30 min")).toBe(5400);
    expect(left("step { apply Bond to Seal wait 10 min takes 1 h }")).toBe(6600);
  });
  test("cleaned, or taken out, it must rest still", () => {
    const wasted = "order.wasted: clean Seal";
    expect(work(`step apply Bond to Seal step clean Seal ${FILL}`)).toEqual([wasted, TOLD]);
    expect(work(`step install Seal step apply Bond to Seal step remove Seal ${FILL}`)).toEqual([TOLD]);
  });
});

describe("what comes too early", () => {
  const WET = "step apply Bond to Seal";
  const RESTS = "step apply Bond to Seal cure 2 h";
  test.each<Case>([
    [`${WET} ${FILL}`, TOLD],
    [`${WET} step fill Base with Paste`],
    [`${WET} step press Seal in Base`, "order.uncured: press Seal"],
    [`${WET} step press Base on Seal`, "order.uncured: press Base"],
    [`${WET} step press Base over Pad[1]`],
    [`${WET} step install Seal on Base`],
    [`${WET} step install Lid`, "order.uncured: install Lid"],
    [`${WET} step press Lid in Base`, "order.uncured: press Lid"],
    [`step install Seal ${WET} step install Lid`, "order.uncured: install Lid"],
    [`${WET} step install Base`],
    ["step apply Bond to Motor step isolate Supply step restore Supply", "order.uncured: restore Supply"],
    [`${WET} step isolate Supply step restore Supply`],
    // A joint is closed wet, unless the step says that it cures first.
    [`${WET} step lift Seal with Hoist`],
    [`${RESTS} step lift Seal with Hoist`, "order.uncured: lift Seal"],
    [`${RESTS} step lift Base with Hoist`],
    [`${WET} step support Seal with Hoist step set down Seal`],
    [`${RESTS} step support Seal with Hoist step set down Seal`],
    [`step install Seal, Screw ${WET} step tighten Screw`],
    [`step install Seal, Screw ${RESTS} step tighten Screw`, "order.uncured: tighten Screw"],
    [
      `step install Seal, Screw ${RESTS} step tighten Screw step loosen Screw step tighten Screw`,
      "order.uncured: tighten Screw",
    ],
    // What is on its own thread is no matter.
    ["step install Seal, Screw step apply Bond to Screw cure 2 h step tighten Screw"],
    // What rests first is as wet for all others.
    [`${RESTS} ${FILL}`, TOLD],
    [`${RESTS} step install Lid`, "order.uncured: install Lid"],
    [`${RESTS} step wait 1 h step lift Seal with Hoist`, "order.uncured: lift Seal"],
    // Told once, it is taken as cured; what was no load leaves it.
    [`${RESTS} ${FILL} ${FILL} step lift Seal with Hoist`, TOLD],
    [`${WET} step lift Seal with Hoist ${FILL}`, TOLD],
    [`${RESTS} step lift Seal with Hoist ${FILL}`, "order.uncured: lift Seal"],
    // The last coat says how it cures.
    [`${RESTS} ${WET} step lift Seal with Hoist`],
  ])("%s", (steps, ...told) => {
    expect(work(steps)).toEqual(told);
  });

  const since = { step: "1", span: "apply Bond to Seal" };
  test.each<[steps: string, fact: object]>([
    [
      `${WET} step A { fill Seal with Paste }`,
      { how: "loaded", by: "Seal", span: "fill Seal", stepSpan: "step A { fill Seal with Paste }" },
    ],
    [
      `${WET} step wait 1 h step press Base on Seal`,
      { how: "loaded", by: "Base", span: "press Base", stepSpan: "step press Base on Seal", left: 3600 },
    ],
    [
      `${WET} step press Seal in Base`,
      { how: "loaded", by: "Seal", span: "press Seal", stepSpan: "step press Seal in Base" },
    ],
    [`${WET} step install Lid`, { how: "closed over", by: "Lid", span: "install Lid", stepSpan: "step install Lid" }],
    [
      `${RESTS} step lift Seal with Hoist`,
      { how: "loaded", by: "Seal", span: "lift Seal", stepSpan: "step lift Seal with Hoist" },
    ],
    [
      `${RESTS} step install Seal, Screw step tighten Screw`,
      { how: "loaded", by: "Screw", span: "tighten Screw", stepSpan: "step tighten Screw" },
    ],
    [
      "step apply Bond to Motor step isolate Supply step restore Supply",
      {
        part: "Motor",
        how: "restored",
        by: "Supply",
        span: "restore Supply",
        stepSpan: "step restore Supply",
        since: { step: "1", span: "apply Bond to Motor" },
      },
    ],
    [
      "step apply Bond to Pad[2] cure 1 min step lift Pad[2] with Hoist",
      {
        part: "Pad[2]",
        left: 60,
        how: "loaded",
        by: "Pad[2]",
        span: "lift Pad[2]",
        stepSpan: "step lift Pad[2] with Hoist",
        since: { step: "1", span: "apply Bond to Pad[2]" },
      },
    ],
  ])("says what, by what and how long still: %s", (steps, fact) => {
    expect(whole(steps)).toEqual([{ kind: "uncured", part: "Seal", consumable: "Bond", left: 7200, since, ...fact }]);
  });
});
