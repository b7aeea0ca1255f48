// A check as SARIF 2.1.0 (OASIS), so that a code host shows each finding at its line. Says what the JSON says.
import { sha256 } from "@noble/hashes/sha2.js";
import { bytesToHex, utf8ToBytes } from "@noble/hashes/utils.js";
import { artifactOf, COLUMN_KIND, locationOf, regionOf, SARIF_HEAD } from "#review/forms/sarif-place.ts";
import { allCodes } from "#rules/explain.ts";
import type { Severity } from "#rules/finding.ts";
import type { CheckReport, ReportedFinding, ReportedRemark } from "./report.ts";

const LEVELS: Readonly<Record<Severity, "error" | "warning" | "note">> = {
  error: "error",
  warning: "warning",
  information: "note",
  hint: "note",
};

/** As many as code hosts take of one run; the gravest are kept. */
const MOST = 25_000;

/** Same report, same text. @param properties what else the run is to say of itself */
export function reportSarif({ files }: CheckReport, properties?: object): string {
  const all = files.flatMap(({ path, findings }) => findings.map((finding) => ({ path, finding })));
  const kept = new Set([...all].sort((one, other) => weight(one.finding) - weight(other.finding)).slice(0, MOST));
  const rules = allCodes();
  const ruleIndex = new Map(rules.map(({ code }, at) => [code, at]));
  const fingerprint = fingerprints();
  const run = {
    tool: { driver: { name: "sprag check", rules: rules.map(ruleOf) } },
    columnKind: COLUMN_KIND,
    ...(kept.size === all.length ? {} : { invocations: [leftOut(all.length - kept.size)] }),
    ...(properties === undefined ? {} : { properties }),
    results: all
      .filter((one) => kept.has(one))
      .map(({ path, finding }) => ({
        ...resultOf(path, finding),
        ruleIndex: ruleIndex.get(finding.code) ?? -1,
        partialFingerprints: { "finding/v1": fingerprint(path, finding) },
      })),
  };
  return `${JSON.stringify({ ...SARIF_HEAD, runs: [run] }, null, 2)}\n`;
}

function weight({ severity }: ReportedFinding): number {
  return Object.keys(LEVELS).indexOf(severity);
}

function ruleOf({ code, finds, severity }: ReturnType<typeof allCodes>[number]) {
  return { id: code, shortDescription: { text: finds }, defaultConfiguration: { level: LEVELS[severity] } };
}

function leftOut(count: number) {
  const text = `${count} further findings are left out. Check fewer files at once to see them.`;
  return { executionSuccessful: true, toolExecutionNotifications: [{ level: "warning", message: { text } }] };
}

function resultOf(path: string, finding: ReportedFinding) {
  const { allowed, code, fixes = [], message, range, related = [], remedy, severity, why, witness = [] } = finding;
  const remarks = [...witness, ...related];
  return {
    ruleId: code,
    level: LEVELS[severity],
    message: { text: [message, why, remedy].filter((part) => part !== undefined).join("\n") },
    locations: [locationOf(path, range)],
    ...(remarks.length === 0 ? {} : { relatedLocations: remarks.map(remarkOf) }),
    ...(fixes.length === 0 ? {} : { fixes: fixes.map(fixOf) }),
    ...(allowed === undefined ? {} : { suppressions: [{ kind: "inSource", justification: allowed.reason }] }),
  };
}

function remarkOf({ message, path, range }: ReportedRemark, at: number) {
  return { id: at + 1, message: { text: message }, ...locationOf(path, range) };
}

function fixOf({ edits, title }: NonNullable<ReportedFinding["fixes"]>[number]) {
  const paths = [...new Set(edits.map(({ path }) => path))];
  const changes = paths.map((path) => ({
    artifactLocation: artifactOf(path),
    replacements: edits
      .filter((edit) => edit.path === path)
      .map(({ newText, range }) => ({ deletedRegion: regionOf(range), insertedContent: { text: newText } })),
  }));
  return { description: { text: title }, artifactChanges: changes };
}

/** The same for a finding whose line has moved; of several that say the same in one file, by their order. */
function fingerprints(): (path: string, finding: ReportedFinding) => string {
  const seen = new Map<string, number>();
  return (path, { code, message, procedure = "", step }) => {
    const what = JSON.stringify([path, code, procedure, step?.name ?? "", message]);
    const nth = seen.get(what) ?? 0;
    seen.set(what, nth + 1);
    return bytesToHex(sha256(utf8ToBytes(`${what} ${nth}`)));
  };
}
