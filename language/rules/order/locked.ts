// order.locked: a part turned while its lock is in, or left at the end without it.
import { base } from "#analysis/raw-fact.ts";
import { rule } from "../rule.ts";
import { cameFrom, done, since } from "../wording.ts";

export const locked = rule({
  code: "order.locked",
  severity: "error",
  about: "locked",
  gravity: ({ atEnd }) => (atEnd ? "warning" : "error"),
  subject: ({ part, by }) => `${base(part)} ${base(by)}`,
  page: {
    finds:
      "A part that is tightened or loosened while another that locks it is installed. As a warning, a part that this procedure leaves tightened without its lock; silent where “finish with” says where the lock is.",
    why: "A nut turned against its tab washer or split pin shears the lock or strips the thread. A nut without its lock works loose in service.",
    fails: `part Nut "shaft nut" { thread "M30x2" }
part TabWasher "tab washer" { locks Nut }

procedure TakeOff "Take the nut off" {
  begin with Nut is installed, TabWasher is installed
  finish with Nut is removed, TabWasher is removed
  step loosen Nut
  step remove TabWasher
  step remove Nut
}
`,
    mended: `part Nut "shaft nut" { thread "M30x2" }
part TabWasher "tab washer" { locks Nut }

procedure TakeOff "Take the nut off" {
  begin with Nut is installed, TabWasher is installed
  finish with Nut is removed, TabWasher is removed
  step remove TabWasher
  step loosen Nut
  step remove Nut
}
`,
  },
  say: ({ part, by, verb, atEnd, declaredAt, since: origin }) => {
    const related = [{ message: `${by} locks ${part}, as declared here`, span: declaredAt }];
    if (atEnd) {
      return {
        message: `${part} is left without its lock ${by}.`,
        why: `At the end ${part} is in and ${by} is out. Without its lock it can work loose in service.`,
        remedy: `Install ${by} before the end, or say “finish with ${by} is removed”.`,
        related,
      };
    }
    return {
      message: `${part} cannot be ${done(verb)} while ${by} locks it.`,
      why: `${by} is in place ${since(origin)}.`,
      remedy: `Remove ${by} before this.`,
      witness: cameFrom(origin, `${by} is installed`),
      related,
    };
  },
  // A lock that was taken out here may be for single use, and of several one line would not be enough.
  fix: ({ part, by, mendAt, since: { span: out }, span, pass, options }) => {
    const isTakenOut = out.path === span.path && out.start === span.start;
    return mendAt === null || isTakenOut || pass.length > 0 || options !== undefined || isNumbered(part, by)
      ? []
      : [
          {
            title: `Put in “step install ${by}”`,
            edits: [
              { ...("before" in mendAt ? { lineBefore: mendAt.before } : mendAt), newText: `step install ${by}` },
            ],
          },
        ];
  },
});

function isNumbered(...names: readonly string[]): boolean {
  return names.some((name) => base(name) !== name);
}
