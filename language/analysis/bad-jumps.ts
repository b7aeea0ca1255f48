// Jumps that lead where work cannot go on in order: into a repeat, a branch or a child of `in any order` from outside,
// back to what comes later, or ahead to what came before. Read off the records; knows no graph, so that it can leave them out.
import type { Item, Jump, Line, Procedure } from "#model/procedure.ts";
import type { Span } from "#syntax/span.ts";
import { ALWAYS, type Decision, NEVER } from "./decision.ts";
import { spanKey } from "./entries.ts";
import type { Run } from "./follow.ts";
import type { Raw } from "./raw-fact.ts";

export interface BadJump {
  readonly jump: Jump;
  /** The step or task as the jump names it. */
  readonly to: string;
  readonly why: "into a repeat" | "into a branch" | "into any order" | "forwards" | "backwards";
  /** Name or first words of the step or task it leads to. */
  readonly target: Span;
}

/** The jumps that nobody can follow, by the place of the jump. One to a name that is not known is none of them. */
export function badJumpsOf(procedure: Procedure): ReadonlyMap<string, BadJump> {
  const known = judged.get(procedure) ?? judge(procedure);
  judged.set(procedure, known);
  return known;
}

/** Asked before a procedure is followed and after. */
const judged = new WeakMap<Procedure, ReadonlyMap<string, BadJump>>();

function judge(procedure: Procedure): ReadonlyMap<string, BadJump> {
  const places: Places = { targets: new Map(), jumps: [] };
  gather(places, procedure.items, []);
  const bad = new Map<string, BadJump>();
  for (const { jump, inside } of places.jumps) {
    const target = jump.step.target === null ? undefined : places.targets.get(spanKey(jump.step.target));
    if (target === undefined) continue;
    const entered = target.inside.find((block) => !inside.some((own) => own.key === block.key));
    const why = entered?.why ?? wrongWay(jump, target.begins);
    if (why !== null) bad.set(spanKey(jump.span), { jump, to: jump.step.name, why, target: target.head });
  }
  return bad;
}

/** Where paths lead to one: for the choices that take it; else whatever is chosen, for it is a mistake of the text alone. */
export function badJumpFacts(run: Run): readonly Raw[] {
  const reached = new Map<string, Decision>();
  for (const { id, operation } of run.graph.nodes) {
    if (operation.kind !== "jump") continue;
    const key = spanKey(operation.jump.span);
    reached.set(key, run.decisions.or(reached.get(key) ?? NEVER, run.reachAt(id)));
  }
  return [...badJumpsOf(run.expanded.procedure)].map(([key, { jump, to, why, target }]) => {
    const where = reached.get(key) ?? NEVER;
    return {
      fact: { kind: "bad jump", span: jump.span, to, why, toSpan: target },
      where: where === NEVER ? ALWAYS : where,
      pass: [],
      subject: "",
    };
  });
}

/** A block that a jump may leave but not enter. */
interface Block {
  readonly key: string;
  readonly why: "into a repeat" | "into a branch" | "into any order";
}

interface Places {
  /** Steps and tasks by their place, with the blocks they stand in. */
  readonly targets: Map<string, { readonly head: Span; readonly begins: number; readonly inside: readonly Block[] }>;
  readonly jumps: { readonly jump: NamedJump; readonly inside: readonly Block[] }[];
}
type NamedJump = Exclude<Jump, { readonly kind: "stop" }>;

function gather(places: Places, items: readonly (Item | Line)[], inside: readonly Block[]): void {
  for (const item of items) {
    switch (item.kind) {
      case "task":
      case "step":
        places.targets.set(spanKey(item.span), { head: item.headSpan, begins: item.span.start, inside });
        gather(places, item.kind === "task" ? item.items : item.lines, inside);
        break;
      case "check":
        gather(places, item.fails ?? [], [...inside, { key: `fails ${item.span.start}`, why: "into a branch" }]);
        break;
      case "repeat":
        gather(places, item.items, [...inside, { key: `repeat ${item.span.start}`, why: "into a repeat" }]);
        break;
      case "when": {
        const arms: readonly (readonly (Item | Line)[])[] = [
          ...item.arms.map((arm) => arm.items),
          item.otherwise ?? [],
        ];
        arms.forEach((arm, at) => {
          gather(places, arm, [...inside, { key: `arm ${item.span.start} ${at}`, why: "into a branch" }]);
        });
        break;
      }
      case "any order":
        item.items.forEach((child: Item | Line, at) => {
          gather(places, [child], [...inside, { key: `child ${item.span.start} ${at}`, why: "into any order" }]);
        });
        break;
      case "return":
      case "go":
        places.jumps.push({ jump: item, inside });
    }
  }
}

function wrongWay(jump: NamedJump, begins: number): "forwards" | "backwards" | null {
  if (jump.kind === "return") return begins < jump.span.start ? null : "forwards";
  return begins > jump.span.start ? null : "backwards";
}
