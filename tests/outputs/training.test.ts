// The trainee's sheet and the assessor's: what is asked, what is answered, what is marked and when it is passed.
import { describe, expect, test } from "vitest";
import { isInstalled } from "#harness/debian.ts";
import type { TableBlock } from "#outputs/document.ts";
import { de } from "#outputs/words/de.ts";
import { en } from "#outputs/words/en.ts";
import { bytesAs, docxText, poppler, textAs } from "./formats/write-as.ts";
import { readHtml, textOf } from "./html-reader.ts";
import { blocksIn, documentAs, instructionsIn, make, stepsIn } from "./make.ts";
import { around, COVER } from "./procedures.ts";

const LESSON = around(
  `step Heat {
    check "The rim runs true" expect at most 0.05 mm record
    takes 3 min
    why "A rim that is out shakes the shaft."
  }
  step { check "The rim still runs true" expect at most 0.05 mm record }`,
);

function tablesIn(output: string, text: string, answers = false): readonly TableBlock[] {
  const { blocks } = documentAs(output, text, { answers });
  return [...blocksIn(blocks)].filter((block) => block.kind === "table");
}

describe("the trainee's sheet", () => {
  test("has the reasons, which the bench does not see", () => {
    const whys = ["A rim that is out shakes the shaft."];
    expect(stepsIn(documentAs("trainee", LESSON)).flatMap((step) => step.whys)).toEqual(whys);
    expect(stepsIn(make(LESSON).document).flatMap((step) => step.whys)).toEqual([]);
  });

  test("asks for what must be met, in every place by itself, and not for times that only inform", () => {
    const steps = stepsIn(documentAs("trainee", LESSON));
    const limits = steps.map((step) =>
      [...blocksIn(step.blocks)].flatMap((block) => (block.kind === "instruction" ? block.fields : [])),
    );
    expect(limits.map(([field]) => field?.limits)).toEqual(["(1) ________", "(2) ________"]);
    expect(steps[0]?.terms).toEqual(["Takes about 3 min."]);
  });

  test("gives away no value outside its gaps", () => {
    const text = JSON.stringify(documentAs("trainee", COVER));
    expect(JSON.stringify(make(COVER).document)).toContain("31.5 ± 1.4 N·m");
    for (const value of ["31.5", "45 ± 2", "0.05 mm"]) expect(text).not.toContain(value);
    const used = documentAs("trainee", COVER).tools.map(({ name, used: told }) => [name, told.join()]);
    expect(Object.fromEntries(used)).toEqual({
      Wrench: "asked for in the steps",
      Feeler: "asked for in the steps",
      Hoist: "",
    });
  });

  test("has the answers behind it where they are asked for, in the order of the gaps", () => {
    expect(tablesIn("trainee", LESSON)).toEqual([]);
    expect(tablesIn("trainee", LESSON, true)).toMatchObject([
      {
        title: "Answers to the gaps",
        rows: [
          { cells: ["1", "1", "at most 0.05 mm (at most 0.0019 in)"] },
          { cells: ["2", "2", "at most 0.05 mm (at most 0.0019 in)"] },
        ],
      },
    ]);
  });

  test.each([en, de])("who fills it in, and when, stands at its head in every format ($language)", async (words) => {
    const document = documentAs("trainee", LESSON, {}, words);
    const { trainee, labels } = words;
    const asked = [trainee.filledBy, labels.name, labels.date, trainee.trainee];
    const texts = {
      html: textOf(readHtml(await textAs("html", document, words))),
      md: await textAs("md", document, words),
      docx: docxText(await bytesAs("docx", document, words)),
      pdf: poppler("pdftotext", await bytesAs("pdf", document, words), "-layout"),
    };
    for (const [format, text] of Object.entries(texts)) {
      const [head = ""] = text.split(labels.cautions);
      // Ahead of it the document's own date.
      const places = asked.map((one) => head.indexOf(one, head.indexOf(trainee.filledBy)));
      expect(places, format).toEqual([...places].sort((a, b) => a - b));
      expect(Math.min(...places), format).toBeGreaterThan(head.indexOf(document.title));
    }
    for (const { document: other } of [make(LESSON), { document: documentAs("assessor", LESSON) }])
      expect(other.filledBy).toBeUndefined();
  });

  test("a text that looks like a mark stays text", () => {
    const odd = around('step "Press \uE0007\uE001 twice."');
    expect(instructionsIn(documentAs("trainee", odd, { answers: true }))).toEqual(["Press \uE0007\uE001 twice."]);
  });
});

