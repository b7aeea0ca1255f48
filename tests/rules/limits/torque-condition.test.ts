// limits.torque-condition: the torque is stated for the condition that the thread is in.
import { expect, test } from "vitest";
import { expectFindings, findingsIn, told, withFix } from "#harness/check.ts";
import { readMarks } from "#harness/marks.ts";

const text = (
  torques: string,
  steps: string,
  begin = "",
): string => `source Manual "manual"  tool Wrench "torque wrench" { torque 5 .. 90 N·m }
consumable Grease "grease"
consumable Oil "oil"
consumable Locker "thread locker"
part Cover "cover"
part Screw "screw" {
  secures Cover
${torques}
} per Manual "2"
option Greased { yes no }
procedure Close {
${begin === "" ? "" : `  begin with ${begin}\n`}${steps}
}
procedure Rest {
  step inspect Cover with Wrench
  when Greased is yes { step lubricate Cover with Grease }
  step apply Oil to Cover
  step apply Locker to Cover
}`;
const DRY = "  torque 45 ± 2 N·m dry";
const GREASED = "  torque 45 ± 2 N·m with Grease";
const TIGHTEN = "  step tighten Screw to 45 N·m with Wrench";
const MARK = `${TIGHTEN}\n  //   ^^^^^^^^^^^^^ limits.torque-condition error`;
const IN = "  step install Cover, Screw\n";

test.each([
  ["lubricated, stated dry", DRY, `${IN}  step lubricate Screw with Grease\n${MARK}`],
  ["coated, stated dry", DRY, `${IN}  step apply Locker to Screw\n${MARK}`],
  ["on the bench already", DRY, `  step lubricate Screw with Oil\n${IN}${MARK}`],
  ["cleaned, stated with", GREASED, `${IN}  step clean Screw\n${MARK}`],
  ["put in bare, stated with", GREASED, `${IN}${MARK}`],
  ["with another one", GREASED, `${IN}  step lubricate Screw with Oil\n${MARK}`],
  [
    "cleaned off again",
    GREASED,
    `${IN}  step lubricate Screw with Grease\n  step inspect Screw\n  step clean Screw\n${MARK}`,
  ],
])("%s", (_title, torques, steps) => {
  expectFindings(text(torques, steps));
});

test.each([
  ["dry and bare", DRY, `${IN}${TIGHTEN}`],
  ["dry and clean", DRY, `${IN}  step clean Screw\n${TIGHTEN}`],
  ["greased as stated", GREASED, `${IN}  step lubricate Screw with Grease\n${TIGHTEN}`],
  ["applied as stated", GREASED, `${IN}  step apply Grease to Screw\n${TIGHTEN}`],
  ["one of two on it", GREASED, `${IN}  step lubricate Screw with Grease\n  step apply Locker to Screw\n${TIGHTEN}`],
  ["one torque for each", `${DRY}\n  torque 30 ± 2 N·m with Grease`, `${IN}${TIGHTEN}`],
  [
    "not said for what",
    "  torque 45 ± 2 N·m\n  nut factor 0.2 dry",
    `${IN}  step lubricate Screw with Grease\n${TIGHTEN}`,
  ],
  [
    "by hand",
    GREASED,
    `${IN}  step tighten Screw by hand to 45 N·m\n${TIGHTEN.replace("tighten", "lubricate").replace("to 45 N·m with Wrench", "with Grease")}\n${TIGHTEN}`,
  ],
])("silent: %s", (_title, torques, steps) => {
  expectFindings(text(torques, steps));
});

test("silent: a fastener that was in before, of which nothing is known", () => {
  expectFindings(text(GREASED, `  step loosen Screw\n${TIGHTEN}`, "Cover is secured"));
});

test("silent: a nut whose stud is greased", () => {
  expectFindings(`tool Wrench "torque wrench" { torque 5 .. 90 N·m }
consumable Grease "grease"
part Cover "cover"
part Stud "stud" { thread "M10x1.5" }
part Nut "nut" {
  secures Cover
  torque 45 ± 2 N·m with Grease
}
procedure Close {
  finish with Stud is loose
  step install Cover
  step install Stud
  step lubricate Stud with Grease
  step install Nut on Stud
  step tighten Nut to 45 N·m with Wrench
}`);
});

test("for the choice that greases it, and only for that", () => {
  const source = text(DRY, `${IN}  when Greased is yes { step lubricate Screw with Grease }\n${MARK}`);
  expectFindings(source);
  expect(told(source, "limits.torque-condition")).toMatchInlineSnapshot(`
    "Screw is not dry, the torque is for dry threads.
      The torque, 45 ± 2 N·m, is stated for dry threads. The thread is with Grease here.
      This happens when Greased is yes.
    → Clean the thread before this, or declare the torque for the thread as it is.
    &8 The torque is stated here"
  `);
});

test("the torque for the thread as it is, as a fix", () => {
  const source = text(`${DRY}\n  torque 30 ± 2 N·m with Grease`, `${IN}  step lubricate Screw with Grease\n${TIGHTEN}`);
  const [found] = findingsIn(source);
  expect(found?.code).toBe("limits.torque-condition");
  const mended = found === undefined ? "" : withFix(source, found);
  expect(mended).toContain("tighten Screw to 30 ± 2 N·m with Wrench");
  expect(findingsIn(mended)).toEqual([]);
});

// “a torque stated for dry threads on a lubricated fastener, or the other way round”: what was on the one that came out is not on the new one.
test.each([
  ["oil on the old one", DRY, "step apply Oil to Screw", "step remove Screw\n  step install new Screw", null],
  [
    "oil on one that is thrown away",
    DRY,
    "step lubricate Screw with Oil",
    "step discard Screw\n  step install Screw",
    null,
  ],
  ["oil on one that comes back", DRY, "step apply Oil to Screw", "step remove Screw\n  step install Screw", "E"],
  [
    "oil on the new one, on the bench",
    DRY,
    "step lubricate Screw with Oil",
    "step remove Screw\n  step lubricate Screw with Oil\n  step install new Screw",
    "E",
  ],
  [
    "grease on the old one alone",
    GREASED,
    "step lubricate Screw with Grease",
    "step remove Screw\n  step install new Screw",
    "E",
  ],
  [
    "the same grease on both",
    GREASED,
    "step lubricate Screw with Grease",
    "step remove Screw\n  step lubricate Screw with Grease\n  step install new Screw",
    null,
  ],
  [
    "grease on the new one",
    GREASED,
    "step clean Screw",
    "step discard Screw\n  step install new Screw\n  step lubricate Screw with Grease",
    null,
  ],
])("another one is put in: %s", (_title, torques, before, between, found) => {
  const steps = `  ${before}\n  step inspect Screw\n  ${between}\n${found === null ? TIGHTEN : MARK}`;
  expectFindings(text(torques, steps, "Cover is installed, Screw is installed"));
});

test("another one for one choice alone", () => {
  const steps = `  step apply Oil to Screw
  step remove Screw
  when Greased is yes { step install new Screw } otherwise { step install Screw }
${MARK}`;
  const source = text(DRY, steps, "Cover is installed, Screw is installed");
  expectFindings(source);
  expect(findingsIn(readMarks(source)[0]?.text ?? "").map(({ options }) => options)).toEqual([[{ Greased: "no" }]]);
});
