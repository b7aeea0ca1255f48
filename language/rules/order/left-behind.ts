// order.left-behind: a temporary part left in or closed over, or an energy isolated and not restored.
import { rule } from "../rule.ts";

export const leftBehind = rule({
  code: "order.left-behind",
  severity: "error",
  about: "left behind",
  page: {
    finds:
      "A temporary part that is still in at the end, or when a part that encloses it goes on; an energy that is isolated and not restored. Silent where “finish with” says that it stays so.",
    why: "A guide pin left in a housing goes through the gears at the first start.",
    fails: `part Cover "bearing cover"
temporary part GuidePin "guide pin"

procedure CloseUp "Close the housing" {
  step install GuidePin
  step install Cover
}
`,
    mended: `part Cover "bearing cover"
temporary part GuidePin "guide pin"

procedure CloseUp "Close the housing" {
  step install GuidePin
  step install Cover
  step remove GuidePin
}
`,
  },
  say: ({ what, nature, closedBy, closedAt }) => {
    if (nature === "isolated") {
      return {
        message: `${what} is isolated here and never restored.`,
        why: "At the end it is still off, and “finish with” does not say so.",
        remedy: `Restore ${what} before the end, or say “finish with ${what} is isolated”.`,
      };
    }
    if (closedBy !== null && closedAt !== null) {
      return {
        message: `${what} is still in when ${closedBy} closes over it.`,
        why: `${what} is a temporary part. Behind ${closedBy} it cannot be reached any more.`,
        remedy: `Remove ${what} before ${closedBy} is installed.`,
        related: [{ message: `${closedBy} closes over ${what} here`, span: closedAt }],
      };
    }
    return {
      message: `${what} is put in here and never taken out.`,
      why: `${what} is a temporary part, and at the end it is still in.`,
      remedy: `Remove ${what} before the end, or say “finish with ${what} is installed”.`,
    };
  },
  fix: ({ pass, options, removeText, mendAt }) =>
    pass.length > 0 || options !== undefined || mendAt === null
      ? []
      : [
          {
            title: `Put in “step ${removeText}”`,
            edits: [
              { ...("before" in mendAt ? { lineBefore: mendAt.before } : mendAt), newText: `step ${removeText}` },
            ],
          },
        ],
});
