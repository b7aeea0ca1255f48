// Names: unknown, of another sort, twice, unused; each beside a near miss that is right.
import { describe, expect, test } from "vitest";
import { problemsIn } from "./model-of.ts";

const SHOP = `role Fitter
source Manual revision "1"
material Steel
ring Circle { count 8 numbered clockwise }
part Cover { states open, shut }
part Screw[1..8] { seats in Circle by number secures Cover thread "M10" }
part Foot[left, right]
tool Wrench
consumable Grease
energy Supply
option Extent { Full Reseal }
fact Signed
value Torque = 45 N·m
hazard Dust
`;

/** A step in a procedure of the shop; unused declarations do not matter here. */
function told(...lines: readonly string[]): readonly string[] {
  return problemsIn(`${SHOP}procedure P {\n${lines.join("\n")}\n}`).filter((problem) => !problem.startsWith("unused"));
}

describe("unknown names offer the nearest of the sort that is wanted", () => {
  test.each([
    ["a part, a letter short", "step install Covr", "unknown «Covr», wanted a part, near Cover"],
    ["a part, in small letters", "step install cover", "unknown «cover», wanted a part, near Cover"],
    ["letters swapped", "step install Cvoer", "unknown «Cvoer», wanted a part, near Cover"],
    ["nothing near", "step install Flywheel", "unknown «Flywheel», wanted a part"],
    ["only names of that sort", "step install Wrnch", "unknown «Wrnch», wanted a part"],
    ["a tool", "step install Cover with Wrnch", "unknown «Wrnch», wanted a tool, near Wrench"],
    ["a consumable", "step lubricate Cover with Greese", "unknown «Greese», wanted a consumable, near Grease"],
    ["an energy", "step isolate Suply", "unknown «Suply», wanted an energy, near Supply"],
    ["a role", "step { sign Fiter }", "unknown «Fiter», wanted a role, near Fitter"],
    ["a source", 'per Manuel "1"', "unknown «Manuel», wanted a source, near Manual"],
    ["a place", "step install Screw[1] in Circel[1]", "unknown «Circel», wanted a part, a ring or holes, near Circle"],
    ["a ring", "step turn Circel[1] to 6 o'clock", "unknown «Circel», wanted a ring, near Circle"],
    ["a value", "step tighten Screw[all] to Torqe", "unknown «Torqe», wanted a value or a reading, near Torque"],
    ["a fact", "begin with Sined", "unknown «Sined», wanted a fact, near Signed"],
    ["an option's choice", 'when Extent is Ful { step "x" }', "unknown «Ful», wanted a choice of Extent, near Full"],
    ["an own state", "begin with Cover is opne", "unknown «opne», wanted a state of Cover, near open"],
    [
      "a state of all parts",
      "begin with Cover is instaled",
      "unknown «instaled», wanted a state of Cover, near installed",
    ],
    ["a state of an energy", "begin with Supply is installed", "unknown «installed», wanted a state of Supply"],
    ["a hazard of the list", 'danger cuting "x"', "unknown «cuting», wanted a hazard, near cutting"],
    ["a declared hazard", "step { raises Dusk }", "unknown «Dusk», wanted a hazard, near Dust"],
    ["a step", "step Open { return to Opne }", "unknown «Opne», wanted a step or task, near Open"],
    ["a procedure", "perform Q", "unknown «Q», wanted a procedure"],
    [
      "a loop variable",
      "repeat row from 1 to 2 { step install Screw[roww] }",
      "unknown «roww», wanted a loop variable, near row",
    ],
    ["an instance", "step install Foot[lefft]", "unknown «lefft», wanted an instance of Foot, near left"],
    ["a threshold", "threshold brun 55 °C", "unknown «brun», wanted a threshold, near burn"],
  ])("%s", (_title, line, problem) => {
    expect(told(line)).toEqual([problem]);
  });

  test("a single letter is near nothing", () => {
    expect(problemsIn("part A\nprocedure P { step install A step inspect B }")).toEqual(["unknown «B», wanted a part"]);
  });
});

