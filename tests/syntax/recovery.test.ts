// A mistake costs the statement it stands in and nothing else. Shown by deleting tokens of every sample, one at a time.

import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { AstNode, CstNode, LeafCstNode } from "langium";
import { describe, expect, test } from "vitest";
import type * as ast from "#grammar/generated/ast.ts";
import { isThorough } from "#harness/thorough.ts";
import { damageOf } from "#syntax/damage.ts";
import { type ParsedFile, parseText } from "#syntax/parse.ts";

const root = join(import.meta.dirname, "..", "..");
const samples = ["samples", "samples/language", "samples/shop"]
  .flatMap((folder) => readdirSync(join(root, folder)).map((name) => `${folder}/${name}`))
  .filter((path) => path.endsWith(".sprag"))
  .sort()
  .map((path) => parseText(readFileSync(join(root, path), "utf8"), path));

/** All tokens that are no comments. */
function tokensOf(file: ParsedFile): LeafCstNode[] {
  const leaves: LeafCstNode[] = [];
  const visit = (node: CstNode): void => {
    if ("content" in node) (node.content as CstNode[]).forEach(visit);
    else if (!(node as LeafCstNode).hidden) leaves.push(node as LeafCstNode);
  };
  if (file.file.$cstNode !== undefined) visit(file.file.$cstNode);
  return leaves;
}

const CONTAINERS = new Set(["Procedure", "Task", "Repeat", "When", "Otherwise", "AnyOrder"]);

/** Steps, declarations and other statements with their depth, by structure without places. */
function statementsOf(file: ast.File): string[] {
  const found: string[] = [];
  const visit = (node: AstNode, depth: number): void => {
    const { items, otherwise, block } = node as { items?: AstNode[]; otherwise?: AstNode; block?: boolean };
    if (CONTAINERS.has(node.$type) || (node.$type === "Damaged" && block === true)) {
      for (const item of items ?? []) visit(item, depth + 1);
      if (otherwise !== undefined) visit(otherwise, depth);
    } else found.push(`${depth} ${JSON.stringify(shape(node))}`);
  };
  for (const item of file.items) visit(item, 0);
  return found;
}

function shape(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(shape);
  if (typeof value !== "object" || value === null) return value;
  if ("$refText" in value) return `-> ${String(value.$refText)}`;
  const entries = Object.entries(value).filter(([key]) => key === "$type" || !key.startsWith("$"));
  return Object.fromEntries(entries.map(([key, inner]) => [key, shape(inner)]));
}

/** How many statements differ between two lists that begin and end alike. */
function difference(before: readonly string[], after: readonly string[]): { lost: number; got: number } {
  let head = 0;
  while (head < before.length && before[head] === after[head]) head++;
  let tail = 0;
  while (tail < Math.min(before.length, after.length) - head && before.at(-1 - tail) === after.at(-1 - tail)) tail++;
  return { lost: before.length - head - tail, got: after.length - head - tail };
}

/** The statement that a token belongs to: a line of a file, procedure or task, or the container whose own token it is. */
function statementOf(token: LeafCstNode): CstNode {
  let node: AstNode = token.astNode;
  while (node.$container !== undefined && !isStatement(node)) node = node.$container;
  return node.$cstNode as CstNode;
}

function isStatement({ $container, $containerProperty }: AstNode): boolean {
  const held = $containerProperty === "items";
  return held && $container !== undefined && (CONTAINERS.has($container.$type) || $container.$type === "File");
}

test("every sample is sound", () => {
  expect(samples.length).toBeGreaterThan(10);
  expect(samples.flatMap(({ problems }) => problems)).toEqual([]);
});

test("deleting a token of a sample harms no other statement, and is told once, in the statement", {
  timeout: 240_000,
}, () => {
  const deletions = samples.flatMap((sample) => tokensOf(sample).map((token) => ({ sample, token })));
  const tried = isThorough ? 2_000 : 400;
  const stride = Math.max(1, Math.floor(deletions.length / tried));
  let told = 0;
  for (let at = 0; at < deletions.length; at += stride) {
    const { sample, token } = deletions[at] as (typeof deletions)[number];
    const text = sample.text.slice(0, token.offset) + sample.text.slice(token.end);
    const { problems, file } = parseText(text, sample.path);
    if (problems.length === 0) continue;
    told++;
    const where = `${sample.path}:${token.range.start.line + 1} without “${token.text}”`;
    expect(problems.length, where).toBe(1);
    const statement = statementOf(token);
    for (const { span } of problems) {
      expect(span.start, where).toBeGreaterThanOrEqual(statement.offset);
      expect(span.end, where).toBeLessThanOrEqual(statement.end - token.length + 1);
    }
    const { lost, got } = difference(statementsOf(sample.file), statementsOf(file));
    // A declaration can leave its source behind as a damaged statement of its own.
    expect({ lost: lost <= 1, got: got <= 2 }, where).toEqual({ lost: true, got: true });
  }
  expect(told).toBeGreaterThan(0.6 * tried);
});

