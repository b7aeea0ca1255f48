// The action that would give a state that is wanted, as text to put in.
import { subjectOf } from "./describe.ts";
import { atomsOf, conjuncts, type Formula } from "./formula.ts";
import { isDead, isInstalled, isTight, OUT } from "./state-values.ts";
import type { World } from "./world.ts";

/**
 * An action that makes the variable as the condition wants it; null where none is plain, or one is not enough.
 * @param isDoneLater a later line does so already: what can be done only once has to be moved then
 */
export function mendText(
  world: World,
  { variable, value }: { readonly variable: number; readonly value: string },
  formula: Formula,
  isDoneLater: boolean,
): string | null {
  const [atom, ...others] = conjuncts(formula).flatMap((part) => ("implied" in part ? [] : atomsOf(part)));
  if (atom?.variable !== variable || others.length > 0) return null;
  const key = world.keyOf(variable);
  const aspect = key.slice(0, key.indexOf(":"));
  const id = key.slice(aspect.length + 1);
  const name = subjectOf(id);
  const wanted = atom.met?.change(world.initial(variable));
  if (wanted === undefined) return null;
  switch (aspect) {
    case "place":
      if (isDoneLater) return null;
      return wanted === OUT ? `remove ${name}` : isInstalled(wanted) ? `install ${name}` : null;
    case "grip":
      // What is not in has to be put in first.
      if (value === "absent") return null;
      if (isTight(wanted)) return `tighten ${name}`;
      return wanted === "loose" && !isDoneLater ? `loosen ${name}` : null;
    case "surface":
      return wanted === "clean" ? `clean ${name}` : null;
    case "energy":
      return isDead(wanted) ? `isolate ${name}` : `restore ${name}`;
    default:
      return null;
  }
}
