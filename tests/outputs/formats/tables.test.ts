// Formats for programs: CSV as another reader reads it, the sheets of a workbook, JSON against its published schema. Nothing in a
// cell is calculated.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { Ajv2020 } from "ajv/dist/2020.js";
import { parse } from "csv-parse/sync";
import { describe, expect, test } from "vitest";
import { isShopProcedure, openSamples, plainTexts } from "#harness/samples.ts";
import { tableCsv } from "#outputs/formats/csv.ts";
import { documentJson } from "#outputs/formats/json.ts";
import { harmless } from "#outputs/table.ts";
import { de } from "#outputs/words/de.ts";
import { en } from "#outputs/words/en.ts";
import { blocksIn, documentAs, make, makeFrom } from "../make.ts";
import { around, COVER } from "../procedures.ts";
import { bytesAs, filesIn, textAs } from "./write-as.ts";

/** Source: OWASP, "CSV Injection"; the wide letters from csv-stringify's notes. */
const FORMULAS = [
  "=1+1",
  "+1",
  "-1",
  "@SUM(A1)",
  "\tx",
  "\rx",
  "＝1",
  "＋1",
  "－1",
  "＠x",
  '=HYPERLINK("http://x","y")',
];

describe("CSV", () => {
  test("has a row for each thing to tick, sign or write down, and columns for it", async () => {
    const { document } = make(COVER);
    const text = await textAs("csv", document);
    const [heads = [], ...rows] = parse(text, { bom: true }) as string[][];
    expect(heads.slice(0, 4)).toEqual(["Step", "Kind", "Text", "Round or item"]);
    expect(new Set(rows.map((row) => row.length))).toEqual(new Set([heads.length]));
    const kinds = rows.map(([, kind]) => kind);
    const blocks = [...blocksIn(document.blocks)];
    const count = (kind: string): number => kinds.filter((one) => one === kind).length;
    expect(count("WARNING")).toBe(
      blocks.filter((block) => block.kind === "statement" && block.signal === "warning").length,
    );
    expect(count("HOLD POINT")).toBe(blocks.flatMap((block) => (block.kind === "step" ? block.hold : [])).length);
    const ticked = blocks.map((block) =>
      block.kind === "instruction" ? block.rounds.length || block.ticks.length : 0,
    );
    expect(count("Instruction")).toBe(ticked.reduce((sum, one) => sum + one, 0));
    // A byte order mark, so that a spreadsheet takes it for UTF-8.
    expect([...(await bytesAs("csv", document)).slice(0, 3)]).toEqual([0xef, 0xbb, 0xbf]);
    expect(text).toMatch(/\r\n$/);
  });

  test("no cell is a formula, and numbers stay numbers", () => {
    for (const formula of FORMULAS) expect(harmless(formula)).toBe(`'${formula}`);
    for (const plain of ["a=b", " 1", "'=1", -5, 3]) expect(harmless(plain)).toBe(plain);
    const rows = FORMULAS.map((formula) => [formula, -1]);
    const read = parse(tableCsv({ title: "t", columns: ["=a", "b"], rows }), { bom: true }) as string[][];
    expect(read[0]).toEqual(["'=a", "b"]);
    expect(read.slice(1)).toEqual(rows.map(([formula]) => [`'${formula}`, "-1"]));
  });
});

describe("a row of CSV stands by itself", () => {
  const textsOf = async (lines: string, words = en): Promise<readonly string[]> => {
    const { document } = make(around(lines), {}, words);
    return (parse(await textAs("csv", document, words), { bom: true }) as string[][]).map(([, , text = ""]) => text);
  };
  const warned =
    'warning burn "The cover is hot" avoid "Do not touch it" wear "nitrile gloves", "apron" step clean Cover';

  test("what is worn has its label, and each sentence its stop", async () => {
    expect(await textsOf(warned)).toContain("burns: The cover is hot. Do not touch it. Wear: nitrile gloves, apron.");
    expect(await textsOf(warned, de)).toContain(
      "Verbrennung: The cover is hot. Do not touch it. Tragen: nitrile gloves, apron.",
    );
  });

  test("what is to be done for one number and then for the next is named, since there is no box around it", async () => {
    const repeat = "repeat n from 1 to 3 { step clean Screw[n] step install Screw[n] }";
    expect(await textsOf(repeat)).toContain("Do steps 1 to 2 for one n, then for the next: n = 1, 2, 3");
    expect(await textsOf(repeat, de)).toContain(
      "Schritte 1 bis 2 für ein n ausführen, dann für das nächste: n = 1, 2, 3",
    );
    const inside = "step { repeat n from 1 to 3 { clean Screw[n] install Screw[n] } }";
    expect(await textsOf(inside)).toContain("Do all of these for one n, then for the next: n = 1, 2, 3");
  });
});

