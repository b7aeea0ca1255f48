// Against the OASIS DTD of the DITA machinery task (Debian packages `libxml2-utils` and `dita-ot`): each sample, and texts with
// every odd character in every place, is valid.
import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { exportText } from "#harness/export.ts";
import { plainTexts } from "#harness/samples.ts";
import { openWorkspace } from "#workspace/index.ts";
import { COVER } from "../outputs/procedures.ts";

const CATALOG = "/usr/share/dita-ot/catalog-dita.xml";
const present = spawnSync("xmllint", ["--version"]).error === undefined && existsSync(CATALOG);
const wishes = { as: "dita", format: "xml", units: "both", draft: true } as const;

/** What the reference reader has to say; nothing of a valid file. */
function troubleIn(...files: readonly string[]): string {
  const folder = mkdtempSync(join(tmpdir(), "sprag-dita-"));
  try {
    const paths = files.map((xml, at) => {
      const path = join(folder, `task-${at}.dita`);
      writeFileSync(path, xml);
      return path;
    });
    const env = { ...process.env, XML_CATALOG_FILES: CATALOG };
    return spawnSync("xmllint", ["--noout", "--nonet", "--valid", ...paths], { encoding: "utf8", env }).stderr;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function ditaOf(text: string, repeats: "compact" | "full" = "compact"): string {
  const texts = new Map([["main.sprag", text]]);
  const workspace = openWorkspace({ texts, present: new Set(), absent: new Set(), today: "2026-05-04" });
  return exportText(workspace, { ...wishes, path: "main.sprag", repeats });
}

test("every procedure of the samples is valid, with repeats put together and written out", () => {
  if (!present) return leftOut("the samples");
  const workspace = openWorkspace({ texts: plainTexts, present: new Set(), absent: new Set(), today: "2026-05-04" });
  const files = [...workspace.loaded.models].flatMap(([path, { procedures }]) =>
    procedures
      .filter(({ name }) => name !== "")
      .flatMap(({ name: procedure }) =>
        (["compact", "full"] as const).map((repeats) => exportText(workspace, { ...wishes, path, procedure, repeats })),
      ),
  );
  expect(troubleIn(...files)).toBe("");
  console.log(`xmllint read ${files.length} DITA tasks`);
  expect(files.length).toBeGreaterThan(100);
}, 60_000);

test.each([
  ["markup", "</cmd><x a='1'> & ]]> <!-- --> <?pi?>"],
  ["characters that no XML may hold", "a\u0000\u0008\u001Fb\uFFFE\uD800c"],
  ["quotes and entities", "\\\" ' &amp; &#0;"],
])("hostile text stays text: %s", (_title, bad) => {
  if (!present) return leftOut("hostile text");
  const xml = ditaOf(COVER.replaceAll(/(?<=")(bearing cover|gloves|No gap|Use the hoist\.|pump manual)(?=")/g, bad));
  expect(troubleIn(xml)).toBe("");
});

test.each([
  ["a procedure that holds nothing", 'procedure P "p" {}'],
  ["statements with no step behind them", 'procedure P "p" { step "x." warning burn "Hot." }'],
  ["a branch alone", 'option O "o" { yes no } procedure P "p" { when O is yes { step "a." } otherwise { stop "b" } }'],
])("odd forms are valid: %s", (_title, text) => {
  if (!present) return leftOut("odd forms");
  expect(troubleIn(ditaOf(text))).toBe("");
});

test("the reference reader does refuse what is not valid", () => {
  if (!present) return leftOut("the refusal");
  expect(troubleIn(ditaOf(COVER).replace("<cmd>", "<cmdx>"))).not.toBe("");
  expect(troubleIn(ditaOf(COVER).replace("<steps>", "<steps><p>text</p>"))).toContain("steps");
});

function leftOut(what: string): void {
  console.log(`xmllint or the DITA DTD is missing (Debian packages libxml2-utils, dita-ot): ${what} left out`);
  expect(process.env.CI ?? "").not.toBe("true");
}
