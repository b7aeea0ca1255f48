// trace.unused-allow: an `allow` that silences nothing.
import { rule } from "../rule.ts";

export const unusedAllow = rule({
  code: "trace.unused-allow",
  severity: "warning",
  about: "unused allow",
  page: {
    finds:
      "An “allow” that silences nothing in its step, task or procedure, names a code that no rule has, or names one that cannot be allowed: “syntax”, “names” and “units.mismatch”.",
    why: "Each “allow” is printed with the checklist and stands for a decision. One that is left over makes people read past the others, and would silence what comes later.",
    fails: `part Bearing "drive-end bearing"
part Cover "bearing cover" { needs Bearing }

procedure CloseUp "Close the housing" {
  step install Bearing
  step {
    install Cover
    allow order.enclosed because "The bearing is reached through the side port."
  }
}
`,
    mended: `part Bearing "drive-end bearing"
part Cover "bearing cover" { needs Bearing }

procedure CloseUp "Close the housing" {
  step install Bearing
  step install Cover
}
`,
  },
  say: ({ code, known, forbidden, nearest }) => {
    if (forbidden) {
      return {
        message: `${code} cannot be allowed.`,
        why: "What it finds has no meaning as it stands, so nothing could be checked around it.",
        remedy: "Put right what it finds, and take this line out.",
      };
    }
    if (!known) {
      return {
        message: `No rule is called ${code}.`,
        remedy:
          nearest === null
            ? "“sprag explain” lists all codes."
            : `Probably ${nearest} is meant. “sprag explain” lists all codes.`,
      };
    }
    return {
      message: `This allows ${code}, and nothing here has it.`,
      why: "What it once silenced was put right, or stands elsewhere.",
      remedy: "Take the line out.",
    };
  },
  fix: ({ statement }) => [{ title: "Take this “allow” out", edits: [{ takeOut: statement }] }],
});
