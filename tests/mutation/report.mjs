// What came out: the score in Stryker's terms, the report in its format, and the list of what was not noticed with its reasons.
import { writeFileSync } from "node:fs";
import { readJson, readResults, readTrials, writeJson } from "./places.mjs";
import { REASONS } from "./reasons.mjs";
import { USUAL } from "./rounds.mjs";

/** Each mutant with its status in Stryker's words; "Pending" is one that was not tried, or not to the end. */
export function outcomes({ tests, atLoad }) {
  const reached = new Set(tests.filter(({ failure }) => failure === null).flatMap(({ hits }) => hits));
  const results = readResults();
  return readJson("mutants.json").mutants.map((mutant) => {
    const { status, round, test } = results.get(mutant.id) ?? {};
    return { ...mutant, round, test: test ?? null, status: statusOf() };

    function statusOf() {
      if (status !== undefined && status !== "Survived") return status;
      if (!reached.has(mutant.id)) return mutant.id in atLoad ? "Ignored" : "NoCoverage";
      return round === undefined ? "Pending" : "Survived";
    }
  });
}

/** `report.json` for Stryker's viewers. */
export function writeReport(all) {
  const { files } = readJson("mutants.json");
  const inFile = ([path, source]) => [
    path,
    { language: "typescript", source, mutants: all.filter(({ file }) => file === path).map(inReport) },
  ];
  writeJson("report.json", {
    schemaVersion: "2",
    thresholds: { high: 90, low: 80 },
    files: Object.fromEntries(Object.entries(files).map(inFile)),
  });
}

function inReport({ id, mutatorName, replacement, location: { start, end }, status, test }) {
  const fromOne = ({ line, column }) => ({ line: line + 1, column: column + 1 });
  const isStatic = status === "Ignored" ? { static: true, statusReason: "static" } : {};
  const location = { start: fromOne(start), end: fromOne(end) };
  return {
    id,
    mutatorName,
    replacement,
    location,
    status,
    ...isStatic,
    ...(test === null ? {} : { statusReason: test }),
  };
}

/** (killed + timeout) / (all but ignored and those that cannot run), in percent. */
function scoreOf(mutants) {
  const counted = mutants.filter(({ status }) => status !== "Ignored" && status !== "RuntimeError");
  const noticed = counted.filter(({ status }) => status === "Killed" || status === "Timeout");
  return counted.length === 0 ? 100 : (100 * noticed.length) / counted.length;
}

/** The score if those that were not tried to the end come out as those that were tried in the last round: any part of it is a fair sample. */
function expectedScore(all) {
  const trials = readTrials();
  const last = Math.max(...trials.map(({ round }) => round));
  const before = new Set(trials.filter(({ round }) => round < last).map(({ id }) => id));
  const tried = trials.filter(({ round }) => round === last);
  const isNoticed = ({ status }) => status === "Killed" || status === "Timeout";
  const shareOf = (some) => (some.length === 0 ? 0 : some.filter(isNoticed).length / some.length);
  const [ofNew, ofOld] = [false, true].map((isOld) => shareOf(tried.filter(({ id }) => before.has(id) === isOld)));
  const counted = all.filter(({ status }) => status !== "Ignored" && status !== "RuntimeError");
  const expected = counted.map((mutant) => {
    if (isNoticed(mutant)) return 1;
    if (mutant.status === "Pending") return ofNew;
    return isEarly(mutant) ? ofOld : 0;
  });
  return (100 * expected.reduce((so, one) => so + one, 0)) / counted.length;
}

/** Survives, and did not go through all tests that come by it. */
function isEarly({ status, round }) {
  return status === "Survived" && round < USUAL - 1;
}

const COLUMNS = ["Killed", "Timeout", "Survived", "NoCoverage", "Pending", "RuntimeError", "Ignored"];

/** Markdown: one line for each file, the weakest first, and one for all. */
export function scoreTable(all) {
  const line = (name, mutants) => {
    const counts = COLUMNS.map((column) => mutants.filter(({ status }) => status === column).length);
    return `| ${name} | ${mutants.length} | ${counts.join(" | ")} | ${scoreOf(mutants).toFixed(1)} |`;
  };
  const byFile = [...groupBy(all, ({ file }) => file)].sort(([, a], [, b]) => scoreOf(a) - scoreOf(b));
  return [
    `| file | mutants | ${COLUMNS.map((column) => column.toLowerCase()).join(" | ")} | score |`,
    `|${"---|".repeat(COLUMNS.length + 3)}`,
    line("**all**", all),
    ...byFile.map(([file, mutants]) => line(`\`${shortName(file)}\``, mutants)),
  ].join("\n");
}

