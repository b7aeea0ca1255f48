// By what an item of a crib misses what is asked of it, as a fitter would say it. Knows no rule.
import type { Miss } from "#analysis/crib/match.ts";
import { show, showMagnitude } from "#quantity/display.ts";
import type { Quantity } from "#quantity/quantity.ts";
import { listed } from "./wording.ts";

/** `stops at 60 N·m, and 69.57 N·m is set here`. */
export function missWords(misses: readonly Miss[]): string {
  return listed(misses.map(missText), "and");
}

function missText({ what, side, has, asked }: Miss): string {
  const wanted = show(asked);
  switch (what) {
    case "setting":
      return `${endText(has, side)}, and ${wanted} is to be set`;
    case "torque":
      return `${endText(has, side)}, and ${wanted} is wanted`;
    case "reading":
      return `${endText(has, side)}, and ${wanted} is to be read`;
    case "window":
      return `is off by up to ${show(has)}, too much to keep ${wanted}`;
    case "quantity":
      return `shows ${show(has)}, not the ${asked.qualifier === undefined ? "" : `${asked.qualifier} `}${asked.kind} asked for`;
    case "heat":
      return `heats to ${endOnly(has, "low")}, and ${wanted} is wanted`;
    case "cold":
      return `cools to ${endOnly(has, "high")}, and ${wanted} is wanted`;
    case "load":
      return `lifts ${endOnly(has, "low")}, and the load is ${wanted}`;
    case "leg load":
      return `lifts ${endOnly(has, "low")} on each leg, and ${wanted} hang on one`;
    case "force":
      return `presses with ${endOnly(has, "low")}, and ${wanted} is wanted`;
    case "accuracy":
      return `is off by up to ${show(has)}, and ${wanted} is allowed`;
    case "resolution":
      return `shows steps of ${show(has)}, and ${wanted} is wanted`;
    case "offset":
      return `is ${show(has)} long, and ${wanted} is wanted`;
    case "angle":
      return `stands at ${show(has)}, and ${wanted} is wanted`;
  }
}

/** `stops at 60 N·m`, `begins at 10 N·m`. */
function endText(range: Quantity, side: Miss["side"]): string {
  return side === "above" ? `stops at ${endOnly(range, "high")}` : `begins at ${endOnly(range, "low")}`;
}

function endOnly(range: Quantity, which: "low" | "high"): string {
  const end = which === "low" ? (range.low ?? range.nominal ?? range.high) : (range.high ?? range.nominal ?? range.low);
  return end === null ? show(range) : showMagnitude(end, range.kind);
}
