// The direction in which a ring is filled: which positions come next, which were passed over, and what parts hold already.
import { describe, expect, test } from "vitest";
import { found } from "../run-on-paper.ts";
import { wholeFacts } from "./whole-facts.ts";

interface Ring {
  readonly count?: number;
  readonly numbered?: string;
  readonly fill?: string;
  readonly begin?: readonly number[];
  readonly pad?: string;
}

/** A ring that is filled in the order of its numbers, unless said otherwise. */
function ringText({
  count = 8,
  numbered = 'numbered clockwise seen from "drive end"',
  fill = "fill clockwise",
  pad = "part",
}: Ring): string {
  return `ring Wheel "wheel" { count ${count} ${numbered} ${fill} }
${pad} Pad[1..${count}] "pad" { seats in Wheel by number }
${pad} Plug[1..${count}] "plug" { seats in Wheel by number needs Pad[same] }
`;
}

/** Each pad in turn: 3 is put in, -3 taken out, 3.5 put in with a press. */
function text(moves: readonly number[], ring: Ring = {}): string {
  const begin = (ring.begin ?? []).map((at) => `begin with Pad[${at}] is installed`).join(" ");
  const steps = moves.map((move) =>
    move < 0
      ? `step remove Pad[${-move}]`
      : Number.isInteger(move)
        ? `step install Pad[${move}]`
        : `step press Pad[${Math.floor(move)}] in Wheel[${Math.floor(move)}]`,
  );
  return `${ringText(ring)}procedure Work "Work" { ${begin} ${steps.join(" ")} }`;
}

/** What is told: 3 where pad 3 goes the wrong way round, "2" where position 2 was passed over. */
function told(moves: readonly number[], ring: Ring = {}): readonly (number | string)[] {
  return wholeFacts(text(moves, ring)).flatMap((fact) => {
    if (!("kind" in fact) || fact.kind !== "direction" || !("skipped" in fact) || !("part" in fact)) return [];
    const number = /\d+/.exec(String(fact.skipped ?? fact.part))?.[0] ?? "";
    return [fact.skipped === null ? Number(number) : number];
  });
}

type Case = [moves: readonly number[], told: readonly (number | string)[], ring?: Ring];

describe("up in the numbers", () => {
  test.each<Case>([
    [[1], []],
    [[5], []],
    [[1, 2, 3, 4, 5, 6, 7, 8], []],
    [[5, 6, 7, 8, 1, 2, 3, 4], []],
    [[1, 2.5, 3.5], []],
    // The wrong way round; after that no more is said of the ring.
    [[3, 2], [2]],
    [[3, 2, 1], [2]],
    [[3, 2.5], [2]],
    [[1, 8], [8]],
    [[3, 2, 5, 4], [2]],
    // Onwards and backwards are as far: onwards.
    [[1, 5], ["2"]],
    [[1, 6], [6]],
    [[1, 4], ["2"]],
    // From both ends of what is filled.
    [[1, 2, 3, 6], ["4"]],
    [[1, 2, 3, 5, 4], [4]],
    [[4, 5, 6, 2], [2]],
    [[4, 5, 6, 1], ["7"]],
    [[7, 8, 1, 2], []],
    [[7, 1], ["8"]],
    [[7, 1, 8], [8]],
    // A single place that is closed has no direction.
    [[1, 3], ["2"]],
    [[1, 3, 2], [2]],
    [[1, 2, 3, 4, 5, 6, 8, 7], [8]],
    [[1, 2, 3, 4, 5, 6, 7, 8], []],
    // Passed over twice.
    [[1, 3, 5], ["2"]],
    [[1, 3, 4, 2], [2]],
    [[1, 4, 2], [2]],
    [[1, 4, 3], [3]],
  ])("%s: %s", (moves, expected) => {
    expect(told(moves)).toEqual(expected);
  });
});

