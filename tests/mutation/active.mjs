// Which mutant is in place, and how many steps have been taken with it; in the dry run, which mutants are come by. Stands in for what
// Stryker puts at the head of each instrumented file. Knows no tests.

/** The number of the mutant that is in place. */
export let active = -1;
let steps = 0;
let most = Number.POSITIVE_INFINITY;
/** So often something else was put in place, or counted. */
let turn = 0;
/** Mutant to number of hits; null where nothing is counted. */
let counts = null;

/** Called wherever Stryker would note what is covered, that is, in every loop: one that never ends is ended here. */
export function step() {
  if (++steps > most) throw new Error("too many steps: an endless loop");
}

/** In place of `step` in the dry run, with the mutants that are come by. */
export function cover(...mutants) {
  steps++;
  if (counts !== null) for (const mutant of mutants) counts[mutant] = (counts[mutant] ?? 0) + 1;
}

/** Puts that mutant in place; more steps than that are too many. */
export function activate(mutant, mostSteps) {
  active = mutant;
  turn++;
  steps = 0;
  most = mostSteps;
}

export function deactivate() {
  active = -1;
  most = Number.POSITIVE_INFINITY;
}

/** Since it was put in place. */
export function stepsTaken() {
  return steps;
}

/** What is come by from now on is counted in this object. */
export function countIn(object) {
  counts = object;
  turn++;
  steps = 0;
}

/** In place of the maps in which modules keep what they worked out: what was found with one mutant is not handed to the next. */
export function forgetful(KindOfMap) {
  let of = turn;
  let held = new KindOfMap();
  const now = () => {
    if (of !== turn) held = new KindOfMap();
    of = turn;
    return held;
  };
  return new Proxy(held, {
    get: (_, name) => {
      const map = now();
      const value = map[name];
      return typeof value === "function" ? value.bind(map) : value;
    },
  });
}
