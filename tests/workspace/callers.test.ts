// A procedure in another file changes, and what is found in those that perform it changes with it: its `begin with`, what it
// leaves, a step of it. All through the façade.
import { expect, test } from "vitest";
import type { Finding } from "#rules/finding.ts";
import { concerns, filesBehind } from "#workspace/concerned.ts";
import type { Snapshot } from "#workspace/snapshot.ts";
import { openWorkspace, type Workspace } from "#workspace/workspace.ts";

const SHOP = `part Hub "hub"
part Cover "cover" { encloses Hub }
part Pin "pin"
fact Signed "the sheet is signed"
option Extent "extent of work" { Full Part }
energy Supply "supply" { voltage 400 V AC }
`;
const CALLER = `use "shop.sprag"
use "fit.sprag"

procedure Overhaul "Overhaul" {
  finish with Cover is installed, Hub is installed
  step Fit { perform FitHub }
  step install Cover
}
`;
const NEXT = `use "shop.sprag"
use "caller.sprag"

procedure All "All" {
  finish with Pin is installed
  step perform Overhaul
  step install Pin
}
`;
const OTHER = `use "shop.sprag"

procedure Other "Other" {
  finish with Pin is installed
  step install Pin
}
`;

function fitting(body: string): string {
  return `use "shop.sprag"\n\nprocedure FitHub "Fit the hub" {\n${body}\n}\n`;
}

function snapshot(body: string): Snapshot {
  const texts = {
    "shop.sprag": SHOP,
    "fit.sprag": fitting(body),
    "caller.sprag": CALLER,
    "next.sprag": NEXT,
    "other.sprag": OTHER,
  };
  return { texts: new Map(Object.entries(texts)), present: new Set(), absent: new Set(), today: "2026-05-04" };
}

const ALL = ["caller.sprag", "fit.sprag", "next.sprag", "other.sprag"];

/** As `caller.sprag order.unmet-need: perform FitHub`. */
function found(workspace: Workspace, paths: readonly string[] = ALL): readonly string[] {
  return workspace.findings(paths).map((finding) => {
    const { code, span, options } = finding;
    const words = workspace.snapshot.texts.get(span.path)?.slice(span.start, span.end);
    const so = options?.map((cube) => Object.entries(cube).flat().join(" ")).join(" or ");
    return `${span.path} ${code}: ${words}${so === undefined ? "" : ` | ${so}`}`;
  });
}

const SOUND = "finish with Hub is installed\nstep install Hub";
const sound = openWorkspace(snapshot(SOUND));

test("as long as it is sound, nothing is found anywhere", () => {
  expect(found(sound)).toEqual([]);
});

test.each([
  [
    "it asks for more at its beginning",
    `begin with Signed\n${SOUND}`,
    ["caller.sprag order.unmet-need: perform FitHub"],
  ],
  [
    "it asks for it under an option only",
    `begin with Signed or Extent is Part\n${SOUND}`,
    ["caller.sprag order.unmet-need: perform FitHub | Extent Full"],
  ],
  ["it asks for what is so", `begin with Hub is removed, Supply is live\n${SOUND}`, []],
  ["it leaves the hub out", "step inspect Hub", ["caller.sprag order.unfinished: Hub is installed"]],
  [
    "it leaves the hub out for some",
    "when Extent is Full { step install Hub }",
    ["caller.sprag order.unfinished: Hub is installed | Extent Part"],
  ],
  [
    "a step more, that puts in what its caller puts in",
    `finish with Cover is installed\nstep install Hub\nstep install Cover`,
    ["caller.sprag order.already-installed: install Cover"],
  ],
  [
    "a step more, that two levels up is done again",
    `${SOUND}\nstep install Pin`,
    ["next.sprag order.already-installed: install Pin"],
  ],
  [
    "it switches off and says so",
    `finish with Supply is isolated\n${SOUND}\nstep isolate Supply`,
    ["caller.sprag order.left-behind: perform FitHub", "next.sprag order.left-behind: perform Overhaul"],
  ],
  [
    "it stops on every path",
    `step install Hub\nstop "Call the engineer."`,
    ["caller.sprag flow.unreachable: step", "next.sprag flow.unreachable: step"],
  ],
])("%s", (_, body, wanted) => {
  const changed = snapshot(body);
  expect(found(openWorkspace(changed))).toEqual(wanted);
  // With what is kept of the one before, in whatever order it is asked, and back again.
  const after = openWorkspace(changed, sound);
  expect(found(after, [...ALL].reverse())).toEqual(expect.arrayContaining([...wanted]));
  expect(found(after)).toEqual(wanted);
  expect(found(openWorkspace(snapshot(SOUND), after))).toEqual([]);
});

