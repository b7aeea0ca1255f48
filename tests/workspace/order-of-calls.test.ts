// What a state of some texts is found to be does not hang on which other states were looked at, nor on which file is asked first.
import { expect, test } from "vitest";
import { fonts } from "#harness/fonts.ts";
import { exportAs, openWorkspace, type Workspace } from "#workspace/index.ts";

type Texts = Readonly<Record<string, string>>;

function opened(texts: Texts, before: Workspace | null): Workspace {
  const snapshot = { texts: new Map(Object.entries(texts)), present: new Set<string>(), absent: new Set<string>() };
  return openWorkspace({ ...snapshot, today: "2026-05-04" }, before);
}

function codes({ files }: ReturnType<Workspace["check"]>): readonly string[] {
  return files.flatMap(({ findings }) => findings.map(({ code, range }) => `${range.start.line + 1} ${code}`));
}

const dress = `procedure Dress "Dress the shaft" {
  begin with Shaft is installed
  finish with Key is installed, Ring is installed
  step install Key
  step install Ring
}
`;
const build = `part Shaft "shaft"
part Key "key" { needs Shaft }
part Ring "O-ring" { needs Shaft }
part Motor "motor"
procedure Build "Build up" {
  finish with Key is installed, Ring is installed, Motor is installed
  step install Shaft
  step perform Dress
  step install Motor
}
`;

test("a procedure is followed again once one that it performs, and that stands behind it, says something else", () => {
  const path = "build.sprag";
  const before = opened({ [path]: build + dress }, null);
  expect(codes(before.check([path]))).toEqual([]);
  const less = dress
    .replace("finish with Key is installed, Ring", "finish with Ring")
    .replace("step install Key", "step inspect Shaft");
  const after = opened({ [path]: build + less }, before);
  const report = after.check([path]);
  const asked = { path, procedure: "Build", as: "checklist", format: "md", units: "si", repeats: "compact" } as const;
  const exported = exportAs(after, { ...asked, draft: false, fonts });
  expect(codes(report)).toContain("6 order.unfinished");
  expect(exported.kind).toBe("errors");
  const back = opened({ [path]: build + dress }, after);
  expect(codes(back.check([path]))).toEqual([]);
});

test("two states that follow the same one are each what they are", () => {
  const a = `use "b.sprag"
procedure A "a" {
  step install Motor
  step perform Lib
}
`;
  const b = `part Shaft "shaft"
part Motor "motor"
procedure Lib "lib" {
  step install Shaft
}
`;
  const first = opened({ "a.sprag": a, "b.sprag": b }, null);
  first.check(["a.sprag"]);
  const other = opened({ "a.sprag": a, "b.sprag": b.replace("install Shaft", "inspect Shaft") }, first);
  other.check(["a.sprag"]);
  const twice = a.replace("step perform", "step install Motor\n  step perform");
  const next = opened({ "a.sprag": twice, "b.sprag": b }, first);
  const report = next.check(["a.sprag"]);
  const again = first.check(["a.sprag", "b.sprag"]);
  expect(codes(report)).toContain("4 order.already-installed");
  expect(report).toEqual(opened({ "a.sprag": twice, "b.sprag": b }, null).check(["a.sprag"]));
  expect(again).toEqual(opened({ "a.sprag": a, "b.sprag": b }, null).check(["a.sprag", "b.sprag"]));
});

test("what is wrong with a value is told whoever asked for it first, and still at the next key", () => {
  const a = `use "b.sprag"
value Twice = Once * 2
procedure P "P" { step do "as shown" }
`;
  const b = `value Once = 5 mm + 3 kg
procedure Q "Q" { step "Look at it." }
`;
  const before = opened({ "a.sprag": a, "b.sprag": b }, null);
  expect(codes(before.check(["b.sprag"]))).toContain("1 units.mismatch");
  const after = opened({ "a.sprag": a, "b.sprag": b.replace("at it", "at this") }, before);
  expect(codes(after.check(["b.sprag"]))).toContain("1 units.mismatch");
});

test("of two procedures with one name, what is found in the second names its step", () => {
  const text = `part Cover "cover"
procedure P "one" {
  step First { install Cover }
}
procedure P "two" {
  step Third { install Cover }
  step Fourth { install Cover }
}
`;
  const [file] = opened({ "p.sprag": text }, null).check(["p.sprag"]).files;
  const again = file?.findings.find(({ code }) => code === "order.already-installed");
  expect(again?.step).toEqual({ name: "Fourth", number: expect.any(String) });
});
