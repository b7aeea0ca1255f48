// The ways through a procedure: stops, jumps, rework, repeats, declared order, and what no way leads to.
import { describe, expect, test } from "vitest";
import { found } from "./run-on-paper.ts";

const PARTS = `part Bearing "bearing"
part Cover "cover" { encloses Bearing }
part Segment[1..6] "segment"
fact Signed "the sheet is signed"
option Extent "extent of work" { Full Part }
`;

function work(steps: string, head = ""): readonly string[] {
  return found(`${PARTS}procedure Work "Work" {\n${head}\n${steps}\n}`);
}
const failing = (what: string): string => `check "It fits" if it fails { ${what} }`;
const ask = (condition: string): string => `step Ask { needs ${condition}\n do "Look." }`;

describe("a check with a failing path", () => {
  test("goes on with what follows, both ways", () => {
    expect(work(`step install Bearing\nstep { ${failing("remove Bearing")} }\n${ask("Bearing is installed")}`)).toEqual(
      ["order.unmet-need: Bearing is installed"],
    );
    expect(
      work(
        `step install Bearing\nstep { ${failing("remove Bearing")} }\n${ask("Bearing is installed or Bearing is removed")}`,
      ),
    ).toEqual([]);
  });
  test("without one, nothing can be otherwise", () => {
    expect(work(`step install Bearing\nstep { check "It fits" }\n${ask("Bearing is installed")}`)).toEqual([]);
  });
  test("a stop ends its path", () => {
    expect(
      work(
        `step install Bearing\nstep { ${failing('remove Bearing stop "Call the engineer."')} }\n${ask("Bearing is installed")}`,
      ),
    ).toEqual([]);
  });
});

describe("return to", () => {
  const loop = (rework: string): string =>
    `step Fit { install Bearing }\nstep Look { ${failing(`${rework} return to Fit`)} }`;
  test("what was done is still done on the next pass", () => {
    expect(work(loop(""))).toEqual(["order.already-installed: install Bearing"]);
    expect(work(loop("remove Bearing"))).toEqual([]);
  });
  test("the state after any number of passes", () => {
    const steps =
      'step Fit { install Segment[1] }\nstep Look { check "It fits" if it fails { remove Segment[1] install Segment[2] return to Fit } }';
    expect(work(steps)).toEqual(["order.already-installed: install Segment[2]"]);
  });
  test("what only shows after three passes", () => {
    const text = `${PARTS}part Lever "lever" { states first, second, third }
procedure Work "Work" {
  step Turn {
    needs Lever is not third
    do "Turn the lever."
  }
  when Lever is second { step { do "Once more."  gives Lever is third } }
  otherwise { step { do "Once."  gives Lever is second } }
  step Look { check "It is open" if it fails { return to Turn } }
}`;
    expect(found(text)).toEqual(["order.unmet-need: Lever is not third"]);
  });
  test("from two levels further in", () => {
    expect(
      work(`step Fit { install Bearing }\nwhen Extent is Full { step Look { ${failing("return to Fit")} } }`),
    ).toEqual(["order.already-installed: install Bearing | Extent Full"]);
  });
  test("to the same pass of a repeat, not to the first or the last", () => {
    const repeat = (rework: string): string => `repeat n from 1 to 4 {
      step Fit { install Segment[n] }
      step Look { check "It fits" if it fails { ${rework} return to Fit } }
    }`;
    expect(work(repeat("remove Segment[n]"))).toEqual([]);
    expect(work(repeat(""))).toEqual(["order.already-installed: install Segment[n] (n = 1, and 3 more)"]);
  });
  test("from outside a repeat it is not followed", () => {
    const steps = `repeat n from 1 to 3 { step Fit { install Segment[n] } }
      step Look { check "It fits" if it fails { return to Fit } }`;
    expect(work(steps)).toEqual(["flow.bad-jump: return to Fit"]);
  });
});

describe("go to", () => {
  test("leaves out what lies between", () => {
    const steps = `step Look { ${failing("go to Close")} }\nstep install Bearing\nstep Close { needs Bearing is installed\n do "Close it." }`;
    expect(work(steps)).toEqual(["order.unmet-need: Bearing is installed"]);
  });
  test("in a branch", () => {
    const steps = `when Extent is Part { go to Close }\nstep install Bearing\nstep Close { needs Bearing is installed\n do "Close it." }`;
    expect(work(steps)).toEqual(["order.unmet-need: Bearing is installed | Extent Part"]);
  });
});

