// Options: `options` of a finding is exactly the set of choices for which it holds, two and three at a time, and forty.
import { expect, test } from "vitest";
import { compare, findingsOf } from "./compare.ts";

type Choice = Readonly<Record<string, string>>;

const SHOP = `option Extent "extent of work" { Full Part Look }
option Size "size of the valve" { Small Medium Large }
option Kept "the seals are kept" { yes no }
energy Supply "supply" { voltage 400 V AC }
part Motor "motor" { driven by Supply }
part Seal "seal" { single use }
part Cover "cover"
part Screw "screw" { needs Cover  secures Cover  thread "M8x1.25" }
tool Wrench "torque wrench" { torque 8 .. 60 N·m }
tool Tester "tester"
`;
const CHOICES: Readonly<Record<string, readonly string[]>> = {
  Extent: ["Full", "Part", "Look"],
  Size: ["Small", "Medium", "Large"],
  Kept: ["yes", "no"],
};

/** Every way to choose all three options. */
const all: readonly Choice[] = Object.entries(CHOICES).reduce<readonly Choice[]>(
  (so, [name, values]) => so.flatMap((choice) => values.map((value) => ({ ...choice, [name]: value }))),
  [{}],
);

test.each<[string, string, string, (choice: Choice) => boolean]>([
  [
    "one value of three",
    "order.not-installed",
    "when Extent is Part { step remove Cover }",
    ({ Extent }) => Extent === "Part",
  ],
  [
    "two of three, by what is not named",
    "order.not-installed",
    "when Extent is not Part { step remove Cover }",
    ({ Extent }) => Extent !== "Part",
  ],
  [
    "two options of three values each",
    "order.not-tightened",
    "step install Cover\nstep install Screw\nwhen Extent is Full or Size is Large { step tighten Screw to 20 N·m with Wrench }\nstep loosen Screw",
    ({ Extent, Size }) => Extent !== "Full" && Size !== "Large",
  ],
  [
    "an otherwise when in the middle",
    "order.energised",
    "step install Cover\nwhen Extent is Full { step isolate Supply } otherwise when Size is Small { step isolate Supply } otherwise { step inspect Motor }\nstep install Motor",
    ({ Extent, Size }) => Extent !== "Full" && Size !== "Small",
  ],
  [
    "a single use part put back, in three conditions at once",
    "order.reused",
    "step install new Seal\nwhen Extent is Full and Size is Medium { step remove Seal }\nwhen Extent is Full and Size is Medium and Kept is yes { step install Seal }",
    ({ Extent, Size, Kept }) => Extent === "Full" && Size === "Medium" && Kept === "yes",
  ],
  [
    "left loose at the end",
    "order.not-final",
    "step install Cover\nstep install Screw\nwhen not (Kept is yes or Size is Small) { step tighten Screw to 20 N·m with Wrench }",
    ({ Size, Kept }) => Kept === "yes" || Size === "Small",
  ],
  [
    "a loop that never ends",
    "flow.endless",
    "step Begin { inspect Cover }\nwhen Extent is Look and Kept is no { return to Begin }",
    ({ Extent, Kept }) => Extent === "Look" && Kept === "no",
  ],
  [
    "the union of two branches",
    "order.unmet-need",
    'when Size is Small { step install Cover }\nwhen Extent is Part and Size is not Small { step install Cover }\nstep "Look." { needs Cover is installed }',
    ({ Extent, Size }) => Size !== "Small" && Extent !== "Part",
  ],
  [
    "after a stop for some",
    "order.left-behind",
    'when Extent is Look { stop "Hand it over." }\nstep isolate Supply\nwhen Size is Large { step restore Supply }',
    ({ Extent, Size }) => Extent !== "Look" && Size !== "Large",
  ],
  [
    "locked in one case",
    "order.locked",
    "step install Cover\nstep install Screw\nwhen Kept is no { step install Tab }\nstep tighten Screw to 20 N·m with Wrench\nwhen Kept is yes { step install Tab }",
    ({ Kept }) => Kept === "no",
  ],
])("exactly: %s", (_title, code, steps, holds) => {
  const tab = 'part Tab "tab washer" { locks Screw }\n';
  const text = `${SHOP}${tab}procedure Work "Work" {\n${steps}\n}`;
  const listed = findingsOf(text, code).flatMap(({ options }) => options ?? []);
  const failing = all.filter((choice) => listed.some((some) => isWithin(choice, some)));
  expect(failing).toEqual(all.filter(holds));
});

