// With options chosen: what is left out is told by the choice made, and no step is tied to one that is not done.
// Source: outputs.md, Outputs: “options applied”; language.md: `within`, `after` and `before` name a step that is done.
import { expect, test } from "vitest";
import { buildChecklist } from "#outputs/checklist/build.ts";
import { createRowMemory } from "#outputs/kept-rows.ts";
import { de } from "#outputs/words/de.ts";
import { en } from "#outputs/words/en.ts";
import { openWorkspace } from "#workspace/workspace.ts";
import { blocksIn, inputFrom, make, stepsIn } from "./make.ts";
import { around } from "./procedures.ts";

/** What stands between the steps. */
function directions(lines: string, options: Readonly<Record<string, string>>, words?: typeof de): readonly string[] {
  const { document } = make(around(lines), { options }, words);
  return [...blocksIn(document.blocks)].flatMap((block) => (block.kind === "direction" ? [block.text] : []));
}

const TWO = "when Extent is Full { step clean Base } otherwise { step clean Cover step clean Shim }";

test.each([
  [TWO, { Extent: "Reseal" }, "(extent of work is “reseal only”): step 1."],
  [TWO, { Extent: "Full" }, "(extent of work is “full overhaul”): steps 2 to 3."],
  ["when Extent is not Full { step clean Base }", { Extent: "Full" }, "(extent of work is “full overhaul”): step 1."],
  ["when Kept is yes { step clean Base }", { Kept: "no" }, "(“the seals are kept” is “no”): step 1."],
  ["when Kept is no { step clean Base }", { Kept: "yes" }, "(the seals are kept): step 1."],
  [
    "when Extent is Full or Kept is yes { step clean Base }",
    { Extent: "Reseal", Kept: "no" },
    "(extent of work is “reseal only” and “the seals are kept” is “no”): step 1.",
  ],
  // One choice decides; the other is still to be made.
  [
    "when Extent is Full and Kept is yes { step clean Base }",
    { Extent: "Reseal" },
    "(extent of work is “reseal only”): step 1.",
  ],
])("%s, %j", (lines, options, reason) => {
  expect(directions(lines, options)).toEqual([`Left out, because of the options chosen ${reason}`]);
});

test("an arm below the one that is chosen goes with that choice, whatever it asks itself", () => {
  const lines = "when Extent is Full { step clean Base } otherwise when Kept is yes { step clean Cover }";
  expect(directions(lines, { Extent: "Full" })).toEqual([
    "Left out, because of the options chosen (extent of work is “full overhaul”): step 2.",
  ]);
});

test("in German", () => {
  expect(directions(TWO, { Extent: "Reseal" }, de)).toEqual([
    "Entfällt durch die gewählten Varianten (extent of work ist „reseal only“): Schritt 1.",
  ]);
});

const TIED = `when Extent is Full { step First { clean Base } }
  step Third { clean Shim  after First  before Fourth  takes 1 min }
  step Late { clean Cover  within 60 s after First  takes 10 s }
  when Extent is Full { step Fourth { clean Base  after First, Third } }`;

const termsOf = (options: Readonly<Record<string, string>>): readonly string[] =>
  stepsIn(make(around(TIED), { options }).document).map(({ number, terms }) => `${number}: ${terms.join(" ")}`);

test("a step that is left out is no term of another", () => {
  expect(termsOf({ Extent: "Reseal" })).toEqual(["2: Takes about 1 min.", "3: Takes about 10 s."]);
});

test("one that is done is, and so is one that is still open", () => {
  const all = [
    "1: ",
    "2: Only after step 1 (First). Before step 4 (Fourth). Takes about 1 min.",
    "3: Finish within 60 s after the end of step 1 (First). Takes about 10 s.",
    "4: Only after step 1 (First) and step 2 (Third).",
  ];
  expect(termsOf({ Extent: "Full" })).toEqual(all);
  expect(termsOf({})).toEqual(all);
});

test("a row that is kept is made again where the step that it names is now left out", () => {
  const memory = createRowMemory();
  const termsIn = (lines: string): readonly string[] => {
    const workspace = openWorkspace({
      texts: new Map([["main.sprag", around(lines)]]),
      present: new Set(),
      absent: new Set(),
      today: "2026-05-04",
    });
    const input = { ...inputFrom(workspace, "main.sprag", 0, { options: { Extent: "Reseal" } }), memory };
    return stepsIn(buildChecklist(input, en)).flatMap(({ terms }) => terms);
  };
  const second = "step { clean Cover after First }";
  expect(termsIn(`when Extent is Reseal { step First { clean Base } } ${second}`)).toEqual([
    "Only after step 1 (First).",
  ]);
  expect(termsIn(`when Extent is Full { step First { clean Base } } ${second}`)).toEqual([]);
});