describe("taken out again", () => {
  test.each<Case>([
    // The last goes: the one before is the last.
    [[1, 2, 3, -3, 3], []],
    [[1, 2, 3, -3, -2, 2, 3], []],
    [[3, 4, -4, 2], [2]],
    // The first goes: the one after is the first, and what is before it is as before.
    [[1, 2, 3, -1, 1], [1]],
    [[1, 2, 3, -1, -2, 4], []],
    // All go: it begins anew.
    [[3, -3, 2], []],
    [[3, 4, -4, -3, 2, 3], []],
    [[3, 4, -3, -4, 2, 3], []],
    // One in the middle goes: the place is closed.
    [[1, 2, 3, -2, 2, 4], []],
    [[1, 2, 3, 4, -2, -3, 2, 3], []],
    // What was passed over is so no more when the arc ends before it.
    [[1, 3, -3], []],
    [[1, 3, -3, 2, 3], []],
    [[1, 4, -4, 2], []],
    [[1, 4, -1], []],
    [[1, 4, -1, 3], [3]],
    [[1, 3, 5, -5], ["2"]],
    [[1, 3, 5, -1], ["4"]],
    [[1, 4, 6, -6, 5], ["2"]],
    // The arc ends at what is still held in it.
    [[1, 2, 3, -2, -3, 3], ["2"]],
    [[1, 2, 3, 4, -2, -3, -4, 2], []],
    [[1, 2, 3, -2, -1, 2], [2]],
    [[1, 2, 3, -2, -1, -3, 2], []],
    // What was told is not told again.
    [[3, 2, -3, 3], [2]],
    // Out already.
    [[1, 2, -5, 3], []],
  ])("%s: %s", (moves, expected) => {
    expect(told(moves)).toEqual(expected);
  });
});

describe("in at the start", () => {
  test.each<Case>([
    [[3, 2], [2], { begin: [] }],
    // Nothing is filled by it, and it is no place passed over.
    [[2, 1], [1], { begin: [3] }],
    [[2, 4], [], { begin: [3] }],
    [[2, 5], ["4"], { begin: [3] }],
    // Between two that are in there is no direction.
    [[4, 3], [3], { begin: [1] }],
    [[3, 2], [], { begin: [1] }],
    [[5, 2], [], { begin: [1, 3] }],
    [[5, 2, 6], [], { begin: [1, 3] }],
    [[1, 8], [], { begin: [7] }],
    // Out of what was in nothing is filled.
    [[-3, 3], [], { begin: [3] }],
    [[-3, -4, 4, 3], [3], { begin: [3, 4] }],
    [[-3, -4, 3, 4], [], { begin: [3, 4] }],
    [[5, -3, 3], [3], { begin: [3] }],
    // Put in once more, where it is.
    [[5, 3], [], { begin: [3] }],
  ])("%s: %s, %o", (moves, expected, ring) => {
    expect(told(moves, ring)).toEqual(expected);
  });
});

describe("which way", () => {
  const CLOCKWISE = 'numbered clockwise seen from "drive end"';
  const COUNTER = 'numbered counterclockwise seen from "drive end"';
  test.each<[ring: Ring, isUp: boolean]>([
    [{ numbered: CLOCKWISE, fill: "fill clockwise" }, true],
    [{ numbered: CLOCKWISE, fill: "fill counterclockwise" }, false],
    [{ numbered: COUNTER, fill: "fill clockwise" }, false],
    [{ numbered: COUNTER, fill: "fill counterclockwise" }, true],
  ])("%o: up %s", (ring, isUp) => {
    expect(told([3, 4], ring)).toEqual(isUp ? [] : [4]);
    expect(told([4, 3], ring)).toEqual(isUp ? [3] : []);
    expect(told([8, 1], ring)).toEqual(isUp ? [] : [1]);
    expect(told([1, 3, 5], ring)).toEqual(isUp ? ["2"] : [3]);
    expect(told([5, 3, 1], ring)).toEqual(isUp ? [3] : ["4"]);
  });
  test("not asked where nobody says which way the numbers run", () => {
    expect(told([3, 4], { numbered: "", fill: "fill counterclockwise" })).toEqual([]);
    expect(told([4, 3], { numbered: "", fill: "fill clockwise" })).toEqual([]);
  });
  test("not asked where the ring says nothing, has one place, or the part goes out again", () => {
    expect(told([3, 2], { fill: "" })).toEqual([]);
    expect(told([1, -1, 1], { count: 1 })).toEqual([]);
    expect(told([1, 2], { count: 2 })).toEqual([]);
    expect(found(`${text([3, 2], { pad: "temporary part" }).slice(0, -1)} step remove Pad[2..3] }`)).toEqual([]);
  });
  test.each<Case>([
    [[1, 4], ["2"], { count: 6 }],
    [[1, 5], [5], { count: 6 }],
    [[1, 3], ["2"], { count: 5 }],
    [[1, 4], [4], { count: 5 }],
  ])("as far on as back: %s: %s, %o", (moves, expected, ring) => {
    expect(told(moves, ring)).toEqual(expected);
  });
  test("each part by itself", () => {
    expect(
      found(
        `${ringText({})}procedure Work "Work" { step install Pad[2] step install Pad[3] step install Plug[3] step install Plug[2] }`,
      ),
    ).toEqual(["order.direction: install Plug[2]"]);
  });
  test("a place other than its own is the one that is filled", () => {
    expect(
      found(`${ringText({})}procedure Work "Work" { step install Pad[2] step install Pad[3] in Wheel[1] }`),
    ).toEqual(["order.wrong-place: install Pad[3]", "order.direction: install Pad[3]"]);
  });
});

