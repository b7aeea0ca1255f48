// The generated procedures are as long as they say, the same every time, and branch as often as they are asked to.
import { expect, test } from "vitest";
import { parseText } from "#syntax/parse.ts";
import { openWorkspace } from "#workspace/index.ts";
import {
  linesPerStation,
  procedureOfLines,
  procedureOfSteps,
  procedureText,
  stepsPerStation,
} from "./procedure-text.ts";

const lines = (text: string) => text.split("\n").length;
const steps = (text: string) => text.match(/^ *step /gm)?.length ?? 0;

test("a station has the lines and steps it is counted with", () => {
  const [ten, twenty] = [procedureText({ stations: 10 }), procedureText({ stations: 20 })];
  expect(lines(twenty) - lines(ten)).toBe(10 * linesPerStation);
  expect(steps(twenty) - steps(ten)).toBe(10 * stepsPerStation);
});

test("a procedure asked for by its lines or steps is that long, and not much longer", () => {
  for (const wanted of [100, 1_000, 5_000]) {
    expect(lines(procedureOfLines(wanted))).toBeGreaterThanOrEqual(wanted);
    expect(lines(procedureOfLines(wanted))).toBeLessThan(wanted + 2 * linesPerStation);
    expect(steps(procedureOfSteps(wanted))).toBeGreaterThanOrEqual(wanted);
    expect(steps(procedureOfSteps(wanted))).toBeLessThan(wanted + stepsPerStation);
  }
});

test("stations are shared among as many procedures as are asked for", () => {
  const text = procedureOfLines(1_000, 5);
  expect(text.match(/^procedure /gm)).toHaveLength(5);
  expect(steps(text)).toBe(steps(procedureOfLines(1_000)));
  expect(parseText(text, "a.sprag").problems).toEqual([]);
});

test("however they are shared, there is nothing to find", () => {
  const text = procedureOfLines(1_100, 20);
  expect(text.match(/^procedure /gm)).toHaveLength(20);
  const snapshot = { texts: new Map([["a.sprag", text]]), present: new Set<string>(), absent: new Set<string>() };
  const { files } = openWorkspace({ ...snapshot, today: "2026-05-04" }).check(["a.sprag"]);
  expect(files.flatMap(({ findings }) => findings)).toEqual([]);
});

test("the same size gives the same text", () => {
  expect(procedureOfSteps(400, 40)).toBe(procedureOfSteps(400, 40));
});

test("each option asked for stands in one branch of its own", () => {
  const text = procedureOfSteps(400, 40);
  expect(text.match(/^option /gm)).toHaveLength(40);
  expect(text.match(/^ *when /gm)).toHaveLength(40);
});
