// safety.missing: a hazard that the work raises, and no statement in force that warns of it.
import { fromSource, raisedWords, statementFor } from "../hazard-wording.ts";
import { rule } from "../rule.ts";
import { listed } from "../wording.ts";

export const missing = rule({
  code: "safety.missing",
  severity: "warning",
  about: "hazard not covered",
  gravity: ({ grave }) => (grave ? "error" : "warning"),
  subject: ({ raised }) => `${raised.of.name} ${raised.hazards.join(" ")}`,
  page: {
    finds:
      "A line that raises a hazard with no “danger”, “warning” or “caution” about it in force: at the head of its step, its task or the procedure, before the line. Hazards are raised by what is declared, never by words: a part that may still be hot or cold when it is handled; a part too heavy for one person that nothing lifts, or that hangs on a hoist; an energy that is live, not proved dead or let out; a consumable, a tool or a part with a hazard of its own; “sharp”; a liquid near its flash point; a gas set free, unless the declared room keeps enough oxygen; and “raises” for the rest. One finding for each source, at its first line. An error for a burn from 65 °C, live or stored energy, a load above what the crew may lift, and less than 18 % of oxygen. Entry into a room is never cleared by a computation.",
    why: "Who takes hold of the ring does not know what the one who heated it knew.",
    fails: example(""),
    mended: example(`
  warning burn "The drive-end bearing can burn skin."
    avoid "Do not touch it with bare hands."
    wear "heat-resistant gloves"
`),
    source:
      "Burns: ISO 13732-1 (from memory: not verified). 23 kg for one person: NIOSH 94-110 (second hand). 50 V: 29 CFR 1910.303(g)(2) (read). Flash points: 29 CFR 1910.106(a)(19) (read). Air for cleaning: 29 CFR 1910.242(b) (read). 85 dB(A): 29 CFR 1910.95(c)(1) (read). Stored pressure: 2014/68/EU (from memory: not verified). 19.5 % of oxygen: common practice. A shop sets its own with “threshold”.",
  },
  say: ({ raised, anyOf, grave }) => ({
    message: `No statement warns of ${listed(raised.hazards, anyOf ? "or" : "and")}${fromSource(raised)}.`,
    why: raisedWords(raised),
    remedy: `Put one before this, at the head of the step, the task or the procedure${anyOf ? "; one of these hazards is enough" : ""}.${grave ? " A warning takes no hazard away: where it can be avoided, avoid it." : ""}`,
    ...(raised.passed?.threshold.declaredAt == null
      ? {}
      : { related: [{ message: "The shop's own threshold stands here", span: raised.passed.threshold.declaredAt }] }),
  }),
  fix: ({ raised, titles, places }) => {
    const { head, rests } = statementFor(raised, titles);
    return places.slice(0, 2).map(({ block, before }) => ({
      title: `Warn of it at the head of the ${block}`,
      edits: [{ lineBefore: before, newText: head, rests }],
    }));
  },
});

function example(statement: string): string {
  return `source Manual "pump manual" revision "9"
part Bearing "drive-end bearing" { heat limit 120 °C per Manual "6.4.2" }
part Shaft "pump shaft"
tool Heater "induction heater" { heats to 150 °C }

procedure FitBearing "Fit the bearing" {
  begin with Shaft is installed
  finish with Bearing is installed
${statement}
  step heat Bearing to 100 .. 110 °C with Heater
  step install Bearing on Shaft
}
`;
}
