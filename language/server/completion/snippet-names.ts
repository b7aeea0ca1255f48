// The names that snippets begin with: of what is declared, what suits the place. Knows no snippet.
import type { Declaration, Fit, Part, PartInstance, Tool } from "#model/declarations.ts";
import { toolFits } from "./tools.ts";

/** What a place of a snippet is for. */
export type Wish =
  | "part"
  | "screws"
  | "part to heat"
  | "part it goes over"
  | "wrench"
  | "heater"
  | "option"
  /** Of the option that {@link wished} gives. */
  | "choice";

/** The name of the first declared thing that is good for it; undefined where there is none. */
export function wished(wish: Wish, things: readonly Declaration[]): string | undefined {
  switch (wish) {
    case "part":
      return plainPart(things);
    case "screws":
      return screwsIn(things)?.name;
    case "part to heat": {
      const limited = partsIn(things).find(
        ({ heatLimit, instances }) => heatLimit !== null && instances.form === "single",
      );
      return fittedIn(things, ({ outer }) => outer) ?? limited?.name ?? plainPart(things);
    }
    case "part it goes over":
      return fittedIn(things, ({ inner }) => inner);
    case "wrench": {
      const value = screwsIn(things)?.torques[0]?.value.quantity ?? null;
      const wrenches = toolsThat(things, "torque");
      const asked = { verb: "tighten", value, mass: null };
      return (wrenches.find((tool) => toolFits(tool, asked).fits === "yes") ?? wrenches[0])?.name;
    }
    case "heater":
      return toolsThat(things, "heatsTo")[0]?.name;
    case "option":
      return optionIn(things)?.name;
    case "choice":
      return optionIn(things)?.choices[0]?.name;
  }
}

function partsIn(things: readonly Declaration[]): readonly Part[] {
  return things.filter((thing): thing is Part => thing.kind === "part");
}

/** One that holds nothing together, and that can be named without an index. */
function plainPart(things: readonly Declaration[]): string | undefined {
  return partsIn(things).find(({ fastener, instances }) => !fastener && instances.form === "single")?.name;
}

/** Fasteners by number, else other parts by number. */
function screwsIn(things: readonly Declaration[]): Part | undefined {
  const several = partsIn(things).filter(({ instances }) => instances.form === "numbered");
  return several.find(({ fastener }) => fastener) ?? several[0];
}

function fittedIn(things: readonly Declaration[], which: (fit: Fit) => PartInstance | null): string | undefined {
  for (const thing of things) {
    const fitted = thing.kind === "fit" ? which(thing) : null;
    if (fitted?.part.instances.form === "single") return fitted.part.name;
  }
  return undefined;
}

function toolsThat(things: readonly Declaration[], can: "torque" | "heatsTo"): readonly Tool[] {
  return things.filter((thing): thing is Tool => thing.kind === "tool" && thing.capability[can] !== null);
}

function optionIn(things: readonly Declaration[]) {
  return things.find((thing): thing is Extract<Declaration, { kind: "option" }> => thing.kind === "option");
}
