// Lowering and expansion give a model for any text at all.
import { readFileSync } from "node:fs";
import fc from "fast-check";
import { expect, test } from "vitest";
import { expandProcedure } from "#model/expand.ts";
import { modelOf, modelsOf } from "./model-of.ts";

const SAMPLES = ["03-declarations", "03-parts", "04-flow", "04-procedure", "04-steps", "05-actions"].map((name) =>
  readFileSync(`samples/language/${name}.sprag`, "utf8"),
);

function isLowered(text: string): void {
  const model = modelOf(text);
  for (const procedure of model.procedures) {
    const { expanded } = expandProcedure(procedure, 2_000);
    expect(expanded.procedure).toBe(procedure);
  }
  for (const { span } of model.problems) {
    expect(span.start).toBeGreaterThanOrEqual(0);
    expect(span.end).toBeLessThanOrEqual(text.length);
    expect(span.start).toBeLessThanOrEqual(span.end);
  }
}

test("samples with a stretch cut out, and with two stretches swapped", () => {
  const cut = fc.record({ sample: fc.constantFrom(...SAMPLES), a: fc.nat(4000), b: fc.nat(300), swap: fc.boolean() });
  fc.assert(
    fc.property(cut, ({ a, b, sample, swap }) => {
      const [from, to] = [a % sample.length, (a % sample.length) + b];
      const stretch = sample.slice(from, to);
      isLowered(swap ? stretch + sample.slice(0, from) + sample.slice(to) : sample.slice(0, from) + sample.slice(to));
    }),
    { numRuns: 60 },
  );
});

test("lines of the samples in any order", () => {
  const lines = SAMPLES.flatMap((sample) => sample.split("\n")).filter((line) => line.trim() !== "");
  fc.assert(
    fc.property(fc.array(fc.constantFrom(...lines), { maxLength: 40 }), (some) => isLowered(some.join("\n"))),
    { numRuns: 100 },
  );
});

test.each([
  ["nothing", ""],
  [
    "a long sum of indices",
    `part A[1..3]\nprocedure P { repeat n from 1 to 2 { step install A[n${" + 1".repeat(5000)}] } }`,
  ],
  [
    "a long chain of branches",
    `option O { x y }\nprocedure P { when O is x { step "a" } ${'otherwise when O is y { step "b" } '.repeat(500)} }`,
  ],
  ["thousands of one name", "part A\n".repeat(3000)],
  [
    "thousands of unknown names",
    `part Part\nprocedure P { ${Array.from({ length: 2000 }, (_, at) => `step install Prt${at}`).join("\n")} }`,
  ],
  [
    "a long circle of procedures",
    Array.from({ length: 300 }, (_, at) => `procedure P${at} { perform P${(at + 1) % 300} }`).join("\n"),
  ],
])("%s", (_title, text) => {
  const start = performance.now();
  isLowered(text);
  expect(performance.now() - start).toBeLessThan(10_000);
});

test("a file that is used by a file that comes before it", () => {
  const models = modelsOf({
    "a.sprag": 'use "b.sprag"\nprocedure P { begin with Cover is shutt step loosen Screw[all] perform Q }',
    "b.sprag": "part Cover\npart Screw[1..4] { secures Cover }\nprocedure Q { step inspect Cover }",
  });
  expect(models.get("a.sprag")?.procedures[0]?.unknownAtStart.map(({ name }) => name)).toEqual(["Cover", "Screw"]);
  expect(models.get("b.sprag")?.problems).toEqual([]);
});
