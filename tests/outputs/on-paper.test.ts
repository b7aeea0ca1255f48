// The HTML checklist printed before it is filled in: who signs by hand finds the same places as in the PDF, and no page ends behind
// or within a heading. How it looks is for the eye: Chromium's print of samples and of long texts was looked at.
import { expect, test } from "vitest";
import { make } from "./make.ts";
import { around } from "./procedures.ts";

const SIGNED = make(around('step { do "Look." sign Fitter hold for Fitter }')).html;

test("signature and date stand at each sign-off, and the script of the page leaves them for the pen", () => {
  const places = [...SIGNED.matchAll(/<div class="sign"[^>]*>.*?<\/div>/gs)].map(([place]) => place);
  expect(places).toHaveLength(2);
  for (const place of places) {
    const labels = [...place.matchAll(/<label class="([^"]*)">.*?<\/span>(\w+)<\/span>/g)].map(([, look, text]) => [
      look,
      text,
    ]);
    expect(labels).toEqual([
      ["entry", "Name"],
      ["entry pen", "Signature"],
      ["entry pen", "Date"],
    ]);
  }
  expect(SIGNED).toContain(".entry:not(.pen)");
  expect(SIGNED).toMatch(/@media screen \{ \.filling \.pen \{ display: none; \} \}/);
});

test("headings stay in one piece and with what follows them", () => {
  const print = SIGNED.slice(SIGNED.indexOf("@media print"));
  const whole = /([^{}]*)\{ break-inside: avoid; \}/.exec(print)?.[1] ?? "";
  const kept = /([^{}]*)\{ break-after: avoid; \}/.exec(print)?.[1] ?? "";
  for (const heading of ["h1", "h2", "h3", "h4", "h5", "h6", ".if"]) {
    expect(whole.split(/[\s,]+/)).toContain(heading);
    expect(kept.split(/[\s,]+/)).toContain(heading);
  }
});

test("in the lists no line ends between a number and its unit", () => {
  const { html } = make(around("step tighten Foot[1] to 80 ± 7 N·m with Wrench"));
  // CSS Text: `white-space: nowrap`; a narrow screen lets it go.
  expect(html).toContain(`torque <span class="whole">1 .. 100 N·m</span>`);
});

test("a title that is too long for the head of a page is cut there, and stands whole above the work", () => {
  const title = "Removal and inspection of the gear housing ".repeat(6).trim();
  const { html } = make(`procedure Work "${title}" { step "Look." }`);
  const [, head = ""] = /@top-right \{ content: "([^"]*)"/.exec(html) ?? [];
  // Three lines of 9 pt fit above a page of A4 with 20 mm; `\2026 ` is the sign that something is left out.
  expect(head).toBe(`${title.slice(0, 140)}\\2026 `);
  expect(html).toContain(`<h1>${title}</h1>`);
});
