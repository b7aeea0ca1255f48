// limits.balance: an arrangement that leaves more unbalance than it may, or that is none yet.
import type { BalanceFact } from "#analysis/limits/limit-fact.ts";
import { show } from "#quantity/display.ts";
import { rule, type Saying } from "../rule.ts";
import { tableWords } from "../table-wording.ts";
import { listed, wantedFound } from "../wording.ts";

const example = (table: string): string => `ring BladeSeat "blade seat" {
  count 4
  numbered clockwise seen from "drive end"
  position 1 at 12 o'clock
}
part Blade[1..4] "fan blade" { seats in BladeSeat by number }

arrangement BladeOrder of Blade in BladeSeat {
  radius 120 mm
  unbalance at most 500 g·mm
  from "${table}"
}
`;

export const balance = rule({
  code: "limits.balance",
  severity: "error",
  about: ["unbalance", "occupancy", "balance data", "table"],
  gravity: (matter) => (matter.kind === "balance data" && matter.lacks !== "known grade" ? "warning" : "error"),
  page: {
    finds:
      "An arrangement of parts on a ring that leaves more unbalance than its limit or its grade permits, that has no part or two parts in a position, or whose table cannot be read. What is left is the sum of the parts' moments, each mass times the radius in the direction of its position.",
    why: "What is left shakes the machine at each turn, with the square of the speed. Bearings and seals pay for it.",
    fails: example("as-delivered.csv"),
    mended: example("arranged.csv"),
    source:
      "The sum of moments is statics. Grades: ISO 21940-11, permissible unbalance = mass of the rotor × grade / (2π × speed) (second hand).",
    files: {
      "as-delivered.csv": "position,serial,mass\n1,B-11,0.412 kg\n2,B-12,0.411 kg\n3,B-13,0.405 kg\n4,B-14,0.406 kg\n",
      "arranged.csv": "position,serial,mass\n1,B-11,0.412 kg\n2,B-13,0.405 kg\n3,B-12,0.411 kg\n4,B-14,0.406 kg\n",
    },
  },
  subject: (matter) =>
    matter.kind === "unbalance"
      ? `${matter.arrangement} ${matter.how}`
      : matter.kind === "table"
        ? `${matter.problem.what} ${"column" in matter.problem ? matter.problem.column : ""}`
        : matter.kind === "occupancy"
          ? JSON.stringify(matter.fault)
          : matter.lacks,
  say: (matter) => {
    switch (matter.kind) {
      case "unbalance":
        return unbalanceWords(matter);
      case "occupancy":
        return occupancyWords(matter);
      case "balance data":
        return dataWords(matter);
      case "table":
        return tableWords(matter.path, matter.problem, matter.moreRows);
    }
  },
});

function unbalanceWords(fact: BalanceFact & { readonly kind: "unbalance" }): Saying {
  const { arrangement, residual, limit, how, grade, count, radius, direction, limitAt, span } = fact;
  const wanted = grade === null ? "" : ` (${grade.grade} at ${show(grade.speed)}, ${show(grade.mass)})`;
  const sum = `the sum of ${count} ${radius === null ? "moments" : `masses at ${show(radius)}`}`;
  const taken = grade?.ofSet ? "\nThe mass is that of the set alone, for want of the rotor's." : "";
  return {
    message: `${arrangement} leaves more unbalance than it may.`,
    why: `${wantedFound(
      `${atMost(show(limit))}${wanted}`,
      `${show(residual)}, ${sum}, ${towards(direction, count)}`,
    )}${taken}`,
    remedy: `Ask for a better order with “sprag arrange ${span.path}”${grade?.ofSet ? ", or declare the “mass” of the whole rotor" : ""}.`,
    related: [{ message: how === "grade" ? "The grade is asked for here" : "The limit is set here", span: limitAt }],
  };
}

function atMost(shown: string): string {
  return /^at most/.test(shown) ? shown : `at most ${shown}`;
}

