// The head of an output: which document it is, for what, from what, with which options, and what the check found.
// Knows no format.
import { point, quantityOf } from "#engineering/ends.ts";
import type { Procedure } from "#model/procedure.ts";
import { rational } from "#quantity/rational.ts";
import { toBase, unitNamed } from "#quantity/unit.ts";
import type { Finding } from "#rules/finding.ts";
import { citationTexts } from "./citations.ts";
import { type Choices, choiceTitle } from "./conditions.ts";
import type { AllowRow, Fact, FindingRow, Head } from "./document.ts";
import type { Words } from "./words/en.ts";
import type { Work } from "./work.ts";
import type { Units, Writer } from "./writer.ts";

export interface HeadInput {
  readonly findings: readonly Finding[];
  readonly hash: string;
  readonly options: Choices;
  readonly units: Units;
}

export function headOf(input: HeadInput, work: Work, writer: Writer): Head {
  const { words } = writer;
  const [procedure] = work.procedures as readonly [Procedure, ...Procedure[]];
  const findings = findingRows(input.findings, work, writer);
  const result = resultText(findings, work, writer);
  return {
    page: pageText(procedure, words),
    date: procedure.document?.date ?? null,
    facts: factsOf(procedure, input, work, result, writer).filter((fact) => fact.values.length > 0),
    findings,
    allows: allowRows(work, writer),
  };
}

/** Which document it is, for each page and for the record: number and revision, or the title. */
export function pageText({ document, title }: Procedure, { head }: Words): string {
  const revision = document?.revision ?? null;
  return head.page(document?.number ?? title, revision === null ? "" : head.revision(revision));
}

function factsOf(procedure: Procedure, input: HeadInput, work: Work, result: string, writer: Writer): readonly Fact[] {
  const { labels, head, oneOf } = writer.words;
  const { document } = procedure;
  const optional = (value: string | null | undefined): readonly string[] => (value == null ? [] : [value]);
  const chosen = work.options.filter((option) => Object.hasOwn(input.options, option.name));
  const open = work.options.filter((option) => !chosen.includes(option));
  return [
    { label: labels.document, values: [document?.number ?? head.noDocument] },
    { label: labels.revision, values: optional(document?.revision) },
    { label: labels.date, values: optional(document?.date) },
    { label: labels.appliesTo, values: appliesTexts(procedure, writer) },
    { label: labels.basedOn, values: basedTexts(procedure, writer) },
    { label: labels.source, values: citationTexts(procedure.cites) },
    { label: labels.sources, values: sourceTexts(procedure, work, writer) },
    {
      label: labels.ambient,
      values: ambientTexts(procedure, work, writer),
    },
    {
      label: labels.room,
      values: procedure.room === null ? [] : [writer.value(procedure.room.quantity, "at most safe")],
    },
    { label: labels.crew, values: procedure.crew === null ? [] : [head.people(procedure.crew)] },
    {
      label: labels.options,
      values: chosen.map((option) =>
        head.option(option.title, choiceTitle(option, input.options[option.name] ?? "", writer)),
      ),
    },
    {
      label: labels.openOptions,
      values: open.map((option) =>
        head.option(option.title, oneOf(option.choices.map((choice) => choiceTitle(option, choice.name, writer)))),
      ),
    },
    { label: labels.units, values: [head.units[input.units]] },
    { label: labels.checkResult, values: [result], long: true },
    { label: labels.hash, values: input.hash === "" ? [] : [input.hash], long: true },
  ];
}

/** Fits that are made hot or cold are worked out from it, from 20 °C where none is declared. */
function ambientTexts({ ambient, hasAmbient }: Procedure, work: Work, writer: Writer): readonly string[] {
  // It is what occurs, not what is to be kept.
  if (ambient !== null) return [writer.value(ambient.quantity, "occurs")];
  const isAsked = !hasAmbient && work.actions.some(({ action: { verb } }) => verb === "heat" || verb === "cool");
  return isAsked ? [writer.words.head.ambientTaken(writer.value(ROOM, "nominal"))] : [];
}

const ROOM = quantityOf("temperature", point(toBase(rational(20), unitNamed("°C"), "temperature")), unitNamed("°C"), 2);

function appliesTexts(procedure: Procedure, { words }: Writer): readonly string[] {
  return procedure.applies.map(({ model, firstSerial, lastSerial }) => {
    if (firstSerial === null) return model;
    const last = lastSerial === null ? null : String(lastSerial);
    return words.comma([model, words.head.serial(String(firstSerial), last)]);
  });
}

function basedTexts(procedure: Procedure, { words }: Writer): readonly string[] {
  return procedure.basedOn.flatMap(({ source, revision }) =>
    source === null ? [] : [words.comma([source.title, words.head.revision(revision)])],
  );
}

/** What is cited at the steps and is not said to be based on: there a section says no revision. */
function sourceTexts({ basedOn }: Procedure, { citations }: Work, { words }: Writer): readonly string[] {
  const known = new Set(basedOn.map(({ source }) => source));
  const cited = new Set(citations.flatMap(({ source }) => (source === null || known.has(source) ? [] : [source])));
  return [...cited].flatMap(({ title, revision }) =>
    revision === null ? [] : [words.comma([title, words.head.revision(revision)])],
  );
}

function resultText(findings: readonly FindingRow[], work: Work, { words }: Writer): string {
  const count = (severity: Finding["severity"]): number =>
    findings.filter((finding) => finding.severity === words.severities[severity]).length;
  const [errors, warnings, information] = [count("error"), count("warning"), count("information")];
  const left =
    errors + warnings + information === 0 ? words.head.clean : words.head.counts(errors, warnings, information);
  return work.allows.length === 0 ? left : words.comma([left, words.head.allowedCount(work.allows.length)]);
}

/** What is left of this procedure and those it performs, and of what they declare; hints are for the desk. */
function findingRows(findings: readonly Finding[], work: Work, { words }: Writer): readonly FindingRow[] {
  const [own] = work.procedures;
  const byName = new Map(work.procedures.map((procedure) => [procedure.name, procedure]));
  const left = findings.filter(
    (finding) =>
      finding.allowed === undefined &&
      finding.severity !== "hint" &&
      (finding.procedure === undefined || byName.has(finding.procedure)),
  );
  return [...left]
    .sort((a, b) => GRAVITY.indexOf(a.severity) - GRAVITY.indexOf(b.severity))
    .map((finding) => ({
      error: finding.severity === "error",
      severity: words.severities[finding.severity],
      code: finding.code,
      place: placeOf(finding, byName.get(finding.procedure ?? "") ?? own, own, words),
      message: finding.message,
      why: finding.why ?? null,
      remedy: finding.remedy ?? null,
    }));
}

/** Numbers of steps are those of the procedure that the finding is in, which stands with them where it is a performed one. */
function placeOf({ step, span }: Finding, of: Procedure | undefined, own: Procedure | undefined, words: Words): string {
  if (step === undefined) return span.path;
  const place = words.flow.steps(step.number, step.number);
  return of === undefined || of === own ? place : words.comma([of.title, place]);
}

const GRAVITY: readonly Finding["severity"][] = ["error", "warning", "information", "hint"];

function allowRows(work: Work, { words }: Writer): readonly AllowRow[] {
  const [own] = work.procedures;
  return work.allows.map(({ allow, number, procedure }) => {
    const place = number === null ? words.head.wholeProcedure : words.flow.steps(number, number);
    return {
      code: allow.code,
      place: procedure === own ? place : words.comma([procedure.title, place]),
      reason: allow.reason,
      by: allow.by,
    };
  });
}