describe("rows of CSV are not indented", () => {
  const toldAs = async (lines: string, words = en): Promise<readonly string[]> => {
    const { document } = make(around(lines), { units: "si" }, words);
    const rows = (parse(await textAs("csv", document, words), { bom: true }) as string[][]).slice(1);
    const { heading, end, instruction } = words.table;
    return rows.flatMap(([, kind = "", text]) =>
      [heading, end, instruction].includes(kind) ? [`${kind}: ${text}`] : [],
    );
  };

  test("so that it is said where a case ends", async () => {
    const lines = `step measure Gap "gap" with Depth expect 1 .. 2 mm
      when Gap at most 1.5 mm { go to Last } step "Between." step Last "Last."`;
    expect((await toldAs(lines)).slice(1)).toEqual([
      "Heading: If the gap is at most 1.5 mm:",
      "Heading: Go on with step 3 (Last). Leave out what lies between.",
      "End of: If the gap is at most 1.5 mm",
      "Instruction: Between.",
      "Instruction: Last.",
    ]);
    const arms = 'when Extent is Full { step "a." } otherwise { step "b." } step "c."';
    expect(await toldAs(arms, de)).toEqual([
      "Überschrift: Wenn gilt: extent of work ist „full overhaul“:",
      "Anweisung: a.",
      "Überschrift: Sonst:",
      "Anweisung: b.",
      "Ende von: Wenn gilt: extent of work ist „full overhaul“",
      "Anweisung: c.",
    ]);
  });

  test("and where a failed check, a repeat and an order left free end", async () => {
    expect(
      await toldAs(
        'step { check "b" if it fails { clean Base } } in any order { step "c." } repeat n in 1, 2 { step install Screw[n] }',
      ),
    ).toEqual([
      "Instruction: Check: b.",
      "Heading: If it fails:",
      "Instruction: Clean the base.",
      "End of: If it fails",
      "Heading: In any order, each one complete before the next:",
      "Instruction: c.",
      "End of: In any order, each one complete before the next",
      "Heading: Once for each n, in this order: 1, 2",
      "Instruction: Install screw n.",
      "Instruction: Install screw n.",
      "End of: Once for each n, in this order: 1, 2",
    ]);
  });
});

test("CSV has what the other forms of a checklist have: lists, key to signal words, sources and figures", async () => {
  const text = COVER.replace("      takes 3 min", '      figure "cover.svg" "How it lies"\n      takes 3 min');
  const { document } = make(text);
  const rows = (parse(await textAs("csv", document), { bom: true }) as string[][]).map((row) => row.slice(0, 3));
  const of = (kind: string) => rows.filter((row) => row[1] === kind).map((row) => `${row[0]} ${row[2]}`.trim());
  expect(of("Tool")).toContain(
    "feeler gauge · measures 0.03 .. 1 mm (0.0011 .. 0.0394 in) · Used here for: at most 0.05 mm (at most 0.0019 in)",
  );
  expect(of("Tool")).toHaveLength(document.tools.length);
  expect(of("Part")).toContain("gasket · Count: 1 · new: 1");
  expect(of("Key to signal words")).toContain("CAUTION: Equipment can be damaged. Not used for injury to people.");
  expect(of("Key to signal words")).toHaveLength(document.signals.length);
  expect(of("Source")).toContain("1.1 pump manual, 6.1");
  expect(of("Figure")).toEqual(["1.3 How it lies (cover.svg)"]);
});

test("a kit list says in CSV, too, what each tool is used for", async () => {
  const rows = parse(await textAs("csv", documentAs("kit", COVER)), { bom: true }) as string[][];
  const at = rows[0]?.indexOf("Used here for") ?? -1;
  const used = rows.flatMap((row) => (row[0] === "Tool" ? [[row[1], row[at]]] : []));
  const kit = documentAs("kit", COVER);
  expect(used).toEqual(kit.tools.map((tool) => [tool.title, [...tool.lifts, ...tool.used].join("; ")]));
  expect(used.filter(([, text]) => text !== "")).toHaveLength(3);
});

