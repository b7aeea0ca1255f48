// `sprag check --format sarif` and `junit`: what a code host and a build server are told is what the JSON says.
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { folderWith } from "#harness/command.ts";
import { isInstalled, printedBy } from "#harness/debian.ts";
import { sarifTroubles } from "#harness/sarif.ts";
import type { CheckReport } from "#workspace/report.ts";
import { CLEAN, IDLE_ALLOW, STYLE, TWICE } from "./texts.ts";

const ALLOWED = TWICE.replace(
  /install Seal\n}/,
  'install Seal allow order.already-installed because "Twin <seal> & \\"spare\\"."\n}',
);
const FILES = {
  "a b/é.sprag": TWICE,
  "clean.sprag": CLEAN,
  "idle.sprag": IDLE_ALLOW,
  "style.sprag": STYLE,
  "allowed.sprag": ALLOWED,
};

interface Place {
  readonly physicalLocation: {
    readonly artifactLocation: { readonly uri: string };
    readonly region: Readonly<Record<"startLine" | "startColumn" | "endLine" | "endColumn", number>>;
  };
}

interface Result {
  readonly ruleId: string;
  readonly ruleIndex: number;
  readonly level: string;
  readonly message: { readonly text: string };
  readonly locations: readonly Place[];
  readonly partialFingerprints: Readonly<Record<string, string>>;
  readonly suppressions?: readonly { readonly justification: string }[];
}

function logOf(text: string): {
  readonly rules: readonly { readonly id: string }[];
  readonly results: readonly Result[];
} {
  const log = JSON.parse(text);
  expect(sarifTroubles(log)).toEqual([]);
  const [run] = log.runs;
  return { rules: run.tool.driver.rules, results: run.results };
}

test("sarif: a result for each finding of the JSON, with its code, place, gravity and words", () => {
  const folder = folderWith(FILES);
  const report = JSON.parse(folder.sprag("check", ".", "--format", "json").out) as CheckReport;
  const { status, out } = folder.sprag("check", ".", "--format", "sarif");
  expect(status).toBe(1);
  const { results, rules } = logOf(out);
  const levels = { error: "error", warning: "warning", information: "note", hint: "note" };
  const wanted = report.files.flatMap(({ findings, path }) =>
    findings.map(({ allowed, code, message, range: { end, start }, remedy, severity, why }) => ({
      ...{ code, level: levels[severity], justification: allowed?.reason },
      uri: path.split("/").map(encodeURIComponent).join("/"),
      text: [message, why, remedy].filter((part) => part !== undefined).join("\n"),
      region: [start.line + 1, start.character + 1, end.line + 1, end.character + 1],
    })),
  );
  expect(wanted.length).toBeGreaterThan(3);
  expect(
    results.map(({ level, locations: [at], message, ruleId, suppressions }) => {
      const { artifactLocation, region } = (at as Place).physicalLocation;
      return {
        ...{ code: ruleId, level, justification: suppressions?.[0]?.justification },
        uri: artifactLocation.uri,
        text: message.text,
        region: [region.startLine, region.startColumn, region.endLine, region.endColumn],
      };
    }),
  ).toEqual(wanted);
  expect(results.map(({ ruleIndex }) => rules[ruleIndex]?.id)).toEqual(results.map(({ ruleId }) => ruleId));
});

test("sarif: a finding keeps its fingerprint when its line moves; two that say the same have different ones", () => {
  const twice = TWICE.replace(/ {2}step install Seal\n}/, "  step install Seal\n  step install Seal\n}");
  const marks = (text: string): readonly (string | undefined)[] =>
    logOf(folderWith({ "a.sprag": text }).sprag("check", "a.sprag", "--format", "sarif").out).results.map(
      ({ partialFingerprints }) => partialFingerprints["finding/v1"],
    );
  expect(marks(`\n\n${twice}`)).toEqual(marks(twice));
  expect(new Set(marks(twice)).size).toBe(marks(twice).length);
});

test("sarif: the schema of the standard does refuse what is not valid", () => {
  const log = JSON.parse(folderWith(FILES).sprag("check", ".", "--format", "sarif").out);
  const [run] = log.runs;
  expect(sarifTroubles({ ...log, runs: [{ ...run, results: [{ ...run.results[0], level: "grave" }] }] })).toHaveLength(
    1,
  );
});

test.each([
  ["error", 1],
  ["warning", 2],
])("junit: at --fail-on %s, %i fail, what is allowed is skipped, a clean file has passed", (level, failures) => {
  const folder = folderWith(FILES);
  const { out } = folder.sprag("check", ".", "--format", "junit", "--fail-on", level);
  expect(out.match(/<failure /g)).toHaveLength(failures);
  expect(out).toContain(`failures="${failures}" errors="0">`);
  expect(out).toContain('<testcase classname="clean.sprag" name="no findings"/>');
  expect(out).toContain('<skipped message="Twin &lt;seal&gt; &amp; &quot;spare&quot;."/>');
  const report = JSON.parse(folder.sprag("check", ".", "--format", "json").out) as CheckReport;
  const cases = report.files.reduce((so, { findings }) => so + Math.max(1, findings.length), 0);
  expect(out.match(/<testcase /g)).toHaveLength(cases);
  expect(out).toContain(`<testsuites name="sprag check" tests="${cases}"`);
});

test("junit: another reader reads it, also with signs that no XML may hold", () => {
  if (!isInstalled("xmllint", "libxml2-utils", "the XML of a check")) return;
  const hostile = TWICE.replaceAll("shaft seal", "a\u0001\uFFFEb ]]> <x> & \u202e");
  const folder = folderWith({ ...FILES, "hostile.sprag": hostile });
  const at = join(folder.path, "check.xml");
  writeFileSync(at, folder.sprag("check", ".", "--format", "junit").out);
  expect(printedBy("xmllint", "--noout", "--nonet", at)).toBe("");
});
