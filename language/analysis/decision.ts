// Path conditions: exact sets of option assignments as reduced, ordered, multi-valued decision diagrams. Equal sets are
// the same number, so comparing costs nothing. Knows nothing of procedures.
import type { Assignment } from "./fact.ts";

/** A set of assignments. `NEVER` is empty, `ALWAYS` is all. Numbers are comparable only within one `Decisions`. */
export type Decision = number;
export const NEVER: Decision = 0;
export const ALWAYS: Decision = 1;

/** What is decided: an option (shown to people) or something hidden, such as the region a reading falls in. */
interface Variable {
  readonly key: string;
  readonly name: string;
  readonly values: readonly string[];
  readonly hidden: boolean;
}

export interface Decisions {
  /** The variable of that key, made on first use; `values` in their declared order. */
  readonly variable: (key: string, name: string, values: readonly string[], hidden?: boolean) => number;
  /** Where the variable has one of the values that `test` accepts. */
  readonly where: (variable: number, test: (value: string, at: number) => boolean) => Decision;
  readonly and: (a: Decision, b: Decision) => Decision;
  readonly or: (a: Decision, b: Decision) => Decision;
  readonly not: (a: Decision) => Decision;
  /** The assignments that can be made members of `a` by changing the variable: its value is forgotten. */
  readonly forget: (a: Decision, variable: number) => Decision;
  /** Whether `a` depends on the variable. */
  readonly dependsOn: (a: Decision, variable: number) => boolean;
  /** Without the hidden variables. */
  readonly visible: (a: Decision) => Decision;
  /**
   * Disjoint partial assignments whose union is exactly `a`; hidden variables forgotten. Empty for `NEVER`, one empty one for
   * `ALWAYS`. At most `most` are listed; `more` tells how many are not.
   */
  readonly assignments: (
    a: Decision,
    most?: number,
  ) => { readonly listed: readonly Assignment[]; readonly more: number };
}

/** Nobody reads more; what holds in so many ways is told with their number. */
const MOST_ASSIGNMENTS = 256;

/** A new, empty world of variables. */
export function createDecisions(): Decisions {
  const variables: Variable[] = [];
  const byKey = new Map<string, number>();
  // Node n >= 2 decides variable levels[n] with one child for each value. The terminals stand below all variables.
  const levels: number[] = [Number.MAX_SAFE_INTEGER, Number.MAX_SAFE_INTEGER];
  const children: (readonly Decision[])[] = [[], []];
  const unique = new Map<string, Decision>();
  const conjunctions = new Map<number, Decision>();
  const disjunctions = new Map<number, Decision>();
  const complements = new Map<Decision, Decision>();

  const node = (level: number, to: readonly Decision[]): Decision => {
    const first = to[0] ?? NEVER;
    if (to.every((child) => child === first)) return first;
    const key = `${level}:${to.join(",")}`;
    const known = unique.get(key);
    if (known !== undefined) return known;
    levels.push(level);
    children.push(to);
    unique.set(key, levels.length - 1);
    return levels.length - 1;
  };
  const levelOf = (a: Decision): number => levels[a] ?? Number.MAX_SAFE_INTEGER;
  const child = (a: Decision, level: number, value: number): Decision =>
    levelOf(a) === level ? (children[a]?.[value] ?? NEVER) : a;

  const combine = (a: Decision, b: Decision, absorbing: Decision, memo: Map<number, Decision>): Decision => {
    if (a === b) return a;
    if (a === absorbing || b === absorbing) return absorbing;
    if (a <= 1) return b;
    if (b <= 1) return a;
    const key = a < b ? a * 0x4000000 + b : b * 0x4000000 + a;
    const known = memo.get(key);
    if (known !== undefined) return known;
    const level = Math.min(levelOf(a), levelOf(b));
    const size = variables[level]?.values.length ?? 0;
    const to: Decision[] = [];
    for (let value = 0; value < size; value++)
      to.push(combine(child(a, level, value), child(b, level, value), absorbing, memo));
    const result = node(level, to);
    memo.set(key, result);
    return result;
  };
  const and = (a: Decision, b: Decision): Decision => combine(a, b, NEVER, conjunctions);
  const or = (a: Decision, b: Decision): Decision => combine(a, b, ALWAYS, disjunctions);
  const not = (a: Decision): Decision => {
    if (a <= 1) return 1 - a;
    const known = complements.get(a);
    if (known !== undefined) return known;
    const result = node(levelOf(a), (children[a] ?? []).map(not));
    complements.set(a, result);
    return result;
  };
  const forget = (a: Decision, variable: number, memo = new Map<Decision, Decision>()): Decision => {
    if (levelOf(a) > variable) return a;
    const known = memo.get(a);
    if (known !== undefined) return known;
    const to = children[a] ?? [];
    const result =
      levelOf(a) === variable
        ? to.reduce(or, NEVER)
        : node(
            levelOf(a),
            to.map((next) => forget(next, variable, memo)),
          );
    memo.set(a, result);
    return result;
  };
  const dependsOn = (a: Decision, variable: number, seen = new Set<Decision>()): boolean => {
    if (levelOf(a) >= variable) return levelOf(a) === variable;
    if (seen.has(a)) return false;
    seen.add(a);
    return (children[a] ?? []).some((next) => dependsOn(next, variable, seen));
  };
  const visible = (a: Decision): Decision =>
    variables.reduce((left, variable, level) => (variable.hidden ? forget(left, level) : left), a);

  /** In how many disjoint partial assignments a set falls; forty options can make more than anybody could list. */
  const count = (a: Decision, memo = new Map<Decision, number>()): number => {
    if (a <= 1) return a;
    const known = memo.get(a);
    if (known !== undefined) return known;
    const all = (children[a] ?? []).reduce((so, next) => so + count(next, memo), 0);
    memo.set(a, all);
    return all;
  };
  const collect = (a: Decision, so: Assignment, into: Assignment[], most: number): void => {
    if (into.length >= most) return;
    if (a === ALWAYS) into.push(so);
    const variable = variables[levelOf(a)];
    if (variable === undefined) return;
    (children[a] ?? []).forEach((next, value) => {
      if (next !== NEVER) collect(next, { ...so, [variable.name]: variable.values[value] ?? "" }, into, most);
    });
  };

  return {
    variable: (key, name, values, hidden = false) => {
      const known = byKey.get(key);
      if (known !== undefined) return known;
      variables.push({ key, name, values, hidden });
      byKey.set(key, variables.length - 1);
      return variables.length - 1;
    },
    where: (variable, test) =>
      node(
        variable,
        (variables[variable]?.values ?? []).map((value, at) => (test(value, at) ? ALWAYS : NEVER)),
      ),
    and,
    or,
    not,
    forget: (a, variable) => forget(a, variable),
    dependsOn: (a, variable) => dependsOn(a, variable),
    visible,
    assignments: (a, most = MOST_ASSIGNMENTS) => {
      const listed: Assignment[] = [];
      const shown = visible(a);
      collect(shown, {}, listed, most);
      return { listed, more: count(shown) - listed.length };
    },
  };
}
