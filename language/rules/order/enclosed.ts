// order.enclosed: working on a part behind one that is installed.
import { rule } from "../rule.ts";
import { cameFrom, since } from "../wording.ts";

export const enclosed = rule({
  code: "order.enclosed",
  severity: "error",
  about: "enclosed",
  page: {
    finds: "Work on a part, or at its place, while another that encloses it is installed.",
    why: "No hand and no tool reaches a bearing behind its cover. Either the line stands too late, or the cover was to come off before it.",
    fails: `consumable Grease "bearing grease"
part Bearing "drive-end bearing"
part Cover "bearing cover" { encloses Bearing }

procedure CloseUp "Close the housing" {
  step install Bearing
  step install Cover
  step lubricate Bearing with Grease
}
`,
    mended: `consumable Grease "bearing grease"
part Bearing "drive-end bearing"
part Cover "bearing cover" { encloses Bearing }

procedure CloseUp "Close the housing" {
  step install Bearing
  step lubricate Bearing with Grease
  step install Cover
}
`,
  },
  say: ({ part, by, declaredAt, since: origin }) => ({
    message: `${part} is behind ${by} and cannot be reached.`,
    why: `${by} encloses ${part} and is in place ${since(origin)}.`,
    remedy: `Do this before ${by} is installed, or remove ${by} first.`,
    witness: cameFrom(origin, `${by} is installed`),
    related: [{ message: `${by} encloses ${part}, as declared here`, span: declaredAt }],
  }),
});
