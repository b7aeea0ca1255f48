// order.unmet-need: a `needs`, or a performed procedure's `begin with`, that does not hold on some path.
import { putInBefore } from "../put-in.ts";
import { rule } from "../rule.ts";
import { cameFrom, listed, quoted, since, wantedFound } from "../wording.ts";

export const unmetNeed = rule({
  code: "order.unmet-need",
  severity: "error",
  about: "unmet need",
  // Of several screws that a performed procedure wants alike one finding is enough.
  subject: ({ condition, performed }) => (performed === null ? condition : condition.replace(/\[[^\]]*\]/g, "")),
  page: {
    finds:
      "A “needs” of a step, or a “begin with” of a procedure that is performed, which does not hold there on some path. It says which step would give it, or that none does.",
    why: "A need says what must be so before the hand goes to work. Where it can fail to be so, someone will start too early.",
    fails: `fact OilIn "the oil is in"

procedure Start "Start the pump" {
  step "Start the pump." { needs OilIn }
  step "Pour the oil in." { gives OilIn }
}
`,
    mended: `fact OilIn "the oil is in"

procedure Start "Start the pump" {
  step "Pour the oil in." { gives OilIn }
  step "Start the pump." { needs OilIn }
}
`,
  },
  say: ({ condition, state, since: origin, givers, performed, implied, askedAt, undone }) => {
    const steps = [...new Set(givers.flatMap(({ step }) => (step === null ? [] : [step])))];
    const known = state !== "" && state !== condition;
    const found = known ? wantedFound(condition, `${state}, ${since(origin)}`) : `Wanted: ${condition}`;
    return {
      message:
        performed === null
          ? `${quoted(condition)} does not hold here.`
          : `${performed} needs ${quoted(condition)}, which does not hold here.`,
      why: implied ? `${found}\n${IMPLIED}` : found,
      remedy:
        undone && origin.step !== null
          ? `Step ${origin.step} undoes it. Do this before, or make it so again.`
          : steps.length > 0
            ? `Step ${listed(steps)} gives it, and has to come first on every path.`
            : implied
              ? `Make it so before this, or mention it in the “begin with” of ${performed}.`
              : "Nothing here gives it. Add the step that does, or say so in “begin with”.",
      witness: known ? cameFrom(origin, state) : [],
      related: [
        ...(askedAt === null
          ? []
          : [{ message: `${performed} ${implied ? "works on it" : "asks for it"} here`, span: askedAt }]),
        ...givers.map((giver) => ({
          message: giver.step === null ? "This gives it" : `Step ${giver.step} gives it`,
          span: giver.span,
        })),
      ],
    };
  },
  fix: ({ mend, stepSpan, pass, options, inOrder }) =>
    mend === null
      ? []
      : putInBefore([`step ${mend}`], {
          stepSpan,
          pass,
          ...(options === undefined ? {} : { options }),
          ...(inOrder === undefined ? {} : { inOrder }),
        }),
});

const IMPLIED = "What it touches and its “begin with” does not mention has to be as at a start.";
