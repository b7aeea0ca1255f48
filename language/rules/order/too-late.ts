// order.too-late: a `within` that the declared times cannot keep, or of which they do not say whether it is kept.
import type { Origin } from "#analysis/fact.ts";
import type { Remark } from "../finding.ts";
import { rule } from "../rule.ts";
import { listed, timeText, wantedFound } from "../wording.ts";

export const tooLate = rule({
  code: "order.too-late",
  severity: "error",
  about: "too late",
  gravity: ({ certain }) => (certain ? "error" : "warning"),
  page: {
    finds:
      "A step that is to be done within a time after another, where the longest declared times on the way come to more. Waits and its own time count; rework on the way that can be done any number of times is always too long. A warning where a step on the way does not say how long it takes.",
    why: "A sealant skins over, a bearing cools on the shaft. Where the time is too short on paper, somebody finds out with the part half on.",
    fails: `source Manual "pump manual" revision "9"
consumable Sealant "joint sealant"
part Sump "oil sump"
part Strainer "oil strainer"

procedure CloseSump "Close the sump" {
  step Coat {
    apply Sealant to Sump
    takes 2 min
  }
  step {
    inspect Strainer
    takes 10 min
  }
  step {
    install Sump
    within 5 min after Coat
    takes 1 min
    per Manual "7.2"
  }
}
`,
    mended: `source Manual "pump manual" revision "9"
consumable Sealant "joint sealant"
part Sump "oil sump"
part Strainer "oil strainer"

procedure CloseSump "Close the sump" {
  step {
    inspect Strainer
    takes 10 min
  }
  step Coat {
    apply Sealant to Sump
    takes 2 min
  }
  step {
    install Sump
    within 5 min after Coat
    takes 1 min
    per Manual "7.2"
  }
}
`,
  },
  say: ({ after, limit, time, undeclared, certain, afterSpan }) => {
    const start: Remark = { message: `The time begins at the end of ${after}`, span: afterSpan };
    const most = timeText(limit);
    if (!certain)
      return {
        message: `Nothing shows that this comes within ${most} after ${after}.`,
        why: unsaid(undeclared),
        remedy: "Say with “takes …” how long it takes at most.",
        related: [
          start,
          ...undeclared.slice(0, MOST_SHOWN).map(({ span }) => ({ message: "Its longest time is not said", span })),
        ],
      };
    if (time === null)
      return {
        message: `Rework on the way can make this later than ${most} after ${after}.`,
        why: `It can be done any number of times without coming to ${after} again.`,
        remedy: `Let the rework lead back to ${after} or before it, so that the time begins anew.`,
        related: [start],
      };
    return {
      message: `This can end later than ${most} after ${after}.`,
      why: wantedFound(`at most ${most}`, `up to ${timeText(time, limit)}`),
      remedy: `Move what comes between to before ${after}, or correct the times.`,
      related: [start],
    };
  },
});

const MOST_SHOWN = 3;

function unsaid(undeclared: readonly Origin[]): string {
  const shown = undeclared.slice(0, MOST_SHOWN).map(({ step }) => step ?? "");
  const rest = undeclared.length - shown.length;
  const steps = listed(rest > 0 ? [...shown, `${rest} more`] : shown, "and");
  return undeclared.length === 1
    ? `Step ${steps} does not say how long it takes.`
    : `Steps ${steps} do not say how long they take.`;
}
