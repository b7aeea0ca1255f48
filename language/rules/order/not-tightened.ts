// order.not-tightened: loosening what is loose already.
import { base } from "#analysis/raw-fact.ts";
import { rule } from "../rule.ts";
import { cameFrom, since } from "../wording.ts";

export const notTightened = rule({
  code: "order.not-tightened",
  severity: "error",
  about: "not tightened",
  subject: ({ part }) => base(part),
  page: {
    finds:
      "A fastener that is loosened where it is in and loose already. One that is in from the start, with no word on how tight it is, may be loosened.",
    why: "Either the line is left over, or the tightening before it was forgotten. A gland backed off by a quarter turn from nothing does not seal.",
    fails: `part Gland "gland"
part GlandNut "gland nut" { secures Gland }

procedure SetGland "Set the gland" {
  finish with Gland is secured
  step install Gland
  step install GlandNut
  step loosen GlandNut by 1/4 turn
}
`,
    mended: `part Gland "gland"
part GlandNut "gland nut" { secures Gland }

procedure SetGland "Set the gland" {
  finish with Gland is secured
  step install Gland
  step install GlandNut
  step tighten GlandNut to seat
  step loosen GlandNut by 1/4 turn
}
`,
  },
  say: ({ part, since: origin }) => ({
    message: `${part} is loose already.`,
    why: `${part} is in and not tightened ${since(origin)}, so there is nothing to loosen.`,
    remedy: `Tighten ${part} before this, or take this line out.`,
    witness: cameFrom(origin, `${part} is loose`),
  }),
});
