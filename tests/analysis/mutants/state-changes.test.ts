// What a change makes of a variable at one point: which values it then can have, where each came from and for which choices.
// Two options with two choices each; a variable from 10 on is a film.
import { describe, expect, test } from "vitest";
import { type Cell, createCells, UNKNOWN } from "#analysis/cell.ts";
import { ALWAYS, createDecisions, type Decision, NEVER } from "#analysis/decision.ts";
import { apply, assign, cellOf, meet, type State, type StateContext, sameState } from "#analysis/flow-state.ts";
import { emptyStore } from "#analysis/store.ts";
import type { Update } from "#analysis/update.ts";

const decisions = createDecisions();
const cells = createCells(decisions);
const choose = (name: string): readonly [Decision, Decision] => {
  const variable = decisions.variable(name, name, ["yes", "no"]);
  return [decisions.where(variable, (value) => value === "yes"), decisions.where(variable, (value) => value === "no")];
};
const [FULL, PART] = choose("Full");
const [WET, DRY] = choose("Wet");
const { and, or } = decisions;

/** Nodes from 100 on only suppose. */
const context: StateContext = {
  world: { isFilm: (variable: number) => variable >= 10 } as StateContext["world"],
  cells,
  decisions,
  atStart: (variable) => cells.one(`start ${variable}`, 0),
  isSupposed: (node) => node >= 100,
};
const START: State = { reach: ALWAYS, store: emptyStore<Cell>(), films: emptyStore<Cell>() };
type Row = readonly [value: string, from: number, when: Decision];
const cell = (...rows: readonly Row[]): Cell => cells.of(rows.map(([value, from, when]) => ({ value, from, when })));
const rows = (of: Cell): readonly Row[] => of.map(({ value, from, when }) => [value, from, when] as const);
const having = (given: Readonly<Record<number, Cell>>): State =>
  Object.entries(given).reduce((so, [variable, of]) => assign(context, so, Number(variable), of), START);
const changed = (state: State, update: Partial<Update>, from = 7): readonly Row[] =>
  rows(cellOf(context, apply(context, state, [{ variable: 1, change: () => "new", ...update }], from), 1));

describe("a plain change", () => {
  test("of what nothing was said, from the start", () => {
    expect(rows(cellOf(context, START, 1))).toEqual([["start 1", 0, ALWAYS]]);
    expect(rows(cellOf(context, START, 12))).toEqual([["start 12", 0, ALWAYS]]);
    expect(changed(START, {})).toEqual([["new", 7, ALWAYS]]);
  });
  test("a value that stays keeps where it came from; another comes from here", () => {
    const state = having({ 1: cell(["a", 3, FULL], ["b", 4, PART]) });
    expect(changed(state, { change: (value) => (value === "a" ? "b" : value) })).toEqual([
      ["b", 4, PART],
      ["b", 7, FULL],
    ]);
  });
  test("is told its own value, nothing else, and where it is", () => {
    const told: unknown[] = [];
    changed(having({ 1: cell(["a", 3, ALWAYS]) }), {
      change: (...given) => {
        told.push(given);
        return "b";
      },
    });
    expect(told).toEqual([["a", "", 7, false]]);
  });
});

describe("what decides where it came from", () => {
  const state = having({ 1: cell(["a", 3, FULL], ["b", 104, PART]) });
  test.each<[name: string, update: Partial<Update>, left: readonly Row[]]>([
    [
      "kept",
      { keepsOrigin: "always", change: () => "a" },
      [
        ["a", 3, FULL],
        ["a", 104, PART],
      ],
    ],
    [
      "renewed always",
      { renews: "always", change: (value) => value },
      [
        ["a", 7, FULL],
        ["b", 7, PART],
      ],
    ],
    [
      "renewed where supposed",
      { renews: "where supposed", change: (value) => value },
      [
        ["a", 3, FULL],
        ["b", 7, PART],
      ],
    ],
    ["another value where supposed", { renews: "where supposed", change: () => "c" }, [["c", 7, ALWAYS]]],
  ])("%s", (_name, update, left) => {
    expect(changed(state, update)).toEqual(left);
  });
});

