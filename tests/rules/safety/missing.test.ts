// safety.missing: what each fact raises, where a statement holds and where not, and that options are exact.
import { expect, test } from "vitest";
import { HAZARDS } from "#analysis/hazards/catalogue.ts";
import { expectMarked, findingsIn as findIn, formatted, withFix } from "#harness/check.ts";
import { readMarks } from "#harness/marks.ts";
import type { ReportedFinding } from "#workspace/report.ts";

const SHOP = `option Extent "extent of work" { Full Part }
energy Supply "motor supply" { voltage 400 V AC }
tool Heater "induction heater" { heats to 150 °C }
tool Hoist "chain hoist" { lifts 250 kg }
consumable Cleaner "water-based cleaner" { hazard skin, eye }
part Shaft "pump shaft" { driven by Supply }
part Bearing "drive-end bearing" { heat limit 120 °C }
part Cover "bearing cover" { mass 31 kg }
part Blade[1..4] "blade" { sharp }
`;
const CUT = 'warning cutting "Sharp." avoid "Hold it by its back." wear "cut-resistant gloves"';

const work = (lines: string, head = "", shop = ""): string => `use "shop.sprag"
${shop}
procedure Work "Work" {
  ${head}
${lines}
}
`;
const used = { "shop.sprag": SHOP };
const expectFindings = (text: string): void => expectMarked(readMarks(text), {}, used);
const findingsIn = (text: string): readonly ReportedFinding[] => findIn(text, used);
const missingIn = (text: string): readonly ReportedFinding[] =>
  findingsIn(text).filter(({ code }) => code === "safety.missing");

test.each([
  [
    "a part that is still hot",
    "  step heat Bearing to 100 .. 110 °C with Heater\n  step install Bearing\n//     ^^^^^^^^^^^^^^^ safety.missing error",
  ],
  [
    "sharp parts, once for the lot",
    "  step install Blade[1..2]\n//     ^^^^^^^^^^^^^^^^^^^ safety.missing\n  step install Blade[3..4]",
  ],
  ["a consumable", "  step clean Cover with Cleaner\n//     ^^^^^^^^^^^ safety.missing"],
  ["a heavy part carried", "  step install Cover\n//     ^^^^^^^^^^^^^ safety.missing error"],
  ["a heavy part for a crew", "  crew 2\n  step install Cover\n//     ^^^^^^^^^^^^^ safety.missing warning"],
  ["a hoist", "  step lift Cover with Hoist\n//     ^^^^^^^^^^ safety.missing warning\n  step install Cover"],
  ["what the step says", "  step {\n    inspect Cover\n    raises eye\n//         ^^^ safety.missing\n  }"],
  [
    "its first pass",
    "  repeat n from 1 to 4 {\n    step install Blade[n]\n//       ^^^^^^^^^^^^^^^^ safety.missing\n  }",
  ],
])("found: %s", (_what, lines) => {
  expectFindings(work(lines));
});

test.each([
  ["at the head of the procedure", `  step install Blade[1..4]`, CUT],
  ["at the head of the task", `  task Fitting "Fit" {\n    ${CUT}\n    step install Blade[1..4]\n  }`, ""],
  ["at the head of the step", `  step {\n    ${CUT}\n    install Blade[1..4]\n  }`, ""],
  ["under another signal word", `  step install Blade[1..4]`, CUT.replace("warning", "danger")],
  ["beside other hazards", `  step install Blade[1..4]`, CUT.replace("cutting", "eye, cutting")],
  ["in the same way of a branch", `  when Extent is Full {\n    ${CUT}\n    step install Blade[1]\n  }`, ""],
])("silent: covered %s", (_where, lines, head) => {
  expectFindings(work(lines, head));
});

test("a statement holds in its own block and no further", () => {
  expectFindings(
    work(`  task First "First" {
    ${CUT}
    step install Blade[1]
  }
  step install Blade[2]
//     ^^^^^^^^^^^^^^^^ safety.missing
  step install Blade[3]`),
  );
});

test("under a branch it holds there only; options are exact", () => {
  const text = work(`  when Extent is Full {
    ${CUT}
    step install Blade[1]
  } otherwise {
    step install Blade[2]
  }
  step install Blade[3]`);
  const found = missingIn(text);
  expect(found.map(({ range, options }) => [range.start.line, options])).toEqual([
    [8, [{ Extent: "Part" }]],
    [10, [{ Extent: "Full" }]],
  ]);
});

test("what is not covered in one way of a branch is told for that choice", () => {
  const text = work(`  when Extent is Full { step heat Bearing to 100 .. 110 °C with Heater }
  step install Bearing`);
  const found = missingIn(text);
  expect(found.map(({ options }) => options)).toEqual([[{ Extent: "Full" }]]);
});

test("a performed procedure is checked on its own, and not again where it is performed", () => {
  const text = work("  perform Inner").concat(`procedure Inner "Inner" {
  step install Blade[1]
}
`);
  const found = missingIn(text);
  expect(found.map(({ procedure }) => procedure)).toEqual(["Inner"]);
});

test("in any order, a statement before a child holds for it in every order", () => {
  expectFindings(
    work(`  in any order {
    step install Blade[1]
//       ^^^^^^^^^^^^^^^^ safety.missing
    task Second "Second" {
      ${CUT}
      step install Blade[2]
    }
  }`),
  );
});

