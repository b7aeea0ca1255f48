// What `needs` asks and `gives` leaves: facts, own states, surfaces, alignment, grip.
import { describe, expect, test } from "vitest";
import { found } from "./run-on-paper.ts";

const PARTS = `part Valve "valve" { states shut, open, vented }
part Shaft "shaft"
part Motor "motor"
part Cover "cover"
part Screw "screw" { secures Cover }
consumable Grease "grease"
consumable Solvent "solvent"
fact Signed "the sheet is signed"
fact Checked "the shaft is checked"
option Extent "extent of work" { Full Part }
`;

/** The steps, then one that needs the condition. */
function asking(condition: string, steps: string): readonly string[] {
  return found(`${PARTS}procedure Work "Work" {\n${steps}\nstep Ask { needs ${condition}\n do "Look." }\n}`);
}
const unmet = (condition: string): string[] => [`order.unmet-need: ${condition}`];
const give = (condition: string): string => `step { do "See to it."\n gives ${condition} }`;

describe("facts", () => {
  test("do not hold before they are given", () => {
    expect(asking("Signed", "")).toEqual(unmet("Signed"));
    expect(asking("not Signed", "")).toEqual([]);
  });
  test("hold afterwards, each for itself", () => {
    expect(asking("Signed", give("Signed"))).toEqual([]);
    expect(asking("Checked", give("Signed"))).toEqual(unmet("Checked"));
    expect(asking("not Signed", give("Signed"))).toEqual(unmet("not Signed"));
    expect(asking("Signed", `${give("Signed")}\n${give("not Signed")}`)).toEqual(unmet("Signed"));
  });
  test("are given at the end of a step, not at its beginning", () => {
    expect(asking("Signed", 'step { needs Signed\n do "Sign it."\n gives Signed }')).toEqual(unmet("Signed"));
  });
  test("given on one path only", () => {
    expect(asking("Signed", `when Extent is Full { ${give("Signed")} }`)).toEqual([`${unmet("Signed")} | Extent Part`]);
  });
});

describe("own states", () => {
  test("the first is the one at the start", () => {
    expect(asking("Valve is shut", "")).toEqual([]);
    expect(asking("Valve is open", "")).toEqual(unmet("Valve is open"));
    expect(asking("Valve is not open", "")).toEqual([]);
  });
  test("exclude each other", () => {
    expect(asking("Valve is open", give("Valve is open"))).toEqual([]);
    expect(asking("Valve is shut", give("Valve is open"))).toEqual(unmet("Valve is shut"));
    expect(asking("Valve is vented", `${give("Valve is open")}\n${give("Valve is vented")}`)).toEqual([]);
  });
  test("one that is given as not so may be any other", () => {
    expect(asking("Valve is open", give("Valve is not shut"))).toEqual([]);
    expect(asking("Valve is shut", give("Valve is not open"))).toEqual([]);
  });
});

describe("surfaces", () => {
  test("neither clean nor lubricated at the start", () => {
    expect(asking("Shaft is clean", "")).toEqual(unmet("Shaft is clean"));
    expect(asking("Shaft is lubricated", "")).toEqual(unmet("Shaft is lubricated"));
  });
  test("lubricated is no longer clean, and the other way round", () => {
    expect(asking("Shaft is clean", "step clean Shaft with Solvent")).toEqual([]);
    expect(asking("Shaft is lubricated", "step lubricate Shaft with Grease")).toEqual([]);
    expect(asking("Shaft is clean", "step clean Shaft\nstep lubricate Shaft with Grease")).toEqual(
      unmet("Shaft is clean"),
    );
    expect(asking("Shaft is lubricated", "step lubricate Shaft with Grease\nstep clean Shaft")).toEqual([
      "order.wasted: clean Shaft",
      ...unmet("Shaft is lubricated"),
    ]);
  });
  test("of another part say nothing", () => {
    expect(asking("Shaft is clean", "step clean Motor")).toEqual(unmet("Shaft is clean"));
  });
});

