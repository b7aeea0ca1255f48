// What is found of sources, revisions, records and reasons. Data; no wording, no severity.
import type { Span } from "#syntax/span.ts";
import type { Found } from "../fact.ts";

export type TraceFact =
  /** `what`, `of`: as the language calls the value and what it belongs to. `named`: where it is only used by name, that name. */
  | (Found & {
      readonly kind: "no source";
      readonly what: string;
      readonly of: string;
      readonly named: { readonly name: string; readonly span: Span } | null;
    })
  /** `used`: the revision that the procedure says; `current`: that of the source's declaration. */
  | (Found & {
      readonly kind: "old revision";
      readonly source: string;
      readonly used: string;
      readonly current: string;
      readonly declaredAt: Span;
    })
  | (Found & { readonly kind: "no record"; readonly limits: Span })
  | (Found & { readonly kind: "weak allow"; readonly code: string; readonly reason: string });
