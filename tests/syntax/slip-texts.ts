// What a slip of the tables is, the sound texts that the slips stand in, and where their findings belong.

/** One slip; `at` is the exact text under the finding, at its first occurrence in `within`, or else in the text. */
export interface WriterSlip {
  readonly slip: string;
  readonly text: string;
  readonly code: string;
  readonly at: string;
  readonly within?: string;
  /** What the message, its reason or its remedy must tell the writer. */
  readonly message: RegExp;
}

const declarations = `part Cover "cover"
part Seal "seal"
part Screw[1..8] "screw"
`;

export function procedure(body: string, after = "", before = ""): string {
  return `${declarations}${before}
procedure Look "Look at the parts" {
${body}
  step inspect Screw[all]
}
${after}`;
}

export function part(property: string): string {
  return `part Screw "screw" {\n  ${property}\n}\n`;
}

export function branches(middle: string, condition = "Extent is Full"): string {
  return procedure(
    `  when ${condition} {\n    step inspect Cover\n${middle}\n    step inspect Seal\n  }\n  when Kept is no { step inspect Seal }`,
    "",
    "option Extent { Full Reseal }\noption Kept { yes no }\n",
  );
}

/** Where the finding of a slip stands: offsets into its text. */
export function placeOf(slip: WriterSlip): { readonly offset: number; readonly end: number } {
  const start = slip.within === undefined ? 0 : slip.text.indexOf(slip.within);
  const offset = slip.text.indexOf(slip.at, start);
  if (start < 0 || offset < 0) throw new Error(`The text of “${slip.slip}” does not hold its place.`);
  return { offset, end: offset + slip.at.length };
}
