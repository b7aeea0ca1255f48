// What is found in a file hangs on no other file that is checked with it: random folders of procedures that use and perform each other, in
// circles too, checked together, one by one and in random parts.
import fc from "fast-check";
import { expect, test } from "vitest";
import { isThorough } from "#harness/thorough.ts";
import { mergedReport } from "#workspace/report-merge.ts";

import { openWorkspace, type Workspace } from "#workspace/workspace.ts";

const LIBRARY = `part Hub "hub"
part Cover "cover" { encloses Hub }
part Pin "pin"
option Extent "extent" { Full Part }
option Kind "kind" { One Two }
`;

const RUNS = isThorough ? 300 : 20;
const FILES = 5;
const part = fc.constantFrom("Hub", "Cover", "Pin");
const verb = fc.constantFrom("install", "remove");
const work = fc.tuple(verb, part).map((words) => `step ${words.join(" ")}`);
const line = fc.oneof(
  { weight: 4, arbitrary: work },
  { weight: 3, arbitrary: fc.nat(FILES - 1).map((at) => `step perform P${at}`) },
  { weight: 1, arbitrary: work.map((step) => `when Extent is Full { ${step} }`) },
  { weight: 1, arbitrary: work.map((step) => `when Kind is One { ${step} allow order.enclosed because "so" }`) },
);
/** A file uses the library and all whose procedures it performs. */
const file = fc.record({ begins: fc.boolean(), lines: fc.array(line, { minLength: 1, maxLength: 6 }) });

function textOf(
  { begins, lines }: { readonly begins: boolean; readonly lines: readonly string[] },
  own: number,
): string {
  const performed = new Set(lines.flatMap((one) => one.match(/(?<=perform P)\d/) ?? []));
  performed.delete(String(own));
  return [
    'use "lib.sprag"',
    ...[...performed].map((at) => `use "p${at}.sprag"`),
    `procedure P${own} "P ${own}" {`,
    ...(begins ? ["begin with Cover is installed"] : []),
    ...lines,
    "}\n",
  ].join("\n");
}

function opened(texts: ReadonlyMap<string, string>): Workspace {
  return openWorkspace({ texts, present: new Set(), absent: new Set(), today: "2026-05-04" });
}

test("together, one by one and in parts the same is found", { timeout: 300_000 }, () => {
  const folder = fc.array(file, { minLength: FILES, maxLength: FILES });
  const parts = fc.array(fc.nat(2), { minLength: FILES, maxLength: FILES });
  const set = fc.constantFrom({}, { Extent: "Part" }, { Kind: "One", Extent: "Full" });
  let circles = 0;
  let found = 0;
  fc.assert(
    fc.property(folder, parts, set, (files, partOf, chosen) => {
      const texts = new Map([
        ["lib.sprag", LIBRARY],
        ...files.map((one, at) => [`p${at}.sprag`, textOf(one, at)] as const),
      ]);
      const paths = [...texts.keys()].slice(1);
      const whole = opened(texts).check(paths, { set: chosen });
      const apart = [0, 1, 2].map((number) =>
        opened(texts).check(
          paths.filter((_, at) => partOf[at] === number),
          { set: chosen },
        ),
      );
      expect(mergedReport(apart)).toEqual(whole);
      const one = opened(texts);
      expect(mergedReport(paths.map((path) => one.check([path], { set: chosen })))).toEqual(whole);
      const text = JSON.stringify(whole);
      if (text.includes("names.use-cycle")) circles++;
      found += whole.summary.errors;
    }),
    { numRuns: RUNS },
  );
  expect(circles).toBeGreaterThan(RUNS / 8);
  expect(found).toBeGreaterThan(RUNS / 2);
});

test("no file at all is a report of none", () => {
  expect(mergedReport([])).toEqual({
    version: 1,
    files: [],
    summary: {
      ...{ errors: 0, warnings: 0, information: 0, hints: 0, allowed: 0 },
      ...{ files: 0, procedures: 0, steps: 0 },
    },
  });
});