describe("names of another sort", () => {
  test.each([
    ["a tool as a part", "step install Wrench", "«Wrench» is a tool, wanted a part"],
    ["a part as a tool", "step inspect Cover with Cover", "«Cover» is a part, wanted a tool"],
    ["a procedure as a part", "step install P", "«P» is a procedure, wanted a part"],
    ["a part as a procedure", "perform Cover", "«Cover» is a part, wanted a procedure"],
    [
      "a part without a state",
      "begin with Cover",
      "«Cover» is a part, wanted a condition such as “Cover is installed”",
    ],
    [
      "an energy without a state",
      "begin with Supply",
      "«Supply» is an energy, wanted a condition such as “Supply is isolated”",
    ],
    [
      "an option without a choice",
      "begin with Extent",
      "«Extent» is an option, wanted a condition such as “Extent is Full”",
    ],
    ["a role as a hazard", 'warning Fitter "x"', "«Fitter» is a role, wanted a hazard"],
    ["a part as a ring", "begin with Cover at 6 o'clock", "«Cover» is a part, wanted a ring"],
    ["a ring as a part", "step install Circle", "«Circle» is a ring, wanted a part"],
    [
      "a tool that has a temperature",
      "begin with Wrench at least 80 °C",
      "«Wrench» is a tool, wanted a part or a reading",
    ],
  ])("%s", (_title, line, problem) => {
    expect(told(line)).toEqual([problem]);
  });
});

test.each([
  "begin with Cover is open, Cover is not shut, Supply is live, Signed, not Signed, no temporary parts",
  "begin with Screw are installed, Screw[1..4] is tightened, Foot[left] is installed, Foot is installed",
  "begin with Cover at most 40 °C and (Signed or Extent is Full), Circle[3] at 6 o'clock",
  'danger burn, Dust "x"',
  "step { raises noise, Dust install Cover }",
  "repeat n from 1 to 8 { repeat k in 1, 2 { step install Screw[n + k] } }",
  "step install Foot[left], Foot[right] with Wrench",
  'step Open { "x" }'.replace('"x"', 'do "x"'),
  "step tighten Screw[all] to 30 %, 100 % of Torque with Wrench + Wrench",
  "threshold preload 85 %",
])("right: %s", (line) => {
  expect(told(line)).toEqual([]);
});

describe("a name twice in one scope", () => {
  test.each([
    ["parts", "part A\npart A", ["twice «A»"]],
    ["three of one name", "part A\ntool A\nrole A", ["twice «A»", "twice «A»"]],
    ["a procedure and a part", "part A\nprocedure A { step install A }", ["twice «A»"]],
    ["choices", "option O { x y x }", ["twice «x»"]],
    ["own states", "part A { states a, b, a }", ["twice «a»"]],
    ["named instances", "part A[l, r, l]", ["twice «l»"]],
    ["thresholds", "threshold burn 50 °C\nthreshold burn 60 °C", ["twice «burn»"]],
    ["steps and tasks", 'procedure P { step A "x" task A { step "y" } }', ["twice «A»"]],
    ["readings", 'procedure P { step measure G "a" step measure G "b" }', ["twice «G»"]],
    ["one spelt with a combining accent", "role Prüfer\nrole Pru\u0308fer", ["twice «Pru\u0308fer»"]],
  ])("%s", (_title, text, problems) => {
    expect(problemsIn(text)).toEqual(problems);
  });

  test.each([
    [
      "an inner declaration hides an outer one",
      "part A\nprocedure P { part A step install A }\nprocedure Q { step install A }",
    ],
    ["steps of two procedures", 'procedure P { step A "x" }\nprocedure Q { step A "y" }'],
    ["a step and a part", 'part A\nprocedure P { step A "x" step install A }'],
    [
      "one choice in two options",
      'option O { x }\noption N { x }\nprocedure P { when O is x and N is x { step "a" } }',
    ],
    ["one state of two parts", "part A { states x }\npart B { states x }\nprocedure P { begin with A is x, B is x }"],
  ])("right: %s", (_title, text) => {
    expect(problemsIn(text)).toEqual([]);
  });
});

