// What every output carries, in every format. Source: outputs.md: “Every output … carries: document number, revision, date, what it applies
// to, source and its revision, options chosen, the check result (findings left, every `allow` with its reason), the content hash of the
// inputs, and the caution …”; “every page says DRAFT and lists the errors”. The words looked for are those of the text below.
import { describe, expect, test } from "vitest";
import { fonts } from "#harness/fonts.ts";
import { OUTPUTS } from "#outputs/index.ts";
import { en } from "#outputs/words/en.ts";
import { bytesAs, docxText, filesIn, poppler } from "./formats/write-as.ts";
import { documentAs, instructionsIn, make, stepsIn } from "./make.ts";

const TEXT = (more = ""): string => `source Manual "motor handbook" revision "8"
source Sheet "torque sheet" revision "3"
option Extent "extent of work" { Full "full overhaul"  Part "bearings only" }
role Fitter "fitter"
tool Wrench "torque wrench" { torque 1 .. 90 N·m }
value Tight = 45 ± 2 N·m per Sheet "2.2"
part Base "base"
part Cover "cover" { needs Base }
part Bolt[1..4] "bolt" { secures Cover }
procedure Close "Close the cover" {
  document "WI-77-3" revision "F" dated 2026-02-03
  applies to "M-9" serial 40 .. 88
  based on Manual revision "8"
  ambient 14 .. 26 °C
  begin with Base is installed
  finish with Cover is secured${more}
  when Extent is Full { step "Look along the joint." }
  step install Cover
  step install Bolt[all] allow order.not-final because "Bolts are marked." by "A. Moran"
  step tighten Bolt[all] to Tight with Wrench sign Fitter
}
`;

const WISHES = { options: { Extent: "Full" } };

async function said(output: string, format: string, text: string, draft: boolean): Promise<string> {
  const document = documentAs(output, text, { ...WISHES, draft });
  const content = await OUTPUTS.get(output)?.formats.get(format)?.(document, { words: en, fonts });
  const bytes = typeof content === "string" ? new TextEncoder().encode(content) : (content ?? new Uint8Array());
  if (format === "pdf") return poppler("pdftotext", bytes, "-layout");
  if (format === "docx") return [docxText(bytes), ...filesIn(bytes).values()].join("\n");
  if (format === "xlsx") return [...filesIn(bytes).values()].join("\n");
  return new TextDecoder().decode(bytes);
}

const FORMS = [...OUTPUTS].flatMap(([output, { formats }]) =>
  [...formats.keys()].map((format) => [output, format] as const),
);

/** Formats break lines, and set marks and a backslash before some signs. */
const plain = (text: string): string =>
  text
    .replace(/<(?:style|script)\b[\s\S]*?<\/(?:style|script)>/g, " ")
    .replace(/<[^>]*>|[\s\u00a0]+/g, " ")
    .replace(/ +/g, " ")
    .replaceAll("\\", "");

describe("all of it", () => {
  test.each(FORMS)("%s as %s", async (output, format) => {
    const text = plain(await said(output, format, TEXT(), false));
    // Of a source that is only cited too: of a torque, by its named value.
    const sources = ["motor handbook, revision 8", "torque sheet, revision 3"];
    for (const part of ["WI-77-3", "2026-02-03", "M-9", "40 to 88", ...sources, "full overhaul"])
      expect(text, part).toContain(part);
    expect(text).toMatch(/revision[ :,]*F\b/i);
    for (const part of [
      "order.not-final",
      "Bolts are marked.",
      "A. Moran",
      "5f3a",
      "uncontrolled",
      "Computed values are aids",
    ])
      expect(text, part).toContain(part);
    expect(text).not.toContain("DRAFT");
  });

  test.each(FORMS)("a draft says so and lists its errors: %s as %s", async (output, format) => {
    const text = plain(await said(output, format, TEXT(", Base is clean"), true));
    expect(text).toContain("order.unfinished");
    expect(text).toMatch(format === "json" ? /"draft": ?true/ : /DRAFT/);
  });

  test("each sheet of a workbook says DRAFT, and each of its pages", async () => {
    const document = documentAs("kit", TEXT(", Base is clean"), { draft: true });
    const files = filesIn(await bytesAs("xlsx", document));
    const names = [...(files.get("xl/workbook.xml") ?? "").matchAll(/<sheet [^>]*name="([^"]*)"/g)].map(
      ([, name]) => name,
    );
    expect(names.length).toBeGreaterThan(2);
    expect(names.filter((name) => !name?.startsWith("DRAFT "))).toEqual([]);
    const sheets = [...files].filter(([path]) => /worksheets\/sheet\d+\.xml$/.test(path));
    expect(sheets).toHaveLength(names.length);
    // ECMA-376-1, 18.3.1.46: `&L` and `&R` begin the sides.
    for (const [path, sheet] of sheets)
      expect(sheet, path).toMatch(/<oddHeader>&amp;LWI-77-3 [^<]*&amp;RDRAFT<\/oddHeader>/);
  });

  test("a title with signs that a workbook takes for orders", async () => {
    const text = TEXT().replace("Close the cover", "Cover & bolts <&D>");
    const files = filesIn(await bytesAs("xlsx", documentAs("kit", text)));
    // ECMA-376-1, 18.3.1.46: `&&` is the sign itself, `&D` the day.
    expect(files.get("xl/worksheets/sheet1.xml")).toContain("Cover &amp;&amp; bolts &lt;&amp;&amp;D&gt;");
  });
});

describe("sources", () => {
  const citations = (text: string) => stepsIn(make(text, WISHES).document).map((step) => step.citations);

  test("a step names that of its torque, where it is said with the named value", () => {
    expect(citations(TEXT()).at(-1)).toEqual(["torque sheet, 2.2"]);
  });

  test("or with the fastener, where nothing nearer is said", () => {
    const text = `source Sheet "torque sheet" revision "3"
source Card "job card"
part Bolt "bolt" { torque 45 ± 2 N·m dry per Sheet "2.2" }
tool Wrench "torque wrench" { torque 1 .. 90 N·m }
procedure Close "Close" { begin with Bolt is installed step tighten Bolt to 45 ± 2 N·m with Wrench }
`;
    expect(citations(text)).toEqual([["torque sheet, 2.2"]]);
    expect(citations(text.replace("with Wrench }", 'with Wrench per Card "1" }'))).toEqual([["job card, 1"]]);
  });

  test("one that the procedure is based on is not said again", () => {
    const { facts } = make(TEXT(), WISHES).document.head;
    expect(facts.find(({ label }) => label === en.labels.sources)?.values).toEqual(["torque sheet, revision 3"]);
  });
});

test("an ambient temperature occurs: outwards in the other system", () => {
  // language.md, 2: “a band that describes what occurs (interference, ambient …) outwards”. 14 °C is 57.2 °F, 26 °C 78.8 °F.
  const { facts } = make(TEXT(), WISHES).document.head;
  expect(facts.find(({ label }) => label === en.labels.ambient)?.values).toEqual(["14 .. 26 °C (57 .. 79 °F)"]);
});

test("what holds of all of a ring is told by number, however it is filled", () => {
  const text = `ring Seat "seat" { count 4  numbered clockwise seen from "drive end"  position 1 at 6 o'clock  fill counterclockwise }
part Segment[1..4] "segment" { seats in Seat by number }
procedure Fit "Fit" { finish with Segment[all] are installed step install Segment[all] }
`;
  const { document } = make(text);
  expect(document.end).toEqual(["Segments 1–4 are installed."]);
  // What is done is done in that order.
  expect(instructionsIn(document)).toEqual(["Install segments 1, 4, 3 and 2."]);
});
