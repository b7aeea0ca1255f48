// limits.choice: rows by which a part or a value is chosen, and a reading that falls into none of them, into two, or into one that
// leaves another remainder than is wanted.
import type { RemainderFact, RowFact } from "#analysis/limits/limit-fact.ts";
import { show, showMagnitude } from "#quantity/display.ts";
import type { Magnitude } from "#quantity/quantity.ts";
import { rule, type Saying } from "../rule.ts";

export const choice = rule({
  code: "limits.choice",
  severity: "warning",
  about: "choice",
  gravity: ({ how }) => (how === "remainder" ? "error" : "warning"),
  subject: ({ reading }) => reading,
  page: {
    finds:
      "A choice by a reading whose rows leave a gap, run into each other, or do not reach as far as the reading is expected to; a row whose value leaves of the reading what “leaving” does not admit. Two rows may meet in one value.",
    why: "Whoever measures a value that no row is for chooses by guess; with two rows each fitter may choose another. A shim that leaves too little play seizes, one that leaves too much knocks.",
    fails: `part Shim "shim"
tool DepthGauge "depth gauge" {
  measures 0 .. 25 mm
  resolution 0.01 mm
}

procedure FitShim "Fit the shim" {
  step measure Gap "gap at the flange" with DepthGauge expect 0.2 .. 1.2 mm
  step choose Shim by Gap {
    0.2 .. 0.6 mm: 0.5 mm
    0.7 .. 1.2 mm: 1.0 mm
  }
  step install Shim
}
`,
    mended: `part Shim "shim"
tool DepthGauge "depth gauge" {
  measures 0 .. 25 mm
  resolution 0.01 mm
}

procedure FitShim "Fit the shim" {
  step measure Gap "gap at the flange" with DepthGauge expect 0.2 .. 1.2 mm
  step choose Shim by Gap {
    0.2 .. 0.6 mm: 0.5 mm
    0.6 .. 1.2 mm: 1.0 mm
  }
  step install Shim
}
`,
    source:
      "The ends of the rows are compared exactly, after conversion to one unit; what is left is the reading less the value (arithmetic).",
  },
  say: (fact) => (fact.how === "remainder" ? sayRemainder(fact) : sayRows(fact)),
});

function sayRows(fact: RowFact): Saying {
  const { how, reading, chosen, declaredAt } = fact;
  const [from, to] = [shown(fact, fact.from), shown(fact, fact.to)];
  const isExpected = how === "below" || how === "above";
  return {
    message: MESSAGES[how](chosen, from, to),
    why: REASONS[how](reading, from, to),
    remedy: isExpected
      ? "Add a row for it, or let the row at that end reach as far as is expected."
      : "Let each row begin at the value where the one before it ends, in the same unit.",
    related: [{ message: isExpected ? "This is expected" : "The row before it stands here", span: declaredAt }],
  };
}

function sayRemainder({ reading, value, readings, remainder, limit, fitting, declaredAt }: RemainderFact): Saying {
  return {
    message: `${show(value)} leaves ${show(remainder)} of ${reading}.`,
    why: `In this row ${reading} is ${show(readings)}.\nwanted: ${show(limit)}\nleft:   ${show(remainder)}`,
    remedy:
      fitting === null
        ? "No one value does for the whole row: part it into narrower rows."
        : `Choose ${show(fitting)} in this row.`,
    related: [{ message: "This is to be left", span: declaredAt }],
  };
}

const MESSAGES: Readonly<Record<RowFact["how"], (chosen: string, from: string, to: string) => string>> = {
  gap: (chosen, from, to) => `No ${chosen} is chosen between ${from} and ${to}.`,
  overlap: (chosen, from, to) => `Two rows choose ${chosen} from ${from} to ${to}.`,
  below: (chosen, _, to) => `No ${chosen} is chosen below ${to}.`,
  above: (chosen, from) => `No ${chosen} is chosen above ${from}.`,
};

const REASONS: Readonly<Record<RowFact["how"], (reading: string, from: string, to: string) => string>> = {
  gap: (reading, from, to) => `One row ends at ${from}, the next begins at ${to}; ${reading} may lie between them.`,
  overlap: (reading, from, to) => `Where ${reading} is from ${from} to ${to}, both rows hold.`,
  below: (reading, from, to) => `${reading} is expected from ${from}, and the lowest row begins at ${to}.`,
  above: (reading, from, to) => `${reading} is expected up to ${to}, and the highest row ends at ${from}.`,
};

function shown({ of }: RowFact, end: Magnitude | null): string {
  return end === null ? "any value" : showMagnitude(end, of);
}