describe("a workbook", () => {
  test("has a sheet for each table, texts that are texts, and the same bytes each time", async () => {
    const text = COVER.replace('"gasket"', '"=cmd()"');
    const bytes = await bytesAs("xlsx", documentAs("kit", text));
    expect(Buffer.compare(await bytesAs("xlsx", documentAs("kit", text)), bytes)).toBe(0);
    const files = filesIn(bytes);
    const names = [...(files.get("xl/workbook.xml") ?? "").matchAll(/<sheet [^>]*name="([^"]*)"/g)].map(
      ([, name]) => name,
    );
    expect(names).toEqual(expect.arrayContaining(["Tools", "Parts"]));
    const all = [...files.values()].join("\n");
    expect(all).not.toMatch(/<f[ >]/);
    expect(all).toContain("=cmd()");
    expect(all).not.toMatch(/>=cmd\(\)/);
  });

  test("is printed as wide as a page, with its lines, its heads on each page and all of every cell", async () => {
    const files = filesIn(await bytesAs("xlsx", documentAs("kit", COVER.replace('"gasket"', '"gasket & O\'ring"'))));
    const sheets = [...files].filter(([path]) => /worksheets\/sheet\d/.test(path)).map(([, text]) => text);
    expect(sheets.length).toBeGreaterThan(1);
    for (const sheet of sheets) {
      expect(sheet).toContain('<sheetPr><pageSetUpPr fitToPage="1"/></sheetPr>');
      expect(sheet).toMatch(
        /<\/sheetData><printOptions gridLines="1"\/><pageMargins [^>]*\/><pageSetup [^>]*fitToWidth="1"/,
      );
    }
    const titles = [...(files.get("xl/workbook.xml") ?? "").matchAll(/<definedName [^>]*>([^<]*)/g)];
    expect(titles.map(([, range]) => range)).toEqual(["'Tools'!$1:$1", "'Parts'!$1:$1", "'Document'!$1:$1"]);
    // A title and its name below it are two lines.
    expect([...(sheets[1] ?? "").matchAll(/<row r="(?:[2-9])"[^>]* ht="(\d+)"/g)].map(([, height]) => height)[0]).toBe(
      "34",
    );
  });

  test("of an assessor's sheet begins with what is marked", async () => {
    const files = filesIn(await bytesAs("xlsx", documentAs("assessor", COVER)));
    const first = files.get("xl/worksheets/sheet1.xml") ?? "";
    const shared = [...(files.get("xl/sharedStrings.xml") ?? first).matchAll(/<t[^>]*>([^<]*)/g)].map(([, one]) => one);
    expect(shared).toEqual(expect.arrayContaining(["Done unprompted", "Done when prompted", "Not done"]));
  });

  test.each([
    ["assessor", ["1", "8", "8", "8"]],
    ["kit", ["1", "1", "8"]],
  ])("counts of the %s are numbers, and nothing else is", async (output, counts) => {
    const files = filesIn(await bytesAs("xlsx", documentAs(output, COVER)));
    const sheets = [...files].filter(([path]) => /worksheets\/sheet\d/.test(path)).map(([, text]) => text);
    // A cell without a type is a number (ECMA-376-1, 18.3.1.4: the type is n where none is given).
    const numbers = [...sheets.join("").matchAll(/<c (?![^>]*\bt="(?!n"))[^>]*><v>([^<]*)<\/v>/g)];
    expect(numbers.map(([, value]) => value)).toEqual(counts);
  });
});

describe("JSON", () => {
  const schema: object = JSON.parse(
    readFileSync(join(import.meta.dirname, "..", "..", "..", "language", "schema", "document.schema.json"), "utf8"),
  );
  const validate = new Ajv2020({ allErrors: true, strict: true, allowUnionTypes: true }).compile(schema);

  test("of every sample is as the schema says", () => {
    const workspace = openSamples();
    const kinds = new Set<string>();
    for (const path of [...plainTexts.keys()].filter(isShopProcedure)) {
      const procedures = workspace.loaded.models.get(path)?.procedures ?? [];
      procedures.forEach((_, at) => {
        const { document } = makeFrom(workspace, path, at);
        for (const block of blocksIn(document.blocks)) kinds.add(block.kind);
        expect(validate(JSON.parse(documentJson(document, en))), `${path} ${JSON.stringify(validate.errors)}`).toBe(
          true,
        );
      });
    }
    for (const block of documentAs("assessor", COVER).blocks) for (const one of blocksIn([block])) kinds.add(one.kind);
    expect(validate(JSON.parse(documentJson(documentAs("assessor", COVER), en)))).toBe(true);
    // Each form of block has been tried.
    expect([...kinds].sort()).toEqual(
      ["branch", "direction", "group", "instruction", "note", "section", "statement", "step", "table"].filter(
        (kind) => kinds.has(kind) || kind !== "table",
      ),
    );
  });

  test.each<[string, (document: Record<string, unknown>) => void]>([
    ["another version", (document) => (document.version = 2)],
    ["no head", (document) => delete document.head],
    ["a block of another kind", (document) => (document.blocks = [{ kind: "poem" }])],
    ["a signal that is not known", (document) => (document.signals = ["alarm"])],
  ])("the schema does not let pass: %s", (_title, spoil) => {
    const document = JSON.parse(documentJson(make(around('step "Look."')).document, en)) as Record<string, unknown>;
    expect(validate(document)).toBe(true);
    spoil(document);
    expect(validate(document)).toBe(false);
  });
});
