// trace.weak-allow: an `allow` whose reason is still to be given.
import { rule } from "../rule.ts";

export const weakAllow = rule({
  code: "trace.weak-allow",
  severity: "warning",
  about: "weak allow",
  page: {
    finds: "An “allow” whose reason is empty or stands in for one, such as “…”, “TBD” or “to be done”.",
    why: "The reason is printed with every checklist, and is all that the next reader has to judge it by.",
    fails: example("…"),
    mended: example("The wrench comes with the pump's own tool box."),
  },
  say: ({ code, reason }) => ({
    message: /\S/.test(reason)
      ? `“${reason.trim()}” is no reason to allow ${code}.`
      : `No reason is given to allow ${code}.`,
    why: "It is printed with every checklist, and nobody could judge it.",
    remedy: "Say why it is right here, or take the line out.",
  }),
});

function example(reason: string): string {
  return `part Cover "cover"
tool Puller "puller"

procedure TakeOff "Take the cover off" {
  begin with Cover is installed
  finish with Cover is removed

  step {
    remove Cover with Puller
    allow trace.no-crib-item because "${reason}"
  }
}
`;
}
