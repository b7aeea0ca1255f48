// order.not-final: a fastener left loose, or a part left out, with no word of it in `finish with`.
import { base } from "#analysis/raw-fact.ts";
import { rule } from "../rule.ts";

export const notFinal = rule({
  code: "order.not-final",
  severity: "warning",
  about: "not final",
  subject: ({ part, how }) => `${base(part)} ${how}`,
  page: {
    finds:
      "A fastener that the procedure puts in and leaves loose, or a part that it takes out and leaves out, where “finish with” has no word of it.",
    why: "A screw run in by hand looks like a tightened one. Whoever comes next relies on what the paper says.",
    fails: `part Cover "bearing cover"
part Screw[1..2] "cover screw" { secures Cover }

procedure CloseUp "Close the housing" {
  step install Cover
  step install Screw[all]
}
`,
    mended: `part Cover "bearing cover"
part Screw[1..2] "cover screw" { secures Cover }

procedure CloseUp "Close the housing" {
  step install Cover
  step install Screw[all]
  step tighten Screw[all]
}
`,
  },
  say: ({ part, how, performed }) => {
    const state = how === "loose" ? "loose" : "removed";
    return {
      message: performed === null ? `${part} is left ${how} at the end.` : `${performed} leaves ${part} ${how}.`,
      why:
        performed === null
          ? `Nothing after this ${how === "loose" ? "tightens it" : "puts it back"}, and “finish with” has no word of it.`
          : `At the end it is still ${how}, and “finish with” here has no word of it.`,
      remedy: `${how === "loose" ? "Tighten" : "Install"} ${part} before the end, or say “finish with ${part} is ${state}”.`,
    };
  },
});