test("it says which fact, which value and which threshold, and whether its source is verified", () => {
  const [found] = missingIn(work("  step heat Bearing to 55 .. 60 °C with Heater\n  step install Bearing"));
  expect(found).toMatchObject({
    severity: "warning",
    message: "No statement warns of burn from Bearing.",
    why: `Bearing may be this hot in somebody's hands. Only “wait until … at most” says that it has cooled.
Found: 60 °C
Counts from: 51 °C (ISO 13732-1, bare metal touched for 1 min; source not verified)`,
    remedy: "Put one before this, at the head of the step, the task or the procedure.",
  });
});

test("the shop's own threshold is named, with its place", () => {
  const rules = 'source Rules "shop rules" revision "3"\nthreshold burn 55 °C per Rules "4.1"\n';
  const own = work("  step heat Bearing to 52 .. 56 °C with Heater\n  step install Bearing", "", rules);
  const [found] = missingIn(own);
  expect(found?.why).toContain("Counts from: 55 °C (shop rules 4.1)");
  expect(found?.related?.map(({ range }) => range.start.line)).toEqual([2]);
  expect(missingIn(own.replace("52 .. 56", "52 .. 54"))).toEqual([]);
});

test.each([
  [
    "heat Bearing to 100 .. 110 °C with Heater\n  step install Bearing",
    /warning burn "The drive-end bearing can burn skin\." avoid ".+" wear "heat-resistant gloves"/,
  ],
  ["clean Cover with Cleaner", /warning skin, eye "The water-based cleaner harms skin and eyes\."/],
  [
    "install Cover",
    /warning lifting "The bearing cover is too heavy for one person\." avoid "Lift it with a hoist, or with the crew\."/,
  ],
  [
    "lift Cover with Hoist",
    /warning lifting, crush "The bearing cover is heavy and can swing\." avoid "Stay out from under it\."/,
  ],
])("the fix of %j writes hazard, effect and avoidance, and brings nothing new", (action, wanted) => {
  const text = formatted(work(`  step ${action}`)) ?? "";
  const before = findingsIn(text);
  const finding = before.find(({ code }) => code === "safety.missing");
  if (finding === undefined) throw new Error("nothing found");
  const mended = withFix(text, finding);
  expect(mended.replace(/\n\s+/g, " ")).toMatch(wanted);
  expect(formatted(mended)).toBe(mended);
  expect(findingsIn(mended).map(({ code }) => code)).toEqual(
    before.filter((one) => one !== finding).map(({ code }) => code),
  );
});

test("the fix stands where it holds for every line of the source", () => {
  const text =
    formatted(
      work(`  task Fitting "Fit" {
    step "Push it in." {
      install Blade[1]
      inspect Blade[1]
    }
    step install Blade[2]
  }`),
    ) ?? "";
  const finding = findingsIn(text).find(({ code }) => code === "safety.missing");
  expect(finding?.fixes?.map(({ title }) => title)).toEqual([
    "Warn of it at the head of the task",
    "Warn of it at the head of the procedure",
  ]);
  for (const number of [0, 1]) {
    const mended = finding === undefined ? "" : withFix(text, finding, number);
    expect(findingsIn(mended).filter(({ code }) => code.startsWith("safety."))).toEqual([]);
  }
});

test("a warning that cannot be read may be the one that is wanted", () => {
  const broken = work("  step install Blade[1]", CUT.replace("cutting", "cuting"));
  const codes = findingsIn(broken).map(({ code }) => code);
  expect(codes).toContain("names.unknown");
  expect(codes).not.toContain("safety.missing");
  expect(findingsIn(work("  step install Blade[1]", "warning")).map(({ code }) => code)).not.toContain(
    "safety.missing",
  );
});

test.each([...HAZARDS.keys()])("the statement for %s that the fix writes has nothing to be found in it", (hazard) => {
  const text = formatted(work(`  step {\n    inspect Cover\n    raises ${hazard}\n  }`)) ?? "";
  const [finding] = missingIn(text);
  expect(finding?.message).toBe(`No statement warns of ${hazard} here.`);
  expect(findingsIn(finding === undefined ? "" : withFix(text, finding))).toEqual([]);
});

test("fasteners that hold back the pressure of a live line are undone; those of what is only driven electrically are not told", () => {
  const work = (energy: string, isolated: string): readonly string[] =>
    findingsIn(
      `energy Line "line" { ${energy} }
part Flange "flange" { driven by Line }
part Nut "nut" { secures Flange }
procedure Work "Work" {
  begin with Flange is secured, ${isolated}
  finish with Nut is loose, ${isolated}
  step loosen Nut
}
`,
    )
      .filter(({ code }) => code === "safety.missing")
      .map(({ message, why = "" }) => `${message} ${why.split("\n")[0]}`);
  expect(work("pressure 10 bar", "Line is live")).toEqual([
    "No statement warns of pressure from Line. Line is live, and what holds back its pressure is undone.",
  ]);
  expect(work("pressure 10 bar", "Line is isolated")).toEqual([]);
  expect(work("voltage 400 V AC", "Line is live")).toEqual([]);
});
