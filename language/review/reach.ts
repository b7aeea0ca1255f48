// What a procedure speaks of, directly or by way of what it names: whom a change of a shared thing reaches. Knows no change.
import type { Declaration } from "#model/declarations.ts";
import type { Item, Procedure, Step } from "#model/procedure.ts";

export interface Reach {
  readonly all: ReadonlySet<Declaration>;
  /** Steps that speak of it, in the order of the text. */
  readonly stepsWith: (thing: Declaration) => readonly Step[];
}

/** @param procedureOf another procedure by its id, for those performed */
export function reachOf(procedure: Procedure, procedureOf: (id: string) => Procedure | undefined): Reach {
  const procedures = new Set([procedure]);
  const all = new Set<Declaration>();
  for (const one of procedures) {
    const { declarations, terms, ...own } = one;
    for (const thing of spokenIn(own, (id) => performed(procedures, procedureOf(id)))) addWith(all, thing);
    addBeside(all, declarations);
  }
  const steps = stepsIn(procedure.items).map((step) => {
    const found = new Set<Declaration>();
    for (const thing of spokenIn(step)) addWith(found, thing, "by itself");
    return { step, found };
  });
  return { all, stepsWith: (thing) => steps.filter(({ found }) => found.has(thing)).map(({ step }) => step) };
}

function performed(procedures: Set<Procedure>, procedure: Procedure | undefined): void {
  if (procedure !== undefined) procedures.add(procedure);
}

/** What counts though no line names it: fits of parts that are there, thresholds, who goes where. */
function addBeside(all: Set<Declaration>, declarations: readonly Declaration[]): void {
  for (const one of declarations) {
    const counts =
      one.kind === "threshold" ||
      (one.kind === "fit" && isThere(all, one.outer?.part) && isThere(all, one.inner?.part)) ||
      (one.kind === "arrangement" && isThere(all, one.part));
    if (counts) addWith(all, one);
  }
}

function isThere(all: ReadonlySet<Declaration>, part: Declaration | null | undefined): boolean {
  return part != null && all.has(part);
}

/** `by itself`: without the parts that it has to do with, of which a step that works on it need not know. */
type With = "others" | "by itself";

function addWith(all: Set<Declaration>, thing: Declaration, how: With = "others"): void {
  if (all.has(thing)) return;
  all.add(thing);
  for (const inner of behind(thing, how)) addWith(all, inner, how);
}

function behind(thing: Declaration, how: With): readonly Declaration[] {
  const known = KNOWN[how].get(thing);
  if (known !== undefined) return known;
  const alone = how === "by itself" && thing.kind === "part" ? { ...thing, ...NO_RELATIONS } : thing;
  const found = [...spokenIn({ ...alone })];
  KNOWN[how].set(thing, found);
  return found;
}

const NO_RELATIONS = { needs: [], encloses: [], retains: [], secures: [], locks: [], backsUp: [] };
const KNOWN: Readonly<Record<With, WeakMap<Declaration, readonly Declaration[]>>> = {
  others: new WeakMap(),
  "by itself": new WeakMap(),
};

/** Every declaration that a record holds, at any depth, but not what those hold. */
function spokenIn(record: object, perform: (id: string) => void = () => {}): ReadonlySet<Declaration> {
  const found = new Set<Declaration>();
  const seen = new Set<object>();
  const waiting: object[] = [record];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    if (seen.has(next)) continue;
    seen.add(next);
    if (next !== record && isDeclaration(next)) {
      found.add(next);
      continue;
    }
    if ("verb" in next && next.verb === "perform" && "procedure" in next) {
      const target = next.procedure as { readonly id: string } | null;
      if (target !== null) perform(target.id);
    }
    for (const [key, value] of Object.entries(next))
      if (typeof value === "object" && value !== null && !NO_NAMES.has(key)) waiting.push(value);
  }
  return found;
}

/** What holds no declaration, and is much. */
const NO_NAMES: ReadonlySet<string> = new Set(["span", "quantity", "place", "extent"]);

/** Only declarations have an id of their own and an extent. */
function isDeclaration(record: object): record is Declaration {
  return "kind" in record && "id" in record && "extent" in record && "damaged" in record;
}

function stepsIn(items: readonly Item[]): readonly Step[] {
  return items.flatMap((item): readonly Step[] => {
    if (item.kind === "step") return [item];
    if (item.kind === "task" || item.kind === "repeat" || item.kind === "any order") return stepsIn(item.items);
    if (item.kind === "when") return stepsIn([...item.arms.flatMap((arm) => arm.items), ...(item.otherwise ?? [])]);
    return [];
  });
}
