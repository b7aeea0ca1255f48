// While one task of a procedure is written, the others keep their records, in place or moved: the model is that of a fresh lowering.
import { expect, test } from "vitest";
import { createComparison } from "#model/alike.ts";
import { type Lowered, lowerAgain } from "#model/lower.ts";
import type { FileModel, Item, Task } from "#model/procedure.ts";
import { type ParsedFile, parseAgain, parseText } from "#syntax/parse.ts";
import { linkFiles } from "#syntax/scope.ts";

const path = "made.sprag";
/** Tasks that hang on each other in every way that there is, and some that hang on nothing. */
const TEXT = `role Fitter "fitter"
tool Gauge "gauge" { measures 0 .. 5 mm  resolution 0.1 mm }
part Cover "cover"
part Seal "seal"
part Cap "cap"

procedure Work "Work" {
  value Least = 1 mm
  task Alone "By itself" {
    step TakeOff "Take the cover off." { remove Cover  takes 2 min }
    step do "Clean the seat."
  }
  task Reads "Measure" {
    step { measure Gap "the gap" with Gauge }
    step do "Look at it."
  }
  task Uses "Go by the reading" {
    step { when Gap is at most 2 mm { remove Seal } }
  }
  task Names "Go by a value" {
    step { check "the wear" with Gauge expect at least Least }
  }
  task Behind "After a step of another task" {
    step PutOn { install Cap  after TakeOff }
  }
  task Back "Back to another task" {
    step { check "the seat" if it fails { return to TakeOff } }
  }
  task Wrong "With an unknown name" {
    step remove Nothing
  }
  task Last "By itself, at the end" {
    step do "Clean the bench."
    step PutAway "Put the tools away." { do "count them"  sign Fitter }
  }
}
`;

interface Stage {
  readonly lowering: Lowered;
  readonly parsed: ParsedFile;
  readonly model: FileModel;
}

function lowered(text: string, before: Stage | null): Stage {
  const parsed = before === null ? parseText(text, path) : parseAgain(before.parsed, text);
  const files = new Map([[path, parsed]]);
  linkFiles(files);
  const lowering = lowerAgain(
    files,
    () => true,
    () => null,
    before?.lowering ?? null,
  );
  return { lowering, parsed, model: lowering.models.get(path) as FileModel };
}

function tasksIn({ model }: Stage): readonly Task[] {
  return (model.procedures[0]?.items ?? []).filter((item: Item): item is Task => item.kind === "task");
}

/** Their names: those that are the same records, and those that were moved. */
function keptIn(now: Stage, before: Stage): { readonly same: string[]; readonly moved: string[] } {
  const earlier = new Set(tasksIn(before));
  const from = now.lowering.moves.get(path)?.taskBefore;
  const named = (tasks: readonly Task[]): string[] => tasks.map(({ name }) => name ?? "");
  return {
    same: named(tasksIn(now).filter((task) => earlier.has(task))),
    moved: named(tasksIn(now).filter((task) => earlier.has(from?.get(task) as Task))),
  };
}

function expectFresh(now: Stage, text: string): void {
  const fresh = lowered(text, null);
  const { isAlike } = createComparison(() => (start, end) => ({ start, end }));
  if (!isAlike(now.model, fresh.model)) expect(now.model).toEqual(fresh.model);
}

test.each([
  {
    what: "a word in the first: one that speaks of a step in it is another",
    from: "Clean the seat.",
    to: "Clean the wide seat.",
    same: [],
    moved: ["Last"],
  },
  {
    what: "a sign more in the last: all in front of it stay",
    from: "Clean the bench.",
    to: "Clean the bench!!",
    same: ["Alone", "Behind", "Back"],
    moved: [],
  },
  {
    what: "as many signs in the middle: what stands behind stays too",
    from: "the wear",
    to: "the tear",
    same: ["Alone", "Behind", "Back", "Last"],
    moved: [],
  },
  {
    what: "a half-typed line",
    from: "step { check",
    to: "ste\n    step { check",
    same: ["Alone"],
    moved: ["Behind", "Back", "Last"],
  },
  { what: "the name of a step", from: "PutAway", to: "PutBack", same: [], moved: [] },
  {
    what: "a step more with a name",
    from: "step PutOn {",
    to: "step Extra { }\n    step PutOn {",
    same: [],
    moved: [],
  },
  {
    what: "a task in front: all have other numbers",
    from: "task Alone",
    to: "task do {}\n  task Alone",
    same: [],
    moved: [],
  },
  { what: "a value of the procedure", from: "Least = 1 mm", to: "Least = 2 mm", same: [], moved: [] },
  { what: "what all share", from: 'part Cap "cap"', to: 'part Cap "lid"', same: [], moved: [] },
])("$what", ({ from, moved, same, to }) => {
  expect(TEXT).toContain(from);
  const before = lowered(TEXT, null);
  const text = TEXT.replace(from, to);
  const now = lowered(text, before);
  expect(keptIn(now, before)).toEqual({ same, moved });
  expectFresh(now, text);
  // And back again.
  const again = lowered(TEXT, now);
  expectFresh(again, TEXT);
});

test("a task that moved moves on", () => {
  let text = TEXT;
  let stage = lowered(text, null);
  for (const word of ["one ", "two ", "three "]) {
    text = text.replace("Clean ", `Clean ${word}`);
    const next = lowered(text, stage);
    expect(keptIn(next, stage).moved).toEqual(["Last"]);
    expectFresh(next, text);
    stage = next;
  }
});

test("an edit after an edit of which nobody asked for the model", () => {
  const before = lowered(TEXT, null);
  const between = parseAgain(before.parsed, TEXT.replace("Clean the seat", "Clean the wide seat"));
  const text = between.text.replace("Clean the bench", "Clear the bench");
  const now = lowered(text, { ...before, parsed: between });
  expect(keptIn(now, before).same).toEqual([]);
  expectFresh(now, text);
});
