// Words, sentences, forms of words, replaced terms, and where a part of a text stands in its file.
import { describe, expect, test } from "vitest";
import { inForm } from "#analysis/wording/inflection.ts";
import { sentencesOf } from "#analysis/wording/sentences.ts";
import { termFinder } from "#analysis/wording/terms.ts";
import { wordsOf } from "#analysis/wording/words.ts";
import { offsetsOf, textOf } from "#syntax/text-value.ts";

const words = (text: string): readonly string[] => wordsOf(text).map((word) => word.text);
const sentences = (text: string): readonly string[] =>
  sentencesOf(text).map(({ start, end }) => text.slice(start, end));

test.each<[string, readonly string[]]>([
  ["Tighten to 45 N·m now.", ["Tighten", "to", "45 N·m", "now"]],
  ["Heat to 105..115 °C.", ["Heat", "to", "105", "115 °C"]],
  ["Use an M10x1.5 O-ring.", ["Use", "an", "M10x1.5", "O-ring"]],
  ["Put 3 in each hole.", ["Put", "3", "in", "each", "hole"]],
  ["Move it 3 in or more.", ["Move", "it", "3 in", "or", "more"]],
  ["Bore 1 1/2 in.", ["Bore", "1 1/2 in"]],
  ["Set 10mm gap, 13,5 N·m.", ["Set", "10mm", "gap", "13,5", "N", "m"]],
  ["Push segment {n} in.", ["Push", "segment", "{n}", "in"]],
  ["Don’t and/or WI-160-02", ["Don’t", "and/or", "WI-160-02"]],
  ["Section 6.4.2, 1st stage", ["Section", "6.4.2", "1st", "stage"]],
])("words: %s", (text, wanted) => {
  expect(words(text)).toEqual(wanted);
});

test.each<[string, readonly string[]]>([
  ["Wait 10 min. Then open it.", ["Wait 10 min.", "Then open it."]],
  ["Use oil, e.g. ISO VG 32. Fill it.", ["Use oil, e.g. ISO VG 32.", "Fill it."]],
  ["See fig. 3 and no. 4. Stop.", ["See fig. 3 and no. 4.", "Stop."]],
  ["Cut 3 in. from the end.", ["Cut 3 in. from the end."]],
  ["Ask A. Moran. Wait.", ["Ask A. Moran.", "Wait."]],
  ["Set 0.5 mm. 3 shims are left.", ["Set 0.5 mm.", "3 shims are left."]],
  ["Is it dry? Go on!", ["Is it dry?", "Go on!"]],
  ["Say “Stop.” Then go.", ["Say “Stop.”", "Then go."]],
  ["First:\n- the cover\n- the seal", ["First:", "- the cover", "- the seal"]],
  ["One line\nand its end.\n\nAnother", ["One line\nand its end.", "Another"]],
])("sentences: %s", (text, wanted) => {
  expect(sentences(text)).toEqual(wanted);
});

test.each([
  ["housing", "plural", "housings"],
  ["bush", "plural", "bushes"],
  ["assembly", "plural", "assemblies"],
  ["housing", "possessive", "housing's"],
  ["tighten", "gerund", "tightening"],
  ["remove", "past", "removed"],
  ["fit", "past", "fitted"],
  ["take off", "gerund", "taking off"],
  ["take off", "past", "taken off"],
  ["seal", "gerund", "sealing"],
  ["dry", "past", "dried"],
] as const)("%s, %s: %s", (word, form, wanted) => {
  expect(inForm(word, form)).toBe(wanted);
});

describe("terms", () => {
  const span = { path: "a.sprag", start: 0, end: 0 };
  const term = (approved: string, ...replaces: string[]) => ({ kind: "term", approved, replaces, span }) as const;
  const find = termFinder(
    [
      term("housing", "casing", "shell"),
      term("apron", "shroud"),
      term("tighten", "torque up"),
      term("remove", "detach"),
      term("bearing cap", "cap"),
    ],
    new Set(),
  );
  const mended = (text: string): string => {
    let so = text;
    for (const { approved, article, start, end } of [...find(text)].reverse()) {
      so = so.slice(0, start) + approved + so.slice(end);
      if (article !== null) so = so.slice(0, article.start) + article.text + so.slice(article.end);
    }
    return so;
  };

  test.each([
    ["Open the casing.", "Open the housing."],
    ["Casings and SHELLS", "Housings and HOUSINGS"],
    ["the casing's rim, the shells’ rims", "the housing's rim, the housings' rims"],
    ["Fit a shroud.", "Fit an apron."],
    ["A shroud is fitted.", "An apron is fitted."],
    ["Torque up the nut after torquing up the screw.", "Tighten the nut after tightening the screw."],
    ["It is detached.", "It is removed."],
    ["Open the cap.", "Open the bearing cap."],
    ["Open the bearing cap.", "Open the bearing cap."],
  ])("%s", (text, wanted) => {
    expect(mended(text)).toBe(wanted);
  });

  test.each([
    "the encasing",
    "shelling out",
    "part CASING-12",
    "shell-and-tube",
    'the label "casing"',
    "marked “shell”",
    "casing_2",
    "the housing",
    "eggshell",
  ])("left alone: %s", (text) => {
    expect(find(text)).toEqual([]);
  });
});

describe("where a text's characters stand", () => {
  test.each([
    ["STRING", '"plain"'],
    ["STRING", String.raw`"with \"quotes\" and \\ and\nlines"`],
    ["TEXT_BLOCK", '"""\n    Two lines,  \n      one deeper.\n    """'],
    ["TEXT_BLOCK", '"""  beside\r\n\r\n  and below\r\n"""'],
  ])("%s %j", (terminal, image) => {
    const text = textOf(terminal, image);
    const offsets = offsetsOf(image, text) ?? [];
    expect(offsets).toHaveLength(text.length);
    for (const [index, offset] of offsets.entries()) {
      const sign = text.charAt(index);
      if (/[A-Za-z,.]/.test(sign)) expect(image.charAt(offset)).toBe(sign);
    }
    expect([...offsets].sort((a, b) => a - b)).toEqual(offsets);
  });

  test("a text that is not the one written has no places", () => {
    expect(offsetsOf('"abc"', "abd")).toBeNull();
  });
});
