// order.cold-fit: an interference fit put together neither heated, cooled nor pressed.
import { base } from "#analysis/raw-fact.ts";
import { rule } from "../rule.ts";

export const coldFit = rule({
  code: "order.cold-fit",
  severity: "error",
  about: "cold fit",
  subject: ({ part, mate }) => `${base(part)} ${base(mate)}`,
  page: {
    finds:
      "A part that is installed on, over or in its mate, where their fit has interference at all its limits, and the outer was not heated, the inner not cooled, and it is not pressed.",
    why: "The bore is smaller than the shaft. By hand the part stops halfway, and what follows is a hammer.",
    fails: `source Manual "pump manual" revision "9"
part Shaft "pump shaft"
part Bearing "drive-end bearing"
fit Bearing over Shaft {
  diameter 60 mm
  interference 11 .. 36 µm per Manual "6.4.2"
}

procedure FitBearing "Fit the bearing" {
  begin with Shaft is installed
  step install Bearing over Shaft
}
`,
    mended: `source Manual "pump manual" revision "9"
part Shaft "pump shaft"
part Bearing "drive-end bearing"
fit Bearing over Shaft {
  diameter 60 mm
  interference 11 .. 36 µm per Manual "6.4.2"
}

procedure FitBearing "Fit the bearing" {
  begin with Shaft is installed
  step press Bearing over Shaft
}
`,
    source: "ISO 286-1 gives the limits of a tolerance such as H7/s6 (second hand).",
  },
  say: ({ part, mate, declaredAt }) => ({
    message: `${part} and ${mate} do not go together cold.`,
    why: "Their fit has interference at all its limits. Neither was heated or cooled before this, and nothing is pressed.",
    remedy: "Heat the outer part or cool the inner one before this, or write “press” in place of “install”.",
    related: [{ message: `The fit of ${part} and ${mate} is declared here`, span: declaredAt }],
  }),
});
