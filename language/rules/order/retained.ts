// order.retained: removing a part that another retains, or that a fastener still holds.
import { base } from "#analysis/raw-fact.ts";
import { rule } from "../rule.ts";
import { cameFrom, since } from "../wording.ts";

export const retained = rule({
  code: "order.retained",
  severity: "error",
  about: "retained",
  gravity: ({ how }) => (how === "loose" ? "warning" : "error"),
  subject: ({ part, by }) => `${base(part)} ${base(by)}`,
  page: {
    finds:
      "A part that is removed while another retains it, or while a fastener that secures it is tightened. Where the fastener is loose but still in, it is a warning.",
    why: "A part that is forced off against what holds it breaks, or takes what holds it along.",
    fails: `part Bearing "drive-end bearing"
part SnapRing "snap ring" { retains Bearing }

procedure TakeOut "Take the bearing out" {
  begin with Bearing is installed, SnapRing is installed
  finish with Bearing is removed
  step remove Bearing
}
`,
    mended: `part Bearing "drive-end bearing"
part SnapRing "snap ring" { retains Bearing }

procedure TakeOut "Take the bearing out" {
  begin with Bearing is installed, SnapRing is installed
  finish with Bearing is removed, SnapRing is removed
  step remove SnapRing
  step remove Bearing
}
`,
  },
  say: ({ part, by, how, declaredAt, since: origin }) => ({
    message: {
      retains: `${by} holds ${part} in place.`,
      tightened: `${by} is tightened and holds ${part}.`,
      loose: `${by} is loose but still in ${part}.`,
    }[how],
    why: `${by} is ${how === "retains" ? "in place" : how} ${since(origin)}.`,
    remedy: how === "tightened" ? `Loosen and remove ${by} first.` : `Remove ${by} first.`,
    witness: cameFrom(origin, `${by} is ${how === "retains" ? "installed" : how}`),
    related: [
      { message: `${by} ${how === "retains" ? "retains" : "secures"} ${part}, as declared here`, span: declaredAt },
    ],
  }),
});
