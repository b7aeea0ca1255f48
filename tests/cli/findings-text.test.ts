// What a person reads: the text of findings as a whole, colours, and the frame round a place in difficult lines.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { codeFrame } from "#cli/frame.ts";
import { folderWith } from "#harness/command.ts";
import { linesOf } from "#syntax/lines.ts";
import { TWICE } from "./texts.ts";

const ENCLOSED = `consumable Grease "bearing grease"
part Bearing "drive-end bearing"
part Cover "bearing cover" { encloses Bearing }

procedure CloseUp "Close the housing" {
  step install Bearing
  step Close { install Cover }
  step Grease1 {
    lubricate Bearing with Grease
  }
}
`;

test("a finding shows its place, the reason, the remedy, where it stands and how it came", () => {
  const { out } = folderWith({ "a.sprag": ENCLOSED }).sprag("check", "a.sprag");
  expect(out).toBe(`a.sprag:9:5  error  order.enclosed
  Bearing is behind Cover and cannot be reached.

   9 |     lubricate Bearing with Grease
     |     ^^^^^^^^^^^^^^^^^

  why      Cover encloses Bearing and is in place since step 2.
  remedy   Do this before Cover is installed, or remove Cover first.
  where    procedure CloseUp, step 3 (Grease1)
  so far   Step 2: Cover is installed (line 7).
  see      Cover encloses Bearing, as declared here (line 3).

1 error in 1 file; 1 procedure, 3 steps checked.
`);
});

test("a related place in another file is named with it, and a fix that repeats the remedy is left out", () => {
  const files = {
    "lib/parts.sprag": 'part Cover "cover" { needs Seal }\npart Seal "seal"\n',
    "a.sprag": 'use "lib/parts.sprag"\nprocedure P "p" {\n  step install Cover\n}\n',
    "b.sprag": "value Span = 380–440 N\n",
  };
  const { out } = folderWith(files).sprag("check", "a.sprag", "b.sprag");
  expect(out).toContain("  see      Cover needs Seal, as declared here (lib/parts.sprag:1:");
  expect(out).toContain("  remedy   Write 380 .. 440.\n\n");
});

describe("colours", () => {
  const folder = () => folderWith({ "a.sprag": TWICE });
  const ESC = "\u001b[";
  test.each([
    ["a terminal", { isTerminal: true, env: {} }, true],
    ["a terminal that has none", { isTerminal: true, env: { TERM: "dumb" } }, false],
    ["a terminal with NO_COLOR", { isTerminal: true, env: { NO_COLOR: "1" } }, false],
    ["a terminal with an empty NO_COLOR", { isTerminal: true, env: { NO_COLOR: "" } }, true],
    ["a file", { env: {} }, false],
    ["a file with FORCE_COLOR", { env: { FORCE_COLOR: "1" } }, true],
    ["a file with FORCE_COLOR=0", { env: { FORCE_COLOR: "0" } }, false],
    ["NO_COLOR before FORCE_COLOR", { env: { FORCE_COLOR: "1", NO_COLOR: "1" } }, false],
  ])("on %s", (_title, place, coloured) => {
    expect(folder().spragAs(place, "check", "a.sprag").out.includes(ESC)).toBe(coloured);
  });

  test("change nothing but colour", () => {
    const plain = folder().sprag("check", "a.sprag").out;
    const coloured = folder().spragAs({ env: { FORCE_COLOR: "1" } }, "check", "a.sprag").out;
    expect(
      coloured
        .split(ESC)
        .map((part, at) => (at === 0 ? part : part.replace(/^\d+m/, "")))
        .join(""),
    ).toBe(plain);
  });
});

test("a narrow terminal gets narrow lines", () => {
  const { out } = folderWith({ "a.sprag": ENCLOSED }).spragAs(
    { isTerminal: true, columns: 44, env: { NO_COLOR: "1" } },
    "check",
    "a.sprag",
  );
  const told = out.split("\n").filter((line) => !line.includes("procedure,"));
  expect(Math.max(...told.map((line) => line.length))).toBeLessThanOrEqual(44);
});

