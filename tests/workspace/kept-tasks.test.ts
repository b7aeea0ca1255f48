// While one task of a procedure is written, what is found in the others is what a fresh check finds, however often they move.
import fc from "fast-check";
import { expect, test } from "vitest";
import { anyPlace } from "#harness/random-edit.ts";
import { isThorough } from "#harness/thorough.ts";
import { typedThrough } from "#harness/typed-through.ts";
import { openWorkspace, type Workspace } from "#workspace/index.ts";

const path = "made.sprag";

/** Each task has something to tell, or would have if what it stands in said less. */
const TEXT = `source Manual "D-100 manual" revision "2"
role Fitter "fitter"
tool Wrench "torque wrench" { torque 8 .. 60 N·m  accuracy 4 % }
tool Gauge "gauge" { measures 0 .. 5 mm  resolution 0.1 mm }
part Cover "cover"
part Screw[1..4] "screw" { secures Cover  thread "M10x1.5"  class "8.8" }
part Seal "seal"

procedure Work "Work" {
  document "WI-1" revision "A" dated 2026-05-04
  task PutOn "Put the cover on" {
    per Manual "1.1"
    step { install Cover  takes 2 min }
    step { install Screw[all] }
    step { tighten Screw[all] to 38 N·m with Wrench }
  }
  task Again "Tighten again, without a source" {
    step "Tighten all to 40 N·m." { tighten Screw[all] to 38 N·m with Wrench }
  }
  task Measure "Measure the gap" {
    step { measure Gap "the gap" with Gauge expect 0.1 .. 0.5 mm record }
    step { when Gap is at most 0.2 mm { remove Seal } }
  }
  task Quiet "Nothing to tell" {
    step "Clean the bench."
  }
  task Critical "Nobody looks" {
    step { check "the seal" with Gauge expect 0.1 .. 0.5 mm  critical  sign Fitter }
  }
}
`;

function opened(text: string, before: Workspace | null): Workspace {
  const snapshot = { texts: new Map([[path, text]]), present: new Set<string>(), absent: new Set<string>() };
  return openWorkspace({ ...snapshot, today: "2026-05-04" }, before);
}

function codesIn(workspace: Workspace): readonly string[] {
  return workspace.check([path]).files.flatMap(({ findings }) => findings.map(({ code }) => code));
}

test.each([
  ["what a task inherits from its procedure comes", "  task PutOn", '  per Manual "1"\n  task PutOn', -1],
  ["what a task inherits goes", '    per Manual "1.1"\n', "", 1],
  ["a word", "Clean the bench.", "Clean the long bench.", 0],
  ["a line in front of all", "  task PutOn", '  note "See the drawing."\n  task PutOn', 0],
  ["a line that cannot be read, which may cite a source", "  task PutOn", "  per\n  task PutOn", -1],
])("%s", (_, from, to, more) => {
  expect(TEXT).toContain(from);
  const unsourced = (codes: readonly string[]): number => codes.filter((code) => code === "trace.no-source").length;
  const before = opened(TEXT, null);
  const were = codesIn(before);
  expect(unsourced(were)).toBe(1);
  const text = TEXT.replace(from, to);
  const now = opened(text, before);
  const codes = codesIn(now);
  expect(unsourced(codes)).toBe(1 + more);
  expect(now.check([path])).toEqual(opened(text, null).check([path]));
  expect(codesIn(opened(TEXT, now))).toEqual(were);
});

const edit = fc.record({
  place: anyPlace,
  drop: fc.constantFrom(0, 0, 0, 1, 9),
  put: fc.constantFrom(
    "",
    "x",
    " ",
    "\n",
    "\n",
    '"',
    "}",
    "critical\n",
    'per Manual "2"\n',
    'step do "as shown"\n',
    "1",
  ),
  back: fc.boolean(),
});

test("after any edits the findings are those of a fresh check", { timeout: 600_000 }, () => {
  let found = 0;
  let compared = 0;
  fc.assert(
    fc.property(fc.array(edit, { minLength: 5, maxLength: 5 }), (edits) => {
      const { findings, states } = typedThrough(path, TEXT, edits, opened);
      compared += states;
      found += findings;
    }),
    { numRuns: isThorough ? 600 : 10 },
  );
  expect(found).toBeGreaterThan(compared);
});
