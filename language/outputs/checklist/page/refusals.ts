// Why an entry is not taken, in a fitter's words.
import { entryOf, type Refusal } from "../../record/reduce.ts";
import { fill } from "./dom.ts";
import type { PageData } from "./page.ts";

export function refusalText({ plan, words }: PageData, refusal: Refusal): string {
  switch (refusal.why) {
    case "not next": {
      const next = entryOf(plan, refusal.next[0] ?? "");
      if (next?.kind === "option") return words.notNextOption;
      const step = next?.step ?? "";
      return step === "" ? words.notNextOther : fill(words.notNext, { step });
    }
    case "same person": {
      const known = plan.roles.find(({ role }) => role === refusal.role);
      const text = known?.inspects === true ? words.samePersonPerformer : words.samePerson;
      return fill(text, { role: known === undefined || known.title === "" ? words.people : known.title });
    }
    case "done":
      return words.alreadyDone;
    case "no name":
      return words.noName;
    case "no number":
    case "no text":
      return words.noNumber;
    case "nothing to undo":
      return words.nothingToUndo;
    case "stopped":
    case "complete":
      return words.workOver;
    default:
      return words.doesNotFit;
  }
}
