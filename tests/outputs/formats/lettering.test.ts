// Words shaped one by one for a PDF, beside whole lines shaped at once by the library.
import { beforeAll, describe, expect, test } from "vitest";
import { fonts } from "#harness/fonts.ts";
import { isShopProcedure, plainTexts } from "#harness/samples.ts";
import { type Lettering, letteringOf } from "#outputs/formats/pdf/lettering.ts";
import { blankDocument } from "#outputs/formats/pdf/scraps.ts";

let doc: PDFKit.PDFDocument;
let lettering: Lettering;
beforeAll(async () => {
  ({ doc } = blankDocument({ font: null as unknown as string, autoFirstPage: false }));
  const { regular, bold } = await fonts();
  doc.registerFont("regular", regular as Buffer).registerFont("bold", bold as Buffer);
  lettering = letteringOf(doc);
});

/** Letters that are drawn nearer, become one, lie far apart; and spaces beside all of them. */
const PAIRS = "AVATAR To. Ty, L’T r. P. V. fi ffl Öl –\u00a05\u00a0°C ± 0.5 N·m \u00a0 „Y“ W, 7 1/2 Über".normalize();
const shop = [...plainTexts].flatMap(([path, text]) => (isShopProcedure(path) ? text.split("\n") : []));
/** Enough of them for each pair of signs to come often. */
const lines = new Set([PAIRS, ...shop.filter((line, at) => line !== "" && at % 4 === 0)]);

describe.each([
  ["regular", false],
  ["bold", true],
] as const)("%s", (face, bold) => {
  test("a line is as wide as its words, since no letter is drawn nearer to a space", () => {
    expect(lines.size).toBeGreaterThan(100);
    doc.font(face, 1000);
    for (const line of lines) {
      // With features given, even none, the library shapes the line at once.
      const whole = doc.widthOfString(line, { features: [] });
      expect(lettering.widthOf(line, bold), line).toBeCloseTo(whole, 6);
    }
  });

  test("kerning is told in thousandths, between codes of four digits each", () => {
    expect(lettering.codesOf("AV", bold)).toMatch(/^<[0-9a-f]{4}>[1-9][0-9.]*<[0-9a-f]{4}>$/);
    expect(lettering.codesOf("nn nn", bold)).toMatch(/^<([0-9a-f]{4})\1[0-9a-f]{4}\1\1>$/);
    expect(lettering.codesOf("", bold)).toBe("");
  });

  test("a sign that stands above its letter is no part of a line", () => {
    expect(lettering.codesOf("x\u0302 y", bold)).toBeNull();
  });
});