describe("a change by another variable", () => {
  test("each of its values with each of the other, for the choices they share", () => {
    const state = having({ 1: cell(["a", 3, FULL], ["b", 4, PART]), 2: cell(["x", 5, WET], ["y", 6, DRY]) });
    expect(changed(state, { by: 2, change: (value, by) => (by === "x" ? value + by : value) })).toEqual([
      ["a", 3, and(FULL, DRY)],
      ["b", 4, and(PART, DRY)],
      ["ax", 7, and(FULL, WET)],
      ["bx", 7, and(PART, WET)],
    ]);
  });
});

describe("a change where something is so", () => {
  const isX = (value: string): boolean => value === "x";
  const isY = (value: string): boolean => value === "y";
  const work = (given: Readonly<Record<number, Cell>>, update: Partial<Update>): readonly Row[] =>
    changed(having({ 1: cell(["a", 3, ALWAYS]), ...given }), update);
  const NEW: Row = ["new", 7, ALWAYS];
  const OLD: Row = ["a", 3, ALWAYS];
  test.each<
    [name: string, given: Readonly<Record<number, Cell>>, when: NonNullable<Update["when"]>, left: readonly Row[]]
  >([
    ["so", { 2: cell(["x", 5, ALWAYS]) }, [[{ variable: 2, test: isX }]], [NEW]],
    ["not so", { 2: cell(["y", 5, ALWAYS]) }, [[{ variable: 2, test: isX }]], [OLD]],
    [
      "so for one choice",
      { 2: cell(["x", 5, FULL], ["y", 6, PART]) },
      [[{ variable: 2, test: isX }]],
      [
        ["a", 3, PART],
        ["new", 7, FULL],
      ],
    ],
    ["may be so or not", { 2: cell(["x", 5, ALWAYS], ["y", 6, ALWAYS]) }, [[{ variable: 2, test: isX }]], [OLD, NEW]],
    ["not known", { 2: cell([UNKNOWN, 5, ALWAYS]) }, [[{ variable: 2, test: isX }]], [OLD, NEW]],
    [
      "both of two",
      { 2: cell(["x", 5, FULL], ["y", 6, PART]), 4: cell(["x", 5, WET], ["y", 6, DRY]) },
      [
        [
          { variable: 2, test: isX },
          { variable: 4, test: isX },
        ],
      ],
      [
        ["a", 3, or(PART, DRY)],
        ["new", 7, and(FULL, WET)],
      ],
    ],
    [
      "one of two",
      { 2: cell(["x", 5, FULL], ["y", 6, PART]), 4: cell(["x", 5, WET], ["y", 6, DRY]) },
      [[{ variable: 2, test: isX }], [{ variable: 4, test: isX }]],
      [
        ["a", 3, and(PART, DRY)],
        ["new", 7, or(FULL, WET)],
      ],
    ],
    [
      "one way or the other, always",
      { 2: cell(["x", 5, FULL], ["y", 6, PART]) },
      [[{ variable: 2, test: isX }], [{ variable: 2, test: isY }]],
      [NEW],
    ],
    ["none", {}, [], [OLD]],
    ["nothing is asked", {}, [[]], [NEW]],
  ])("%s", (_name, given, when, left) => {
    expect(work(given, { when })).toEqual(left);
  });
  test("what changes nothing leaves the very same", () => {
    const state = having({ 1: cell(["a", 3, ALWAYS]), 2: cell(["x", 5, FULL], ["y", 6, PART]) });
    const update: Update = { variable: 1, when: [[{ variable: 2, test: isX }]], change: (value) => value };
    expect(apply(context, state, [update], 7)).toBe(state);
    expect(changed(state, { ...update, renews: "always" })).toEqual([
      ["a", 3, PART],
      ["a", 7, FULL],
    ]);
  });
  describe("what is only taken as met", () => {
    const assumed = (of: Cell): readonly Row[] =>
      work({ 2: of }, { assumed: true, when: [[{ variable: 2, test: isX }]] });
    test.each<[name: string, of: Cell, left: readonly Row[]]>([
      ["is so where nothing is known", cell([UNKNOWN, 5, ALWAYS]), [NEW]],
      ["is so where it is told", cell(["x", 5, ALWAYS]), [NEW]],
      ["is not so where the contrary is told", cell(["y", 5, ALWAYS]), [OLD]],
      ["does not rest on what was itself only taken as met", cell(["x", 105, ALWAYS]), [OLD]],
      [
        "and so for each choice",
        cell(["x", 105, FULL], ["x", 5, PART]),
        [
          ["a", 3, FULL],
          ["new", 7, PART],
        ],
      ],
    ])("%s", (_name, of, left) => {
      expect(assumed(of)).toEqual(left);
    });
    test("a plain change may rest on it", () => {
      expect(work({ 2: cell(["x", 105, ALWAYS]) }, { when: [[{ variable: 2, test: isX }]] })).toEqual([NEW]);
    });
  });
});

