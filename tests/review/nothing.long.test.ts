// What means the same has no entry above layout, or is told as restated: formatted, commented, spelled or ordered otherwise,
// written in other units, written out.
import fc from "fast-check";
import { expect, test } from "vitest";
import { isShopProcedure, plainTexts, tables } from "#harness/samples.ts";
import type { Value } from "#model/declarations.ts";
import { show, showIn } from "#quantity/display.ts";
import { shownUnit } from "#quantity/shown-unit.ts";
import { formatText } from "#syntax/format.ts";
import { parseText } from "#syntax/parse.ts";
import { linesOf, reviewed, reviewedFrom, type Texts, workspaceOf } from "./compare-texts.ts";
import { LIBRARY, MAIN } from "./shop.ts";

/** The shop's procedures with all they use. */
const SAMPLES: Texts = Object.fromEntries(
  [...plainTexts, ...tables].filter(([path]) => isShopProcedure(path) || path.startsWith("shop/")),
);
const LONG = 120_000;

function kinds(old: Texts, now: Texts): readonly string[] {
  return [...new Set(reviewed(old, now).changes.map(({ group, kind }) => `${group} ${kind}`))];
}

function everywhere(edit: (text: string) => string): Texts {
  return Object.fromEntries(
    Object.entries(SAMPLES).map(([path, text]) => [path, path.endsWith(".sprag") ? edit(text) : text]),
  );
}

test("the samples against themselves", { timeout: LONG }, () => {
  expect(Object.keys(SAMPLES).length).toBeGreaterThan(8);
  expect(reviewed(SAMPLES, SAMPLES).changes).toEqual([]);
});

test("the samples against themselves with comments, and in plain-keyboard spellings", { timeout: LONG }, () => {
  expect(
    kinds(
      SAMPLES,
      everywhere((text) => spelled(text).replaceAll("\n", " // a word\n/* more */\n")),
    ),
  ).toEqual(["layout layout"]);
});

/** Outside texts, where a sign is a sign. */
function spelled(text: string): string {
  return text.replace(/"[^"]*"|N·m|±|µm|°C/g, (one) => SPELT[one] ?? one);
}

const SPELT: Readonly<Record<string, string>> = { N·m: "N*m", "±": "+/-", µm: "um", "°C": "degC" };

test("the samples against themselves laid out again", { timeout: LONG }, () => {
  const plain = everywhere((text) => spelled(text).replace(/\n\s*/g, "\n"));
  const again = everywhere((text) => {
    const made = formatText(parseText(spelled(text), "a.sprag"));
    expect(made.ok).toBe(true);
    return made.ok ? made.text : text;
  });
  expect(kinds(plain, again)).toEqual(["layout layout"]);
});

test("each value written in the other unit system, as the program itself converts it, is restated", () => {
  const workspace = workspaceOf({ "main.sprag": MAIN, "used/library.sprag": LIBRARY });
  const model = workspace.loaded.models.get("main.sprag");
  const values = [...valuesIn(model)].filter(({ span }) => span.path === "main.sprag");
  let compared = 0;
  for (const { quantity, span } of values) {
    const end = quantity.nominal ?? quantity.high ?? quantity.low;
    const unit = end === null ? null : shownUnit(quantity.kind, end.base, "customary");
    if (unit === null || MAIN.slice(span.start, span.end) !== show(quantity)) continue;
    const text =
      MAIN.slice(0, span.start) +
      showIn(quantity, unit, quantity.form === "nominal" ? "nominal" : "must be met") +
      MAIN.slice(span.end);
    const now = workspaceOf({ "main.sprag": text, "used/library.sprag": LIBRARY });
    const { changes } = reviewedFrom(workspace, now);
    expect(
      changes.map(({ kind }) => kind),
      linesOf({ ...reviewedFrom(workspace, now) }).join("\n"),
    ).toEqual(["restated"]);
    compared++;
  }
  expect(compared).toBeGreaterThan(8);
});

/** Every value of a model, each once. */
function* valuesIn(root: unknown, seen = new Set<unknown>()): Generator<Value> {
  if (typeof root !== "object" || root === null || seen.has(root)) return;
  seen.add(root);
  if ("quantity" in root && "span" in root && "per" in root) yield root as Value;
  for (const inner of Object.values(root)) yield* valuesIn(inner, seen);
}

test.each([
  ["declarations in another order", (text: string) => moveBlock(text, "part Shaft", "part Cover")],
  ["use and declarations behind the procedure's", (text: string) => moveBlock(text, "term", "value")],
  [
    "conditions of one line in another order",
    (text: string) => text.replace("Shaft is installed, Signed", "Signed, Shaft is installed"),
  ],
  [
    "two statements that hold for the same",
    (text: string) => swapLines(text, "    warning burn", "    caution overheating"),
  ],
  [
    "a loop's variable by another name",
    (text: string) =>
      text.replace("repeat n in 1, 3, 2, 4 { step install Screw[n]", "repeat k in 1, 3, 2, 4 { step install Screw[k]"),
  ],
  [
    "a loop written out",
    (text: string) =>
      text.replace(/repeat n in 1, 3, 2, 4 \{ (.*) \}/, (_, step: string) =>
        [1, 3, 2, 4].map((n) => step.replace("[n]", `[${n}]`)).join("\n    "),
      ),
  ],
  ["instances one by one", (text: string) => text.replace("tighten Screw[all]", "tighten Screw[1..4]")],
  ["a number with more digits of nothing", (text: string) => text.replace("mass 8 kg", "mass 8.0 kg")],
])("%s: nothing to review", (_title, edit) => {
  const text = edit(MAIN);
  const { changes } = reviewed(
    { "main.sprag": MAIN, "used/library.sprag": LIBRARY },
    { "main.sprag": text, "used/library.sprag": LIBRARY },
  );
  expect(changes.filter(({ group }) => group !== "layout").map(({ kind }) => kind)).toEqual([]);
});

/** Puts the declaration that begins so behind the line that begins the other. */
function moveBlock(text: string, block: string, behind: string): string {
  const lines = text.split("\n");
  const at = lines.findIndex((line) => line.startsWith(block));
  const [line = ""] = lines.splice(at, 1);
  lines.splice(
    lines.findIndex((one) => one.startsWith(behind)),
    0,
    line,
  );
  return lines.join("\n");
}

function swapLines(text: string, one: string, other: string): string {
  const lines = text.split("\n");
  const [a, b] = [one, other].map((start) => lines.findIndex((line) => line.startsWith(start)));
  const swapped = [...lines];
  swapped[a ?? 0] = lines[b ?? 0] ?? "";
  swapped[b ?? 0] = lines[a ?? 0] ?? "";
  return swapped.join("\n");
}

test("steps of a block in any order may stand in any order", () => {
  const steps = ["inspect Cover", "inspect Shaft", "inspect Bearing", 'do "Sweep the bench."'].map(
    (line) => `step ${line}`,
  );
  const withSteps = (all: readonly string[]): Texts => ({
    "main.sprag": `part Cover part Shaft part Bearing procedure P { in any order { ${all.join(" ")} } }`,
  });
  fc.assert(
    fc.property(fc.shuffledSubarray(steps, { minLength: steps.length }), (shuffled) => {
      const { changes } = reviewed(withSteps(steps), withSteps(shuffled));
      expect(changes.filter(({ group }) => group !== "layout")).toEqual([]);
    }),
    { numRuns: 12 },
  );
});