function damagedTexts(text: string): string[] {
  const { damage } = parseText(text, "a.sprag");
  return damage.map(({ span }) => text.slice(span.start, span.end));
}

const wrap = (lines: string): string => `procedure P "p" {\n${lines}\n}\n`;

describe("damage reaches no further than", () => {
  test.each([
    ["a property on a line of its own", 'part A "a" {\n  mass\n  material B\n}\n', ["mass"]],
    [
      "a property among others on one line",
      'ring R "r" { count 8  position 1 12 o\'clock  fill clockwise }',
      ["position 1 12 o'clock"],
    ],
    [
      "a property whose next line begins with a word that could be its name",
      'part A "a" {\n  needs\n  encloses B\n}\n',
      ["needs"],
    ],
    ["a step line", wrap("  step S {\n    install\n    sign Fitter\n  }"), ["install"]],
    [
      "a one-line step with its lines",
      wrap("  step install A[ on B\n    takes 3 min\n  step install C"),
      ["step install A[ on B\n    takes 3 min"],
    ],
    ["the header of a repeat", wrap("  repeat n of 3 { step install A[n] }"), ["repeat n of 3"]],
    [
      "the headers of a when",
      wrap("  when A is { step install B } otherwise { step install C }"),
      ["when A is", "otherwise"],
    ],
    ["a mistyped line between two others", wrap("  step install A\n  xyz qrs\n  step install B"), ["xyz qrs"]],
    ["each of two mistyped lines", wrap("  step S {\n    xyz A\n    qrs B\n  }"), ["xyz A", "qrs B"]],
    ["a declaration", 'part A "a"\npart [1..3] "b" { mass 3 kg }\npart C "c"', ['part [1..3] "b" { mass 3 kg }']],
    ["the source behind a declaration", 'part A "a" { sharp } per "6.4"\npart B', ['per "6.4"']],
    [
      "the rows of a choice",
      wrap("  step choose A by B {\n    1 .. 2 mm ThinShim\n    2 .. 3 mm: ThickShim\n  }\n  step install A"),
      ["step choose A by B {\n    1 .. 2 mm ThinShim\n    2 .. 3 mm: ThickShim\n  }"],
    ],
  ])("%s", (_title, text, damage) => {
    expect(damagedTexts(text)).toEqual(damage);
    expect(parseText(text, "a.sprag").problems).toHaveLength(damage.filter((each) => each !== "otherwise").length);
  });
});

test("what leaves no doubt is read as it was meant", () => {
  const stepsOf = (text: string): string[] => {
    const parsed = parseText(text, "a.sprag");
    expect(parsed.problems).toHaveLength(1);
    expect(parsed.damage).toEqual([]);
    return statementsOf(parsed.file);
  };
  const sound = (text: string): string[] => {
    const parsed = parseText(text, "a.sprag");
    expect(parsed.problems).toEqual([]);
    return statementsOf(parsed.file);
  };
  expect(stepsOf(wrap("  install A"))).toEqual(sound(wrap("  step install A")));
  expect(stepsOf(wrap("  step install A install B"))).toEqual(sound(wrap("  step install A\n  step install B")));
  expect(stepsOf(wrap("  step tigthen A[1]"))).toEqual(sound(wrap("  step tighten A[1]")));
  expect(stepsOf(wrap("  step install A[1"))).toEqual(sound(wrap("  step install A[1]")));
  expect(stepsOf(wrap("  in order { step install A }"))).toEqual(sound(wrap("  in any order { step install A }")));
  expect(stepsOf(wrap('  T "t" { step install A }'))).toEqual(sound(wrap('  task T "t" { step install A }')));
  expect(stepsOf(wrap("  when A is clean { step install B } else { step install C }"))).toEqual(
    sound(wrap("  when A is clean { step install B } otherwise { step install C }")),
  );
  expect(stepsOf(wrap("  step tighten A to 40\n    N·m"))).toEqual(sound(wrap("  step tighten A to 40 N·m")));
  expect(stepsOf('P "p" { step install A }')).toEqual(sound('procedure P "p" { step install A }'));
  expect(stepsOf("tool check")).toEqual([`0 ${JSON.stringify({ $type: "Tool", name: "check", properties: [] })}`]);
});

