// What is told of work in any order, each finding with an order that has it, and the children that blocks are made of.
import { onPaper } from "./run-on-paper.ts";

export const PARTS = `ring Circle "circle" { count 4  numbered clockwise seen from "drive end"  position 1 at 12 o'clock }
part Bearing "bearing"
part Cover "cover" { encloses Bearing }
part Screw "screw" { secures Cover }
part Clip "clip" { locks Screw }
part Hub "hub"
part Gear "gear" { needs Hub }
part Collar "collar" { retains Hub }
part Motor "motor" { driven by Supply }
part Valve "valve" { states shut, open }
part Gate "gate" { states shut, open }
material Steel "steel" { expansion 11.7 µm/(m·K)  heat limit 300 °C }
part Sleeve "sleeve" { material Steel }
part Spindle "spindle" { material Steel }
fit Sleeve over Spindle { diameter 60 mm  interference -20 .. -10 µm  slip clearance 5 µm }
part Peg[1..2] "peg" { seats in Circle }
part Seal "seal" { single use }
part Post[1..20] "post"
energy Supply "supply" { voltage 400 V AC }
fact Signed "the sheet is signed"
consumable Grease "grease"
consumable Glue "glue"
tool Heater "heater" { heats to 300 °C }
tool Depth "depth gauge" { measures 0 .. 5 mm  resolution 0.01 mm }
option Extent "extent of work" { Full Part }
procedure Inner "Inner" {
  finish with Hub is installed
  step install Hub
}
procedure Asking "Asking" {
  begin with Hub is installed
  step inspect Hub
}
`;
export const CHOICES = ["Full", "Part"];

export interface Told {
  readonly code: string;
  readonly words: string;
  /** The choices for which it holds. */
  readonly so: readonly string[];
  /** The numbers of the children in an order that has it, from 1; null where the text's own has. */
  readonly order: readonly number[] | null;
}

/** What is told of each of some procedures that stand in one text, each with its children in a block or in some order. */
export function told(bodies: readonly string[], children: readonly string[]): readonly (readonly Told[])[] {
  let text = PARTS;
  const starts = bodies.map((body, at) => {
    const start = text.length;
    text += `procedure Work${at} "Work" {\nbegin with Motor is installed\nfinish with Motor is installed\n${body}\n}\n`;
    return start;
  });
  const facts = onPaper(text).facts.filter(({ code }) => code !== "order.not-final" && !code.startsWith("flow."));
  return starts.map((start, which) => {
    const end = starts[which + 1] ?? text.length;
    const places = children.map((child) => text.indexOf(`\n${child}\n`, start) + 1);
    const childAt = (position: number): number =>
      places.findIndex((from, at) => from <= position && position < from + (children[at]?.length ?? 0));
    return facts
      .filter(({ fact: { span } }) => span.start >= start && span.start < end)
      .map(({ code, fact: { span, options, inOrder } }) => ({
        code,
        words: `${text.slice(span.start, span.end).replace(/\s+/g, " ")} in ${childAt(span.start) + 1}`,
        so: CHOICES.filter((choice) => options?.some((cube) => (cube.Extent ?? choice) === choice) ?? true),
        // An order of a block inside a child says nothing of the children.
        order: inOrder?.some(
          ({ span: { start } }) => children[childAt(start)]?.startsWith("in") && !places.includes(start),
        )
          ? null
          : (inOrder?.map((one) => childAt(one.span.start) + 1) ?? null),
      }));
  });
}

export function block(children: readonly string[]): string {
  return `in any order {\n${children.join("\n")}\n}`;
}

/** Children of all kinds, which have to do with few or many of the others. */
export const CHILDREN = [
  "step install Bearing",
  "step install Cover",
  "step install Hub",
  "step remove Hub",
  "step install Gear",
  "step install Collar",
  "step install Screw",
  "step tighten Screw",
  "step install Clip",
  "step isolate Supply",
  "step prove Supply dead",
  "step restore Supply",
  "step clean Motor",
  'step { needs Signed  do "Look." }',
  'step { do "Sign it."  gives Signed }',
  'step { needs Hub is installed  do "Look." }',
  'step { needs Valve is open  do "Look." }',
  'step { do "Open it."  gives Valve is open }',
  "when Extent is Full { step install Hub }",
  "when Extent is Part { step install Gear } otherwise { step remove Hub }",
  'step { check "It fits" if it fails { remove Hub } }',
  'step { check "It fits" if it fails { install Hub  stop "Call the engineer." } }',
  "step install Peg[1], Peg[2]",
  "repeat n from 1 to 2 { step install Peg[n] in Circle[1]  step remove Peg[n] }",
  "step install Peg[2] in Circle[1]",
  "step install Peg[1] in Circle[1]",
  "step install Peg[1] in Circle[2] at 3 o'clock",
  "step turn Circle[1] to 6 o'clock",
  "step heat Hub to 100 .. 110 °C with Heater",
  'step { needs Hub at least 60 °C  do "Look." }',
  "step wait 5 min",
  "step wait until Hub is at most 30 °C",
  "perform Inner",
  "perform Asking",
  "in any order { step install Hub  step install Gear }",
  'task "Some work" { step install Hub  step remove Hub }',
  "step lubricate Hub with Grease",
  "step clean Hub",
  "step apply Glue to Hub cure 10 min",
  "step { inspect Gear  takes 10 min }",
  "step install Seal",
  "step remove Seal",
  "step install new Seal",
  'step "Look at it all."',
] as const;

/** Indented, so that they are not taken for children. */
export const BEFORE = [
  "",
  "",
  " step install Hub",
  " step install Hub\n step isolate Supply\n step install Cover",
] as const;
export const AFTER = ["", "", ' step { needs Hub is installed  do "Look." }', " step remove Gear"] as const;

/** A finding whatever choices and orders it shows with. */
export const keyOf = ({ code, words }: Told): string => `${code} ${words}`;