describe("films", () => {
  const state = having({ 1: cell(["a", 3, ALWAYS]), 10: cell(["wet", 4, ALWAYS]) });
  test("stand apart, and a look uses all of them up and nothing else", () => {
    expect(rows(cellOf(context, state, 10))).toEqual([["wet", 4, ALWAYS]]);
    const looked = apply(context, state, [{ variable: 10, usesFilms: true, change: (value) => value }], 7);
    expect(rows(cellOf(context, looked, 10))).toEqual([["start 10", 0, ALWAYS]]);
    expect(rows(cellOf(context, looked, 1))).toEqual([["a", 3, ALWAYS]]);
  });
  test("changes are made one after the other", () => {
    const looked = apply(
      context,
      state,
      [
        { variable: 10, usesFilms: true, change: (value) => value },
        { variable: 10, change: (value) => `${value} again` },
      ],
      7,
    );
    expect(rows(cellOf(context, looked, 10))).toEqual([["start 10 again", 7, ALWAYS]]);
  });
  test("what is assigned and was so is the same state", () => {
    expect(assign(context, state, 10, cell(["wet", 4, ALWAYS]))).toBe(state);
    expect(assign(context, state, 1, cell(["a", 3, ALWAYS]))).toBe(state);
    expect(assign(context, state, 1, cell(["a", 5, ALWAYS]))).not.toBe(state);
  });
});

describe("where two ways meet", () => {
  const free = (_variable: number, of: Cell): Cell => of;
  const left: State = { ...having({ 1: cell(["a", 3, ALWAYS]), 10: cell(["wet", 4, ALWAYS]) }), reach: FULL };
  const right: State = { ...having({ 1: cell(["b", 5, ALWAYS]), 2: cell(["c", 6, ALWAYS]) }), reach: PART };
  test("each has its own choices; what one does not speak of is as at the start there", () => {
    const met = meet(context, left, right, free);
    expect(met.reach).toBe(ALWAYS);
    expect(rows(cellOf(context, met, 1))).toEqual([
      ["a", 3, FULL],
      ["b", 5, PART],
    ]);
    expect(rows(cellOf(context, met, 2))).toEqual([
      ["start 2", 0, FULL],
      ["c", 6, PART],
    ]);
    expect(rows(cellOf(context, met, 10))).toEqual([
      ["start 10", 0, PART],
      ["wet", 4, FULL],
    ]);
  });
  test("a way that nobody goes does not count", () => {
    const none = { ...right, reach: NEVER };
    expect(meet(context, left, none, free)).toBe(left);
    expect(meet(context, none, left, free)).toBe(left);
  });
  test("what grows without end is bounded, of each variable by itself", () => {
    const asked: number[] = [];
    const met = meet(context, left, right, (variable, of) => {
      asked.push(variable);
      return variable === 1 ? cells.one(UNKNOWN, 0) : of;
    });
    expect(asked).toEqual([1, 2, 10]);
    expect(rows(cellOf(context, met, 1))).toEqual([[UNKNOWN, 0, ALWAYS]]);
  });
  test("the same state or another", () => {
    const again: State = { ...having({ 10: cell(["wet", 4, ALWAYS]), 1: cell(["a", 3, ALWAYS]) }), reach: FULL };
    expect(sameState(left, again)).toBe(true);
    expect(sameState(left, { ...again, reach: PART })).toBe(false);
    expect(sameState(left, { ...again, store: right.store })).toBe(false);
    expect(sameState(left, { ...again, films: right.films })).toBe(false);
  });
});
