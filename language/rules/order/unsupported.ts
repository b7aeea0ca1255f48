// order.unsupported: a heavy part that comes free, or is let go, with nothing to hold it.
import { base } from "#analysis/raw-fact.ts";
import { rule } from "../rule.ts";

export const unsupported = rule({
  code: "order.unsupported",
  severity: "warning",
  about: "unsupported",
  subject: ({ part }) => base(part),
  page: {
    finds:
      "A part heavier than one person may lift, whose last fastener is loosened or removed before the part is lifted or supported, or that is set down before its fasteners hold it. Only where its mass is declared, and not of a part that says “stands”: a motor on its feet stays where it is. How a load is slung and where it balances is not checked: the approved data and qualified people decide that.",
    why: "The cover drops at the moment the last screw lets go, on the hands that hold the wrench.",
    fails: `tool Hoist "chain hoist" { lifts 250 kg }
part Cover "bearing cover" { mass 31 kg }
part Screw[1..2] "cover screw" { secures Cover }

procedure Open "Open the housing" {
  begin with Cover is secured
  finish with Cover is removed, Screw[all] are removed

  warning lifting, crush "The cover is heavy and can swing." avoid "Stay out from under it."

  step loosen Screw[all]
  step remove Screw[all]
  step lift Cover with Hoist
  step remove Cover
}
`,
    mended: `tool Hoist "chain hoist" { lifts 250 kg }
part Cover "bearing cover" { mass 31 kg }
part Screw[1..2] "cover screw" { secures Cover }

procedure Open "Open the housing" {
  begin with Cover is secured
  finish with Cover is removed, Screw[all] are removed

  warning lifting, crush "The cover is heavy and can swing." avoid "Stay out from under it."

  step lift Cover with Hoist
  step loosen Screw[all]
  step remove Screw[all]
  step remove Cover
}
`,
    source: "NIOSH 94-110, revised lifting equation: 23 kg for one person under the best conditions (second hand).",
  },
  say: ({ part, fastener, mass }) =>
    fastener === null
      ? {
          message: `${part} (${mass}) is let go before its fasteners hold it.`,
          why: `${part} is heavier than one person may lift. Set down here, nothing holds it in its place.`,
          remedy: `Install its fasteners before it is set down; where it stays in its place by itself, declare “stands”. ${WHOSE}`,
        }
      : {
          message: `${fastener} is the last that holds ${part} (${mass}).`,
          why: `${part} is heavier than one person may lift, and no hoist or support holds it when it comes free.`,
          remedy: `Lift or support ${part} before this; where it stays in its place by itself, declare “stands”. ${WHOSE}`,
        },
});

const WHOSE = "How it is slung and held is for the approved data and qualified people to say.";
