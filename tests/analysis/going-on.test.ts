// How the run goes on after a need that was not met: as if the action had been done, and without a train of others.
import { expect, test } from "vitest";
import { found } from "./run-on-paper.ts";

const PARTS = `part Bearing "bearing"
part Cover "cover" { needs Bearing  encloses Bearing }
part Screw[1..2] "screw" { secures Cover }
fact Signed "the sheet is signed"
energy Supply "supply" { voltage 400 V AC }
`;

function work(body: string): string {
  return `${PARTS}procedure Work "Work" {\n${body}\n}`;
}

test("what is removed though it was not in is out", () => {
  expect(found(work("step remove Bearing\nstep install Bearing"))).toEqual(["order.not-installed: remove Bearing"]);
});

test("what is installed twice is in, and a fastener loose again", () => {
  expect(
    found(
      work(
        'step install Bearing, Cover, Screw[1], Screw[2]\nstep tighten Screw[all]\nstep install Screw[1]\nstep Look { needs Cover is secured\n do "Look." }',
      ),
    ),
  ).toEqual(["order.already-installed: install Screw[1]", "order.unmet-need: Cover is secured"]);
});

test("a missing support is not put in by that", () => {
  expect(found(work("step install Cover\nstep remove Cover\nstep remove Bearing"))).toEqual([
    "order.missing-support: install Cover",
    "order.not-installed: remove Bearing",
  ]);
});

test("a need is taken as met afterwards, once", () => {
  const look = (name: string): string => `step ${name} { needs Signed, Supply is isolated\n do "Look." }`;
  expect(found(work(`${look("First")}\n${look("Second")}`))).toEqual([
    "order.unmet-need: Signed",
    "order.unmet-need: Supply is isolated",
  ]);
});

test("a need that is taken as met puts in the part with its fasteners", () => {
  expect(
    found(
      work(
        'step Look { needs Cover is secured\n do "Look." }\nstep loosen Screw[all]\nstep remove Screw[all]\nstep remove Cover',
      ),
    ),
  ).toEqual(["order.unmet-need: Cover is secured"]);
});

test("a fastener that a need takes as out holds nothing", () => {
  const steps =
    'step install Bearing, Cover, Screw[1]\nstep tighten Screw[1]\nstep Look { needs Screw[1] is not installed\n do "Look." }\nstep remove Cover';
  expect(found(work(steps))).toEqual(["order.unmet-need: Screw[1] is not installed"]);
});

test("of alternatives none is taken as met: nothing is said of either", () => {
  const steps =
    'step Look { needs Bearing is installed or Signed\n do "Look." }\nstep Then { needs Signed\n do "Look." }\nstep remove Bearing';
  expect(found(work(steps))).toEqual(["order.unmet-need: Bearing is installed or Signed"]);
});

test("alternatives of which one holds on every path stay as they are", () => {
  const steps =
    'step install Bearing\nstep Look { needs Bearing is installed or Signed\n do "Look." }\nstep Then { needs Signed\n do "Look." }\nstep install Bearing';
  expect(found(work(steps))).toEqual(["order.unmet-need: Signed", "order.already-installed: install Bearing"]);
});

test("an enclosed part that is worked on stays enclosed", () => {
  expect(found(work("step install Bearing, Cover\nstep clean Bearing\nstep inspect Bearing"))).toEqual([
    "order.enclosed: clean Bearing",
    "order.enclosed: inspect Bearing",
  ]);
});

test("a fastener that is tightened though it is not in is still not in", () => {
  expect(found(work("step install Bearing, Cover\nstep tighten Screw[1]\nstep remove Screw[1]"))).toEqual([
    "order.not-installed: tighten Screw[1]",
    "order.not-installed: remove Screw[1]",
  ]);
});

test("an energy that a need takes as live is live for the next need too, whatever was worked on meanwhile", () => {
  const parts = 'energy Supply "supply" { voltage 400 V AC }\npart Motor "motor" { driven by Supply }\n';
  const asks = (name: string): string => `step ${name} { needs Supply is live\n do "Look." }`;
  const body = `begin with Motor is installed\nbegin with Supply is isolated\n${asks("First")}\nstep clean Motor\n${asks("Second")}`;
  expect(found(`${parts}procedure Work "Work" {\n${body}\n}`)).toEqual(["order.unmet-need: Supply is live"]);
});

test("what an action does counts, also where a need had taken it as so before", () => {
  const parts = 'energy Supply "supply" { voltage 400 V AC }\n';
  const asks = (name: string, condition: string): string => `step ${name} { needs ${condition}\n do "Look." }`;
  const live = `step isolate Supply\n${asks("First", "Supply is live")}\nstep restore Supply\n${asks("Second", "Supply is isolated")}`;
  expect(found(`${parts}procedure Work "Work" {\n${live}\n}`)).toEqual([
    "order.unmet-need: Supply is live",
    "order.unmet-need: Supply is isolated",
  ]);
  const out = `step install Bearing\n${asks("First", "Bearing is removed")}\nstep remove Bearing\n${asks("Second", "Bearing is installed")}`;
  expect(found(work(out))).toEqual(["order.unmet-need: Bearing is removed", "order.unmet-need: Bearing is installed"]);
});

test("a position that a step says is filled is no gap, whatever passed over it", () => {
  const parts = `ring Seat "seat" { count 5  numbered clockwise seen from "the front"  position 1 at 12 o'clock  fill clockwise }
part Blade[1..5] "blade" { seats in Seat by number }
`;
  const body = 'step install Blade[1]\nstep install Blade[3]\nstep Check { do "Look."\n gives Blade[2] is installed }';
  expect(found(`${parts}procedure Work "Work" {\n${body}\n}`)).toEqual([]);
});
