// order.restored-open: an energy restored while a part that it drives is open.
import { base } from "#analysis/raw-fact.ts";
import { rule } from "../rule.ts";
import { cameFrom, since } from "../wording.ts";

export const restoredOpen = rule({
  code: "order.restored-open",
  severity: "error",
  about: "restored open",
  subject: ({ what }) => base(what),
  page: {
    finds:
      "An energy that is restored while a part it drives is open: a cover of it is off, a fastener out or loose, or a temporary part in. Only what the procedure speaks of counts. Whether it may be run open for a test is for the approved data and the site's rules to say.",
    why: "What is open when the power comes back throws parts, sprays oil or shows live metal.",
    fails: `energy MotorSupply "motor supply"
part Motor "drive motor" { driven by MotorSupply }
part FanCover "fan cover" { encloses Motor }

procedure CleanMotor "Clean the motor" {
  begin with Motor is installed, FanCover is installed
  step isolate MotorSupply
  step prove MotorSupply dead
  step remove FanCover
  step clean Motor
  step restore MotorSupply
  step install FanCover
}
`,
    mended: `energy MotorSupply "motor supply"
part Motor "drive motor" { driven by MotorSupply }
part FanCover "fan cover" { encloses Motor }

procedure CleanMotor "Clean the motor" {
  begin with Motor is installed, FanCover is installed
  step isolate MotorSupply
  step prove MotorSupply dead
  step remove FanCover
  step clean Motor
  step install FanCover
  step restore MotorSupply
}
`,
  },
  say: ({ energy, part, what, how, since: origin }) => ({
    message: `${energy} is restored while ${what} is ${STATES[how].told}.`,
    why: `${energy} drives ${part}. ${what} is ${STATES[how].state} ${since(origin)}.`,
    remedy: `${STATES[how].mend} ${what} before this. What must be closed before it runs, the approved data and the site's rules say.`,
    witness: cameFrom(origin, `${what} is ${STATES[how].state}`),
  }),
});

const STATES = {
  out: { told: "not in place", state: "removed", mend: "Install" },
  loose: { told: "loose", state: "loose", mend: "Tighten" },
  temporary: { told: "still in", state: "installed", mend: "Remove" },
} as const;
