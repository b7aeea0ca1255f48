// A small shop, a procedure in it, and what is found of hazards and statements there. For the tests of this folder.
import { hazardFactsOf } from "#analysis/hazards/hazards.ts";
import { inWords } from "../limits/whole-limits.ts";
import { onPaper, type PaperSettings } from "../run-on-paper.ts";

const SHOP = `option Deep { yes no }
hazard Dust "dust of linings"
energy Supply "motor supply" { voltage 400 V AC }
tool Heater "heater" { heats to 300 °C }
tool Hoist "hoist" { lifts 90 kg }
tool Grinder "grinder" { hazard eye, noise }
tool Meter "meter" { measures 30 .. 130 dB(A) }
consumable Cleaner "cleaner" { hazard skin }
part Seat "seat" { heat limit 300 °C }
part Blade[1..4] "blade" { sharp }
part Lining "lining" { hazard Dust }
part Cover "cover" { mass 40 kg }
part Rotor "rotor" { driven by Supply }
ring Circle "circle" { count 4  numbered clockwise seen from "front"  position 1 at 12 o'clock }
`;
export const CUT = 'warning cutting "Sharp." avoid "Hold it by its back."';

export const work = (lines: string, more = ""): string => `${SHOP}${more}procedure Work "Work" {\n${lines}\n}\n`;

/** Whole, of the last procedure, in the order of the text. */
export function facts(text: string, settings: PaperSettings = {}): readonly object[] {
  return onPaper(text, settings)
    .runs.slice(-1)
    .flatMap((run) => hazardFactsOf(run))
    .sort((a, b) => a.span.start - b.span.start)
    .map(({ pass, more, ...fact }) => ({
      ...(inWords(text, fact) as object),
      ...(pass.length === 0 ? {} : { pass, more }),
    }));
}
/** `kind hazards of source: words`. */
export const told = (lines: string, settings: PaperSettings = {}, more = ""): readonly string[] =>
  facts(work(lines, more), settings).map((fact) => {
    const { kind, raised, hazards, span } = fact as {
      kind: string;
      span: string;
      hazards?: readonly string[];
      raised?: { hazards: readonly string[]; of: { name: string } };
    };
    const of = raised === undefined ? hazards?.join(", ") : `${raised.hazards.join(", ")} of ${raised.of.name}`;
    return `${kind.replace("hazard ", "").replace(/ ?statement ?/, "")} ${of}: ${span.slice(0, 40)}`;
  });