/** `toward position 3`, `between positions 16 and 1`. */
function towards(direction: number, count: number): string {
  const near = Math.round(direction);
  if (Math.abs(direction - near) < 0.05) return `toward position ${near > count ? 1 : near}`;
  const before = Math.floor(direction);
  return `between positions ${before} and ${before >= count ? 1 : before + 1}`;
}

function occupancyWords({ ring, table, count, fault, span }: BalanceFact & { readonly kind: "occupancy" }): Saying {
  const each = `Each of the ${count} positions of ${ring} holds exactly one part.`;
  switch (fault.how) {
    case "empty":
      return {
        message: `${fault.positions.length === 1 ? "Position" : "Positions"} ${few(fault.positions.map(String))} of ${ring} ${fault.positions.length === 1 ? "holds" : "hold"} no part.`,
        why: `${each} ${table} has no row for ${fault.positions.length === 1 ? "it" : "them"}.`,
        remedy: `Add the parts that are missing to ${table}.`,
      };
    case "nowhere":
      return {
        message: `${table}, line ${fault.line}: ${few(fault.serials)} ${fault.serials.length === 1 ? "has" : "have"} no position.`,
        why: each,
        remedy: `Give each part its position, or have it proposed with “sprag arrange ${span.path}”.`,
      };
    case "outside":
      return {
        message: `${table}, line ${fault.line}: ${ring} has no position ${fault.position}.`,
        why: `${ring} has ${count} positions, counted from 1.`,
        remedy: `Give ${fault.serial} a position from 1 to ${count}.`,
      };
    case "twice":
      return {
        message: `${table}: position ${fault.position} holds both ${fault.serials[0]} and ${fault.serials[1]}.`,
        why: `${each} These stand in lines ${fault.lines[0]} and ${fault.lines[1]}.`,
        remedy: "Give one of them another position.",
      };
    case "same serial":
      return {
        message: `${table} has ${fault.serial} twice.`,
        why: `It stands in lines ${fault.lines[0]} and ${fault.lines[1]}, and one part cannot be in two places.`,
        remedy: "Correct the serial of one of them.",
      };
  }
}

const MOST_NAMED = 6;

function few(names: readonly string[]): string {
  const rest = names.length - MOST_NAMED + 1;
  return listed(names.length <= MOST_NAMED ? names : [...names.slice(0, MOST_NAMED - 1), `${rest} more`], "and");
}

function dataWords({ arrangement, lacks, given }: BalanceFact & { readonly kind: "balance data" }): Saying {
  switch (lacks) {
    case "known grade":
      return {
        message: `“${given}” is no balance grade.`,
        why: "The grades of ISO 21940-11 are G0.4, G1, G2.5, G6.3, G16, G40, G100, G250, G630, G1600 and G4000.",
        remedy: "Write the grade that the drawing asks for.",
      };
    case "radius":
      return {
        message: `${arrangement} has masses and no radius.`,
        why: "The same mass shakes more the farther out it sits, so nothing can be worked out.",
        remedy: "Say the radius of the parts' centres of mass, such as “radius 420 mm”.",
      };
    case "speed":
      return {
        message: `${arrangement} has a balance grade and no speed.`,
        why: "What a grade permits depends on the speed.",
        remedy: "Say the speed it runs at, such as “speed 1500 rpm”.",
      };
    case "grade":
      return {
        message: `${arrangement} has a speed and no balance grade.`,
        why: "The speed alone permits nothing and forbids nothing.",
        remedy: 'Say the grade, such as “grade "G6.3"”, or take the speed out.',
      };
    case "mass":
      return {
        message: `${arrangement} has a balance grade and no mass.`,
        why: "What a grade permits depends on the mass of the rotor, and moments do not tell it.",
        remedy: "Say the mass of the whole rotor, such as “mass 64 kg”.",
      };
  }
}
