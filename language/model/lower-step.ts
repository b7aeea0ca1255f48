// Steps: their lines in order, and what holds for the whole step. Knows no tasks and no numbering.
import * as ast from "#grammar/generated/ast.ts";
import type { Span } from "#syntax/span.ts";
import { leavesInPlace, lowerDamaged } from "./damaged-lines.ts";
import type { Citation, Declaration } from "./declarations.ts";
import { resolvePath } from "./files.ts";
import { lowerAction, lowerTools } from "./lower-action.ts";
import { lowerAllow, lowerJump, lowerRepeat, lowerStatement, lowerWhen } from "./lower-blocks.ts";
import { lowerWithDoubt } from "./lower-condition.ts";
import { lowerCitation } from "./lower-properties.ts";
import { lowerOptional, lowerValue } from "./lower-quantity.ts";
import { type Scope, spanOf } from "./lowering.ts";
import { misplace, tellTwice } from "./misplaced.ts";
import { propertySpan, resolve, resolveHazard, resolveStep } from "./names.ts";
import type { Allow, Check, Line, Step } from "./procedure.ts";

export function lowerStep(scope: Scope, node: ast.Step, number: string): Step {
  const span = spanOf(scope, node);
  const gathered = emptyStep();
  const doubtful: Declaration[] = [];
  const lines = [...lowerLines({ scope, gathered, step: span, inner: false, doubtful }, node.lines)];
  if (doubtful.length > 0) lines.push({ kind: "damaged", mentions: doubtful, span });
  const head = node.words !== undefined && node.name === undefined ? "words" : "name";
  const named = node.name !== undefined || node.words !== undefined;
  const headEnd = named ? propertySpan(scope, node, head).end : span.start + "step".length;
  return {
    kind: "step",
    number,
    name: node.name ?? null,
    words: node.words ?? null,
    span,
    headSpan: { ...span, end: headEnd },
    lines,
    ...gathered,
  };
}

interface Gathered {
  needs: Step["needs"];
  gives: Step["gives"];
  records: Step["records"];
  signs: Step["signs"];
  signSpans: Step["signSpans"];
  hold: Step["hold"];
  holdSpan: Span | null;
  by: Step["by"];
  bySpan: Span | null;
  hasUnknownRole: boolean;
  critical: boolean;
  criticalSpan: Span | null;
  takes: Step["takes"];
  within: Step["within"];
  after: Step["after"];
  before: Step["before"];
  raises: Step["raises"];
  cites: readonly Citation[];
  whys: readonly string[];
  figures: Step["figures"];
  allows: readonly Allow[];
}

interface InStep {
  readonly scope: Scope;
  readonly gathered: Gathered;
  readonly step: Span;
  /** Whether the lines stand in a block inside the step. */
  readonly inner: boolean;
  /** What unreadable `needs` and `gives` speak of: its state is not known after the step. */
  readonly doubtful: Declaration[];
}

function emptyStep(): Gathered {
  const none: readonly never[] = [];
  return {
    needs: none,
    gives: none,
    records: none,
    signs: none,
    signSpans: none,
    hold: null,
    holdSpan: null,
    by: null,
    bySpan: null,
    hasUnknownRole: false,
    critical: false,
    criticalSpan: null,
    takes: null,
    within: null,
    after: none,
    before: none,
    raises: none,
    cites: none,
    whys: none,
    figures: none,
    allows: none,
  };
}

function lowerLines(at: InStep, nodes: readonly ast.StepLine[]): readonly Line[] {
  return nodes.flatMap((node) => lowerLine(at, node));
}

function lowerLine(at: InStep, node: ast.StepLine): readonly Line[] {
  const { scope } = at;
  if (ast.isAction(node)) {
    const { action, doubtful } = lowerAction(scope, node);
    if (doubtful.length === 0) return [action];
    const verb = leavesInPlace(action.verb) ? { verb: action.verb } : {};
    return [action, { kind: "damaged", mentions: doubtful, span: action.place, ...verb }];
  }
  const inner = { ...at, inner: true };
  switch (node.$type) {
    case "Check":
      return [lowerCheck(at, node)];
    case "Repeat": {
      const items = node.items as readonly ast.StepLine[];
      return [lowerRepeat(scope, node, (inside) => lowerLines({ ...inner, scope: inside }, items))];
    }
    case "When":
      return lowerWhen(scope, node, (items) => lowerLines(inner, items as readonly ast.StepLine[]));
    case "AnyOrder":
      return [
        {
          kind: "any order",
          items: lowerLines(inner, node.items as readonly ast.StepLine[]),
          span: spanOf(scope, node),
        },
      ];
    case "ReturnJump":
    case "GoJump":
    case "StopJump":
      return [lowerJump(scope, node)];
    case "Statement":
    case "Note":
      return [lowerStatement(scope, node)];
    case "Damaged":
      return [lowerDamaged(scope, node)];
    default:
      gather(at, node);
      return [];
  }
}

