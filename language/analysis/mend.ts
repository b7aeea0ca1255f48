// The action that would give a state that is wanted, as text to put in.
import { subjectOf } from "./describe.ts";
import { atomsOf, type Formula } from "./formula.ts";
import { isInstalled, isTight, OUT } from "./state-values.ts";
import type { World } from "./world.ts";

/** An action that makes the variable as the condition wants it; null where none is plain, or one is not enough. */
export function mendText(world: World, variable: number, formula: Formula): string | null {
  const [atom, ...others] = atomsOf(formula);
  if (atom?.variable !== variable || others.length > 0) return null;
  const key = world.keyOf(variable);
  const aspect = key.slice(0, key.indexOf(":"));
  const id = key.slice(aspect.length + 1);
  const name = subjectOf(id);
  const wanted = atom.met?.change(world.initial(variable));
  if (wanted === undefined) return null;
  switch (aspect) {
    case "place":
      return wanted === OUT ? `remove ${name}` : isInstalled(wanted) ? `install ${name}` : null;
    case "grip":
      return isTight(wanted) ? `tighten ${name}` : wanted === "loose" ? `loosen ${name}` : null;
    case "surface":
      return wanted === "clean" ? `clean ${name}` : null;
    case "energy":
      return wanted === "isolated" ? `isolate ${name}` : `restore ${name}`;
    default:
      return null;
  }
}
