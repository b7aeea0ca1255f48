// Lines that cannot be read: what they mention is in doubt, and of what is in doubt nothing is said.
import { describe, expect, test } from "vitest";
import { found } from "./run-on-paper.ts";

const PARTS = `part Bearing "bearing"
part Cover "cover" { encloses Bearing }
part Screw[1..2] "screw" { secures Cover }
temporary part Pin "pin"
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
  test("in the finish: nothing is asked", () => {
    expect(work("step install Bearing", "finish with Bearing is instaled")).toEqual([]);
  });
});