describe("braces", () => {
  const headers = (text: string): string[] =>
    parseText(text, "a.sprag").problems.map((problem) => (problem.kind === "unclosed" ? problem.header : problem.kind));
  const task = (first: string): string =>
    wrap(
      `  task A "a" {\n    step S {\n      install X\n${first}    step install Y\n  }\n  task B "b" {\n    step install Z\n  }`,
    );

  test("a block left open is told at its opening, though the text ends much later", () => {
    expect(headers(task(""))).toEqual(["step S"]);
    expect(headers(task("    }\n"))).toEqual([]);
    expect(headers('procedure P "p" {\n  step install A\n')).toEqual(['procedure P "p"']);
    expect(headers(wrap("  when A is clean {\n    step install B\n  otherwise {\n    step install C\n  }"))).toEqual([
      "when A is clean",
    ]);
  });

  test("without indentation, by what a block can hold", () => {
    expect(headers('procedure P "p" {\ntask A {\nstep S {\ninstall X\nstep install Y\n}\n}')).toEqual(["step S"]);
    expect(headers('part A "a" {\nmass 3 kg\npart B "b" {\nmass 4 kg\n}')).toEqual(['part A "a"']);
  });

  test("a missing opening is put in behind its header, on one line or on many", () => {
    for (const text of [
      wrap("  step S\n    install X\n  }\n  step install Y"),
      wrap("  repeat n in 1, 2 step install X[n] }\n  step install Y"),
      'part A "a" mass 3 kg sharp }\npart B',
    ]) {
      const { problems, damage } = parseText(text, "a.sprag");
      expect(problems).toMatchObject([{ kind: "unexpected", slip: { name: "brace missing" } }]);
      expect(damage).toEqual([]);
    }
  });

  test("a stray closing is dropped", () => {
    const { problems, file } = parseText('part A "a"\n}\npart B "b"\n}', "a.sprag");
    expect(problems.map((problem) => problem.kind)).toEqual(["unexpected", "unexpected"]);
    expect(file.items).toHaveLength(2);
  });
});

describe("damage keeps", () => {
  const only = (text: string) => {
    const { damage } = parseText(text, "a.sprag");
    expect(damage).toHaveLength(1);
    return damage[0];
  };

  test("the names it mentions and may declare", () => {
    expect(only('part Cover over "c" { needs Bearing }')).toMatchObject({
      keyword: "part",
      declares: ["Cover"],
      lostName: false,
    });
    expect(only('part Cover over "c" { needs Bearing }')?.names).toEqual(expect.arrayContaining(["Cover", "Bearing"]));
    expect(only(wrap("  repeat n of 3 { step install A[n] }"))).toMatchObject({ declares: ["n"], lostName: false });
  });

  test("that a declaration lost its name, or a use its path", () => {
    expect(only('part "cover" { sharp }')).toMatchObject({ lostName: true });
    expect(only("use tools\npart A")).toMatchObject({ keyword: "use", lostName: true });
    expect(only("fit over B")).toMatchObject({ lostName: false });
  });

  test("the header of a block that was read without it", () => {
    expect(only('procedure "p" {\n  step install A\n}')).toMatchObject({ keyword: "procedure", lostName: true });
    expect(only("procedure Look at {\n  step install A\n}")).toMatchObject({ declares: ["Look"], lostName: false });
    expect(only(wrap("  step Turn it {\n    install A\n  }"))).toMatchObject({ keyword: "step", declares: ["Turn"] });
  });

  test("its place in the tree", () => {
    const parsed = parseText('part A "a"\n// note\nxyz { qrs }\npart B', "a.sprag");
    expect(parsed.file.items.map((item) => damageOf(parsed.damage, item)?.texts)).toEqual([
      undefined,
      ["xyz", "{", "qrs", "}"],
      undefined,
    ]);
  });
});
