// German is complete: no fixed English sentence or label is left in any German output of the samples, and each output can be had in it.
import { expect, test } from "vitest";
import { isShopProcedure, openSamples, plainTexts } from "#harness/samples.ts";
import { OUTPUTS } from "#outputs/index.ts";
import { de } from "#outputs/words/de.ts";
import { en } from "#outputs/words/en.ts";
import { WORDS } from "#outputs/words/index.ts";
import { inputFrom, make } from "../make.ts";
import { bytesAs, docxText, filesIn, textAs } from "./write-as.ts";

test("both catalogues have the same entries, and German has words of its own in each", () => {
  expect([...WORDS.keys()]).toEqual(["en", "de"]);
  expect(pathsIn(de)).toEqual(pathsIn(en));
  const same = [...fixedIn(en)].filter(([path, text]) => fixedIn(de).get(path) === text).map(([, text]) => text);
  // Words that both languages have, and forms that hold no word.
  expect(same.filter((text) => /[a-z].* /i.test(text.replace(/\{\w+\}/g, "")))).toEqual([]);
});

test("no English sentence or label is left in German outputs of the samples", async () => {
  const workspace = openSamples();
  const german = new Set(fixedIn(de).values());
  const english = [...new Set(fixedIn(en).values())].filter(
    // Single words in small letters are names of a page's own parts too, and parts of a sentence occur in the shop's own words.
    (text) =>
      text.length > 3 && text === text.trim() && (text.includes(" ") || /^\p{Lu}/u.test(text)) && !german.has(text),
  );
  let compared = 0;
  for (const path of [...plainTexts.keys()].filter(isShopProcedure)) {
    for (const [name, { build, formats }] of OUTPUTS) {
      const document = build({ ...inputFrom(workspace, path, 0, {}), findings: [] }, de);
      for (const format of ["html", "md", "csv", "xml", "svg"].filter((one) => formats.has(one))) {
        const write = formats.get(format);
        const content = write?.(document, { words: de, fonts: () => Promise.reject(new Error("no typefaces")) });
        compared += told(`${name} ${path} ${format}`, String(content), english);
      }
      if (name === "checklist")
        compared += told(`${path} docx`, docxText(await bytesAs("docx", document, de)), english);
    }
  }
  console.log(`german: ${compared} outputs looked through for ${english.length} English texts`);
  expect(compared).toBeGreaterThan(30);
}, 120_000);

test("the page says which language it is in, and which way it runs", async () => {
  const document = OUTPUTS.get("checklist")?.build(inputFrom(openSamples(), "belt-change.sprag", 0, {}), de);
  if (document === undefined) throw new Error("no checklist");
  expect(await textAs("html", document, de)).toContain('<html lang="de" dir="ltr">');
});

test("what the check found is in English, says so in German, and is marked as English in every format", async () => {
  const document = make('procedure Work "Arbeit" { step inspect Nothing }', { draft: true }, de).document;
  const [finding] = document.head.findings;
  if (finding === undefined) throw new Error("nothing is found");
  const notice = "Die Meldungen der Prüfung gibt es nur auf Englisch.";
  const html = await textAs("html", document, de);
  expect(html).toContain(`<p class="source">${notice}</p>`);
  expect(html).toMatch(/<td><div lang="en"><b>/);
  expect(await textAs("md", document, de)).toContain(notice);
  const docx = await bytesAs("docx", document, de);
  expect(docxText(docx)).toContain(notice);
  const runs = (filesIn(docx).get("word/document.xml") ?? "").match(/<w:r>.*?<\/w:r>/gs) ?? [];
  const english = runs.filter((run) => run.includes('<w:lang w:val="en"/>')).map((run) => run.replace(/<[^>]*>/g, ""));
  expect(english[0]).toBe(finding.message.replaceAll('"', "&quot;"));
  const pdf = Buffer.from(await bytesAs("pdf", document, de)).toString("latin1");
  expect(pdf.match(/\/Lang \(en\)/g)).toHaveLength(document.head.findings.length);
  expect(pdf).toContain("/Lang (de)");
  // English says nothing of the kind.
  const own = make('procedure Work "Work" { step inspect Nothing }', { draft: true });
  expect(own.html).not.toContain('lang="en"><b>');
});

/** A label stands by itself between signs; a sentence anywhere. */
function told(where: string, output: string, english: readonly string[]): number {
  const text = output
    // The page's own script is no text, and styles and paths of files are none.
    .replace(/<script\b[^>]*>(?!\s*\{)[\s\S]*?<\/script>|<style\b[\s\S]*?<\/style>/g, "")
    .replaceAll("&#39;", "'")
    .replaceAll("&quot;", '"');
  const left = english.filter((one) =>
    one.includes(" ") ? text.includes(one) : new RegExp(`[>|"] ?${escaped(one)} ?[<|":]`).test(text),
  );
  expect(left, where).toEqual([]);
  return 1;
}

function escaped(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
}

/** Fixed texts by where they stand in the catalogue; what is built from others is called with nothing. */
function fixedIn(value: unknown, path = ""): ReadonlyMap<string, string> {
  if (typeof value === "string")
    return path === "language" || path === "direction" ? new Map() : new Map([[path, value]]);
  if (typeof value !== "object" || value === null) return new Map();
  return new Map(
    Object.entries(value).flatMap(([key, inner]) => [...fixedIn(inner, path === "" ? key : `${path}.${key}`)]),
  );
}

function pathsIn(value: unknown, path = ""): readonly string[] {
  if (typeof value !== "object" || value === null) return [`${path}:${typeof value}`];
  return Object.keys(value)
    .sort()
    .flatMap((key) => pathsIn((value as Record<string, unknown>)[key], `${path}.${key}`));
}
