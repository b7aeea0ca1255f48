// Every quick fix, on every page and on texts of its own: it removes its finding, adds none, and leaves the text formatted.
import { expect, test } from "vitest";
import { findingsIn, formatted, withFix } from "#harness/check.ts";
import { RULES } from "#rules/index.ts";

const pages = RULES.map(({ code, page }) => [code, page.fails, page.files ?? {}] as const).filter(
  ([code, text, files]) =>
    findingsIn(text, files).some((finding) => finding.code === code && finding.fixes !== undefined),
);

test("there are fixes for what can be mended", () => {
  expect(pages.map(([code]) => code)).toEqual(
    expect.arrayContaining([
      "names.unknown",
      "units.unknown",
      "units.style",
      "units.reversed-range",
      "units.ambiguous",
      "order.already-installed",
      "order.left-behind",
      "trace.unused-allow",
    ]),
  );
});

test.each(pages)("%s: the fix on its page", (code, text, files) => {
  expectMended(text, code, files);
});

const HEAD = `part Cover "cover" { encloses Plug }
part Seal "seal"
temporary part Plug "plug"
energy Supply "motor supply" { voltage 400 V AC }
`;

test.each([
  ["order.unmet-need", 'step inspect Seal\n  step "Start." { needs Seal is installed }'],
  ["order.unmet-need", 'step inspect Seal\n\n  // Slowly.\n  step "Start." { needs Seal is installed }'],
  [
    "order.unmet-need",
    'begin with Seal is installed\n  finish with Seal is removed\n\n  step "Look." { needs Seal is removed }',
  ],
  ["order.left-behind", "step install Plug\n  step inspect Seal"],
  ["order.left-behind", "task Aids {\n    step install Plug\n    step inspect Seal\n  }"],
  ["order.left-behind", "step isolate Supply\n  step inspect Seal"],
  ["order.already-installed", "step install Seal\n  step install Seal\n\n  step inspect Cover"],
  ["order.already-installed", "step install Seal\n\n  step install Seal\n\n  step inspect Cover"],
  ["trace.unused-allow", 'allow order.enclosed because "Side port."\n\n  step inspect Seal'],
  ["names.unknown", "step inspect Seel"],
])("%s: the fix in %j", (code, lines) => {
  const used = "begin with Cover is removed, Seal is removed, Plug is removed, Supply is live";
  const begin = lines.startsWith("begin") ? "begin with Cover is removed, Plug is removed, Supply is live" : used;
  const text = formatted(`${HEAD}\nprocedure Work "Work" {\n  ${begin}\n  ${lines}\n}\n`);
  expect(text).not.toBeNull();
  expectMended(text ?? "", code, {});
});

function expectMended(text: string, code: string, files: Readonly<Record<string, string>>): void {
  const before = findingsIn(text, files);
  const wasFormatted = formatted(text) === text;
  const fixable = before.filter((finding) => finding.code === code && finding.fixes !== undefined);
  expect(fixable.length).toBeGreaterThan(0);
  for (const finding of fixable) {
    const mended = withFix(text, finding);
    const after = findingsIn(mended, files);
    expect(after.map((left) => left.code)).toEqual(before.filter((one) => one !== finding).map((left) => left.code));
    if (wasFormatted) expect(formatted(mended)).toBe(mended);
  }
}
