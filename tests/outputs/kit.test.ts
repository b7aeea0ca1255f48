// The kit list: parts with what has to be new, consumables with their sums.
import { describe, expect, test } from "vitest";
import { checklistHtml } from "#outputs/checklist/html.ts";
import { checklistMarkdown } from "#outputs/checklist/md.ts";
import { de } from "#outputs/words/de.ts";
import { en } from "#outputs/words/en.ts";
import { documentAs } from "./make.ts";
import { around, COVER } from "./procedures.ts";

const GREASES = `consumable Grease "grease"
consumable Paste "paste"
consumable Cleaner "cleaner"
part P[1..8] "pin"
option Extent "extent" { Full Short }`;

function amounts(lines: string): Readonly<Record<string, readonly string[]>> {
  const { consumables } = documentAs("kit", around(lines, GREASES), { units: "si" });
  return Object.fromEntries(consumables.map(({ title, amounts: all }) => [title, all]));
}

test("has the lists and no work", () => {
  const kit = documentAs("kit", COVER);
  expect(kit.title).toBe("Close the cover – kit list");
  expect(kit.blocks).toEqual([]);
  expect(kit.parts.map(({ name, count, fresh }) => [name, count, fresh])).toEqual([
    ["Gasket", 1, 1],
    ["Cover", 1, 0],
    ["Screw[1..8]", 8, 0],
  ]);
  expect(kit.tools.map(({ name }) => name)).toEqual(["Hoist", "Wrench", "Feeler"]);
});

test("equal amounts are counted, and all summed in the first one's unit", () => {
  expect(amounts("repeat n from 1 to 8 { step apply 5 g of Grease to P[n] }")).toEqual({
    grease: ["5 g, 8 times", "40 g in all"],
  });
  // 0.5 kg and twice 250 g are 1 kg.
  expect(
    amounts("step apply 0.5 kg of Grease to P[1] repeat n in 2, 3 { step apply 250 g of Grease to P[n] }"),
  ).toEqual({
    grease: ["0.5 kg", "250 g, 2 times", "1.0 kg in all"],
  });
});

test("a range is summed at both ends", () => {
  expect(amounts("repeat n in 1, 2, 3 { step apply 2 .. 3 g of Grease to P[n] }")).toEqual({
    grease: ["2 .. 3 g, 3 times", "6 .. 9 g in all"],
  });
});

test("what may be meant for each or for all is in no sum, nor is what has no amount or another kind", () => {
  expect(amounts("step apply 5 g of Grease to P[1..4] step apply 5 g of Grease to P[5]")).toEqual({
    grease: ["5 g for pins 1–4", "5 g"],
  });
  expect(amounts("step apply 5 g of Paste to P[1] step apply Paste to P[2]")).toEqual({
    paste: ["5 g", "and more as needed"],
  });
  expect(amounts("step apply 5 g of Paste to P[1] step apply 2 mL of Paste to P[2]")).toEqual({
    paste: ["5 g", "2 mL"],
  });
  expect(amounts("step clean P[1] with Cleaner step clean P[2] with Cleaner")).toEqual({ cleaner: ["as needed"] });
});

test("says that open options are all listed, and that a second go needs more", () => {
  const lines = "when Extent is Full { step apply 5 g of Grease to P[1] }";
  const open = documentAs("kit", around(lines, GREASES)).cautions;
  const chosen = documentAs("kit", around(lines, GREASES), { options: { Extent: "Short" } });
  expect(open).toContain("Options are left open: what any choice of them needs is listed.");
  expect(chosen.cautions.join()).not.toContain("left open");
  expect(chosen.consumables).toEqual([]);
  expect(chosen.cautions.join()).toContain("done again after a failed check");
});

const MIXED = "step fill Base with 40 L of Oil step lubricate Cover with Oil";

test("what is used with an amount and without says both, on each list", () => {
  for (const as of ["kit", "checklist"])
    expect(documentAs(as, around(MIXED), { units: "si" }).consumables.map(({ amounts }) => amounts)).toEqual([
      ["40 L", "and more as needed"],
    ]);
  const [oil] = documentAs("kit", around(MIXED), { units: "si" }, de).consumables;
  expect(oil?.amounts).toEqual(["40 L", "und weiteres nach Bedarf"]);
});

const CHOICE = (rows: string): string => `step measure Gap "gap at the seat" with Depth expect 0.2 .. 1.2 mm
  step choose Shim by Gap { ${rows} }`;

describe("what a choice may bring to hand is laid out", () => {
  const parts = (as: string, rows: string, words = en): readonly string[] =>
    documentAs(as, around(CHOICE(rows), 'part Thin "thin shim"\npart Thick "thick shim"'), {}, words).parts.map(
      ({ title, count, remarks }) => `${count} ${title}: ${remarks.join("; ")}`,
    );

  test.each(["kit", "checklist"])("by its sizes, on the %s", (as) => {
    expect(parts(as, "0.2 .. 0.6 mm: 0.5 mm  0.6 .. 1.2 mm: 1.0 mm")).toEqual([
      "1 shim: chosen by the gap at the seat: 0.5 mm (0.020 in) or 1.0 mm (0.039 in)",
    ]);
  });

  test("part by part, where the rows name them", () => {
    expect(parts("kit", "0.2 .. 0.6 mm: Thin  0.6 .. 1.2 mm: Thick")).toEqual([
      "1 thin shim: chosen by the gap at the seat",
      "1 thick shim: chosen by the gap at the seat",
    ]);
  });

  test("in German", () => {
    expect(parts("kit", "0.2 .. 0.6 mm: Thin  0.6 .. 1.2 mm: Thick", de)).toEqual([
      "1 thin shim: Auswahl nach gap at the seat",
      "1 thick shim: Auswahl nach gap at the seat",
    ]);
  });

  test("one that is installed as well stands there once", () => {
    const text = around(`${CHOICE("0.2 .. 1.2 mm: 0.5 mm")} step install Shim`);
    expect(documentAs("kit", text).parts.map(({ title, count }) => `${count} ${title}`)).toEqual(["1 shim"]);
  });
});

test("has no chapter for work that it does not hold", () => {
  const document = documentAs("kit", around(MIXED));
  expect(checklistMarkdown(document, en)).not.toMatch(/^## Work$/m);
  expect(checklistHtml(document, en)).not.toContain("<h2>Work</h2>");
  const checklist = documentAs("checklist", around(MIXED));
  expect(checklistMarkdown(checklist, en)).toMatch(/^## Work$/m);
  expect(checklistHtml(checklist, en)).toContain("<h2>Work</h2>");
});
