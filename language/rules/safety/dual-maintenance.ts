// safety.dual-maintenance: the same work on parts that back each other up, by one role that nobody looks after.
import { rule } from "../rule.ts";
import { quoted } from "../wording.ts";

export const dualMaintenance = rule({
  code: "safety.dual-maintenance",
  severity: "information",
  about: "dual maintenance",
  page: {
    finds:
      "The same work on two parts of which one “backs up” the other, by one role that nobody else looks after. Work on what secures a part is work on the part. The role is the one that signs, or does it where nobody signs; another one looks after it with a hold in one of the two steps, or a step of its own that inspects one of the parts. Silent where no role is named. What a performed procedure does is looked at by itself.",
    why: "Two pumps are there so that one may fail. Who leaves the drain plug loose on the first leaves it loose on the second, and then both fail at once.",
    fails: example(""),
    mended: example("\n    hold for Inspector"),
    source:
      "Maintenance of the same kind on systems that stand in for each other, at one visit and by one technician: 14 CFR 121.374(c) (from memory: not verified).",
  },
  say: ({ other, otherAt, others, part, role, verb }) => ({
    message: `${part} gets the same work as ${other}, by the ${role} alone.`,
    why: `One of them backs up the other. A mistake of one person in ${quoted(verb)} would be in both.`,
    remedy: `Let another role do one of them, or look at it${others.length === 0 ? "" : `: add “hold for”, for instance ${others[0]}`}.`,
    related: [{ message: `${other} gets it here`, span: otherAt }],
  }),
  fix: ({ holdIn, others }) =>
    holdIn === null
      ? []
      : others.map((role) => ({ title: `Hold for ${role}`, edits: [{ lastIn: holdIn, newText: `hold for ${role}` }] })),
});

function example(hold: string): string {
  return `role Fitter "fitter"
role Inspector "inspector"
consumable Oil "gear oil"
part OilPump[1..2] "oil pump" { backs up OilPump }

procedure FillPumps "Fill the oil pumps" {
  begin with OilPump[all] are installed

  step {
    fill OilPump[1] with 2 L of Oil
    sign Fitter
  }
  step {
    fill OilPump[2] with 2 L of Oil
    sign Fitter${hold}
  }
  step "Start both pumps." by Inspector
}
`;
}