describe("alignment", () => {
  test("is of both", () => {
    expect(asking("Shaft is aligned", "")).toEqual(unmet("Shaft is aligned"));
    expect(asking("Shaft is aligned", "step align Shaft with Motor")).toEqual([]);
    expect(asking("Motor is aligned", "step align Shaft with Motor")).toEqual([]);
    expect(asking("Cover is aligned", "step align Shaft with Motor")).toEqual(unmet("Cover is aligned"));
  });
});

describe("grip", () => {
  test("loose when put in, then tight, then loose", () => {
    expect(asking("Screw is loose", "step install Cover, Screw")).toEqual([]);
    expect(asking("Screw is tightened", "step install Cover, Screw")).toEqual(unmet("Screw is tightened"));
    expect(asking("Screw is tightened", "step install Cover, Screw\nstep tighten Screw")).toEqual([]);
    expect(asking("Screw is loose", "step install Cover, Screw\nstep tighten Screw\nstep loosen Screw")).toEqual([]);
    expect(asking("Screw is tightened", "step install Cover, Screw\nstep tighten Screw to seat")).toEqual([
      "order.left-seated: tighten Screw",
    ]);
  });
  test("neither loose nor tight when out", () => {
    expect(asking("Screw is loose", "")).toEqual(unmet("Screw is loose"));
    expect(asking("Screw is loose", "step install Cover, Screw\nstep remove Screw")).toEqual(unmet("Screw is loose"));
  });
  test("a part without fasteners is secured when it is in", () => {
    expect(asking("Motor is secured", "step install Motor")).toEqual([]);
    expect(asking("Motor is secured", "")).toEqual(unmet("Motor is secured"));
  });
  test("given: secured means in, with every fastener tight", () => {
    expect(asking("Screw is tightened", give("Cover is secured"))).toEqual([]);
    expect(asking("Cover is installed", give("Screw is tightened"))).toEqual(unmet("Cover is installed"));
    expect(asking("Screw is removed", `${give("Cover is secured")}\n${give("Screw is removed")}`)).toEqual([]);
  });
});

describe("several at once", () => {
  test("hold when all do; not when one does not", () => {
    expect(asking("Shaft is installed and Motor is installed", "step install Shaft, Motor")).toEqual([]);
    expect(asking("Shaft is installed and Motor is installed", "step install Shaft")).toEqual(
      unmet("Shaft is installed and Motor is installed"),
    );
    expect(asking("Shaft is installed or Motor is installed", "step install Motor")).toEqual([]);
    expect(asking("Shaft is installed or Motor is installed", "")).toEqual(
      unmet("Shaft is installed or Motor is installed"),
    );
  });
});

describe("one variable that may be this or that", () => {
  test("is one of the two, though neither is certain", () => {
    const steps = `step Vent { do "Turn it."\n gives Valve is vented }\nstep Look { check "It holds" if it fails { go to Ask } }\n${give("Valve is open")}`;
    expect(asking("Valve is open or Valve is vented", steps)).toEqual([]);
    expect(asking("Valve is not shut", steps)).toEqual([]);
    expect(asking("not (Valve is shut and Shaft is installed)", steps)).toEqual([]);
    expect(asking("Valve is open or Valve is shut", steps)).toEqual(unmet("Valve is open or Valve is shut"));
  });
  test("is never both", () => {
    const steps = `step Vent { do "Turn it."\n gives Valve is vented }\nstep Look { check "It holds" if it fails { go to Next } }\n${give("Valve is open")}\nstep Next "Next."
      when Valve is not open and Valve is not vented { step "Never." }`;
    expect(asking("Valve is not shut", steps)).toEqual([
      "flow.impossible-condition: Valve is not open and Valve is not vented",
      'flow.unreachable: step "Never."',
    ]);
  });
});
