// trace.old-revision: the revision that a procedure stands on, against the one that the shop holds as current.
import { expect, test } from "vitest";
import { expectMarked, findingsIn, told } from "#harness/check.ts";
import { readMarks } from "#harness/marks.ts";

const work = (source: string, lines: string): string => `${source}
part Pump "pump"
procedure Look "Look" {
${lines}
  step inspect Pump
}
`;
const MANUAL = 'source Manual "pump manual" revision "9"';

test("another revision, at its line", () => {
  const text = work(
    MANUAL,
    `  based on Manual revision "8"
//^^^^^^^^^^^^^^^^^^^^^^^^^^^^ trace.old-revision warning`,
  );
  expectMarked(readMarks(text));
  expect(told(text, "trace.old-revision")).toMatchInlineSnapshot(`
    "Based on revision 8 of the pump manual, and 9 is current.
      What changed between the two may not be in this procedure.
    → Compare the two, change what has to change, then write revision "9".
    &1 Revision 9 is declared here"
  `);
});

test("in the shop's library, and of several only the one that is behind", () => {
  const used = { "shop.sprag": `${MANUAL}\nsource Rules "shop rules" revision "3"\n` };
  const text = work(
    'use "shop.sprag"',
    `  based on Manual revision "9"
  based on Rules revision "2"
//^^^^^^^^^^^^^^^^^^^^^^^^^^^ trace.old-revision warning`,
  );
  expectMarked(readMarks(text), {}, used);
});

test.each([
  [MANUAL, '  based on Manual revision "9"'],
  ['source Manual "pump manual"', '  based on Manual revision "8"'],
  [MANUAL, '  per Manual "8"'],
])("silent: %s, %s", (source, lines) => {
  expect(findingsIn(work(source, lines))).toEqual([]);
});