test("a caller that is asked for alone is told the same as among others", () => {
  const after = openWorkspace(snapshot(`begin with Signed\n${SOUND}`), sound);
  expect(found(after, ["caller.sprag"])).toEqual(["caller.sprag order.unmet-need: perform FitHub"]);
  expect(found(after, ["fit.sprag"])).toEqual([]);
  expect(found(after, ["other.sprag"])).toEqual([]);
});

test("the line that asks stands in the other file, and is named as there", () => {
  const after = openWorkspace(snapshot(`begin with Signed\n${SOUND}`));
  const [file] = after.check(["caller.sprag"]).files;
  const related = file?.findings[0]?.related ?? [];
  expect(related.map(({ path, range, message }) => ({ path, line: range.start.line, message }))).toEqual([
    { path: "fit.sprag", line: 3, message: "FitHub asks for it here" },
  ]);
});

test("a file that is not there: its procedures are in doubt, not wrong", () => {
  const { texts, ...rest } = snapshot(SOUND);
  const without = new Map([...texts].filter(([path]) => path !== "fit.sprag"));
  const missing = openWorkspace({ ...rest, texts: without, absent: new Set(["fit.sprag"]) });
  expect(found(missing, ["caller.sprag"]).filter((line) => line.includes(" order."))).toEqual([]);
  const unknown = openWorkspace({ ...rest, texts: without });
  expect(unknown.wanted).toEqual([{ path: "fit.sprag", need: "text" }]);
});

test("what concerns a procedure: its own findings and those of all it performs, not its callers'", () => {
  const { loaded } = openWorkspace(snapshot(SOUND));
  const procedure = (path: string) => {
    const [one] = loaded.models.get(path)?.procedures ?? [];
    if (one === undefined) throw new Error(path);
    return one;
  };
  const finding = (path: string, name?: string): Finding =>
    ({
      code: "order.declared",
      span: { path, start: 0, end: 0 },
      ...(name === undefined ? {} : { procedure: name }),
    }) as Finding;
  const all = [
    finding("fit.sprag", "FitHub"),
    finding("caller.sprag", "Overhaul"),
    finding("next.sprag", "All"),
    finding("other.sprag", "Other"),
    finding("other.sprag", "Overhaul"),
    finding("other.sprag"),
  ];
  const concerned = (path: string): readonly string[] =>
    all.filter(concerns(loaded, procedure(path))).map(({ span, procedure: name }) => `${span.path} ${name ?? "-"}`);
  expect(concerned("fit.sprag")).toEqual(["fit.sprag FitHub", "other.sprag -"]);
  expect(concerned("caller.sprag")).toEqual(["fit.sprag FitHub", "caller.sprag Overhaul", "other.sprag -"]);
  expect(concerned("next.sprag")).toEqual([
    "fit.sprag FitHub",
    "caller.sprag Overhaul",
    "next.sprag All",
    "other.sprag -",
  ]);
  expect(concerned("other.sprag")).toEqual(["other.sprag Other", "other.sprag -"]);
});

test("the files behind a file, and behind those", () => {
  const { loaded } = sound;
  expect(filesBehind(loaded, "shop.sprag")).toEqual(["shop.sprag"]);
  expect(filesBehind(loaded, "fit.sprag")).toEqual(["fit.sprag", "shop.sprag"]);
  expect(filesBehind(loaded, "next.sprag")).toEqual(["caller.sprag", "fit.sprag", "next.sprag", "shop.sprag"]);
});
