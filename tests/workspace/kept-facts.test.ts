// A procedure that says what it said is not followed again, and what is found is what a fresh check finds, after any edits.
import fc from "fast-check";
import { expect, test } from "vitest";
import { anyPlace, typedInto } from "#harness/random-edit.ts";
import { isThorough } from "#harness/thorough.ts";
import { openWorkspace, type Workspace } from "#workspace/index.ts";
import { procedureText } from "../bench/procedure-text.ts";

const [declared = "", ...closing] = procedureText({ stations: 6, options: 2, procedures: 3 }).split(/^(?=procedure )/m);
const shop = `${declared}
part Hub "hub" { material Steel }
part Shaft "shaft" { material Steel }
material Steel "steel" { expansion 11.7 µm/(m·K) }
fit Hub over Shaft { bore 60 H7  shaft 60 p6 }
option Spare "a spare is kept" { yes no }
`;
const main = `use "shop.sprag"

${closing.join("\n")}
procedure All "Close everything" {
  perform CloseStations2
  when Spare is yes {
    when Cap1Wanted is no {
      step "Put the cap away."
      step remove Cover1
    }
  }
  step { remove Hub  install Hub over Shaft }
}

procedure Last "Look at it" {
  step install Cover2
  step install Cover2
}
`;
const files = ["main.sprag", "shop.sprag"] as const;
const start: ReadonlyMap<string, string> = new Map([
  ["main.sprag", main],
  ["shop.sprag", shop],
]);

function opened(texts: ReadonlyMap<string, string>, before: Workspace | null): Workspace {
  return openWorkspace({ texts, present: new Set(), absent: new Set(), today: "2026-05-04" }, before);
}

/** How many procedures of the main file are followed: each is worth three turns, one that is taken over one. */
function followed(workspace: Workspace): number {
  const steps = workspace.checkInSteps(["main.sprag"]);
  let turns = 0;
  while (steps.next().done !== true) turns++;
  const all = workspace.loaded.models.get("main.sprag")?.procedures.length ?? 0;
  // Where not a sign is another, nothing is looked at again.
  return turns === 0 ? 0 : (turns - 1 - all) / 2;
}

function changed(
  texts: ReadonlyMap<string, string>,
  path: string,
  from: string,
  to: string,
): ReadonlyMap<string, string> {
  const text = texts.get(path) ?? "";
  expect(text).toContain(from);
  return new Map(texts).set(path, text.replace(from, to));
}

test.each([
  ["a word in the first procedure", "main.sprag", "Put cover 1 on", "Lay cover 1 on", 1],
  ["a line in one that another performs", "main.sprag", "inspect Cover3", "clean Cover3\n      inspect Cover3", 2],
  ["a half-typed line", "main.sprag", "inspect Cover5", "inspect Cover5\n      check ", 1],
  ["a comment between two procedures", "main.sprag", "procedure All", "// As before.\nprocedure All", 0],
  ["a comment in the file behind it", "shop.sprag", "ring Circle2", "// The second.\nring Circle2", 0],
  ["a mass in the file behind it", "shop.sprag", "mass 4 kg", "mass 5 kg", 5],
])("only what changed is followed: %s", (_, path, from, to, expected) => {
  const before = opened(start, null);
  expect(followed(before)).toBe(5);
  const texts = changed(start, path, from, to);
  const after = opened(texts, before);
  expect(followed(after)).toBe(expected);
  expect(after.check(["main.sprag"])).toEqual(opened(texts, null).check(["main.sprag"]));
});

test("several options are told in the order of their declarations, whatever was followed before", () => {
  const before = opened(start, null);
  before.check(["main.sprag"]);
  const texts = changed(start, "main.sprag", "remove Cover1", "remove Cover3");
  const [told] = opened(texts, before)
    .check(["main.sprag"])
    .files.flatMap(({ findings }) =>
      findings.filter(({ step, options }) => step !== undefined && options !== undefined),
    );
  expect(told?.options?.map((one) => Object.keys(one))).toEqual([["Cap1Wanted", "Spare"]]);
});

const put = fc.constantFrom(
  ...[
    "",
    "",
    " ",
    "\n",
    "x",
    "1",
    "}",
    "{",
    '"',
    "// ",
    "step ",
    "when Spare is yes { ",
    "remove Cover1\n",
    "install Cover2\n",
  ],
  ...["part Extra\n", "perform CloseStations1\n", "procedure X { step install Hub }\n"],
);
const edit = fc.record({
  path: fc.constantFrom(...files),
  place: anyPlace,
  drop: fc.oneof(fc.constant(0), fc.nat({ max: 30 })),
  put,
  /** Not every state is looked at before the next key, and some are taken back. */
  how: fc.constantFrom("check", "check", "check", "go on", "take back"),
});

test("after any edits what is found is what a fresh check finds", { timeout: 1_200_000 }, () => {
  let compared = 0;
  let takenOver = 0;
  fc.assert(
    fc.property(fc.array(edit, { minLength: 8, maxLength: 8 }), (edits) => {
      let texts = start;
      let workspace = opened(texts, null);
      workspace.check(["main.sprag"]);
      // What a fresh workspace finds is asked for behind them all: it may leave something that hides what these would keep.
      const reports: (readonly [ReadonlyMap<string, string>, ReturnType<Workspace["check"]>])[] = [];
      for (const { how, path, ...edit } of edits) {
        const next = new Map(texts).set(path, typedInto(texts.get(path) ?? "", edit));
        workspace = opened(next, workspace);
        if (how !== "take back") texts = next;
        if (how === "go on") continue;
        const all = workspace.loaded.models.get("main.sprag")?.procedures.length ?? 0;
        takenOver += all - followed(workspace);
        reports.push([next, workspace.check(["main.sprag"])]);
      }
      for (const [next, report] of reports) {
        expect(report).toEqual(opened(next, null).check(["main.sprag"]));
        compared++;
      }
    }),
    { numRuns: isThorough ? 100 : 3 },
  );
  console.log(`${compared} edits compared with a fresh build, ${takenOver} procedures taken over`);
  expect(takenOver).toBeGreaterThan(compared / 2);
});
