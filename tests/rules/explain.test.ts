// Pages of codes for people: the list, one page as text and as Markdown, and the nearest code for one that is not there.
import { expect, test } from "vitest";
import { allCodes, explain, pageMarkdown, pageText, referenceMarkdown } from "#rules/explain.ts";
import { RULES } from "#rules/index.ts";
import { enclosed } from "#rules/order/enclosed.ts";

test("every code with what it finds, in one sentence", () => {
  const codes = allCodes();
  expect(codes.map(({ code }) => code)).toEqual(RULES.map(({ code }) => code));
  for (const { finds } of codes) expect(finds).toMatch(/^[A-Z“].{20,200}\.$/);
  expect(new Set(codes.map(({ finds }) => finds)).size).toBe(codes.length);
});

test("the reference of all rules is what their pages give today (`-u` writes it)", async () => {
  const reference = referenceMarkdown();
  await expect(reference).toMatchFileSnapshot("../../language/RULES.md");
  for (const { code } of RULES) {
    expect(reference).toContain(`\n# ${code}\n`);
    expect(reference).toContain(`| [${code}](#${code.replace(".", "")}) |`);
  }
});

test.each([
  ["order.enclose", "order.enclosed"],
  ["order.Enclosed", "order.enclosed"],
  ["enclosed", "order.enclosed"],
  ["flow.enclosed", "order.enclosed"],
  ["order.left behind", "order.left-behind"],
  ["unit.mismatch", "units.mismatch"],
  ["reactor", null],
  ["", null],
])("%j: the nearest code is %s", (text, nearest) => {
  expect(explain(text)).toEqual({ known: false, code: text, nearest });
});

test("a page as text, for reading in a terminal", () => {
  expect(pageText(enclosed)).toMatchInlineSnapshot(`
    "order.enclosed (error)

    Work on a part, or at its place, while another that encloses it is installed.

    Why it matters
      No hand and no tool reaches a bearing behind its cover. Either the line
      stands too late, or the cover was to come off before it.

    This has it
      consumable Grease "bearing grease"
      part Bearing "drive-end bearing"
      part Cover "bearing cover" { encloses Bearing }

      procedure CloseUp "Close the housing" {
        step install Bearing
        step install Cover
        step lubricate Bearing with Grease
      }

    Made right
      consumable Grease "bearing grease"
      part Bearing "drive-end bearing"
      part Cover "bearing cover" { encloses Bearing }

      procedure CloseUp "Close the housing" {
        step install Bearing
        step lubricate Bearing with Grease
        step install Cover
      }
    "
  `);
  for (const line of pageText(enclosed, 60).split("\n")) expect(line.length).toBeLessThanOrEqual(62);
});

test("a page as Markdown", () => {
  expect(pageMarkdown(enclosed)).toMatchInlineSnapshot(`
    "# order.enclosed

    *error*

    Work on a part, or at its place, while another that encloses it is installed.

    **Why it matters.** No hand and no tool reaches a bearing behind its cover. Either the line stands too late, or the cover was to come off before it.

    **This has it**

    \`\`\`sprag
    consumable Grease "bearing grease"
    part Bearing "drive-end bearing"
    part Cover "bearing cover" { encloses Bearing }

    procedure CloseUp "Close the housing" {
      step install Bearing
      step install Cover
      step lubricate Bearing with Grease
    }
    \`\`\`

    **Made right**

    \`\`\`sprag
    consumable Grease "bearing grease"
    part Bearing "drive-end bearing"
    part Cover "bearing cover" { encloses Bearing }

    procedure CloseUp "Close the housing" {
      step install Bearing
      step lubricate Bearing with Grease
      step install Cover
    }
    \`\`\`
    "
  `);
});
