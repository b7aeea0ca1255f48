// Lines that cannot be read: what they mention is in doubt, and of what is in doubt nothing is said.
import { describe, expect, test } from "vitest";
import { found } from "./run-on-paper.ts";

const PARTS = `part Bearing "bearing"
part Cover "cover" { encloses Bearing }
part Screw[1..2] "screw" { secures Cover }
temporary part Pin "pin"
consumable Sealant "sealant"
energy Supply "supply" { voltage 400 V AC }
option Extent "extent of work" { Full Part }
`;

function work(steps: string, head = ""): readonly string[] {
  return found(`${PARTS}procedure Work "Work" {\n${head}\n${steps}\n}`, { damaged: true });
}

describe("a line that cannot be read", () => {
  test("leaves in doubt what it mentions, either way", () => {
    expect(work("step { polish Bearing }\nstep remove Bearing")).toEqual([]);
    expect(work("step { polish Bearing }\nstep install Bearing")).toEqual([]);
    expect(work('step { polish Supply }\nstep Ask { needs Supply is isolated\n do "Look." }')).toEqual([]);
  });
  test("says nothing of what it does not mention", () => {
    expect(work("step { polish Bearing }\nstep remove Cover")).toEqual(["order.not-installed: remove Cover"]);
  });
  test("what is done later is known again", () => {
    expect(work("step { polish Bearing }\nstep install Bearing\nstep install Bearing")).toEqual([
      "order.already-installed: install Bearing",
    ]);
  });
  test("in a branch: in doubt there, known elsewhere", () => {
    expect(work("when Extent is Full { step { polish Bearing } }\nstep remove Bearing")).toEqual([
      "order.not-installed: remove Bearing | Extent Part",
    ]);
  });
  test("an aid that may have been taken out is not left behind", () => {
    expect(work("step install Pin\nstep { polish Pin }")).toEqual([]);
  });
  const coated = "step apply 5 g of Sealant to Cover cure 30 min";
  test("a time that lost its verb may have been a wait", () => {
    expect(work(`${coated}\nstep fill Cover with 1 L of Sealant`)).toEqual(["order.uncured: fill Cover"]);
    expect(work(`${coated}\nstep { 30 min }\nstep fill Cover with 1 L of Sealant`)).toEqual([]);
    expect(work(`${coated}\nstep { 30 mm }\nstep fill Cover with 1 L of Sealant`)).toEqual([
      "order.uncured: fill Cover",
    ]);
  });
  test("a time that may have been a wait cures what needs no longer", () => {
    const told = ["order.uncured: fill Cover"];
    expect(work(`${coated}\nstep { 10 min }\nstep fill Cover with 1 L of Sealant`)).toEqual(told);
    expect(work(`${coated}\nstep { 10 .. 40 min }\nstep fill Cover with 1 L of Sealant`)).toEqual([]);
    expect(work(`${coated}\nstep { 10 min }\nstep { 20 min }\nstep fill Cover with 1 L of Sealant`)).toEqual([]);
  });
  test("what is put in does not let a coat cure", () => {
    expect(work(`${coated}\nstep install\nstep fill Cover with 1 L of Sealant`)).toEqual(["order.uncured: fill Cover"]);
  });
  test("what is set back by an angle that cannot be read is not undone", () => {
    const tight = "begin with Screw[1] is tightened";
    expect(work("step loosen Screw[1]\nstep loosen Screw[1]", tight)).toEqual(["order.not-tightened: loosen Screw[1]"]);
    expect(work("step loosen Screw[1] by Quarter\nstep loosen Screw[1]", tight)).toEqual([]);
  });
  test("in the finish: nothing is asked", () => {
    expect(work("step install Bearing", "finish with Bearing is instaled")).toEqual([]);
  });
  test("a state and a unit that are called like a verb are none", () => {
    const head = "finish with Supply is isolated, Cover is secured";
    const open = ["order.unfinished: Supply is isolated", "order.unfinished: Cover is secured"];
    const steps = "step install Cover\nstep install Screw[1]\nstep install Screw[2]";
    expect(work(steps, head)).toEqual(open);
    expect(work(`${steps}\nstep { Supply, Cover is clean }`, head)).toEqual(open.slice(1));
    expect(work(`${steps}\nstep Screw[all] by 1/4 turn`, head)).toEqual(open.slice(0, 1));
    expect(work(`${steps}\nstep clean Cover Supply with`, head)).toEqual(open);
  });
  test("work that cannot be read, though it comes first, leaves the start as it was", () => {
    expect(work("step clean\nstep install Bearing\nstep install Bearing")).toEqual([
      "order.already-installed: install Bearing",
    ]);
    expect(work("step clean\nstep remove Bearing")).toEqual(["order.not-installed: remove Bearing"]);
    expect(work("step remove Bearing", "Bearing is installed")).toEqual([]);
  });
  test("a ring may be filled further by it", () => {
    const ring = (third: string): readonly string[] =>
      found(
        `ring Seat "seat" {
  count 6
  numbered clockwise seen from "drive end"
  position 1 at 6 o'clock
  fill counterclockwise
}
part Segment[1..6] "segment" { seats in Seat by number }
procedure Fill "Fill" {
  step install Segment[5]
  step install Segment[4]
  ${third}
  step install Segment[1]
}`,
        { damaged: true },
      ).filter((one) => one.startsWith("order.direction"));
    expect(ring("")).toEqual(["order.direction: install Segment[1]"]);
    expect(ring("step clean Segment[")).toEqual(["order.direction: install Segment[1]"]);
    expect(ring("step Segment[3]")).toEqual([]);
    expect(ring("step install Segment[]")).toEqual([]);
  });
  test("what is shown to be dead is dead, by whomever", () => {
    const guarded = (steps: string): readonly string[] =>
      found(
        `energy Supply "supply"
part Belt "belt" { driven by Supply }
part Guard "guard" { encloses Belt }
procedure Work "Work" {
  begin with Belt is installed, Guard is installed
  ${steps}
}`,
        { damaged: true },
      );
    const open = "step remove Guard\nstep restore Supply\nstep install Guard";
    const told = ["order.restored-open: restore Supply"];
    expect(guarded(`step isolate Supply\nstep prove Supply dead\n${open}`)).toEqual(told);
    expect(guarded(`step isolate\nstep prove Supply dead\n${open}`)).toEqual(told);
    expect(guarded(`step isolate\n${open}`)).toEqual([]);
    // Nobody knows that it was isolated here.
    expect(guarded("step isolate\nstep prove Supply dead")).toEqual([]);
  });
  test("a finish that lost of what it speaks may have spoken of anything", () => {
    const ended = (finish: string): readonly string[] =>
      found(`${PARTS}procedure Work "Work" {\nbegin with Bearing is installed\n${finish}\nstep remove Bearing\n}`, {
        damaged: true,
        ending: true,
      });
    const told = ["order.not-final: remove Bearing"];
    expect(ended("")).toEqual(told);
    expect(ended("finish with is removed")).toEqual([]);
    expect(ended("finish with Cover is installed, [all] are removed")).toEqual([]);
    expect(ended("finish with Beari is removed, Cover is")).toEqual([]);
    expect(ended("finish with Screw[1, 2] are")).toEqual(told);
    expect(ended("finish with (not Cover is")).toEqual(told);
  });
  test("a note without its words is no work", () => {
    const told = ["flow.empty: when Extent is Full"];
    expect(work('when Extent is Full { note "Soon." }')).toEqual(told);
    expect(work("when Extent is Full { note }")).toEqual(told);
    expect(work("when Extent is Full { polish Bearing }")).toEqual([]);
    expect(work("when Extent is Full { record }")).toEqual([]);
  });
});
