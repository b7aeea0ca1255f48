// safety.protection: a hazard that something worn protects from, and nothing to wear is named.
import { rule } from "../rule.ts";
import { listed } from "../wording.ts";

export const protection = rule({
  code: "safety.protection",
  severity: "warning",
  about: "no protection",
  page: {
    finds:
      "A safety statement for burn, cold, cutting, eye, skin, fumes or noise without “wear”, where no other in force says what to wear against it.",
    why: "Which gloves keep a solvent or a hot ring off is not to be guessed at the bench.",
    fails: example(""),
    mended: example(' wear "hearing protection"'),
    source: "Noise: 29 CFR 1910.95 (read). That a statement names what to wear is common practice.",
  },
  say: ({ hazards, wears }) => ({
    message: `Nothing to wear is named against ${listed(hazards, "and")}.`,
    ...(wears ? { why: "What stands behind “wear” says nothing yet." } : {}),
    remedy: "Add “wear” with what protects, as the shop calls it.",
  }),
  fix: ({ protection: worn, span, wears }) =>
    wears
      ? []
      : [
          {
            title: `Add wear ${quoted(worn)}`,
            edits: [{ span: { ...span, start: span.end }, newText: ` wear ${quoted(worn)}` }],
          },
        ],
});

function quoted(worn: readonly string[]): string {
  return worn.map((one) => `"${one}"`).join(", ");
}

function example(wear: string): string {
  return `part Pump "pump"

procedure LookAtPump "Look at the running pump" {
  warning noise "The pump is loud." avoid "Stay no longer than needed."${wear}

  step inspect Pump "for leaks"
}
`;
}