/** Markdown: what was not noticed, by reason, each with its line and what stands there instead. */
function survivorList(all) {
  const { files } = readJson("mutants.json");
  const left = all.filter(({ status }) => status === "Survived" || status === "NoCoverage");
  const grouped = new Map(REASONS.map((reason) => [reason, []]));
  for (const mutant of left) {
    const place = placeOf(files[mutant.file], mutant);
    grouped.get(REASONS.find(({ is }) => is(place))).push(place);
  }
  return [...grouped]
    .filter(([, places]) => places.length > 0)
    .map(([{ title, because }, places]) => `### ${title} (${places.length})\n\n${because}\n\n${linesOf(places)}`)
    .join("\n\n");
}

/** What the reasons look at: the mutant, the words it replaces, its line, and what stands before and after it there. */
function placeOf(source, { file, mutatorName, replacement, status, location: { start, end } }) {
  const lines = source.split("\n");
  const text = lines[start.line] ?? "";
  const words = start.line === end.line ? text.slice(start.column, end.column) : text.slice(start.column);
  const name = shortName(file);
  return {
    file: name,
    line: start.line + 1,
    text,
    before: text.slice(0, start.column),
    words,
    mutatorName,
    replacement,
    status,
  };
}

function linesOf(places) {
  return [...groupBy(places, ({ file }) => file)]
    .map(([file, inFile]) => {
      const byLine = groupBy(inFile, ({ line }) => line);
      const told = [...byLine].map(([line, here]) => `${line} ${[...new Set(here.map(shortly))].join(" ")}`);
      return `- \`${file}\`: ${told.join("; ")}`;
    })
    .join("\n");
}

function shortly({ mutatorName, replacement }) {
  const flat = replacement.replace(/\s+/g, " ");
  const words =
    { BlockStatement: "{}", ObjectLiteral: "{}", ArrowFunction: "() => undefined", OptionalChaining: "no ?." }[
      mutatorName
    ] ?? (flat.includes("Stryker was here") ? "other" : flat);
  return `\`${words.length > 34 ? `${words.slice(0, 31)}…` : words}\``;
}

/** Node 20 has no `Map.groupBy`. */
function groupBy(list, keyOf) {
  const groups = new Map();
  for (const one of list) groups.set(keyOf(one), [...(groups.get(keyOf(one)) ?? []), one]);
  return groups;
}

function shortName(file) {
  return file.replace("language/analysis/", "");
}

const HOW = `Stryker's instrumenter puts each mutant behind a switch in a copy of the tree; the tests that come near the analysis (\`tests/analysis/\`,
\`acceptance/\`, \`rules/\`, \`samples/\`, \`workspace/\`, \`oracles/\`, \`outputs/\`, \`review/\`, \`server/\`, \`cli/\`; see \`bundle.mjs\`) go into one bundle, with vitest's \`expect\`. A dry run tells which test comes by which mutant;
then each mutant has the tests that come by it, likely ones first, until one fails. Ended as endless is a test that takes a hundred times its
usual steps, or work without a sign of life for twenty seconds of the processor. Parsing and lowering are done once for all mutants.`;

/** The page of what was not noticed. */
export function writeSurvivors(path, all) {
  const { commit, isChanged, stryker } = readJson("mutants.json");
  const state = `commit ${commit}${isChanged ? " and changes in `language/analysis/` on top of it" : ""}`;
  const pending = all.filter(({ status }) => status === "Pending").length;
  const early = all.filter(isEarly).length;
  const left = Object.keys(readJson("mutants.json").files).length - new Set(all.map(({ file }) => file)).size;
  const scope = left === 0 ? "" : `Of the files below; ${left} others were left aside in this run.\n\n`;
  const part =
    pending + early === 0
      ? ""
      : `**The least it can be**: ${pending} were not tried, and ${early} of those that survive have not gone through all tests that come by
them, only through the shortest. All of them count as not noticed; \`npm run mutate -- --resume\` goes on. Those that did are a fair sample:
if the others come out alike, the score is ${expectedScore(all).toFixed(1)}.\n\n`;
  writeFileSync(
    path,
    `# What the tests of \`language/analysis/\` do not notice

Made by \`npm run mutate -- --write\` on ${new Date().toISOString().slice(0, 10)}; ${state}; mutants of Stryker ${stryker}, all its mutators, without
\`fact.ts\`, which holds types only. The reasons are patterns in \`tests/mutation/reasons.mjs\`, first match.

${HOW}

## Numbers

${scope}${part}Score: (killed + timeout) / (all but ignored). Ignored are static ones, as in \`.stryker.config.json\`.

${scoreTable(all)}

## Not noticed

${survivorList(all)}
`,
  );
}
