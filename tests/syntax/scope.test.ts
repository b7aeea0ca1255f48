// What names stand for: across files by `use`, inner before outer, and quickly however many there are.
import { AstUtils, type Reference } from "langium";
import { expect, test } from "vitest";
import * as ast from "#grammar/generated/ast.ts";
import { type ParsedFile, parseText } from "#syntax/parse.ts";
import { declaredNames, linkFiles, procedureOf, resolveUse } from "#syntax/scope.ts";

function linked(texts: Readonly<Record<string, string>>): Map<string, ParsedFile> {
  const files = new Map(Object.entries(texts).map(([path, text]) => [path, parseText(text, path)]));
  linkFiles(files);
  return files;
}

/** Each reference of a file as `name -> path:type name`, or `name -> ?`, in the order of the text. */
function references(file: ParsedFile | undefined): string[] {
  const found: { at: number; says: string }[] = [];
  for (const node of AstUtils.streamAst((file as ParsedFile).file)) {
    for (const { reference } of AstUtils.streamReferences(node)) {
      const target = (reference as Reference).ref as (ast.Named & { name?: string }) | undefined;
      const path = target === undefined ? "" : AstUtils.getDocument(target).uri.path.slice(1);
      found.push({
        at: reference.$refNode?.offset ?? 0,
        says: `${reference.$refText} -> ${target === undefined ? "?" : `${path}:${target.$type} ${target.name}`}`,
      });
    }
  }
  return found.sort((a, b) => a.at - b.at).map(({ says }) => says);
}

const proc = (lines: string, name = "P"): string => `procedure ${name} "p" {\n${lines}\n}\n`;

test("names of the file, of used files, and nothing that these use in turn", () => {
  const files = linked({
    "jobs/a.sprag": `use "../shop/tools.sprag"\npart Cover\n${proc("step install Cover with Hoist + Deep\nstep perform Other")}`,
    "shop/tools.sprag": `use "deep.sprag"\ntool Hoist\n${proc("step inspect Cover", "Other")}`,
    "shop/deep.sprag": "tool Deep\n",
  });
  expect(references(files.get("jobs/a.sprag"))).toEqual([
    "Cover -> jobs/a.sprag:Part Cover",
    "Hoist -> shop/tools.sprag:Tool Hoist",
    "Deep -> ?",
    "Other -> shop/tools.sprag:Procedure Other",
  ]);
  expect(references(files.get("shop/tools.sprag"))).toEqual(["Cover -> ?"]);
});

test("a declaration inside a procedure hides an outer one, there only", () => {
  const files = linked({
    "a.sprag": `tool X\n${proc("part X\nstep install X")}${proc('step do "w" with X', "Q")}`,
  });
  expect(references(files.get("a.sprag"))).toEqual(["X -> a.sprag:Part X", "X -> a.sprag:Tool X"]);
});

test("the file's own name comes before one of a used file, and of two the first", () => {
  const files = linked({ "a.sprag": `use "b.sprag"\npart X\ntool X\n${proc("step install X")}`, "b.sprag": "role X" });
  expect(references(files.get("a.sprag"))).toEqual(["X -> a.sprag:Part X"]);
});

test("steps and tasks have a namespace for each procedure, wherever they stand in it", () => {
  const steps = `task T { when A is clean { repeat n in 1, 2 { step S { takes 1 s } } } otherwise { in any order { step V { takes 1 s } } } }`;
  const files = linked({
    "a.sprag": `${proc(`${steps}\nstep Z { after S, T, V, W }\nstep { check "c" if it fails { return to S } }`)}${proc("step W { after S }", "Q")}part S`,
  });
  expect(references(files.get("a.sprag")).filter((each) => !each.startsWith("A "))).toEqual([
    "S -> a.sprag:Step S",
    "T -> a.sprag:Task T",
    "V -> a.sprag:Step V",
    "W -> ?",
    "S -> a.sprag:Step S",
    "S -> ?",
  ]);
});

test("readings are names in their procedure, from checks and branches too", () => {
  const files = linked({
    "a.sprag": `part Shim\n${proc('step { check "c" if it fails { measure Gap "gap" } }\nstep choose Shim by Gap { 1 .. 2 mm: Shim }')}${proc("step choose Shim by Gap { 1 .. 2 mm: Shim }", "Q")}`,
  });
  const gaps = references(files.get("a.sprag")).filter((each) => each.startsWith("Gap"));
  expect(gaps).toEqual(["Gap -> a.sprag:Measure Gap", "Gap -> ?"]);
});

