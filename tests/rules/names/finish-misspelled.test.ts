// A name in `finish with` or `begin with` that is like none that is known: it may mean any part of which no other condition speaks, so
// that nothing is told of how such a part is left or found.
import { expect, test } from "vitest";
import { findingsIn } from "#harness/check.ts";

const SHOP = `part Cover "cover"
part Screw[1..2] "screw" { secures Cover }
temporary part Stand "stand"
energy Supply "supply" { voltage 24 V DC }
`;
const codes = (begin: string, finish: string, steps: string): readonly string[] =>
  findingsIn(
    `${SHOP}procedure Work "Work" {\n${begin === "" ? "" : `  begin with ${begin}\n`}  finish with ${finish}\n${steps}\n}\n`,
  )
    .map(({ code }) => code)
    .filter((code) => code === "names.unknown" || code.startsWith("order."))
    .sort();

const PUT_IN = "  step install Cover\n  step install Screw[all]";

test.each([
  ["a fastener left loose", "", "Bolt[all] are loose, Cover is installed", PUT_IN, []],
  ["a part left out", "Cover is installed", "Lid is removed", "  step remove Cover", []],
  ["inside a condition", "Cover is installed", "not (Lid is installed)", "  step remove Cover", []],
  ["an aid left in", "", "Trestle is installed", "  step install Stand", []],
  ["an energy left off", "", "Mains is isolated", "  step isolate Supply", []],
  ["a part that was there", "Lid is installed", "Cover is removed", "  step remove Cover", []],
  // Of the cover another condition speaks: it is not meant.
  ["what is spoken of beside it", "", "Bolt[all] are loose, Cover is removed", PUT_IN, ["order.unfinished"]],
  ["a name that is nearly one", "", "Screww[all] are loose, Cover is removed", PUT_IN, ["order.unfinished"]],
])("%s", (_title, begin, finish, steps, others) => {
  expect(codes(begin, finish, steps)).toEqual(["names.unknown", ...others]);
});

test("with a name that is known it is told", () => {
  expect(codes("Cover is installed", "Screw[1] is removed", "  step remove Cover")).toEqual(["order.not-final"]);
  expect(codes("", "Cover is removed", "  step install Stand")).toEqual(["order.left-behind"]);
});