describe("files", () => {
  const library = { "lib.sprag": "part Cover\npart Seal\nprocedure Close { step install Cover }" };

  test("names of a used file are known", () => {
    expect(problemsIn('use "lib.sprag"\nprocedure P { step install Cover perform Close }', library)).toEqual([]);
  });
  test("names are not passed on further", () => {
    const files = { "lib.sprag": 'use "deep.sprag"', "deep.sprag": "part Cover" };
    expect(problemsIn('use "lib.sprag"\npart Own\nprocedure P { step install Own step install Cover }', files)).toEqual(
      ['unused use «"lib.sprag"»', "unknown «Cover», wanted a part"],
    );
  });
  test("a used name may not be declared again", () => {
    expect(problemsIn('use "lib.sprag"\npart Seal\nprocedure P { step install Seal, Cover }', library)).toEqual([
      "twice «Seal»",
    ]);
  });
  test("two used files may not share a name", () => {
    const files = { "a.sprag": "part A\npart X", "b.sprag": "part B\npart X" };
    expect(problemsIn('use "a.sprag"\nuse "b.sprag"\nprocedure P { step install A, B }', files)).toEqual([
      'twice «"b.sprag"»',
    ]);
  });
  test("the same file may be used twice", () => {
    expect(problemsIn('use "lib.sprag"\nuse "./lib.sprag"\nprocedure P { step install Cover }', library)).toEqual([]);
  });

  test.each([
    ["absent", 'use "gone.sprag"', ['path «"gone.sprag"» absent']],
    ["leaving", 'use "../lib.sprag"', ['path «"../lib.sprag"» leaves']],
    ["absolute", 'use "/lib.sprag"', ['path «"/lib.sprag"» absolute']],
    ["of a drive", 'use "C:/lib.sprag"', ['path «"C:/lib.sprag"» absolute']],
    ["empty", 'use ""', ['path «""» absent']],
    ["a figure that is gone", 'procedure P { step "x" figure "gone.png" }', ['path «"gone.png"» absent']],
    [
      "a table that lies outside",
      'part A\nring R { count 2 }\narrangement X of A in R { from "../t.csv" }',
      ['path «"../t.csv"» leaves'],
    ],
  ])("a path %s", (_title, text, problems) => {
    expect(problemsIn(text)).toEqual(problems);
  });

  test("nothing is said of names that a missing file may declare", () => {
    expect(problemsIn('use "gone.sprag"\nprocedure P { step install Cover[3] }')).toEqual([
      'path «"gone.sprag"» absent',
    ]);
  });

  test("circles of files are told at each use that lies on them", () => {
    const files = { "a.sprag": 'use "b.sprag"', "b.sprag": 'use "a.sprag"' };
    expect(problemsIn('use "a.sprag"', files)).toEqual([]);
    expect(problemsIn('use "a.sprag"', { "a.sprag": 'use "main.sprag"' })).toEqual([
      'circle «"a.sprag"»: main.sprag a.sprag main.sprag',
    ]);
    expect(problemsIn('use "main.sprag"')).toEqual(['circle «"main.sprag"»: main.sprag main.sprag']);
  });

  test("circles of procedures are told at each perform that lies on them", () => {
    const text =
      "procedure A { perform B }\nprocedure B { perform C }\nprocedure C { step perform A }\nprocedure D { perform A }";
    expect(problemsIn(text)).toEqual([
      "circle «perform B»: A B C A",
      "circle «perform C»: B C A B",
      "circle «perform A»: C A B C",
    ]);
    expect(problemsIn('procedure A { perform B perform B }\nprocedure B { step "x" }')).toEqual([]);
  });

  test("values that wait for each other are told once", () => {
    expect(problemsIn("value A = B + 1 mm\nvalue B = 2 * A\nvalue C = A")).toEqual(["circle «A»: A B A"]);
  });
});

describe("unused", () => {
  test.each([
    ["a part", 'part A\nprocedure P { step "x" }', ["unused part «A»"]],
    ["a declaration in the procedure", 'procedure P { part A step "x" }', ["unused part «A»"]],
    ["an option", 'option O { x y }\nprocedure P { step "x" }', ["unused option «O»"]],
    [
      "a value, a fact, a hazard",
      'value V = 1 mm\nfact F\nhazard H\nprocedure P { step "x" }',
      ["unused value «V»", "unused fact «F»", "unused hazard «H»"],
    ],
  ])("%s", (_title, text, problems) => {
    expect(problemsIn(text)).toEqual(problems);
  });

  test.each([
    ["a file without procedures", "part A\nrole B"],
    ["what a declaration names", "material M\npart A { material M }\nprocedure P { step install A }"],
    ["what a value names", 'value V = 1 mm\nvalue W = 2 * V\nprocedure P { step { check "x" expect at most W } }'],
    ["a fastener of what is used", "part A\npart S { secures A }\nprocedure P { begin with A is secured }"],
    [
      "what takes effect without a name",
      'part A\npart B\nfit A over B\nthreshold burn 50 °C\nprocedure P { step measure G "x" step install A, B }',
    ],
    ["what was probably meant", "part Cover\nprocedure P { step install Covr }"],
    ["a file that could not be read everywhere", "part A\nprocedure P { step install }"],
  ])("quiet: %s", (_title, text) => {
    expect(problemsIn(text).filter((problem) => problem.startsWith("unused"))).toEqual([]);
  });

  test("a file that others use declares for them too", () => {
    const used = { "other.sprag": 'use "main.sprag"\nprocedure Q { step "x" }' };
    expect(problemsIn('part A\nprocedure P { step "x" }', used)).toEqual([]);
  });
  test("a use of thresholds or terms takes effect by itself", () => {
    expect(problemsIn('use "t.sprag"\nprocedure P { step "x" }', { "t.sprag": 'term "a" not "b"' })).toEqual([]);
  });
});