test("names compare in their composed form", () => {
  const files = linked({ "a.sprag": `part U\u0308berwurf\n${proc("step install Überwurf")}` });
  expect(references(files.get("a.sprag"))).toHaveLength(1);
  expect(references(files.get("a.sprag"))[0]).not.toContain("?");
});

test("names inside a procedure whose header could not be read are found", () => {
  const files = linked({ "a.sprag": "procedure 5 odd {\n part X\n step S { install X }\n step T { after S }\n}" });
  expect(files.get("a.sprag")?.problems).toHaveLength(1);
  expect(references(files.get("a.sprag"))).toEqual(["X -> a.sprag:Part X", "S -> a.sprag:Step S"]);
});

test("linking again forgets what a changed file gave, and keeps what did not change", () => {
  const before = linked({ "a.sprag": `use "b.sprag"\n${proc("step install X")}`, "b.sprag": "part X" });
  const a = before.get("a.sprag") as ParsedFile;
  expect(references(a)).toEqual(["X -> b.sprag:Part X"]);
  const after = new Map([
    ["a.sprag", a],
    ["b.sprag", parseText("part Y", "b.sprag")],
  ]);
  linkFiles(after);
  expect(references(a)).toEqual(["X -> ?"]);
  linkFiles(before);
  expect(references(a)).toEqual(["X -> b.sprag:Part X"]);
});

test("files may use each other and themselves", () => {
  const files = linked({
    "a.sprag": `use "b.sprag"\nuse "a.sprag"\npart X\n${proc("step install X, Y")}`,
    "b.sprag": 'use "a.sprag"\npart Y',
  });
  expect(references(files.get("a.sprag")).map((each) => each.slice(-1))).toEqual(["X", "Y"]);
});

test.each([
  ["a.sprag", "b.sprag", "b.sprag"],
  ["jobs/a.sprag", "b.sprag", "jobs/b.sprag"],
  ["jobs/pumps/a.sprag", "../../shop/./tools.sprag", "shop/tools.sprag"],
  ["jobs/a.sprag", "../b.sprag", "b.sprag"],
  ["jobs/a.sprag", "../../b.sprag", null],
  ["jobs/a.sprag", "../x/../../../b.sprag", null],
  ["a.sprag", "/b.sprag", null],
  ["a.sprag", "C:/b.sprag", null],
  ["a.sprag", "C:\\b.sprag", null],
  ["a.sprag", "\\\\server\\b.sprag", null],
  ["a.sprag", "file:///b.sprag", null],
  ["a.sprag", "", null],
  ["a.sprag", ".", null],
  ["jobs/a.sprag", "shop\\b.sprag", "jobs/shop\\b.sprag"],
])("from %s, “%s” is %s", (from, use, path) => {
  expect(resolveUse(from, use)).toBe(path);
});

test("declared names come in the order of the text, the same name twice", () => {
  const parsed = parseText(
    `part X\nfit A over B\nrole X\nterm "a" not "b"\n${proc('tool Y\nstep S { measure G "g" }\ntask S { }')}`,
    "a.sprag",
  );
  const procedure = parsed.file.items.find(ast.isProcedure) as ast.Procedure;
  expect(declaredNames(parsed.file).map(({ name, node }) => `${node.$type} ${name}`)).toEqual([
    "Part X",
    "Role X",
    "Procedure P",
  ]);
  expect(declaredNames(procedure).map(({ name }) => name)).toEqual(["Y", "G"]);
  expect(declaredNames(procedure, "steps").map(({ node }) => node.$type)).toEqual(["Step", "Task"]);
  expect(procedureOf(declaredNames(procedure, "steps")[0]?.node as ast.Step)).toBe(procedure);
  expect(procedureOf(parsed.file)).toBeUndefined();
});

test("ten thousand names are found in a time that grows with their number only", () => {
  const time = (count: number): number => {
    const parts = Array.from({ length: count }, (_, i) => `part P${i} { needs P${(i * 7) % count} }`);
    const steps = Array.from({ length: count }, (_, i) => `step S${i} { after S${Math.max(0, i - 1)} }`);
    const files = linked({ "a.sprag": `${parts.join("\n")}\n${proc(steps.join("\n"))}` });
    const begun = performance.now();
    expect(references(files.get("a.sprag")).filter((each) => each.endsWith("?"))).toEqual([]);
    return performance.now() - begun;
  };
  time(200);
  const [few, many] = [time(1_250), time(10_000)];
  // Eight times the names: a search along all of them would take 64 times as long.
  expect(many).toBeLessThan(Math.max(few, 10) * 32);
});
