// Tables of arrangements: asked for like any file, read by no parser, and what changes in them changes what is found.
import { expect, test } from "vitest";
import { exportText } from "#harness/export.ts";
import { openWorkspace, type Snapshot, type Workspace } from "#workspace/index.ts";

const TEXT = `ring R { count 2  numbered clockwise seen from "above"  position 1 at 12 o'clock }
part S[1..2] "segment" { seats in R by number }
arrangement Order of S in R { radius 500 mm  unbalance at most 600 g·mm  from "data/t.csv" }
`;
const EVEN = "position,serial,mass\n1,A,1 kg\n2,B,1 kg\n";
const UNEVEN = EVEN.replace("A,1 kg", "A,2 kg");

function opened(
  files: Readonly<Record<string, string>>,
  more: Partial<Snapshot> = {},
  before: Workspace | null = null,
) {
  const texts = new Map(Object.entries({ "shop/main.sprag": TEXT, ...files }));
  return openWorkspace({ texts, present: new Set(), absent: new Set(), today: "2026-05-04", ...more }, before);
}

function found(workspace: Workspace): readonly string[] {
  return workspace.check(["shop/main.sprag"]).files.flatMap(({ findings }) => findings.map(({ code }) => code));
}

test("the text of a table is wanted, from the folder of the file that names it", () => {
  expect(opened({}).wanted).toEqual([{ path: "shop/data/t.csv", need: "text" }]);
  expect(opened({ "shop/data/t.csv": EVEN }).wanted).toEqual([]);
  expect(opened({}, { absent: new Set(["shop/data/t.csv"]) }).wanted).toEqual([]);
});

test("a table is no procedure: it is not parsed, and has no findings of its own", () => {
  const workspace = opened({ "shop/data/t.csv": UNEVEN });
  expect([...workspace.loaded.parsed.keys()]).toEqual(["shop/main.sprag"]);
  expect(found(workspace)).toEqual(["limits.balance"]);
});

test("a table that is not there is told where it is named", () => {
  expect(found(opened({}, { absent: new Set(["shop/data/t.csv"]) }))).toEqual(["names.outside-workspace"]);
});

test("a table that changes, goes or comes is noticed over an earlier workspace, and one that does not keeps its records", () => {
  const first = opened({ "shop/data/t.csv": EVEN });
  expect(found(first)).toEqual([]);
  const same = opened({ "shop/data/t.csv": EVEN, "other.sprag": "" }, {}, first);
  expect(found(same)).toEqual([]);
  expect(same.loaded.models.get("shop/main.sprag")).toBe(first.loaded.models.get("shop/main.sprag"));
  const changed = opened({ "shop/data/t.csv": UNEVEN }, {}, same);
  expect(found(changed)).toEqual(["limits.balance"]);
  const gone = opened({}, { absent: new Set(["shop/data/t.csv"]) }, changed);
  expect(found(gone)).toEqual(["names.outside-workspace"]);
  expect(found(opened({ "shop/data/t.csv": EVEN }, {}, gone))).toEqual([]);
});

test("what was left out for want of data is told with the checklist", () => {
  const text = `${TEXT.replace("unbalance at most 600 g·mm", "")}procedure P { finish with S[all] are installed  step install S[all] }\n`;
  const workspace = opened({ "shop/main.sprag": text, "shop/data/t.csv": EVEN });
  const request = { path: "shop/main.sprag", as: "checklist", format: "md", units: "si", repeats: "full" } as const;
  expect(exportText(workspace, { ...request, draft: false })).toContain(
    "Not checked for want of data: balance of Order, no unbalance or grade",
  );
  expect(found(workspace)).toEqual([]);
});