describe("the assessor's sheet", () => {
  test("has each action once, under its task, and what to wear", () => {
    const [closing] = tablesIn("assessor", COVER);
    expect(closing?.title).toBe("1 Close the cover");
    expect(closing?.rows.map(({ cells }) => cells.slice(0, 2))).toEqual([
      ["", "Wears: gloves, boots."],
      ["1.1", "Install a new gasket."],
      ["1.2", "Lift the bearing cover with the hoist."],
      ["1.3", "Install the bearing cover."],
      ["1.4", "Once for each n, in this order: 2, 3, 4, 6, 7, 8, 1, 5. Install cover screw n."],
      [
        "1.5",
        // 30, 70 and 100 % of 45 ± 2 N·m, in lbf·ft rounded inwards (1 lbf·ft = 1.3558 N·m).
        "Tighten cover screws 1–8 in cross pattern, in 3 rounds with the torque wrench. " +
          "Order of positions: 1 – 5 – 3 – 7 – 2 – 6 – 4 – 8. " +
          "Round 1: 13.5 ± 0.6 N·m (9.52 .. 10.39 lbf·ft); Round 2: 31.5 ± 1.4 N·m (22.21 .. 24.26 lbf·ft); " +
          "Round 3: 45 ± 2 N·m (31.8 .. 34.6 lbf·ft). (critical)",
      ],
      ["1.6", "Check: No gap with the feeler gauge. Must be at most 0.05 mm (at most 0.0019 in)."],
      ["1.6", "Writes down: air temperature (must be 10 .. 30 °C (50 .. 86 °F))."],
    ]);
  });

  test("three boxes stand beside each action, and only the critical ones are grave", () => {
    const [closing] = tablesIn("assessor", COVER);
    const boxes = [{ fill: "box" }, { fill: "box" }, { fill: "box" }];
    for (const { cells } of closing?.rows ?? []) expect(cells.slice(2)).toEqual(boxes);
    expect(closing?.rows.filter((row) => row.grave).map(({ cells }) => cells[0])).toEqual(["1.5"]);
  });

  test("the sums say out of how many, and the rule what a critical action asks", () => {
    const result = tablesIn("assessor", COVER).at(-1);
    expect(result?.rows.map(({ cells }) => cells.slice(0, 2))).toEqual([
      ["Critical actions done unprompted", 1],
      ["Done unprompted", 8],
      ["Done when prompted", 8],
      ["Not done", 8],
      ["Person assessed, assessor, date", ""],
    ]);
    expect(result?.notes[0]).toContain("One critical action prompted or not done: not passed.");
  });

  test("says each case in which an action is done, outermost first", () => {
    const lines = `when Extent is Full { repeat n in 1, 2 { step install Screw[n] } in any order { step "Wipe." } }`;
    const [table] = tablesIn("assessor", around(lines));
    expect(table?.rows.map(({ cells }) => cells[1])).toEqual([
      "If extent of work is “full overhaul”: Once for each n, in this order: 1, 2. Install screw n.",
      "If extent of work is “full overhaul”: In any order, each one complete before the next: Wipe.",
    ]);
  });

  test.each([
    [en, "Writes down: oil level (must be 2 .. 3 mm); number of the seal."],
    [de, "Trägt ein: oil level (Sollwert: 2 .. 3 mm); number of the seal."],
  ])("a step in which values are written down is there, with their limits (%#)", (words, text) => {
    const lines = 'step { record "oil level" 2 .. 3 mm  record "number of the seal" }';
    const { blocks } = documentAs("assessor", around(lines), { units: "si" }, words);
    const [table] = [...blocksIn(blocks)].filter((block) => block.kind === "table");
    expect(table?.rows.map(({ cells }) => cells.slice(0, 2))).toEqual([["1", text]]);
  });

  test("what is written down in each of many passes is one row", () => {
    const lines = 'repeat n from 1 to 6 { step { install Screw[n]  record "depth of screw {n}" 2 .. 3 mm } }';
    const [table] = tablesIn("assessor", around(lines), false);
    expect(table?.rows.map(({ cells }) => cells[1]).at(-1)).toBe(
      "Once for each n, in this order: 1, 2, 3, 4, 5, 6. Writes down: depth of screw 1, …, depth of screw 6 (must be 2 .. 3 mm (0.08 .. 0.11 in)).",
    );
  });

  test("without a critical action the rule speaks of none", () => {
    expect(tablesIn("assessor", around('step "Look."')).at(-1)?.notes[0]).toBe(
      "Passed when no action was left undone.",
    );
  });
});

test("the number of a step is in one piece on the assessor's page, however deep it is", async () => {
  if (!isInstalled("pdftotext", "poppler-utils", "step numbers of the assessor's PDF")) return;
  const deep =
    'task A "a" { task B "b" { task C "c" { task D "d" { step "Look along the whole of the edge for the mark." step "Look again." } } } }';
  const pdf = await bytesAs("pdf", documentAs("assessor", around(deep)));
  const lines = poppler("pdftotext", pdf, "-layout").split("\n");
  expect(lines.filter((line) => /^\s*1\.1\.1\.1\.[12]\s+Look/.test(line))).toHaveLength(2);
});
