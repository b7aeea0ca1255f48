// The whole file: draft and errors, allowed findings, provenance, same bytes for same inputs, colours that can be read.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { fonts } from "#harness/fonts.ts";
import { PAGE_HASH, PAGE_SCRIPT } from "#outputs/checklist/generated/page.ts";
import { OUTPUTS } from "#outputs/index.ts";
import { signalColours } from "#outputs/signal-colours.ts";
import { en } from "#outputs/words/en.ts";
import { elementsIn, readHtml, textOf } from "./html-reader.ts";
import { make } from "./make.ts";
import { around, COVER } from "./procedures.ts";

const FAULTY = around("step install Cover");
const ALLOWED = around(
  'step install Pin\nallow order.left-behind because "The pin stays in." by "A. Moran"',
  'temporary part Pin "pin"',
);

describe("a draft", () => {
  test("a procedure with an error is one, whatever was asked for, and lists it", () => {
    const { document, html, md } = make(FAULTY);
    expect(document.draft).toBe(true);
    expect(document.head.findings).toMatchObject([{ error: true, code: "order.missing-support", place: "step 1" }]);
    for (const text of [html, md]) {
      expect(text).toContain("Errors to be put right");
      expect(text).toContain("order.missing-support");
    }
  });

  test("every printed page says so: in its head, at its foot and across it", () => {
    const { html } = make(FAULTY);
    expect(html).toMatch(/@top-left \{ content: "DRAFT · /);
    expect(html).toContain('@bottom-left { content: "DRAFT"');
    expect(html).toMatch(/body\.draft::before \{ position: fixed/);
    expect(textOf(readHtml(html))).toContain("DRAFT");
  });

  test("every section of the Markdown says so", () => {
    const { md } = make(FAULTY);
    const sections = md.split(/^##? /m).slice(1);
    expect(sections.length).toBeGreaterThan(3);
    expect(sections.filter((section) => !section.includes("**DRAFT**"))).toEqual([]);
  });

  test("a clean procedure is none, unless it was asked for", () => {
    expect(make(COVER).document.draft).toBe(false);
    expect(make(COVER).html).not.toContain("DRAFT");
    expect(make(COVER, { draft: true }).html).toContain("DRAFT");
  });
});

test("an allowed finding makes no draft and is printed with its reason", () => {
  const { document, html, md } = make(ALLOWED);
  expect(document.draft).toBe(false);
  expect(document.head.findings.filter((finding) => finding.error)).toEqual([]);
  expect(document.head.allows).toEqual([
    { code: "order.left-behind", place: "step 1", reason: "The pin stays in.", by: "A. Moran" },
  ]);
  for (const text of [html, md]) expect(text).toContain("The pin stays in.");
});

test("the head says which document, for what, from what, and the hash of the inputs", () => {
  const { document, html, md } = make(COVER);
  const facts = new Map(document.head.facts.map((fact) => [fact.label, fact.values.join("; ")]));
  expect(Object.fromEntries(facts)).toMatchObject({
    Document: "WI-1",
    Revision: "C",
    Date: "2026-05-04",
    "Applies to": "P-1, serial 10 to 20",
    "Based on": "pump manual, revision 9",
    "Check result": "no errors, no warnings",
    "Content hash of the inputs": "5f3a",
  });
  for (const text of [html, md])
    for (const value of facts.values()) expect(text).toContain(value.replace("'", "&#39;"));
});

test("same inputs, same bytes", () => {
  for (const draft of [false, true]) expect(make(COVER, { draft })).toEqual(make(COVER, { draft }));
});

test("what is only shown is the same, without what it is filled in with", () => {
  const { document, html } = make(COVER);
  expect(document.record).not.toBeNull();
  const shown = make(COVER, { shown: true });
  expect(shown.document).toEqual({ ...document, record: null });
  expect([html, shown.html].map((page) => page.includes("<script"))).toEqual([true, false]);
});

test("the registry offers every output in its formats, and the builders' own text", () => {
  const offered = Object.fromEntries([...OUTPUTS].map(([as, { formats }]) => [as, [...formats.keys()].sort()]));
  expect(offered).toEqual({
    checklist: ["csv", "docx", "html", "json", "md", "pdf"],
    trainee: ["docx", "html", "md", "pdf"],
    assessor: ["docx", "html", "pdf", "xlsx"],
    kit: ["csv", "html", "json", "md", "xlsx"],
    diagram: ["html", "svg"],
    dita: ["xml"],
  });
  const { document, html, md } = make(COVER);
  const written = (format: string) => OUTPUTS.get("checklist")?.formats.get(format)?.(document, { words: en, fonts });
  expect([written("html"), written("md")]).toEqual([html, md]);
});

test.each([
  ["a procedure that holds nothing", "procedure Empty {}"],
  ["steps that could not be read", 'procedure Broken "Broken" { step instal Base ]] step "Look." task { } }'],
  [
    "names that are not there",
    'procedure Lost "Lost" { step tighten Nothing[all] in cross pattern to 3 foo with Nobody step { check "x" expect at most ? } }',
  ],
  [
    "a repeat without end",
    "part P[1..9] procedure Long { repeat a from 1 to 999 { repeat b from 1 to 999 { step inspect P[1] } } }",
  ],
])("%s still gives a file", (_title, text) => {
  const { html, md } = make(text);
  expect(elementsIn(readHtml(html)).next().done).toBe(false);
  expect(md.startsWith("# ")).toBe(true);
});

test("the colours of the signal words can be read", () => {
  for (const { panel, text } of Object.values(signalColours)) expect(contrast(panel, text)).toBeGreaterThanOrEqual(4.5);
});

test("1,000 steps become HTML in well under a second", () => {
  const { document } = make(around(Array.from({ length: 1000 }, () => "step inspect Base").join("\n")));
  const render = OUTPUTS.get("checklist")?.formats.get("html");
  const start = performance.now();
  const html = render?.(document, { words: en, fonts });
  expect(performance.now() - start).toBeLessThan(1000);
  expect(String(html).match(/<section class="step"/g)).toHaveLength(1000);
});

// Written once by hand from what was looked at; a change in them is a change that a shop sees.
test.each(["html", "md"] as const)("the short procedure as %s is the file that was looked at", async (format) => {
  const text = readFileSync(join(import.meta.dirname, "golden", "short.sprag"), "utf8");
  const made = make(text)[format].replace(PAGE_SCRIPT, "/* page/ */").replace(PAGE_HASH, "sha256-page");
  await expect(made).toMatchFileSnapshot(join(import.meta.dirname, "golden", `short.${format}.txt`));
});

/** Contrast of two colours, WCAG 2.2: (L1 + 0.05) / (L2 + 0.05). */
function contrast(a: string, b: string): number {
  const [light = 0, dark = 0] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (light + 0.05) / (dark + 0.05);
}

function luminance(colour: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const share = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}
