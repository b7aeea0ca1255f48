// Lowers texts that are all there is of a workspace, and writes problems and conditions down shortly for comparing.

import type { Declaration } from "#model/declarations.ts";
import { expandProcedure } from "#model/expand.ts";
import type { ExpandedItem, ExpandedLine, ExpandedProcedure, ExpandedStep } from "#model/expanded.ts";
import { lowerFiles } from "#model/lower.ts";
import type { ModelProblem } from "#model/problem.ts";
import type { FileModel, Procedure } from "#model/procedure.ts";
import { parseText } from "#syntax/parse.ts";
import { linkFiles } from "#syntax/scope.ts";

export type Texts = Readonly<Record<string, string>>;

/** The models of these texts; other files that are there are named by `present`. */
export function modelsOf(texts: Texts, present: readonly string[] = []): ReadonlyMap<string, FileModel> {
  const sprag = Object.entries(texts).filter(([path]) => !path.endsWith(".csv"));
  const parsed = new Map(sprag.map(([path, text]) => [path, parseText(text, path)]));
  linkFiles(parsed);
  return lowerFiles(
    parsed,
    (path) => path in texts || present.includes(path),
    (path) => texts[path] ?? null,
  );
}

/** The model of one text. */
export function modelOf(text: string): FileModel {
  return modelsOf({ "main.sprag": text }).get("main.sprag") as FileModel;
}

/** The declaration of that name. */
export function declared<K extends Declaration["kind"]>(
  model: FileModel,
  kind: K,
  name: string,
): Extract<Declaration, { kind: K }> {
  const found = model.declarations.find((each) => each.kind === kind && each.name === name);
  if (found === undefined) throw new Error(`no ${kind} ${name}`);
  return found as Extract<Declaration, { kind: K }>;
}

/** The one procedure of a text. */
export function procedureOf(text: string): Procedure {
  return modelOf(text).procedures[0] as Procedure;
}

export function expandedOf(text: string, limit?: number): ExpandedProcedure {
  return expandProcedure(procedureOf(text), limit).expanded;
}

/** Every problem of a text, of lowering and of expansion, as `kind «text»` with what it offers. */
export function problemsIn(text: string, used: Texts = {}): readonly string[] {
  const texts = { "main.sprag": text, ...used };
  const model = modelsOf(texts).get("main.sprag") as FileModel;
  const expansion = model.procedures.flatMap((procedure) => expandProcedure(procedure).problems);
  return [...model.problems, ...expansion].map((problem) => short(texts, problem));
}

/** The steps written out, whatever they stand in. */
export function stepsIn(items: readonly ExpandedItem[]): readonly ExpandedStep[] {
  return items.flatMap((item): readonly ExpandedStep[] => {
    if (item.kind === "step") return [item];
    if (item.kind === "task" || item.kind === "any order") return stepsIn(item.items);
    if (item.kind === "when")
      return [...item.arms.flatMap((arm) => stepsIn(arm.items)), ...stepsIn(item.otherwise ?? [])];
    return [];
  });
}

/** What the actions of the lines work on: `install Segment[3]`. */
export function workIn(lines: readonly ExpandedLine[]): readonly string[] {
  return lines.flatMap((line): readonly string[] => {
    if (line.kind !== "action") return [];
    const things = [...line.objects, ...(line.second === null ? [] : [line.second])].map((thing) => {
      if (thing.kind === "other") return thing.thing.name;
      const index = thing.kind === "part" ? thing.index : thing.position;
      const { name } = thing.kind === "part" ? thing.part : thing.places;
      return index === null ? name : `${name}[${index}]`;
    });
    return [`${line.action.verb} ${things.join(" ")}`];
  });
}

function short(texts: Texts, problem: ModelProblem): string {
  const { path, start, end } = problem.span;
  const at = `«${(texts[path] ?? "").slice(start, end)}»`;
  switch (problem.kind) {
    case "unknown name":
      return `unknown ${at}, wanted ${problem.wanted}${offers(problem.nearest)}`;
    case "wrong kind":
      return `${at} is ${problem.found}, wanted ${problem.wanted}${offers(problem.nearest)}`;
    case "duplicate name":
      return `twice ${at}`;
    case "no such instance": {
      const pass = problem.pass?.map(({ variable, value }) => `${variable} = ${value}`).join(", ");
      return `no instance ${problem.index} at ${at} of ${problem.range}${pass === undefined ? "" : ` for ${pass} and ${problem.more} more`}`;
    }
    case "needs instance":
      return `${at} needs an index of ${problem.range}`;
    case "outside workspace":
      return `path ${at} ${problem.why}`;
    case "use cycle":
      return `circle ${at}: ${problem.names.join(" ")}`;
    case "unused":
      return `unused ${problem.what} ${at}`;
    case "quantity":
      return `${problem.problem.kind} ${at}`;
    case "whole number":
      return `whole number ${at} of ${problem.least}..${problem.most}`;
    case "table":
      return `table ${at} ${problem.problem.what} and ${problem.moreRows} more`;
    case "misplaced":
      return `misplaced ${at}: ${problem.what} belongs ${problem.belongs}`;
  }
}

function offers(nearest: readonly string[]): string {
  return nearest.length === 0 ? "" : `, near ${nearest.join(" ")}`;
}
