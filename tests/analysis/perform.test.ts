// Performed procedures: what they ask of their caller, what they leave behind, and circles of them.
import { describe, expect, test } from "vitest";
import { found } from "./run-on-paper.ts";

const PARTS = `ring Circle "circle" { count 4  numbered clockwise seen from "drive end"  position 1 at 12 o'clock }
part Bearing "bearing"
part Cover "cover"
part Valve "valve" { states shut, open }
part Pin[1..2] "pin" { seats in Circle }
temporary part Cap "cap"
fact Signed "the sheet is signed"
consumable Grease "grease"
tool Heater "heater" { heats to 200 °C }
energy Supply "supply" { voltage 400 V AC }
option Extent "extent of work" { Full Part }
`;

/** A procedure that is performed, and one that performs it between two lots of steps. */
function work(inner: string, before: string, after: string): readonly string[] {
  return found(
    `${PARTS}procedure Inner "Inner" {\n${inner}\n}\nprocedure Outer "Outer" {\n${before}\nstep perform Inner\n${after}\n}`,
  );
}
const ask = (condition: string, name = "Ask"): string => `step ${name} { needs ${condition}\n do "Look." }`;
const AT_CALL = "order.unmet-need: perform Inner";

describe("what it asks", () => {
  test("its begin with, at the perform", () => {
    expect(work("begin with Bearing is installed\nstep inspect Bearing", "", "")).toEqual([AT_CALL]);
    expect(work("begin with Bearing is installed\nstep inspect Bearing", "step install Bearing", "")).toEqual([]);
    expect(work("begin with Signed\nstep inspect Bearing", "", "")).toEqual([AT_CALL]);
  });
  test("as a finding for the options for which it fails", () => {
    expect(
      work("begin with Bearing is installed\nstep inspect Bearing", "when Extent is Full { step install Bearing }", ""),
    ).toEqual([`${AT_CALL} | Extent Part`]);
  });
  test("taken as met afterwards", () => {
    expect(work("begin with Signed\nstep inspect Bearing", "", ask("Signed"))).toEqual([AT_CALL]);
    expect(work("begin with Bearing is installed\nstep inspect Bearing", "", ask("Bearing is installed"))).toEqual([
      AT_CALL,
    ]);
  });
  test("and so is how a ring stands that it neither turns nor mentions", () => {
    const [inner, turned] = ["step install Pin[1] in Circle[1] at 12 o'clock", "step turn Circle[1] to 3 o'clock"];
    expect(work(inner, turned, "step install Pin[2] in Circle[2] at 3 o'clock")).toEqual([AT_CALL]);
  });
  test("what it touches and does not mention, as at a start", () => {
    expect(work("step install Bearing", "step install Bearing", "")).toEqual([AT_CALL]);
    expect(work("step install Bearing", "step install Cover", "")).toEqual([]);
    expect(
      work(
        "begin with Supply is live\nstep isolate Supply\nstep restore Supply",
        "step isolate Supply\nstep restore Supply",
        "",
      ),
    ).toEqual([]);
    expect(
      work("finish with Supply is isolated\nstep isolate Supply", "step isolate Supply", "step restore Supply"),
    ).toEqual([AT_CALL]);
    expect(
      work('step { do "Open it."\n gives Valve is open }', 'step { do "Open it."\n gives Valve is open }', ""),
    ).toEqual([AT_CALL]);
  });
  test("nothing of what it only looks at", () => {
    expect(work("step inspect Bearing", "step install Bearing", "")).toEqual([]);
  });
});

