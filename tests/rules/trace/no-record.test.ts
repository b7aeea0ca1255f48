// trace.no-record: a reading that a critical step is judged by is written down.
import { expect, test } from "vitest";
import { findingsIn, told, withFix } from "#harness/check.ts";

const work = (lines: string, rest = "critical"): string => `role Fitter "fitter"
role Inspector "inspector"
tool Feeler "feeler gauge" { measures 0.03 .. 1 mm }
part Pump "pump"
procedure Look "Look" {
  step {
    inspect Pump with Feeler
    ${lines}
    ${rest}
    sign Fitter
    hold for Inspector
  }
}
`;
const CHECK = 'check "Gap" with Feeler expect at most 0.05 mm';
const MEASURE = 'measure "gap" with Feeler expect 0.1 .. 0.2 mm';
const codes = (text: string): readonly string[] => findingsIn(text).map(({ code }) => code);

test.each([
  CHECK,
  MEASURE,
  `${CHECK} if it fails { inspect Pump }`,
  `repeat n from 1 to 2 { ${CHECK} }`,
  // It records something else.
  `record "oil pressure" 1 .. 2 bar\n    ${CHECK}`,
])("not recorded: %s", (lines) => {
  expect(codes(work(lines))).toEqual(["trace.no-record"]);
});

test.each([
  `${CHECK} record`,
  `${MEASURE} record`,
  'check "No gap" with Feeler',
  `record "gap"\n    ${CHECK}`,
  `record "gap" 0 .. 0.05 mm\n    ${CHECK}`,
])("silent: %s", (lines) => {
  expect(codes(work(lines))).toEqual([]);
});

test("silent: no critical step", () => {
  expect(codes(work(CHECK, 'why "It shows wear."'))).toEqual([]);
});

test("it puts the word behind the limits, also before what is done if it fails", () => {
  const text = work(`${CHECK} if it fails { inspect Pump }`);
  expect(told(text, "trace.no-record")).toMatchInlineSnapshot(`
    "The reading is not recorded, and the step is critical.
      Later nobody can tell how near to its limit it was.
    → Add “record” behind the limits.
    + Record the reading"
  `);
  const [finding] = findingsIn(text);
  const mended = finding === undefined ? "" : withFix(text, finding);
  expect(mended).toContain("expect at most 0.05 mm record if it fails");
  expect(codes(mended)).toEqual([]);
});
