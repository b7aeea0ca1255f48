// What names mean at a place of a file: declarations, procedures, and the steps of its procedure. Knows no tree and no state.
import type { Declaration } from "#model/declarations.ts";
import type { FileModel, Item, Procedure } from "#model/procedure.ts";
import type { Span } from "#syntax/span.ts";
import type { FileView } from "./view.ts";

export interface Reach {
  /** The procedure that the place is in. */
  readonly procedure: Procedure | null;
  /** Inner ones first; of two with one name the one that is meant. */
  readonly things: readonly Declaration[];
  readonly procedures: readonly Procedure[];
  /** Named steps and tasks of the procedure, in the order of the text. */
  readonly steps: readonly NamedStep[];
}

export interface NamedStep {
  readonly name: string;
  readonly title: string;
  readonly number: string;
  readonly span: Span;
  readonly isTask: boolean;
}

export function reachAt(view: FileView, offset: number): Reach {
  const { model } = view;
  const procedure = procedureAt(model, offset);
  const files = [model, ...usedModels(view)];
  const declared = procedure?.declarations ?? files.flatMap((file) => file.declarations.filter(isOutside));
  const byName = new Map<string, Declaration>();
  for (const thing of declared) if (!byName.has(thing.name)) byName.set(thing.name, thing);
  return {
    procedure,
    things: [...byName.values()],
    procedures: files.flatMap((file) => file.procedures),
    steps: procedure === null ? [] : [...namedSteps(procedure.items)],
  };
}

function procedureAt({ procedures }: FileModel, offset: number): Procedure | null {
  return procedures.find(({ extent }) => extent.start <= offset && offset <= extent.end) ?? null;
}

function usedModels({ model, workspace }: FileView): readonly FileModel[] {
  const paths = new Set(model.uses.flatMap(({ path }) => (path === null || path === model.path ? [] : [path])));
  return [...paths].flatMap((path) => workspace.loaded.models.get(path) ?? []);
}

/** Whether it stands in no procedure: names hold no point, paths may. */
function isOutside({ id }: Declaration): boolean {
  return !id.slice(id.lastIndexOf("#")).includes(".");
}

function* namedSteps(items: readonly Item[]): Generator<NamedStep> {
  for (const item of items) {
    switch (item.kind) {
      case "task":
        if (item.name !== null) yield { ...named(item), name: item.name, title: item.title, isTask: true };
        yield* namedSteps(item.items);
        break;
      case "step":
        if (item.name !== null) yield { ...named(item), name: item.name, title: item.words ?? "", isTask: false };
        break;
      case "repeat":
      case "any order":
        yield* namedSteps(item.items);
        break;
      case "when":
        for (const arm of item.arms) yield* namedSteps(arm.items);
        yield* namedSteps(item.otherwise ?? []);
        break;
    }
  }
}

function named({ number, span }: { readonly number: string; readonly span: Span }) {
  return { number, span };
}