test("where it holds whatever is chosen, no options are listed", () => {
  const text = `${SHOP}procedure Work "Work" {
  when Kept is yes { step inspect Motor }
  step clean Cover
  step remove Cover
}`;
  expect(findingsOf(text, "order.not-installed")).toMatchObject([{ severity: "error" }]);
  expect(findingsOf(text, "order.not-installed").flatMap(({ options }) => options ?? [])).toEqual([]);
});

test("a choice made before leaves the others out", () => {
  const text = `${SHOP}procedure Work "Work" {
  finish with Cover is removed
  when Extent is Part { step remove Cover }
}`;
  expect(compare(text, { set: { Extent: "Full" } })).toMatchObject({ found: compare(text, { set: {} }).wanted });
  expect(findingsOf(text, "order.not-installed", { set: { Extent: "Part" } })).toHaveLength(1);
});

const forty = Array.from({ length: 40 }, (_, at) => at + 1);
const FORTY = forty.map((n) => `option Has${n} "port ${n} is there" { yes no }\npart Plug${n} "plug ${n}"`).join("\n");

test("forty options, each with its own plug: silent where each is put in and taken out alike", () => {
  const steps = forty.map((n) => `when Has${n} is yes { step install Plug${n} }`);
  const later = forty.map((n) => `when Has${n} is yes { step remove Plug${n} }`);
  const finish = forty.map((n) => `Plug${n} is removed`).join(", ");
  const text = `${FORTY}\nprocedure Work "Work" {\nfinish with ${finish}\n${[...steps, ...later].join("\n")}\n}`;
  const { found, wanted } = compare(text);
  expect(found).toBe(wanted);
});

test("forty options: the one that is forgotten, and nothing of the others", () => {
  const steps = forty.map((n) => `when Has${n} is yes { step install Plug${n} }`);
  const later = forty.filter((n) => n !== 17).map((n) => `when Has${n} is yes { step remove Plug${n} }`);
  const finish = forty.map((n) => `Plug${n} is removed`).join(", ");
  const text = `${FORTY}\nprocedure Work "Work" {\nfinish with ${finish}\n${[...steps, ...later].join("\n")}\n}`;
  expect(findingsOf(text, "order.unfinished").map(({ options }) => options)).toEqual([[{ Has17: "yes" }]]);
});

test("forty options: a need that any one of them can meet", () => {
  const steps = forty.map((n) => `when Has${n} is yes { step "Open port ${n}." { gives Open } }`);
  const text = `${FORTY}\nfact Open "a port is open"\nprocedure Work "Work" {\n${steps.join("\n")}\nstep "Blow out." { needs Open }\n}`;
  const [only, ...others] = findingsOf(text, "order.unmet-need");
  expect(others).toEqual([]);
  expect(only?.options).toEqual([Object.fromEntries(forty.map((n) => [`Has${n}`, "no"]))]);
});

test("forty options: an energy that each branch puts off and on", () => {
  const steps = forty.map(
    (n) => `when Has${n} is yes { step isolate Supply\nstep prove Supply dead\nstep clean Motor\nstep restore Supply }`,
  );
  const shop = 'energy Supply "supply" { voltage 400 V AC }\npart Motor "motor" { driven by Supply }';
  const text = `${FORTY}\n${shop}\nprocedure Work "Work" {\nbegin with Motor is installed\n${steps.join("\n")}\n}`;
  const { found, wanted } = compare(text);
  expect(found).toBe(wanted);
});

function isWithin(choice: Choice, some: Choice): boolean {
  return Object.entries(some).every(([name, value]) => choice[name] === value);
}