describe("what no way leads to", () => {
  test("after a stop: told once, at the first step", () => {
    expect(work('step "One."\nstop "Call the engineer."\nstep Two "Two."\nstep "Three."')).toEqual([
      "flow.unreachable: step Two",
    ]);
  });
  test("after a jump, up to where it leads", () => {
    expect(work('step "One."\ngo to Four\nstep Two "Two."\nstep "Three."\nstep Four "Four."')).toEqual([
      "flow.unreachable: step Two",
    ]);
  });
  test("two runs are two findings", () => {
    expect(
      work('when Extent is Full { stop "No."\n step Two "Two." } otherwise { stop "No."\n step Three "Three." }'),
    ).toEqual(["flow.unreachable: step Two", "flow.unreachable: step Three"]);
  });
  test("a stop in one branch only leaves the other", () => {
    expect(work('when Extent is Full { stop "No." }\nstep Two "Two."')).toEqual([]);
  });
  test("stops in both branches leave none", () => {
    expect(work('when Extent is Full { stop "No." } otherwise { stop "No." }\nstep Two "Two."')).toEqual([
      "flow.unreachable: step Two",
    ]);
  });
});

describe("after and before", () => {
  const steps = (first: string, second: string): string =>
    `step First { do "One."\n ${first} }\nstep Second { do "Two."\n ${second} }`;
  test("kept and broken", () => {
    expect(work(steps("", "after First"))).toEqual([]);
    expect(work(steps("before Second", ""))).toEqual([]);
    expect(work(steps("after Second", ""))).toEqual(["order.declared: after Second"]);
    expect(work(steps("", "before First"))).toEqual(["order.declared: before First"]);
  });
  test("a step that is left out on some path was not done too late", () => {
    expect(work('when Extent is Full { step First "One." }\nstep Second { do "Two."\n after First }')).toEqual([]);
  });
  test("broken on one path only", () => {
    const text = `when Extent is Part { go to Late }
      step Early { do "One." }
      step Late { do "Two."\n check "Done" if it fails { return to Early } }
      step Last { do "Three."\n after Early }`;
    expect(work(text.replace("go to Late", "go to Last"))).toEqual([]);
  });
  test("in a repeat: of the same pass", () => {
    expect(work('repeat n from 1 to 3 { step First "One."\n step Second { do "Two."\n after First } }')).toEqual([]);
    expect(work('repeat n from 1 to 3 { step First { do "One."\n after Second }\n step Second "Two." }')).toEqual([
      "order.declared: after Second (n = 1, and 2 more)",
    ]);
  });
  test("of a repeat, from outside: its last pass", () => {
    expect(work('repeat n from 1 to 3 { step Each "One." }\nstep Last { do "Two."\n after Each }')).toEqual([]);
    expect(work('step Last { do "Two."\n after Each }\nrepeat n from 1 to 3 { step Each "One." }')).toEqual([
      "order.declared: after Each",
    ]);
  });
  test("done again in a rework loop, the first time counts", () => {
    expect(work(`step First "One."\nstep Second { do "Two."\n after First\n ${failing("return to First")} }`)).toEqual(
      [],
    );
    expect(
      work(`step First { do "One."\n after Second }\nstep Second { do "Two."\n ${failing("return to First")} }`),
    ).toEqual(["order.declared: after Second"]);
  });
});

describe("repeats", () => {
  test("one finding with its first pass and the number of others", () => {
    expect(work("repeat n from 1 to 4 { step remove Segment[n] }")).toEqual([
      "order.not-installed: remove Segment[n] (n = 1, and 3 more)",
    ]);
    expect(work("step install Segment[1]\nrepeat n from 1 to 4 { step install Segment[n] }")).toEqual([
      "order.already-installed: install Segment[n] (n = 1)",
    ]);
    expect(work("step install Segment[4]\nrepeat n from 6 down to 1 { step install Segment[n] }")).toEqual([
      "order.already-installed: install Segment[n] (n = 4)",
    ]);
  });
  test("the same line in two places is two findings", () => {
    expect(work("step remove Segment[1]\nstep remove Segment[1]")).toHaveLength(2);
  });
  test("several of one part at one place are one finding", () => {
    expect(work("step remove Segment[all]")).toEqual(["order.not-installed: remove Segment[all]"]);
  });
  test("nested", () => {
    expect(work("repeat m from 1 to 2 { repeat n from 1 to 3 { step install Segment[n] } }")).toEqual([
      "order.already-installed: install Segment[n] (m = 2, n = 1, and 2 more)",
    ]);
  });
});
