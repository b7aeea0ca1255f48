// order.left-seated: tightened to seat, and up to the end neither loosened nor tightened again.
import { expect, test } from "vitest";
import { expectFindings, findingsIn, told, withFix } from "#harness/check.ts";

const SHOP = `part Gland "gland"
part GlandNut "gland nut" { secures Gland }
`;
const SEATED = `${SHOP}
procedure PackStem "Pack the stem" {
  step install Gland, GlandNut
  step tighten GlandNut to seat
}
`;

test("seated and left", () => {
  const text = SEATED.replace("to seat\n", "to seat\n  //   ^^^^^^^^^^^^^^^^ order.left-seated error\n");
  expectFindings(text);
  expect(told(text, "order.left-seated")).toMatchInlineSnapshot(`
    "GlandNut is tightened to seat here and left like that.
      To seat only draws the parts together. The fastener is to be loosened or tightened again after it.
    → Loosen GlandNut, or tighten it to its final value, before the end.
    + Put in “step tighten GlandNut”"
  `);
});

test.each([
  ["backed off by an angle", "step loosen GlandNut by 1/4 turn"],
  ["tightened again", "step tighten GlandNut"],
  ["loosened and tightened", "step loosen GlandNut\n  step tighten GlandNut"],
])("silent: %s", (_title, lines) => {
  expectFindings(SEATED.replace("to seat\n", `to seat\n  ${lines}\n`));
});

test("silent: taken apart again", () => {
  expectFindings(`${SHOP}
procedure Try "Try the gland" {
  finish with Gland is removed, GlandNut is removed
  step install Gland, GlandNut
  step tighten GlandNut to seat
  step loosen GlandNut
  step remove GlandNut
  step remove Gland
}`);
});

test("“finish with” is no excuse: seated counts as secured, and is not final", () => {
  expectFindings(`${SHOP}
procedure PackStem "Pack the stem" {
  finish with Gland is secured, GlandNut is tightened
  step install Gland, GlandNut
  step tighten GlandNut to seat
  //   ^^^^^^^^^^^^^^^^ order.left-seated
}`);
});

test("seated twice: found at the last", () => {
  expectFindings(`${SHOP}
procedure PackStem "Pack the stem" {
  step install Gland, GlandNut
  step tighten GlandNut to seat
  step loosen GlandNut
  step tighten GlandNut to seat
  //   ^^^^^^^^^^^^^^^^ order.left-seated
}`);
});

test("of two nuts one is forgotten: no line mends that alone", () => {
  const text = `part Gland "gland"
part GlandNut[1..2] "gland nut" { secures Gland }

procedure PackStem "Pack the stem" {
  step install Gland, GlandNut[all]
  step tighten GlandNut[all] to seat
  //   ^^^^^^^^^^^^^^^^^^^^^ order.left-seated
  step tighten GlandNut[1]
}`;
  expectFindings(text);
  expect(told(text, "order.left-seated")).toContain("GlandNut[2] is tightened to seat");
  expect(told(text, "order.left-seated")).not.toContain("+ ");
});

test("on one option it is left", () => {
  const text = `${SHOP}option Extent "extent of work" { Full Look }

procedure PackStem "Pack the stem" {
  step install Gland, GlandNut
  step tighten GlandNut to seat
  //   ^^^^^^^^^^^^^^^^ order.left-seated
  when Extent is Full { step tighten GlandNut }
}`;
  expectFindings(text);
  expect(told(text, "order.left-seated")).toContain("This happens when Extent is Look.");
  expect(told(text, "order.left-seated")).not.toContain("+ ");
});

test("silent: a stop is no end", () => {
  expectFindings(`${SHOP}
procedure PackStem "Pack the stem" {
  step install Gland, GlandNut
  step tighten GlandNut to seat
  step { check "The gland sits square" if it fails { stop "Take new packing." } }
  step tighten GlandNut
}`);
});

test("the fix tightens it at the end", () => {
  const [found] = findingsIn(SEATED);
  const mended = found === undefined ? "" : withFix(SEATED, found);
  expect(mended).toBe(SEATED.replace("to seat\n", "to seat\n  step tighten GlandNut\n"));
  expect(findingsIn(mended)).toEqual([]);
});
