// Reading any text at all: what the tree holds, and that nothing that can be typed or sent brings the reader down.
import fc from "fast-check";
import { expect, test } from "vitest";
import type * as ast from "#grammar/generated/ast.ts";
import { parseText } from "#syntax/parse.ts";

function firstOf(text: string): ast.FileItem {
  const parsed = parseText(text, "a.sprag");
  expect(parsed.problems).toEqual([]);
  return parsed.file.items[0] as ast.FileItem;
}

test("a sound text gives its tree and no problem", () => {
  const parsed = parseText('use "shop.sprag"\n\npart Cover[1..2] "cover" { mass 31 kg }\n', "jobs/a.sprag");
  expect(parsed).toMatchObject({ path: "jobs/a.sprag", problems: [], damage: [] });
  expect(parsed.file.items.map((item) => item.$type)).toEqual(["Use", "Part"]);
  expect(parsed.document.textDocument.getText()).toBe(parsed.text);
});

test("texts lose their quotation marks, escapes and common indentation", () => {
  expect(firstOf('role R "say \\"go\\"\\n\\\\"')).toMatchObject({ title: 'say "go"\n\\' });
  expect(firstOf('role R """\n    one\n      two\n\n    three\n    """')).toMatchObject({
    title: "one\n  two\n\nthree",
  });
  expect(firstOf('role R """one line"""')).toMatchObject({ title: "one line" });
  expect(firstOf('role R ""')).toMatchObject({ title: "" });
});

test("a check may end in `record`; before a text the word begins a line of its own, on the next line or the same", () => {
  const step = (lines: string) => {
    const item = firstOf(`procedure P { step { ${lines} } }`) as ast.Procedure;
    return (item.items[0] as ast.Step).lines.map((line) => ({
      type: line.$type,
      record: "record" in line && line.record,
      label: "label" in line && line.label,
    }));
  };
  const check = (record: boolean) => ({ type: "Check", record, label: false });
  const line = { type: "RecordLine", record: false, label: "float" };
  const measure = { type: "Measure", record: false, label: false };
  for (const gap of ["\n", " ", "\n\n    "]) {
    expect(step(`check "gap" expect at most 1 mm${gap}record "float"`)).toEqual([check(false), line]);
    expect(step(`check "gap"${gap}record${gap}record "float" 1 .. 2 mm`)).toEqual([check(true), line]);
    expect(step(`measure "gap" expect 1 .. 2 mm${gap}record "float"`)).toEqual([measure, line]);
  }
  expect(step('check "gap" record if it fails { record "float" }')).toEqual([check(true)]);
  expect(step('record """float"""')).toEqual([line]);
});

test("a day that the calendar does not have is told wherever a date stands", () => {
  const dates = parseText(
    `source S dated 2026-02-30
procedure P { document "D" dated 2025-02-29 }
crib C { item "TW-1" for W { calibrated until 2026-13-01 } item "TW-2" for W { calibrated until 2028-02-29 } }`,
    "a.sprag",
  );
  expect(dates.problems.map(({ kind, span }) => [kind, dates.text.slice(span.start, span.end)])).toEqual(
    ["2026-02-30", "2025-02-29", "2026-13-01"].map((day) => ["unexpected", day]),
  );
});

test("a keyword of one place is a name in another", () => {
  const text = `part spring "spring" { secures torque }\npart torque[1..2]\nprocedure mass { step reach { install torque[1], spring at 6 o'clock } }`;
  const parsed = parseText(text, "a.sprag");
  expect(parsed.problems).toEqual([]);
  expect(parsed.file.items.map((item) => (item as ast.Part).name)).toEqual(["spring", "torque", "mass"]);
});

test("comments stand beside the token they stood beside", () => {
  const parsed = parseText("// head\npart A /* of A */ { // in A\n  mass 1 kg\n} // last\n", "a.sprag");
  const comments: string[] = [];
  const visit = (node: {
    readonly content?: readonly unknown[];
    readonly hidden?: boolean;
    readonly text: string;
  }): void => {
    if (node.content === undefined && node.hidden === true) comments.push(node.text);
    for (const each of node.content ?? []) visit(each as Parameters<typeof visit>[0]);
  };
  visit(parsed.file.$cstNode as Parameters<typeof visit>[0]);
  expect(comments).toEqual(["// head", "/* of A */", "// in A", "// last"]);
});