describe("what is said", () => {
  const fact = { kind: "direction", wanted: "clockwise" };
  test("the wrong way round: where, and which way it should be", () => {
    expect(wholeFacts(text([3, 2, 1]))).toEqual([
      { ...fact, part: "Pad[2]", place: "Wheel[2]", skipped: null, declaredAt: "Wheel", span: "install Pad[2]" },
    ]);
    expect(wholeFacts(text([3, 4], { fill: "fill counterclockwise" }))).toMatchObject([
      { place: "Wheel[4]", wanted: "counterclockwise" },
    ]);
  });
  test("passed over: by which, and the place", () => {
    expect(wholeFacts(text([1, 4]))).toMatchObject([
      { ...fact, place: "Wheel[4]", skipped: "Wheel[2]", span: "install Pad[4]" },
    ]);
    expect(wholeFacts(text([1, 4, 6]))).toMatchObject([
      { ...fact, place: "Wheel[4]", skipped: "Wheel[2]", span: "install Pad[4]" },
    ]);
    expect(wholeFacts(text([1, 4.5]))).toMatchObject([{ span: "press Pad[4]" }]);
    // Also where what passed it is out again.
    expect(wholeFacts(text([1, 3, 4, -3]))).toMatchObject([{ skipped: "Wheel[2]", span: "install Pad[3]" }]);
  });
  test("passed over by one of several, or by a part that has no place of its own", () => {
    const several = `${ringText({})}procedure Work "Work" { step install Pad[1], Pad[4] }`;
    expect(wholeFacts(several)).toMatchObject([{ part: "Pad[4]", place: "Wheel[4]", skipped: "Wheel[2]" }]);
    const blocks = `${ringText({})}part Block[1..2] "block" { seats in Wheel }
      procedure Work "Work" { step install Block[1] in Wheel[1] step install Block[2] in Wheel[4] }`;
    expect(wholeFacts(blocks)).toMatchObject([{ place: "Wheel[4]", skipped: "Wheel[2]", span: "install Block[2]" }]);
  });
  test("a part that may stand in several places empties the one that it stood in", () => {
    const blocks = (steps: string): readonly string[] =>
      found(`${ringText({})}part Block[1..3] "block" { seats in Wheel } procedure Work "Work" { ${steps} }`);
    const steps = "step install Block[1] in Wheel[2] step install Block[2] in Wheel[3] step remove Block[1]";
    const later = "step remove Block[2] step install Block[1] in Wheel[3]";
    expect(blocks(`${steps} step install Block[3] in Wheel[2] ${later}`)).toEqual([
      "order.direction: install Block[3]",
    ]);
    expect(
      blocks(`${steps} step remove Block[2] step install Block[3] in Wheel[2] step install Block[1] in Wheel[3]`),
    ).toEqual([]);
  });
  test("on one way only", () => {
    const steps = "step install Pad[1] when Extent is Full { step install Pad[2] } step install Pad[3]";
    expect(found(`option Extent "extent" { Full Part } ${ringText({})}procedure Work "Work" { ${steps} }`)).toEqual([
      "order.direction: install Pad[3] | Extent Part",
    ]);
  });
});