describe("what it leaves", () => {
  test("what it put in and took out", () => {
    expect(work("step install Bearing", "", ask("Bearing is installed"))).toEqual([]);
    expect(
      work("begin with Cover is installed\nstep remove Cover", "step install Cover", ask("Cover is installed")),
    ).toEqual(["order.unmet-need: Cover is installed"]);
  });
  test("depending on the options, which are one and the same", () => {
    const inner = "when Extent is Full { step install Bearing }";
    expect(work(inner, "", "when Extent is Full { step remove Bearing }")).toEqual([]);
    expect(work(inner, "", "when Extent is Part { step remove Bearing }")).toEqual([
      "order.not-installed: remove Bearing | Extent Part",
    ]);
  });
  test("its finish with, though it does not come to that: the mistake is told where it is", () => {
    expect(work("finish with Bearing is installed\nstep inspect Bearing", "", ask("Bearing is installed"))).toEqual([
      "order.unfinished: Bearing is installed",
    ]);
  });
  test("what it did not touch on a path is as the caller left it", () => {
    expect(
      work("when Extent is Full { step lubricate Bearing with Grease }", "step clean Bearing", ask("Bearing is clean")),
    ).toEqual(["order.unmet-need: Bearing is clean | Extent Full"]);
    const turned = "begin with Pin[1] is installed\nwhen Extent is Full { step remove Pin[1] }";
    expect(
      work(turned, "step install Pin[1] in Circle[2]", "when Extent is Part { step install Pin[2] in Circle[2] }"),
    ).toEqual(["order.occupied: install Pin[2] | Extent Part"]);
  });
  test("what stands on a part that it took out comes along", () => {
    expect(
      work(
        "begin with Cover is installed\nstep remove Cover",
        "step install Cover\nstep install Bearing in Cover",
        ask("Bearing is installed"),
      ),
    ).toEqual(["order.unmet-need: Bearing is installed"]);
  });
  test("a heated part is as hot as before, and may have cooled meanwhile", () => {
    const heated = "step heat Bearing to 100 .. 110 °C with Heater";
    expect(work("step inspect Bearing", heated, ask("Bearing is at least 100 °C"))).toEqual([]);
    expect(work('task "Look" { step inspect Bearing }', heated, ask("Bearing is at least 100 °C"))).toEqual([
      "order.unmet-need: Bearing is at least 100 °C",
    ]);
    const inner = `task "Look" { step heat Cover to 40 .. 50 °C with Heater\n ${ask("Bearing is at most 150 °C", "Near")} }`;
    expect(work(inner, heated, ask("Bearing is at most 50 °C"))).toEqual([
      "order.unmet-need: Bearing is at most 50 °C",
    ]);
  });
  test("an aid that it leaves in by its own word, at the perform", () => {
    const inner = "finish with Cap is installed\nstep install Cap";
    expect(work(inner, "", "")).toEqual(["order.left-behind: perform Inner"]);
    expect(work(inner, "", "step remove Cap")).toEqual([]);
  });
  test("nothing, where it stops on every path: what follows is not reached", () => {
    expect(work('step "One."\nstop "Call the engineer."', "", 'step Last "Last."')).toEqual([
      "flow.unreachable: step Last",
    ]);
    expect(work('step { check "It fits" if it fails { stop "Call the engineer." } }', "", 'step Last "Last."')).toEqual(
      [],
    );
  });
});

describe("one in another", () => {
  const three = (inner: string, middle: string, outer: string): readonly string[] =>
    found(
      `${PARTS}procedure Inner "I" {\n${inner}\n}\nprocedure Middle "M" {\n${middle}\n}\nprocedure Outer "O" {\n${outer}\n}`,
    );
  test("what the innermost leaves", () => {
    expect(
      three("step install Bearing", "step perform Inner", `step perform Middle\n${ask("Bearing is installed")}`),
    ).toEqual([]);
  });
  test("what the innermost touches is to be as at a start for the outermost", () => {
    expect(three("step install Bearing", "step perform Inner", "step install Bearing\nstep perform Middle")).toEqual([
      "order.unmet-need: perform Middle",
    ]);
  });
  test("performed between steps", () => {
    expect(
      three(
        "step install Bearing",
        "perform Inner\nstep remove Bearing",
        'step "One."\nperform Middle\nstep install Bearing',
      ),
    ).toEqual([]);
  });
});

describe("what cannot be followed", () => {
  test("a circle comes to an end, and says nothing of what it may touch", () => {
    const text = `${PARTS}procedure First "F" {\nstep install Bearing\nstep perform Second\n${ask("Bearing is installed")}\n}
procedure Second "S" {\nstep perform First\nstep install Cover\n${ask("Cover is installed")}\n}`;
    expect(found(text, { damaged: true })).toEqual([]);
    expect(
      found(`${PARTS}procedure First "F" {\nstep perform First\nstep remove Bearing\n}`, { damaged: true }),
    ).toEqual([]);
  });
  test("one that is too large: what it speaks of is in doubt, the rest is not", () => {
    const large =
      "begin with Bearing is removed\nrepeat n from 1 to 200000 { step inspect Bearing }\nstep install Bearing";
    expect(work(large, "", `${ask("Bearing is installed")}\nstep remove Cover`)).toEqual([
      "order.not-installed: remove Cover",
    ]);
  });
});
