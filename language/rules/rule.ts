// The shape of a rule: its page, what it looks for, how it says it, how it is mended. One rule, one file.
import type { AnalysisFact } from "#analysis/fact.ts";
import type { WordingFact } from "#analysis/wording/wording-fact.ts";
import type { ModelProblem } from "#model/problem.ts";
import type { QuantityProblem } from "#quantity/problem.ts";
import type { SyntaxProblem } from "#syntax/problem.ts";
import type { Span } from "#syntax/span.ts";
import type { Remark, Severity } from "./finding.ts";

/** Everything that can be found in a text. */
export type AnyFact = SyntaxProblem | ModelProblem | WordingFact | AnalysisFact;
/** Everything a rule can be about: the same, but that each kind of quantity problem is a kind of its own. */
export type Matter = Exclude<AnyFact, { readonly kind: "quantity" }> | QuantityMatter | UnusedAllow;
export type QuantityMatter = Named<QuantityProblem<Span>>;
type Named<Problem extends QuantityProblem<Span>> = Problem extends unknown
  ? { readonly kind: `quantity: ${Problem["kind"]}`; readonly span: Span; readonly problem: Problem }
  : never;
/** An `allow` that silenced nothing; known only after all other rules have run. */
export interface UnusedAllow {
  readonly kind: "unused allow";
  readonly code: string;
  /** Whether a rule has that code. */
  readonly known: boolean;
  /** Whether the code is one that nothing can allow. */
  readonly forbidden: boolean;
  /** The code that was probably meant. */
  readonly nearest: string | null;
  /** From `allow` to the code. */
  readonly span: Span;
  /** With its reason. */
  readonly statement: Span;
}

type MatterOf<Kind extends Matter["kind"]> = Extract<Matter, { readonly kind: Kind }>;

/** What a rule says to the person, apart from how it found it. */
export interface Saying {
  readonly message: string;
  readonly why?: string;
  readonly remedy?: string;
  readonly witness?: readonly Remark[];
  readonly related?: readonly Remark[];
}

/** A way to put it right; where whole lines come or go, the text decides how (`lay-out.ts`), or that it cannot be done. */
export interface Mend {
  readonly title: string;
  readonly edits: readonly Edit[];
}
export type Edit =
  | { readonly span: Span; readonly newText: string }
  /** A line of its own before the one that begins here; where it is too long, each of the rests goes on one of its own. */
  | { readonly lineBefore: Span; readonly newText: string; readonly rests?: readonly string[] }
  /** A line of its own at the end of the block that ends here. */
  | { readonly lastIn: Span; readonly newText: string }
  /** A closing brace where a block should have ended, for the one that opens here. */
  | { readonly closes: Span; readonly at: Span }
  /** A statement goes, with its line where it has one. */
  | { readonly takeOut: Span };

export interface Page {
  /** What it finds, in one or two sentences. */
  readonly finds: string;
  /** Why it matters in the shop. */
  readonly why: string;
  /** A text that fails with exactly this code and nothing else. */
  readonly fails: string;
  /** The same made right: no finding at all. */
  readonly mended: string;
  /** Published source, where there is one. */
  readonly source?: string;
  /** Further files the examples need, by path. */
  readonly files?: Readonly<Record<string, string>>;
  /** The examples hold a crib, and are checked with it. */
  readonly crib?: true;
}

export interface Rule<Kind extends Matter["kind"] = Matter["kind"]> {
  readonly code: string;
  readonly severity: Severity;
  readonly page: Page;
  /** The kinds of matter it is about, and which of them. */
  readonly about: Kind | readonly Kind[];
  readonly finds?: (matter: MatterOf<Kind>) => boolean;
  /** Where the severity depends on the matter. */
  readonly gravity?: (matter: MatterOf<Kind>) => Severity;
  /** What tells two findings at one place apart; else their messages do. */
  readonly subject?: (matter: MatterOf<Kind>) => string;
  readonly say: (matter: MatterOf<Kind>) => Saying;
  readonly fix?: (matter: MatterOf<Kind>) => readonly Mend[];
}

/** Gives a rule the exact type of its matter, and hands it on as one of all rules. */
export function rule<const Kind extends Matter["kind"]>(definition: Rule<Kind>): Rule {
  return definition as unknown as Rule;
}
