// Tools in use, and noise that is measured. Knows no part.
import type { Value } from "#model/declarations.ts";
import type { ToolUse } from "#model/procedure.ts";
import { limitBase, topOf } from "../limits/at-node.ts";
import { type At, type Raise, raiseFrom } from "./raise.ts";
import { hazardThreshold, reaches } from "./thresholds.ts";

/** A line with what is used in it and what is to be read. */
interface Use extends Pick<Raise, "site" | "span" | "pass"> {
  readonly tools: readonly ToolUse[];
  readonly expect: Value | null;
}

export function toolHazards(at: At, use: Use): void {
  const where = at.state.reach;
  for (const { tool } of use.tools)
    if (!tool.damaged) raiseFrom(at, use, { cause: "tool used", of: tool, hazards: tool.hazards, where });
  const sound = use.expect?.quantity;
  if (sound?.kind !== "sound level") return;
  at.admit(use.site, ["noise"]);
  const threshold = hazardThreshold(at.run, "noise");
  const loudest = topOf(sound) ?? limitBase(sound);
  if (threshold === null || loudest === null || !reaches(loudest, threshold, "from")) return;
  const of = { name: "the noise", title: "the noise" };
  raiseFrom(at, use, { cause: "noise measured", of, hazards: ["noise"], passed: { value: sound, threshold }, where });
}
