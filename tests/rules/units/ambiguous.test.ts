// units.ambiguous: read as the likelier, with a warning. US and imperial gallon: NIST SP 811, appendix B.8.
import { expect, test } from "vitest";
import { expectFindings, findingsIn, told, withFix } from "#harness/check.ts";

test("pounds for a torque or a force, ounces for a volume, C, gal, ton", () => {
  expectFindings(`part Screw "screw" {
  torque 40 lb dry
  //        ^^ units.ambiguous warning
}
tool Press "press" {
  force 20 lb
  //       ^^ units.ambiguous
}
value A = 110 C
//            ^ units.ambiguous
value B = 3 gal
//          ^^^ units.ambiguous
value C = 2 ton
//          ^^^ units.ambiguous
`);
  expect(told("value B = 3 gal\n", "units.ambiguous")).toMatchInlineSnapshot(`
    "“gal” can mean two things.
      US and imperial measures differ.
      It is read as galUS.
    → Write galUS, if that is what is meant.
    + Write galUS"
  `);
});

test("silent: pounds and ounces of mass, and names that say which", () => {
  expectFindings(`part Cover "cover" { mass 40 lb }
part Seal "seal" { mass 3 oz }
value A = 110 °C
value B = 3 galUS
value C = 40 lbf
`);
});

test("the fix writes what it was read as, and nothing is left", () => {
  const text = "value B = 3 gal\n";
  const [found] = findingsIn(text);
  const mended = found === undefined ? "" : withFix(text, found);
  expect(mended).toBe("value B = 3 galUS\n");
  expect(findingsIn(mended)).toEqual([]);
});
