// Writes procedures of any size for measuring: the same text for the same numbers, realistic in what it declares and
// does, free of findings. Each station is a cover that is put on, bolted down on its circle and measured.

/** Lines and steps of one station, as written by `station` below; a test holds them to it. */
export const linesPerStation = 48;
export const stepsPerStation = 6;

/** What the options of a generated procedure are for: each one adds a cap to one station. */
export interface Size {
  readonly stations: number;
  /** Yes/no options, spread over the stations; 0 gives a procedure without a branch. */
  readonly options?: number;
  /** Procedures that share the stations; one if not said. */
  readonly procedures?: number;
}

/** A whole file: what is declared, then its procedures. */
export function procedureText({ stations, options = 0, procedures = 1 }: Size): string {
  const numbers = Array.from({ length: stations }, (_, index) => index + 1);
  const optional = numbers.slice(0, options);
  const from = (at: number): number => Math.floor((at * stations) / procedures);
  const shares = Array.from({ length: procedures }, (_, at) => numbers.slice(from(at), from(at + 1)));
  return [
    shop,
    ...optional.map((n) => `option Cap${n}Wanted "cap ${n} is wanted" { yes no }\n`),
    ...numbers.map(declarations),
    ...optional.map((n) => `part Cap${n} "protective cap ${n}" { mass 0.1 kg }\n`),
    ...shares.map((share, at) => procedure(share, at + 1, options)),
  ].join("\n");
}

function procedure(stations: readonly number[], number: number, options: number): string {
  return [
    `procedure CloseStations${number} "Close stations ${stations[0]} to ${stations.at(-1)} of the drive" {
  document "WI-900-${number}" revision "A" dated 2026-05-04
  ambient 15 .. 25 °C
  finish with Cover${stations.at(-1)} is secured, no temporary parts
`,
    ...stations.map((n) => station(n, n <= options)),
    "}\n",
  ].join("\n");
}

/** A file of at least `lines` lines, by less than one station and the heads of its procedures more. */
export function procedureOfLines(lines: number, procedures = 1): string {
  return procedureText({ stations: Math.ceil(lines / linesPerStation), procedures });
}

/** A file with at least `steps` steps in its one procedure, by less than one station more. */
export function procedureOfSteps(steps: number, options = 0): string {
  return procedureText({ stations: Math.ceil(steps / stepsPerStation), options });
}

const shop = `// Generated for measuring.
source Manual "D-900 maintenance manual" revision "4"

role Fitter "fitter"
role Inspector "inspector"

tool Wrench "torque wrench" { torque 8 .. 60 N·m  accuracy 4 % }
tool Feeler "feeler gauge" { measures 0.03 .. 1 mm  resolution 0.01 mm }

consumable Grease "assembly grease" { flash point 210 °C }

value FinalTorque = 38 ± 2 N·m
`;

function declarations(n: number): string {
  return `ring Circle${n} "bolt circle ${n}" {
  count 8
  numbered clockwise seen from "drive end"
  position 1 at 12 o'clock
}

part Cover${n} "cover ${n}" {
  mass ${(n % 7) + 3} kg
}

part Screw${n}[1..8] "cover screw ${n}" {
  seats in Circle${n} by number
  secures Cover${n}
  thread "M10x1.5"
  class "8.8"
  nut factor 0.15 with Grease
  torque 38 ± 2 N·m with Grease per Manual "5.${n}"
}
`;
}

function station(n: number, hasOption: boolean): string {
  const cap = `    when Cap${n}Wanted is yes {
      step FitCap${n} "Put cap ${n} on." {
        install Cap${n} on Cover${n}
      }
    }
`;
  return `  task Station${n} "Close station ${n}" {
    step PlaceCover${n} "Put cover ${n} on its seat." {
      install Cover${n}
      takes ${(n % 3) + 2} min
      sign Fitter
    }
    step GreaseScrews${n} "Grease the threads of screws ${n}." {
      lubricate Screw${n}[all] with Grease
      takes 2 min
    }
    step SeatScrews${n} "Put in all screws ${n}." {
      install Screw${n}[all]
    }
    step Torque${n} "Tighten screws ${n}." {
      tighten Screw${n}[all] in cross pattern to 30 %, 70 %, 100 % of FinalTorque with Wrench
      critical
      sign Fitter
      hold for Inspector
      per Manual "5.${n}"
    }
    step Gap${n} "Measure the gap at cover ${n}." {
      check "the gap at the flange" with Feeler expect 0.05 .. 0.5 mm record
      after Torque${n}
    }
    step Look${n} "Inspect the rim of cover ${n}." {
      inspect Cover${n} "the rim for dents"
    }
${hasOption ? cap : ""}  }
`;
}
