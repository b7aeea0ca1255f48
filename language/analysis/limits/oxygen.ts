// How much oxygen a liquefied gas leaves in the room. Knows no threshold: what is too little is for the hazard to say.
import type { Computed } from "#engineering/explanation.ts";
import { oxygenLeft } from "#engineering/oxygen.ts";
import type { Dose } from "#model/procedure.ts";
import type { Span } from "#syntax/span.ts";
import type { Run } from "../follow.ts";
import type { At } from "./at-node.ts";

/** What is left of the oxygen in the declared room; null where the room, the amount or the expansion is not said. */
export function oxygenAfter(run: Run, { consumable, amount }: Dose): Computed | null {
  const { room } = run.expanded.procedure;
  if (consumable?.expands == null || consumable.damaged || amount === null || room === null) return null;
  return oxygenLeft({ value: amount.quantity }, { value: consumable.expands.quantity }, { value: room.quantity });
}

/** Tells how much oxygen is left, or what would have to be known for that. */
export function oxygenFacts(at: At, { dose, place }: { readonly dose: Dose; readonly place: Span }): void {
  const { consumable, amount } = dose;
  if (consumable?.expands == null || consumable.damaged) return;
  const left = oxygenAfter(at.run, dose);
  if (left?.ok === true) {
    at.explain?.({ of: consumable.name, span: place, explanation: left.explanation });
    return;
  }
  const lacks = left !== null ? left.refusal.input : amount === null ? "amount" : "room";
  at.leaveOut({ matter: "oxygen", of: consumable.name, lacks, when: null, in: consumable.name, span: place });
}
