// trace.weak-allow: a reason that says nothing is none, and silences no finding about itself.
import { expect, test } from "vitest";
import { expectFindings, findingsIn, told } from "#harness/check.ts";

const work = (reason: string, mark = "", code = "order.enclosed"): string => `part Bearing "bearing"
part Cover "cover" { encloses Bearing }
procedure Look "Look" {
  step install Bearing
  step install Cover
  step {
    inspect Bearing
    allow ${code} because "${reason}"
${mark}  }
}
`;
const open = (text: string): readonly string[] =>
  findingsIn(text).flatMap(({ code, allowed }) => (allowed === undefined ? [code] : []));

test.each(["", " ", "…", "...", "-", "?", "TBD", "tbd.", "TODO", "to do", "n/a", "xxx", "to be confirmed", "Reason"])(
  "“%s” is no reason",
  (reason) => {
    expect(open(work(reason))).toEqual(["trace.weak-allow"]);
  },
);

test.each(["Side port.", "Wear.", "See 6.4.2.", "NCR 117", "42"])("silent: %s", (reason) => {
  expect(open(work(reason))).toEqual([]);
});

test("at the line up to the code; what it allows stays allowed", () => {
  const text = work("…", "  //^^^^^^^^^^^^^^^^^^^^ trace.weak-allow warning\n").replace(
    "    inspect Bearing\n",
    "    inspect Bearing\n  //^^^^^^^^^^^^^^^ order.enclosed allowed\n",
  );
  expectFindings(text);
  expect(told(text, "trace.weak-allow")).toMatchInlineSnapshot(`
    "“…” is no reason to allow order.enclosed.
      It is printed with every checklist, and nobody could judge it.
    → Say why it is right here, or take the line out."
  `);
  expect(told(work(""), "trace.weak-allow")).toContain("No reason is given to allow order.enclosed.");
});

test("it does not allow itself; another one does", () => {
  const own = work("…", "", "trace.weak-allow").replace("    inspect Bearing\n", "");
  expect(open(own)).toEqual(["trace.unused-allow", "trace.weak-allow"]);
  const outer = work("…").replace(
    'procedure Look "Look" {\n',
    'procedure Look "Look" {\n  allow trace.weak-allow because "The reasons come with revision C."\n',
  );
  expect(open(outer)).toEqual([]);
});