describe("the frame", () => {
  const plain = { gutter: (text: string) => text, mark: (text: string) => text };

  /** @param text with the place between ‹ and › */
  function frame(text: string, width = 60): string {
    const start = text.indexOf("‹");
    const end = text.indexOf("›") - 1;
    const lines = linesOf(text.replace(/[‹›]/g, ""));
    return codeFrame(lines, lines.range(start, end), width, plain).join("\n");
  }

  test.each([
    ["a plain place", "step ‹install› Seal", "   1 | step install Seal\n     |      ^^^^^^^"],
    ["tabs before it", "\tstep\t‹install› Seal", "   1 |     step    install Seal\n     |             ^^^^^^^"],
    ["a tab in it", "a‹b\tc›d", "   1 | ab  cd\n     |  ^^^^"],
    ["wide signs", "part 軸受 ‹Größe›", "   1 | part 軸受 Größe\n     |           ^^^^^"],
    ["an accent apart", "e\u0301 ‹x›", "   1 | e\u0301 x\n     |   ^"],
    ["a sign of several code units", "👩‍🔧 ‹x›", "   1 | 👩‍🔧 x\n     |    ^"],
    ["a control sign", "a\u001b[2Jb‹c›", "   1 | a<1B>[2Jbc\n     |          ^"],
    ["a sign that turns the direction", "a\u202eb‹c›", "   1 | a<202E>bc\n     |         ^"],
    ["no width", "step ‹›install", "   1 | step install\n     |      ^"],
    ["the end of a line", "step install‹›\nnext", "   1 | step install\n     |             ^"],
    ["an empty text", "‹›", "   1 |\n     | ^"],
    ["a line of its own end", "a ‹b\n›c", "   1 | a b\n     |   ^"],
    ["two lines", "  a ‹b\n    c› d", "   1 |   a b\n     |     ^\n   2 |     c d\n     |     ^"],
    ["more lines than are shown", "a ‹{\n b\n c\n d\n}› e", "   1 | a {\n     |   ^\n     …\n   5 | } e\n     | ^"],
    ["half a sign", "a ‹\ud83d›\udd27 b", "   1 | a 🔧 b\n     |   ^^"],
  ])("of %s", (_title, text, shown) => {
    expect(frame(text)).toBe(shown);
  });

  test("cuts a long line round the place, on either side", () => {
    const words = "word ".repeat(100);
    expect(frame(`${words}‹here› ${words}`, 40)).toBe(
      "   1 | …rd word word here word word wor…\n     |               ^^^^",
    );
    expect(frame(`‹here› ${words}`, 40)).toMatch(/^ {3}1 \| here word .*…\n {5}\| \^{4}$/);
    expect(frame(`${words}‹here›`, 40)).toMatch(/\| ….* here\n {5}\| +\^{4}$/);
  });

  test("marks of a place longer than the line's room what can be seen", () => {
    const [source = "", marks = ""] = frame(`a ‹${"x".repeat(500)}› b`, 40).split("\n");
    expect(source.length).toBeLessThanOrEqual(40);
    expect(marks.length).toBeLessThan(source.length);
    expect(marks).toMatch(/\^{20,}$/);
  });

  test("takes no time over a line of a million signs", () => {
    const line = `${"x".repeat(500_000)} ‹here› ${"y".repeat(500_000)}`;
    expect(frame(line, 80)).toMatch(/x here y/);
  });

  test("stands within its width and marks something, for any text and place", () => {
    const text = fc.string({
      unit: fc.constantFrom("a", " ", "\t", "\n", "\r\n", "é", "軸", "🔧", "\u001b", "\u202e"),
    });
    fc.assert(
      fc.property(text, fc.nat(40), fc.nat(40), fc.integer({ min: 40, max: 100 }), (whole, from, length, width) => {
        const lines = linesOf(whole);
        const rows = codeFrame(lines, lines.range(from, from + length), width, plain);
        const marks = rows.filter((row) => /^ {5}\| /.test(row));
        return marks.length > 0 && marks.every((row) => row.includes("^")) && !/[\p{Cc}\u202e]/u.test(rows.join(""));
      }),
    );
  });
});
