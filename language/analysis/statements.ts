// Safety statements and notes as they are written: signal word against who is hurt, how not to be, what to wear, what is an
// instruction. Whether anything raises the hazard is not asked here.
import type { FileModel, Item, Line, Statement, Text } from "#model/procedure.ts";
import { blocksOf } from "#model/written-steps.ts";
import type { Span } from "#syntax/span.ts";
import { foundAt } from "./found-at.ts";
import { HAZARDS } from "./hazards/catalogue.ts";
import { isPlaceholder } from "./placeholder.ts";
import type { StatementFact } from "./statement-fact.ts";
import { askedIn } from "./wording/asked.ts";

/** What is found of the safety statements and notes of a file. */
export function statementFactsOf({ wording }: FileModel): readonly StatementFact[] {
  return wording.flatMap(({ procedure, verbs }) =>
    procedure === null ? [] : factsIn(procedure.items, { statements: [], inDoubt: false, verbs }),
  );
}

/** What holds for all of a block. */
interface InForce {
  readonly statements: readonly Statement[];
  /** One more may be among what could not be read. */
  readonly inDoubt: boolean;
  /** The shop's own. */
  readonly verbs: ReadonlySet<string>;
}

function factsIn(block: readonly (Item | Line)[], around: InForce): readonly StatementFact[] {
  const own = block.flatMap((one) => (one.kind === "statement" ? [one.statement] : []));
  const mayHold = block.some((one) => one.kind === "damaged" && one.noWork === true);
  const inForce = {
    ...around,
    statements: [...around.statements, ...own],
    inDoubt: around.inDoubt || mayHold,
  };
  return block.flatMap((one): readonly StatementFact[] => {
    switch (one.kind) {
      case "statement":
        return statementFacts(one.statement, inForce);
      case "note":
        return instructionFacts("note", one.note, around.verbs);
      case "task":
        return factsIn(one.items, inForce);
      case "step":
        return factsIn(one.lines, inForce);
      default:
        return blocksOf(one).flatMap((inner) => factsIn(inner, inForce));
    }
  });
}

function statementFacts(statement: Statement, { statements, inDoubt, verbs }: InForce): readonly StatementFact[] {
  const others = statements.filter((one) => one !== statement);
  return [
    ...equipmentOnly(statement),
    ...(inDoubt ? [] : [...peopleUnderCaution(statement, others), ...unprotected(statement, others)]),
    ...avoidanceFacts(statement),
    ...instructionFacts(statement.signal, statement, verbs),
  ];
}

/** A hazard that the shop declared may be to anybody. */
function equipmentOnly({ signal, hazards, span }: Statement): readonly StatementFact[] {
  if (signal === "caution" || !hazards.every(({ name }) => HAZARDS.get(name)?.harms === "equipment")) return [];
  return [signalFact(signal, "equipment", namesOf(hazards), span)];
}

function peopleUnderCaution(
  { signal, hazards, span }: Statement,
  others: readonly Statement[],
): readonly StatementFact[] {
  if (signal !== "caution") return [];
  const warned = namedBy(others.filter((one) => one.signal !== "caution"));
  const people = namesOf(hazards).filter((name) => HAZARDS.get(name)?.harms === "people" && !warned.has(name));
  return people.length === 0 ? [] : [signalFact(signal, "people", people, span)];
}

function signalFact(
  signal: Statement["signal"],
  harms: "people" | "equipment",
  hazards: readonly string[],
  span: Span,
): StatementFact {
  const wordSpan = { ...span, end: span.start + signal.length };
  return { kind: "signal word", ...foundAt(span), harms, signal, hazards, wordSpan };
}

function avoidanceFacts({ signal, hazards, avoid, span }: Statement): readonly StatementFact[] {
  if (signal === "caution" || (avoid !== null && !isPlaceholder(avoid))) return [];
  return [{ kind: "no avoidance", ...foundAt(span), signal, hazards: namesOf(hazards) }];
}

function unprotected({ hazards, wear, span }: Statement, others: readonly Statement[]): readonly StatementFact[] {
  if (saysWear(wear)) return [];
  const protectedFrom = namedBy(others.filter((one) => saysWear(one.wear)));
  const bare = hazards.flatMap(({ name }) => {
    const protection = HAZARDS.get(name)?.protection ?? null;
    return protection === null || protectedFrom.has(name) ? [] : [{ name, protection }];
  });
  if (bare.length === 0) return [];
  return [
    {
      kind: "no protection",
      ...foundAt(span),
      hazards: bare.map(({ name }) => name),
      protection: [...new Set(bare.map(({ protection }) => protection))],
      wears: wear.length > 0,
    },
  ];
}

function saysWear(wear: readonly string[]): boolean {
  return wear.some((one) => !isPlaceholder(one));
}

function instructionFacts(
  signal: Statement["signal"] | "note",
  { text, span }: Text,
  verbs: ReadonlySet<string>,
): readonly StatementFact[] {
  const [sentence] = askedIn(text, verbs);
  return sentence === undefined ? [] : [{ kind: "instruction in note", ...foundAt(span), signal, sentence }];
}

function namedBy(statements: readonly Statement[]): ReadonlySet<string> {
  return new Set(statements.flatMap(({ hazards }) => namesOf(hazards)));
}

function namesOf(hazards: Statement["hazards"]): readonly string[] {
  return hazards.map(({ name }) => name);
}