function lowerCheck(at: InStep, node: ast.Check): Check {
  const { scope } = at;
  return {
    kind: "check",
    place: { ...spanOf(scope, node), end: propertySpan(scope, node, "words").end },
    words: node.words,
    tools: lowerTools(scope, node.tools),
    expect: lowerOptional(scope, node.expect, null),
    record: node.record,
    fails: node.failing ? lowerLines({ ...at, inner: true }, node.fails) : null,
    span: spanOf(scope, node),
  };
}

/** A line that says something of the whole step. */
function gather(at: InStep, node: Exclude<ast.PlainLine, ast.Check>): void {
  const { gathered, scope } = at;
  switch (node.$type) {
    case "NeedsLine":
    case "GivesLine": {
      const list = node.$type === "NeedsLine" ? "needs" : "gives";
      // It holds for the step, not for a branch or a pass of it.
      if (at.inner) misplace(scope, node, list, "among the step's own lines, outside inner blocks");
      const { conditions, doubtful } = lowerWithDoubt(scope, node.conditions, []);
      if (!at.inner) gathered[list] = [...gathered[list], ...conditions];
      at.doubtful.push(...doubtful);
      return;
    }
    case "RecordLine": {
      const tools = lowerTools(scope, node.tools).map(({ tool }) => tool);
      gathered.records = [
        ...gathered.records,
        { label: node.label, expect: lowerOptional(scope, node.expect, null), tools, span: spanOf(scope, node) },
      ];
      return;
    }
    case "SignLine": {
      for (const [at, named] of node.roles.entries()) {
        const role = resolve(scope, named, ["role"]);
        gathered.hasUnknownRole ||= role === null;
        if (role === null) continue;
        gathered.signs = [...gathered.signs, role];
        gathered.signSpans = [...gathered.signSpans, propertySpan(scope, node, "roles", at)];
      }
      return;
    }
    case "HoldLine":
    case "ByLine": {
      const which = node.$type === "HoldLine" ? "hold" : "by";
      const role = resolve(scope, node.role, ["role"]);
      gathered.hasUnknownRole ||= role === null;
      if (gathered[which] !== null) tellTwice(scope, node, which === "hold" ? "hold for" : "by");
      else {
        gathered[which] = role;
        gathered[`${which}Span`] = spanOf(scope, node);
      }
      return;
    }
    case "CriticalLine":
      gathered.critical = true;
      gathered.criticalSpan ??= spanOf(scope, node);
      return;
    case "TakesLine":
      if (gathered.takes !== null) tellTwice(scope, node, "takes");
      else gathered.takes = lowerValue(scope, node.value, "time");
      return;
    case "WithinLine": {
      const value = lowerValue(scope, node.value, "time");
      const step = resolveStep(scope, node.step);
      if (gathered.within !== null) tellTwice(scope, node, "within");
      else if (value !== null) gathered.within = { value, step, span: spanOf(scope, node) };
      return;
    }
    case "OrderLine":
      for (const reference of node.steps) {
        const step = resolveStep(scope, reference);
        const said = { ...step.span, start: spanOf(scope, node).start };
        gathered[node.keyword] = [...gathered[node.keyword], { ...step, said }];
      }
      return;
    case "RaisesLine":
      gathered.raises = [...gathered.raises, ...node.hazards.map((hazard) => resolveHazard(scope, hazard))];
      return;
    case "CitationLine": {
      const citation = lowerCitation(scope, node.citation);
      if (citation !== null) gathered.cites = [...gathered.cites, citation];
      return;
    }
    case "WhyLine":
      gathered.whys = [...gathered.whys, node.text];
      return;
    case "FigureLine": {
      resolvePath(scope, node.path, propertySpan(scope, node, "path"));
      gathered.figures = [
        ...gathered.figures,
        { path: node.path, caption: node.caption ?? null, span: spanOf(scope, node) },
      ];
      return;
    }
    case "Allow":
      gathered.allows = [...gathered.allows, lowerAllow(scope, node, at.step)];
  }
}
