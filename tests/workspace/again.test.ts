// A workspace that was opened over an earlier one finds what a fresh one finds, whatever was edited in between; and what a check
// yields on its way changes nothing.

import fc from "fast-check";
import { expect, test } from "vitest";
import { anyPlace, typedInto } from "#harness/random-edit.ts";
import { sampleTexts } from "#harness/samples.ts";
import { isThorough } from "#harness/thorough.ts";
import { openWorkspace, type Snapshot, type Workspace } from "#workspace/index.ts";

const texts = new Map([...sampleTexts].filter(([path]) => /^(?:shop\/|[^/]*$)/.test(path)));
const paths = [...texts.keys()];
/** Files that others use, and some of those others. */
const edited = [
  "shop/tools.sprag",
  "shop/materials.sprag",
  "belt-change.sprag",
  "pump-rebuild.sprag",
  "valve-overhaul.sprag",
];

const edit = fc.record({
  path: fc.constantFrom(...edited),
  place: anyPlace,
  drop: fc.nat({ max: 12 }),
  put: fc.constantFrom("", " ", "x", "}", "{", '"', "step ", "5 ", "\n", 'use "shop/tools.sprag"\n'),
});

const RUNS = isThorough ? 100 : 5;

test("after any edits the findings are those of a fresh workspace", { timeout: 120_000 }, () => {
  let compared = 0;
  let found = 0;
  fc.assert(
    fc.property(fc.array(edit, { minLength: 1, maxLength: 3 }), (edits) => {
      let now = new Map(texts);
      let workspace = opened(now, null);
      workspace.check(["belt-change.sprag"]);
      for (const { path, ...edit } of edits) {
        now = new Map(now).set(path, typedInto(now.get(path) ?? "", edit));
        workspace = opened(now, workspace);
        // Not every state is looked at before the next key.
        if (edit.drop % 2 === 0) workspace.check([path]);
      }
      const fresh = opened(now, null);
      expect(workspace.wanted).toEqual(fresh.wanted);
      for (const path of [...edited, "hot-bearing-fit.sprag"]) {
        const report = workspace.check([path]);
        expect(report).toEqual(fresh.check([path]));
        compared++;
        found += report.files[0]?.findings.length ?? 0;
      }
    }),
    { numRuns: RUNS },
  );
  console.log(`${compared} files compared with a fresh build, ${found} findings in them`);
  expect(found).toBeGreaterThan(2 * RUNS);
});

test("a file that goes, and one that comes, are noticed where they are used", () => {
  const path = "belt-change.sprag";
  const whole = opened(texts, null);
  const before = whole.check([path]);
  const without = new Map(texts);
  without.delete("shop/tools.sprag");
  const gone = opened(without, whole);
  expect(gone.check([path])).toEqual(opened(without, null).check([path]));
  expect(gone.check([path])).not.toEqual(before);
  expect(opened(texts, gone).check([path])).toEqual(before);
});

test("what is behind an unchanged file is not made again", () => {
  const whole = opened(texts, null);
  const model = whole.loaded.models.get("valve-overhaul.sprag");
  const changed = new Map(texts).set("belt-change.sprag", `${texts.get("belt-change.sprag")}\n`);
  const next = opened(changed, whole);
  expect(next.loaded.models.get("valve-overhaul.sprag")).toBe(model);
  expect(next.loaded.models.get("belt-change.sprag")).not.toBe(whole.loaded.models.get("belt-change.sprag"));
  const shop = new Map(texts).set("shop/tools.sprag", `${texts.get("shop/tools.sprag")}\n`);
  expect(opened(shop, whole).loaded.models.get("valve-overhaul.sprag")).not.toBe(model);
});

test("a check in steps comes to the same, and may be left in the middle", () => {
  const whole = opened(texts, null);
  let turns = 0;
  const steps = opened(texts, null).checkInSteps(paths);
  let next = steps.next();
  for (; next.done !== true; next = steps.next()) turns++;
  expect(next.value).toEqual(whole.check(paths));
  expect(turns).toBeGreaterThan(paths.length);
  const left = opened(texts, null);
  const some = left.checkInSteps(["pump-rebuild.sprag"]);
  some.next();
  some.next();
  expect(left.check(["pump-rebuild.sprag"])).toEqual(whole.check(["pump-rebuild.sprag"]));
});

function opened(now: ReadonlyMap<string, string>, before: Workspace | null): Workspace {
  const snapshot: Snapshot = {
    texts: now,
    present: new Set(["figures/cover-circle.svg"]),
    absent: new Set(),
    today: "2026-05-04",
  };
  return openWorkspace(snapshot, before);
}
