// What a name at its place means: the node that declares it. By the maps of the linker, and beside them for what is no
// reference of the tree: hazards, indices, states, choices, loop variables. Knows no protocol.
import type { AstNode } from "langium";
import * as ast from "#grammar/generated/ast.ts";
import { meantAt } from "#syntax/scope.ts";
import type { NameSite } from "./name-sites.ts";

/** What can bear a name. */
export type Declaring = ast.Named | ast.StepOrTask | ast.Choice | ast.StateName | ast.InstanceName | ast.LoopVariable;

/** The node that declares what the name means; undefined where nothing does, also for words of the language itself. */
export function meaningOf(site: NameSite): Declaring | undefined {
  const { name, node } = site;
  switch (site.use) {
    case "declares":
      return node as Declaring;
    case "refers":
      return site.reference?.ref as Declaring | undefined;
    case "hazard": {
      const found = meantAt(node, name);
      return ast.isHazard(found) ? found : undefined;
    }
    case "index":
      return indexMeaning(node, name);
    case "state":
      return stateMeaning(node as ast.StateCondition, name);
    case "words":
      return loopVariable(node, name);
    case "mention":
      return loopVariable(node, name) ?? meantAt(node, name) ?? meantAt(node, name, "steps");
  }
}

/** The variable of the innermost repeat round a node that has this name. */
export function loopVariable(from: AstNode, name: string): ast.LoopVariable | undefined {
  for (let at = from.$container; at !== undefined; at = at.$container)
    if (ast.isRepeat(at) && same(at.variable, name)) return at.variable;
  return undefined;
}

/** What a name in brackets means: a loop variable, or an instance of the part before them. */
export function indexMeaning(from: AstNode, name: string): ast.LoopVariable | ast.InstanceName | undefined {
  let at: AstNode | undefined = from.$container;
  while (ast.isIndexExpression(at) || ast.isIndexItem(at)) at = at.$container;
  // The bounds of a repeat hold no names.
  if (!ast.isTarget(at)) return undefined;
  const part = at.thing.ref;
  const named = (): ast.InstanceName | undefined =>
    ast.isPart(part) ? part.instances?.names.find((instance) => same(instance, name)) : undefined;
  return loopVariable(at, name) ?? named();
}

/** A state of the subject's own, or a choice. */
function stateMeaning({ subject }: ast.StateCondition, name: string): ast.StateName | ast.Choice | undefined {
  const thing = subject.thing.ref;
  if (ast.isOption(thing)) return thing.choices.find((choice) => same(choice, name));
  return ast.isPart(thing) ? statesOf(thing).find((state) => same(state, name)) : undefined;
}

/** The states that a part declares. */
export function statesOf(part: ast.Part): readonly ast.StateName[] {
  return part.properties.flatMap((property) => (ast.isStatesProperty(property) ? property.states : []));
}

function same({ name }: { readonly name?: string }, wanted: string): boolean {
  return name?.normalize("NFC") === wanted;
}
