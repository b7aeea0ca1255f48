// Slips in words, names, texts and indices: verbs of the trade that the language has other words for, names in two words, brackets and
// quotation marks left out. Written from the language's description; each brings one finding.
import { part, procedure, type WriterSlip } from "./slip-texts.ts";

const BODY = "  step inspect Cover, Seal";
const installed = (line: string): string =>
  procedure(
    `  begin with Cover is installed, Screw[all] are installed\n  finish with not Cover is loose\n  ${line}\n${BODY}`,
  );

function slipOf(slip: string, text: string, at: string, message: RegExp, within?: string): WriterSlip {
  return { slip, text, code: "syntax.unexpected", at, message, ...(within === undefined ? {} : { within }) };
}

function verb(written: string, called: string): WriterSlip {
  return slipOf(`“${written}” for “${called}”`, installed(`step ${written} Cover`), written, new RegExp(`“${called}”`));
}

function unquoted(line: string, text: string, of = procedure(`  ${line}\n${BODY}`)): WriterSlip {
  return slipOf(`a text without quotation marks: ${line}`, of, text, new RegExp(`Write "${text.replace(".", "\\.")}"`));
}

export const wordSlips: readonly WriterSlip[] = [
  verb("examine", "inspect"),
  verb("wipe", "clean"),
  verb("grease", "lubricate"),
  slipOf(
    "a verb that is none",
    procedure(`  step flurb Screw[all] to 40 N·m\n${BODY}`),
    "flurb",
    /no action.*“install”/s,
  ),
  slipOf("weight for mass", part("weight 3 kg"), "weight", /“mass”/),
  slipOf(
    "anticlockwise",
    'ring Circle "circle" { count 4  numbered anticlockwise }\n',
    "anticlockwise",
    /“counterclockwise”/,
  ),
  slipOf(
    "a pattern in one word",
    installed("step tighten Screw[all] crosswise by hand"),
    "crosswise",
    /“in cross pattern”/,
  ),
  slipOf(
    "“go to step”",
    procedure('  step { check "No leak" if it fails { go to step Last } }\n  step Last { inspect Cover, Seal }'),
    "step",
    /Take it out/,
    "step Last } }",
  ),
  unquoted("document WI-220-14", "WI-220-14"),
  unquoted('document "WI-1" revision B dated 2026-05-04', "B"),
  unquoted('document "WI-1" revision 3', "3"),
  unquoted("step Wipe the cover.", "Wipe the cover."),
  unquoted("thread M10x1.5", "M10x1.5", part("thread M10x1.5")),
  unquoted("class 8.8", "8.8", part("class 8.8")),
  slipOf("a name in two words", 'part Bearing Cover "bearing cover"\n', "Bearing Cover", /“BearingCover”/),
  slipOf("a hyphen and a digit in a name", 'part Cover-2 "cover"\n', "-", /hyphen.*“_”/s),
  slipOf("a point in a name", 'part Cover.2 "cover"\n', ".", /“_”/),
  slipOf("how many, for the instances of a declaration", 'part Nut[8] "nut"\n', "8", /“1\.\.8”/),
  slipOf("each number, for the instances of a declaration", 'part Nut[1, 2, 3] "nut"\n', "1, 2, 3", /“1\.\.3”/),
  slipOf("an index without its brackets", procedure(`  step inspect Screw 3\n${BODY}`), "3", /“Screw\[3\]”/),
  slipOf(
    "“all” without its brackets",
    procedure(`  step inspect Screw all\n${BODY}`),
    "all",
    /“Screw\[all\]”/,
    "all\n",
  ),
  slipOf("“all” in front of the name", procedure(`  step inspect all Screw\n${BODY}`), "all Screw", /“Screw\[all\]”/),
  {
    slip: "a semicolon between numbers",
    text: procedure(`  step inspect Screw[1; 4]\n${BODY}`),
    code: "syntax.character",
    at: ";",
    message: /Write “,”/,
  },
  slipOf("a comma between two properties", part("mass 3 kg, sharp"), ",", /Take it out/),
  slipOf(
    "an opening brace too many",
    procedure("  step First { {\n    inspect Cover\n  }\n  step inspect Seal"),
    "{",
    /twice/,
    "{\n    inspect",
  ),
  slipOf(
    "a block in a block of its own",
    procedure("  step First { { inspect Cover } }\n  step inspect Seal"),
    "{",
    /twice/,
    "{ inspect",
  ),
  slipOf("a word twice", part("mass mass 3 kg"), "mass", /stands twice/, "mass 3 kg"),
  slipOf("a number twice", part("mass 3 3 kg"), "3", /stands twice/, "3 kg"),
  slipOf(
    "a source named twice",
    `source Manual "manual"\n${part('thread "M10" per Manual Manual "2"')}`,
    "Manual",
    /stands twice/,
    'Manual "2"',
  ),
  slipOf(
    "a keyword twice at the beginning of its line",
    procedure("  step step inspect Cover\n  step inspect Seal"),
    "step",
    /stands twice/,
    "step inspect Cover",
  ),
  slipOf(
    "a part twice before its state",
    procedure("  begin with Cover Cover is installed\n  step inspect Seal, Cover"),
    "Cover",
    /stands twice/,
    "Cover is",
  ),
  slipOf(
    "a safety statement without its hazard",
    procedure(`  warning "It is hot." avoid "Wait."\n${BODY}`),
    '"It is hot."',
    /a hazard such as “burn”/,
  ),
  slipOf("a value without its name", "value = 36 N·m\n", "=", /name of the value is missing/),
  slipOf("a quantity without its word", part("50 kg"), "50", /not said what “50” is/),
  slipOf("revision is left out", 'source Manual "manual" "9"\n', '"9"', /“revision "9"”/),
];
