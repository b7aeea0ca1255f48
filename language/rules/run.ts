// From facts to findings: each fact goes to the rule that is about it, in one pass. Knows no single rule and no text but
// for laying out fixes.
import type { Origin } from "#analysis/fact.ts";
import type { Allow } from "#model/procedure.ts";
import { applyAllows } from "./allow.ts";
import type { Finding, Severity } from "./finding.ts";
import { RULES } from "./index.ts";
import { layOut } from "./lay-out.ts";
import type { AnyFact, Matter, Rule, Saying } from "./rule.ts";
import { alsoWords, circumstances, orderShown } from "./wording.ts";

/**
 * All findings, in the order of their places, one for each place, code and subject. What an `allow` silences stays, marked
 * as allowed; an `allow` that silences nothing is a finding of its own.
 * @param texts of the files, by path: without one, fixes that put in or take out lines are left out
 */
export function findingsOf(
  facts: Iterable<AnyFact>,
  allows: readonly Allow[] = [],
  texts: ReadonlyMap<string, string> = new Map(),
): readonly Finding[] {
  const textOf = (path: string): string | undefined => texts.get(path);
  const made: Made[] = [];
  for (const fact of facts) {
    const one = findingOf(matterOf(fact), textOf);
    if (one !== null) made.push(one);
  }
  const findings = applyAllows(
    withoutDoubles(made),
    allows,
    CODES,
    (matter) => findingOf(matter, textOf)?.finding ?? null,
  );
  return [...findings].sort(byPlace);
}

/** A finding, and what tells it from others at its place. */
interface Made {
  readonly finding: Finding;
  readonly subject: string;
}

const CODES: ReadonlySet<string> = new Set(RULES.map((rule) => rule.code));
const BY_KIND: ReadonlyMap<string, readonly Rule[]> = rulesByKind();

function rulesByKind(): Map<string, Rule[]> {
  const byKind = new Map<string, Rule[]>();
  for (const rule of RULES) {
    for (const kind of [rule.about].flat()) byKind.set(kind, [...(byKind.get(kind) ?? []), rule]);
  }
  return byKind;
}

function matterOf(fact: AnyFact): Matter {
  if (fact.kind !== "quantity") return fact;
  return { kind: `quantity: ${fact.problem.kind}`, span: fact.span, problem: fact.problem } as Matter;
}

function findingOf(matter: Matter, textOf: (path: string) => string | undefined): Made | null {
  const rule = BY_KIND.get(matter.kind)?.find((one) => one.finds?.(matter) ?? true);
  if (rule === undefined) return null;
  const saying = rule.say(matter);
  const fixes = (rule.fix?.(matter) ?? []).map((mend) => layOut(mend, textOf)).filter((fix) => fix !== null);
  const options = "options" in matter ? matter.options : undefined;
  const finding: Finding = {
    ...spoken(saying, matter),
    code: rule.code,
    severity: rule.gravity?.(matter) ?? rule.severity,
    span: matter.span,
    ...(options === undefined ? {} : { options }),
    ...("moreOptions" in matter && matter.moreOptions !== undefined ? { moreOptions: matter.moreOptions } : {}),
    ...(fixes.length === 0 ? {} : { fixes }),
  };
  return { finding, subject: rule.subject?.(matter) ?? saying.message };
}

/** What the rule says, and after its reason for what else, in which passes, orders and for which options it holds. */
function spoken({ message, why, remedy, witness = [], related }: Saying, matter: Matter): Saying {
  const inOrder = orderIn(matter);
  const also = "also" in matter && matter.also !== undefined ? alsoWords(matter.also) : null;
  const when = circumstances({
    pass: ("pass" in matter ? matter.pass : null) ?? [],
    more: "more" in matter ? matter.more : 0,
    options: ("options" in matter ? matter.options : undefined) ?? [],
    moreOptions: ("moreOptions" in matter ? matter.moreOptions : undefined) ?? 0,
    inOrder: inOrder ?? [],
  });
  const reasons = [why, also, when].filter((part) => part !== undefined && part !== null);
  const witnesses = [...witness, ...orderShown(inOrder ?? [])];
  const inside =
    "inside" in matter && matter.inside !== undefined
      ? [{ message: `${matter.inside.performed} does it here`, span: matter.inside.span }]
      : [];
  const all = [...inside, ...(related ?? [])];
  // Where one order is right and another is not, no line is missing: the order is.
  const mend = inOrder === undefined ? remedy : IN_ORDER;
  return {
    message,
    ...(reasons.length === 0 ? {} : { why: reasons.join("\n") }),
    ...(mend === undefined ? {} : { remedy: mend }),
    ...(witnesses.length === 0 ? {} : { witness: witnesses }),
    ...(all.length === 0 ? {} : { related: all }),
  };
}

const IN_ORDER = "Put what has to follow in order into one task, or take it out of “in any order”.";

function orderIn(matter: Matter): readonly Origin[] | undefined {
  return "inOrder" in matter ? matter.inOrder : undefined;
}

const WEIGHT: Readonly<Record<Severity, number>> = { error: 3, warning: 2, information: 1, hint: 0 };

/** Of those with one place, code and subject the gravest; another stays only where it holds for other options. */
function withoutDoubles(made: readonly Made[]): readonly Finding[] {
  const kept = new Map<string, Finding[]>();
  const gravestFirst = [...made].sort((a, b) => WEIGHT[b.finding.severity] - WEIGHT[a.finding.severity]);
  for (const { finding, subject } of gravestFirst) {
    const { path, start, end } = finding.span;
    const key = JSON.stringify([path, start, end, finding.code, subject]);
    const same = kept.get(key) ?? [];
    kept.set(key, same);
    const own = JSON.stringify(finding.options);
    if (!same.some(({ options }) => options === undefined || JSON.stringify(options) === own)) same.push(finding);
  }
  return [...kept.values()].flat();
}

/** The order of findings. */
export function byPlace(a: Finding, b: Finding): number {
  return (
    compare(a.span.path, b.span.path) ||
    a.span.start - b.span.start ||
    a.span.end - b.span.end ||
    compare(a.code, b.code) ||
    compare(a.message, b.message)
  );
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
