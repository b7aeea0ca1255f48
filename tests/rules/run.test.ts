// From facts to findings: order, doubles, passes and options in words, fixes only where there is a text.
import { expect, test } from "vitest";
import type { AnyFact } from "#rules/rule.ts";
import { findingsOf } from "#rules/run.ts";

const span = (start: number, end = start + 4, path = "a.sprag") => ({ path, start, end });
const noPass = { pass: [], more: 0 } as const;
const since = { step: "1.2", span: span(0) };

const retained = (by: string, how: "tightened" | "loose", options?: readonly Record<string, string>[]): AnyFact => ({
  kind: "retained",
  part: "Cover",
  by,
  how,
  declaredAt: span(90),
  since,
  span: span(20),
  ...noPass,
  ...(options === undefined ? {} : { options }),
});
const unknown = (start: number, path = "a.sprag"): AnyFact => ({
  kind: "unknown name",
  span: span(start, start + 4, path),
  name: "Covr",
  wanted: "a part",
  nearest: [],
});

test("in the order of path, place and code", () => {
  const facts: AnyFact[] = [unknown(40), unknown(8), unknown(0, "b.sprag"), retained("Screw[1]", "tightened")];
  const found = findingsOf(facts).map(({ code, span: { path, start } }) => `${path} ${start} ${code}`);
  expect(found).toEqual([
    "a.sprag 8 names.unknown",
    "a.sprag 20 order.retained",
    "a.sprag 40 names.unknown",
    "b.sprag 0 names.unknown",
  ]);
  expect(findingsOf([...facts].reverse())).toEqual(findingsOf(facts));
});

test("one finding for one place, code and subject: the gravest", () => {
  const facts = [retained("Screw[1]", "loose"), retained("Screw[3]", "tightened"), retained("Stud[1]", "loose")];
  expect(findingsOf(facts).map(({ severity, message }) => [severity, message])).toEqual([
    ["error", "Screw[3] is tightened and holds Cover."],
    ["warning", "Stud[1] is loose but still in Cover."],
  ]);
});

test("another stays where it holds for other options", () => {
  const full = [{ Extent: "Full" }];
  expect(findingsOf([retained("Screw[1]", "loose", full), retained("Screw[3]", "tightened", full)])).toHaveLength(1);
  expect(
    findingsOf([retained("Screw[1]", "loose", [{ Extent: "Look" }]), retained("Screw[3]", "tightened", full)]),
  ).toHaveLength(2);
  expect(findingsOf([retained("Screw[1]", "loose", full), retained("Screw[3]", "tightened")])).toHaveLength(1);
});

test.each([
  [[], 0, undefined, ""],
  [[{ variable: "n", value: 3 }], 0, undefined, "\nThis happens for n = 3."],
  [[{ variable: "n", value: 3 }], 4, undefined, "\nThis happens for n = 3, and 4 more."],
  [
    [
      { variable: "n", value: 3 },
      { variable: "m", value: 1 },
    ],
    0,
    undefined,
    "\nThis happens for n = 3 and m = 1.",
  ],
  [[], 0, [{ Extent: "Reseal" }], "\nThis happens when Extent is Reseal."],
  [
    [],
    0,
    [{ Extent: "Reseal", Kept: "yes" }, { Extent: "Full" }],
    "\nThis happens when Extent is Reseal and Kept is yes, or Extent is Full.",
  ],
  [
    [{ variable: "n", value: 3 }],
    1,
    [{ A: "x" }, { A: "y" }, { A: "z" }, { B: "x" }, { B: "y" }],
    "\nThis happens for n = 3, and 1 more, when A is x, or A is y, or A is z, or in 2 more ways.",
  ],
])("passes %j and %i more, options %j, in words", (pass, more, options, words) => {
  const fact: AnyFact = {
    kind: "already installed",
    part: "Seal",
    since,
    spare: null,
    span: span(4),
    pass,
    more,
    ...(options === undefined ? {} : { options }),
  };
  const [found] = findingsOf([fact]);
  expect(found?.why).toBe(`Seal is in place since step 1.2.${words}`);
  expect(found?.options).toEqual(options);
});

test("a fix that puts in or takes out lines needs the text", () => {
  const text = "x {\n  install Seal\n}\n";
  const fact: AnyFact = {
    kind: "already installed",
    part: "Seal",
    since,
    spare: span(6, 18),
    span: span(6, 18),
    ...noPass,
  };
  expect(findingsOf([fact])[0]?.fixes).toBeUndefined();
  expect(findingsOf([fact], [], new Map([["a.sprag", text]]))[0]?.fixes).toHaveLength(1);
});

test("an allow marks what lies in its scope, of its code, in its file", () => {
  const allow = {
    code: "order.retained",
    codeSpan: span(6, 20),
    inDoubt: false,
    reason: "Held by hand.",
    by: "A. Moran",
    span: span(0, 40),
    scope: span(0, 60),
  };
  const [found, ...others] = findingsOf([retained("Screw[1]", "loose")], [allow]);
  expect(others).toEqual([]);
  expect(found?.allowed).toEqual({ reason: "Held by hand.", by: "A. Moran" });
  const elsewhere = { ...allow, scope: span(0, 22) };
  expect(findingsOf([retained("Screw[1]", "loose")], [elsewhere]).map(({ code }) => code)).toEqual([
    "trace.unused-allow",
    "order.retained",
  ]);
  const otherFile = { ...allow, scope: span(0, 60, "b.sprag") };
  expect(findingsOf([retained("Screw[1]", "loose")], [otherFile]).map(({ code }) => code)).toEqual([
    "trace.unused-allow",
    "order.retained",
  ]);
});
