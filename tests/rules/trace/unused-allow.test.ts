// trace.unused-allow, and what an `allow` covers: its step, task or procedure, one code, never syntax or names.
import { expect, test } from "vitest";
import { expectFindings, findingsIn, told, withFix } from "#harness/check.ts";

const SHOP = `part Bearing "drive-end bearing"
part Cover "bearing cover" { encloses Bearing }
`;

test("nothing to silence", () => {
  const text = `${SHOP}
procedure CloseUp "Close the housing" {
  step install Bearing
  step {
    install Cover
    allow order.enclosed because "Through the side port."
  //^^^^^^^^^^^^^^^^^^^^ trace.unused-allow
  }
}`;
  expectFindings(text);
  expect(told(text, "trace.unused-allow")).toMatchInlineSnapshot(`
    "This allows order.enclosed, and nothing here has it.
      What it once silenced was put right, or stands elsewhere.
    → Take the line out.
    + Take this “allow” out"
  `);
});

test("a code that no rule has, with the nearest", () => {
  const text = `${SHOP}
procedure CloseUp "Close the housing" {
  step install Bearing, Cover
  step {
    inspect Bearing
  //^^^^^^^^^^^^^^^ order.enclosed
    allow order.enclose because "Through the side port."
  //^^^^^^^^^^^^^^^^^^^ trace.unused-allow
  }
}`;
  expectFindings(text);
  expect(told(text, "trace.unused-allow")).toMatchInlineSnapshot(`
    "No rule is called order.enclose.
    → Probably order.enclosed is meant. “sprag explain” lists all codes.
    + Take this “allow” out"
  `);
});

test.each(["names.unknown", "syntax.character", "units.mismatch"])("%s cannot be allowed", (code) => {
  const text = `${SHOP}
procedure CloseUp "Close the housing" {
  allow ${code} because "It is so."
  step install Bearing, Cover
}`;
  expect(findingsIn(text).map((finding) => finding.code)).toEqual(["trace.unused-allow"]);
  expect(told(text, "trace.unused-allow")).toContain(`${code} cannot be allowed.`);
});

test("what cannot be allowed stays an open finding", () => {
  expectFindings(`${SHOP}
procedure CloseUp "Close the housing" {
  step install Bearing, Cover
  step {
    inspect Covr
    //      ^^^^ names.unknown
    allow names.unknown because "It is so."
  //^^^^^^^^^^^^^^^^^^^ trace.unused-allow
  }
}`);
});

test("of two that cover it the inner one is used", () => {
  expectFindings(`${SHOP}
procedure CloseUp "Close the housing" {
  allow order.enclosed because "The housing has a side port."
//^^^^^^^^^^^^^^^^^^^^ trace.unused-allow
  step install Bearing, Cover
  step {
    inspect Bearing
  //^^^^^^^^^^^^^^^ order.enclosed allowed
    allow order.enclosed because "Through the side port."
  }
}`);
});

test("silent: a procedure's allow covers all its steps, and is counted as allowed", () => {
  const text = `${SHOP}
procedure CloseUp "Close the housing" {
  allow order.enclosed because "The housing has a side port." by "A. Moran"
  step install Bearing, Cover
  step inspect Bearing
  step clean Bearing
}`;
  const found = findingsIn(text);
  expect(found.map(({ code, allowed }) => [code, allowed])).toEqual([
    ["order.enclosed", { reason: "The housing has a side port.", by: "A. Moran" }],
    ["order.enclosed", { reason: "The housing has a side port.", by: "A. Moran" }],
  ]);
});

test("an allow left standing on purpose", () => {
  expectFindings(`${SHOP}
procedure CloseUp "Close the housing" {
  allow trace.unused-allow because "The site procedure fills these in."
  step install Bearing
  step {
    install Cover
    allow order.enclosed because "Through the side port."
  //^^^^^^^^^^^^^^^^^^^^ trace.unused-allow allowed
  }
}`);
});

test.each([
  [
    "on a line of its own",
    '  step "Close." {\n    install Cover\n    allow order.enclosed because "Side port."\n  }\n',
    '  step "Close." { install Cover }\n',
  ],
  ["behind an action", '  step install Cover allow order.enclosed because "Side port."\n', "  step install Cover\n"],
])("the fix takes it out %s", (_title, before, after) => {
  const text = `${SHOP}\nprocedure CloseUp "Close the housing" {\n  step install Bearing\n${before}}\n`;
  const [found] = findingsIn(text);
  const mended = found === undefined ? "" : withFix(text, found);
  expect(mended).toBe(text.replace(before, after));
  expect(findingsIn(mended)).toEqual([]);
});

test("an allow without its reason is no allow: what it would silence stays", () => {
  expectFindings(`part Bearing "bearing"

procedure Strip "Strip the shaft" {
  step {
    remove Bearing
  //^^^^^^^^^^^^^^ order.not-installed
    allow order.not-installed
    //              ^^^^^^^^^ syntax.unexpected
  }
}`);
});
