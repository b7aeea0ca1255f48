// Writes procedures whose steps stand in repeats, for measuring how checking grows: short in text, of any size written out, free of
// findings. And blocks that may be done in any order, beside the same steps in a row.

/** Steps of one pass of the repeat below; a test holds them to it. */
export const stepsPerPass = 10;
const STEPS_AROUND = 4;

/** A procedure that is `steps` steps long when it is written out, or less than one pass shorter. */
export function procedureOfPasses(steps: number): string {
  const passes = Math.max(1, Math.floor((steps - STEPS_AROUND) / stepsPerPass));
  return `// Generated for measuring.
energy Supply "motor supply" { voltage 400 V AC }
part Case[1..${passes}] "case"
part Lid[1..${passes}] "lid" { needs Case[same]  encloses Case[same] }
part Bolt[1..${passes}] "bolt" { needs Lid[same]  secures Lid[same] }
part Motor[1..${passes}] "motor" { needs Case[same]  driven by Supply }
consumable Grease "assembly grease"
tool Wrench "torque wrench" { torque 8 .. 60 N·m  accuracy 4 % }

procedure CloseAll "Close all cases" {
  finish with Lid[all] are secured, Supply is live
  step isolate Supply
  step prove Supply dead
  repeat n from 1 to ${passes} {
    step install Case[n]
    step clean Case[n]
    step install Motor[n]
    step align Motor[n] with Case[n]
    step Close { install Lid[n]  takes 2 min }
    step lubricate Bolt[n] with Grease
    step install Bolt[n]
    step Tighten { tighten Bolt[n] to 20 ± 2 N·m with Wrench  after Close }
    step Look {
      check "No gap under the lid" if it fails {
        loosen Bolt[n]
        return to Tighten
      }
    }
    step inspect Lid[n]
  }
  step restore Supply
  step "Write down the end of the work."
}
`;
}

/** Steps that share nothing, or all one thing; one after the other, or in any order. */
export function blockOf(steps: number, kind: "independent" | "dependent", inAnyOrder: boolean): string {
  const lines = Array.from({ length: steps }, (_, at) =>
    kind === "independent"
      ? `    step install Post[${at + 1}]`
      : `    step { needs Open  do "Look at it, ${at + 1}."  gives Open }`,
  );
  const declared = kind === "independent" ? `part Post[1..${steps}] "post"` : `fact Open "the valve is open"`;
  return `${declared}

procedure Work "Work" {
${kind === "independent" ? "" : "  begin with Open\n"}${inAnyOrder ? `  in any order {\n${lines.join("\n")}\n  }` : lines.join("\n")}
}
`;
}
