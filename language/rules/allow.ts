// Applies `allow`: what it silences is marked, and one that silences nothing is told. Knows codes, no rule.
import type { Allow } from "#model/procedure.ts";
import { isWithin } from "#syntax/span.ts";
import type { Finding } from "./finding.ts";
import { nearestCode } from "./nearest-code.ts";
import type { UnusedAllow } from "./rule.ts";

const UNUSED = "trace.unused-allow";

/**
 * The findings with those that an `allow` covers marked as allowed, and one more for each `allow` that covers none.
 * @param codes of all rules
 * @param tell makes the finding of an `allow` that is not used
 */
export function applyAllows(
  findings: readonly Finding[],
  allows: readonly Allow[],
  codes: ReadonlySet<string>,
  tell: (matter: UnusedAllow) => Finding | null,
): readonly Finding[] {
  const used = new Set<Allow>();
  // An `allow` may itself be left standing by an outer one: those come after all others.
  const [outer, others] = [allows.filter(({ code }) => code === UNUSED), allows.filter(({ code }) => code !== UNUSED)];
  const marked = mark(findings, others, used);
  const isIdle = (allow: Allow): boolean => !used.has(allow) && !allow.inDoubt;
  const idle = others.filter(isIdle).flatMap((allow) => tell(unusedMatter(allow, codes)) ?? []);
  const markedIdle = mark(idle, outer, used);
  const idleOuter = outer.filter(isIdle).flatMap((allow) => tell(unusedMatter(allow, codes)) ?? []);
  return [...marked, ...markedIdle, ...idleOuter];
}

/** Not what leaves nothing to go on with: a form, a name, a kind of quantity. */
export function mayBeAllowed(code: string): boolean {
  return !/^(?:syntax|names)\./.test(code) && code !== "units.mismatch";
}

function mark(findings: readonly Finding[], allows: readonly Allow[], used: Set<Allow>): readonly Finding[] {
  const byCode = new Map<string, Allow[]>();
  for (const allow of allows) {
    if (mayBeAllowed(allow.code)) byCode.set(allow.code, [...(byCode.get(allow.code) ?? []), allow]);
  }
  return findings.map((finding) => {
    // What is found of an `allow` is not silenced by that one itself.
    const covering = (byCode.get(finding.code) ?? []).filter(
      ({ scope, span }) => isWithin(finding.span, scope) && span.start !== finding.span.start,
    );
    if (covering.length === 0) return finding;
    const allow = covering.reduce((inner, one) => (lengthOf(one) < lengthOf(inner) ? one : inner));
    used.add(allow);
    return { ...finding, allowed: { reason: allow.reason, ...(allow.by === null ? {} : { by: allow.by }) } };
  });
}

function lengthOf({ scope }: Allow): number {
  return scope.end - scope.start;
}

function unusedMatter({ code, codeSpan, span }: Allow, codes: ReadonlySet<string>): UnusedAllow {
  const known = codes.has(code);
  return {
    kind: "unused allow",
    code,
    known,
    forbidden: !mayBeAllowed(code),
    nearest: known ? null : nearestCode(code, codes),
    span: { ...span, end: codeSpan.end },
    statement: span,
  };
}
