// Where the DOCX may end a line or a page: a box stays with its label, a sign with its number, what is to be known with what it is for.
import { expect, test } from "vitest";
import { make } from "../make.ts";
import { around } from "../procedures.ts";
import { bytesAs, filesIn } from "./write-as.ts";

/** Paragraphs, each as its text and whether it stays on the page of the next. */
async function paragraphsOf(lines: string, declarations = ""): Promise<readonly { text: string; keeps: boolean }[]> {
  const docx = await bytesAs("docx", make(around(lines, declarations)).document);
  const xml = filesIn(docx).get("word/document.xml") ?? "";
  return (xml.match(/<w:p>.*?<\/w:p>/gs) ?? []).map((one) => ({
    text: one.replace(/<w:sym\b[^>]*w:char="2610"[^>]*\/>/g, "☐").replace(/<[^>]*>/g, ""),
    keeps: one.includes("<w:keepNext/>"),
  }));
}

test("a box stays on the line of its label", async () => {
  const paragraphs = await paragraphsOf("repeat n from 1 to 6 { step install Screw[n] }");
  const [ticks] = paragraphs.filter(({ text }) => (text.match(/☐/g) ?? []).length === 6);
  // U+00A0 (Unicode, UAX #14: class GL) lets no line end on either side of it.
  expect(ticks?.text.match(/☐\u00a0[1-6]/g)).toHaveLength(6);
});

test("no line ends between a minus and its number", async () => {
  const texts = (await paragraphsOf('step { record "air" -40 .. -5 °C }')).map(({ text }) => text);
  expect(texts.some((text) => text.includes("must be \u221240"))).toBe(true);
  // U+002D (UAX #14: class HY) lets a line end behind it in word processors.
  expect(texts.filter((text) => /-\d/.test(text) && !/\d-\d/.test(text))).toEqual([]);
});

test("what still holds and when to begin stays on the page of what is done", async () => {
  const paragraphs = await paragraphsOf(
    'warning skin "Oil irritates." avoid "Wipe it off."\ntask T "t" { step install Base }\nstep Oiling { needs Base is installed  lubricate Base with Oil }',
    "",
  );
  const told = paragraphs.filter(({ text }) => text.includes("Start only when"));
  expect(told).toHaveLength(1);
  expect(told.every(({ keeps }) => keeps)).toBe(true);
});

test("a reading stays on the page of what is measured, with what is said of it", async () => {
  const paragraphs = await paragraphsOf('step { check "No gap" with Depth expect at most 2 mm record }');
  expect(paragraphs.find(({ text }) => text.includes("Check: No gap"))?.keeps).toBe(true);
});

test("no heading stands over work that there is none of", async () => {
  const heads = async (lines: string) => (await paragraphsOf(lines)).filter(({ text }) => text === "Work");
  expect(await heads('step "Look."')).toHaveLength(1);
  expect(await heads("")).toEqual([]);
});

test("what is signed, and what holds up the work, stays on the page of what it is for", async () => {
  const paragraphs = await paragraphsOf('step { do "Look." sign Fitter hold for Fitter }');
  const from = paragraphs.findIndex(({ text }) => text.includes("Look."));
  const hold = paragraphs.findIndex(({ text }) => text.includes("HOLD POINT"));
  expect(hold).toBeGreaterThan(from + 3);
  expect(paragraphs.slice(from, hold).filter(({ keeps }) => !keeps)).toEqual([]);
});
