// What every part of the page works with: the plan, the words, what is filled in, and the one way to change it.
import type { Computed } from "../../document.ts";
import type { Plan } from "../../record/plan.ts";
import type { RecordEvent } from "../../record/record.ts";
import type { Filling } from "../../record/reduce.ts";
import type { Words } from "../../words/en.ts";

export interface PageData {
  readonly plan: Plan;
  readonly words: Words["page"];
  readonly computed: Readonly<Record<string, readonly Computed[]>>;
}

export interface Page extends PageData {
  readonly filling: () => Filling;
  /** Does it, or says why not. */
  readonly act: (action: Action) => boolean;
  readonly say: (text: string) => void;
  /** Puts another record in place of this one. */
  readonly replace: (filling: Filling) => void;
}

/** An event before its time is put to it. */
export type Action = RecordEvent extends infer Event ? (Event extends RecordEvent ? Omit<Event, "at"> : never) : never;

/** Shows what holds now. */
export type Show = (filling: Filling) => void;
