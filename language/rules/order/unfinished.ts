// order.unfinished: a `finish with` that does not hold at the end of some path.
import { rule } from "../rule.ts";
import { cameFrom, quoted, since, wantedFound } from "../wording.ts";

export const unfinished = rule({
  code: "order.unfinished",
  severity: "error",
  about: "unfinished",
  page: {
    finds:
      "A condition of “finish with” that does not hold at the end of the procedure, on some path. A path that ends in “stop” is no end.",
    why: "“finish with” is what the next procedure and the one who signs rely on.",
    fails: `part Cover "bearing cover"
part Seal "shaft seal"

procedure CloseUp "Close the housing" {
  finish with Cover is installed, Seal is installed
  step install Cover
}
`,
    mended: `part Cover "bearing cover"
part Seal "shaft seal"

procedure CloseUp "Close the housing" {
  finish with Cover is installed, Seal is installed
  step install Seal
  step install Cover
}
`,
  },
  say: ({ condition, state, since: origin }) => {
    const known = state !== "" && state !== condition;
    return {
      message: `${quoted(condition)} does not hold at the end.`,
      why: known ? wantedFound(condition, `${state}, ${since(origin)}`) : `Wanted: ${condition}`,
      remedy: "Add the step that makes it so, or change “finish with”.",
      witness: known ? cameFrom(origin, state) : [],
    };
  },
});