test("empty and blank texts are files with nothing in them", () => {
  for (const text of ["", "\uFEFF", " \r\n\t", "// only a comment"]) {
    expect(parseText(text, "a.sprag")).toMatchObject({ problems: [], damage: [], file: { items: [] } });
  }
});

const many = 20_000;
test.each<[string, string]>([
  ["open braces", "{".repeat(many)],
  ["closing braces", "}".repeat(many)],
  ["procedures in procedures", "procedure P {".repeat(many)],
  ["tasks in tasks, all closed", `procedure P { ${"task T { ".repeat(many)}${"}".repeat(many)} }`],
  ["parentheses", `value X = ${"(".repeat(many)}1${")".repeat(many)} mm`],
  ["brackets", `procedure P { step install X${"[".repeat(many)} }`],
  ["nots", `procedure P { step { needs ${"not ".repeat(many)}X } }`],
  ["minus signs", `value X = ${"- ".repeat(many)}1 mm`],
  ["terms of a sum", `value X = 1 mm${" + 1 mm".repeat(many)}`],
  ["terms of an index", `procedure P { step install X[${"n + ".repeat(many)}1] }`],
  ["otherwise after otherwise", `procedure P { when X { } ${"otherwise when X { } ".repeat(many)}}`],
  ["quotation marks", '"'.repeat(many + 1)],
  ["open texts", '"\n'.repeat(many)],
  ["open comments", "/* ".repeat(many)],
  ["characters that mean nothing", "\0".repeat(many)],
  ["words that mean nothing", "lorem ".repeat(many)],
])("%s without end are told and not followed", (_title, text) => {
  const begun = performance.now();
  const parsed = parseText(text, "a.sprag");
  expect(parsed.problems.length).toBeGreaterThan(0);
  expect(performance.now() - begun).toBeLessThan(8_000);
});

test("twice the mistakes take about twice the time", () => {
  const time = (count: number): number => {
    const text = `procedure P "p" {\n${"  step instal X\n  note\n  step install Y[1\n".repeat(count)}}\n`;
    const begun = performance.now();
    expect(parseText(text, "a.sprag").problems).toHaveLength(3 * count);
    return performance.now() - begun;
  };
  time(200);
  const [few, more] = [time(500), time(4_000)];
  // Eight times the text: quadratic would be 64 times the time.
  expect(more).toBeLessThan(Math.max(few, 5) * 32);
});

const words = [
  "part",
  "step",
  "task",
  "procedure",
  "{",
  "}",
  "[",
  "]",
  "(",
  ")",
  '"',
  '"""',
  "/*",
  "*/",
  "//",
  "\n",
  " ",
  "1",
  "13,5",
  "–",
  "..",
  "kg",
  "N·m",
  "when",
  "otherwise",
  "is",
  "not",
  "repeat",
  "in",
  "any",
  "order",
  "with",
  "Cover",
  "“",
  "”",
  "\0",
  "\uD800",
  "\uFFFF",
  "per",
  "use",
  ",",
  "=",
  "check",
  "if",
  "it",
  "fails",
  "option",
  "choose",
];

test("no text brings the reader down, and every place lies in the text", () => {
  const text = fc.oneof(
    fc.string({ unit: "binary", maxLength: 200 }),
    fc.array(fc.constantFrom(...words), { maxLength: 60 }).map((parts) => parts.join(" ")),
  );
  fc.assert(
    fc.property(text, (source) => {
      const parsed = parseText(source, "a.sprag");
      for (const { span } of [...parsed.problems, ...parsed.damage]) {
        expect(span.start).toBeGreaterThanOrEqual(0);
        expect(span.end).toBeGreaterThanOrEqual(span.start);
        expect(span.end).toBeLessThanOrEqual(source.length);
      }
    }),
    { numRuns: 600 },
  );
});

test.each(["in any", "any order", "in", "in order", "step in any", "task T { in any"])(
  "a text that breaks off: %s",
  (text) => {
    const { problems } = parseText(text, "a.sprag");
    expect(problems.length).toBeGreaterThan(0);
    for (const { span } of problems) expect(span.end).toBeLessThanOrEqual(text.length);
  },
);
