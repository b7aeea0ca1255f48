// Small folders for tests in the workbench: a shop of two files, and one of many. Written here, so that each test says what
// it stands on.
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";

export const TOOLS = `tool Wrench "torque wrench" {
  torque 8 .. 60 N·m
  accuracy 4 %
}
tool Screwdriver "torque screwdriver" {
  torque 0.5 .. 5 N·m
  accuracy 4 %
}
tool Hoist "chain hoist" { lifts 250 kg }
source Manual "pump manual" revision "9"
`;

export const COVER = `use "shop/tools.sprag"

part Housing "bearing housing"
part Cover "bearing cover" { needs Housing }
part Screw[1..4] "cover screw" {
  needs Cover
  secures Cover
  thread "M10x1.5"
  torque 40 ± 4 N·m dry per Manual "6.4.9"
}

procedure CloseCover "Close the cover" {
  begin with Housing is installed
  finish with Cover is secured

  step install Cover
  step install Screw[all]
  step tighten Screw[all] to 40 ± 4 N·m with Wrench
}
`;

/** Sixty steps, each in a line: the first in line 4. */
export const LONG = `part Part[1..60] "part"

procedure CleanAll "Clean all parts" {
${Array.from({ length: 60 }, (_, at) => `  step clean Part[${at + 1}]\n`).join("")}}
`;

/** A procedure in one file and its tools in another, without a finding. */
export function fillShop(folder: string, cover = COVER): void {
  mkdirSync(join(folder, "shop"));
  writeFileSync(join(folder, "shop", "tools.sprag"), TOOLS);
  writeFileSync(join(folder, "cover.sprag"), cover);
}

/** A procedure with a picture, 240 pixels wide. */
export function addPicture(folder: string): void {
  const look = `procedure Look "Look at the seat" {\n  step "Look at the seat." {\n    figure "seat.svg" "the seat"\n  }\n}\n`;
  const seat =
    '<svg xmlns="http://www.w3.org/2000/svg" width="240" height="90"><rect width="240" height="90" fill="teal"/></svg>';
  writeFileSync(join(folder, "look.sprag"), look);
  writeFileSync(join(folder, "seat.svg"), seat);
}

/** As many files, each with one error; long enough that the check of all takes a while. */
export function fillWithMany(folder: string, count: number): void {
  const steps = Array.from({ length: 30 }, (_, n) => `  step clean Part${n}\n`).join("");
  const parts = Array.from({ length: 30 }, (_, n) => `part Part${n}\n`).join("");
  for (let n = 0; n < count; n++) {
    const name = `file-${String(n).padStart(3, "0")}`;
    const text = `${parts}\nprocedure Clean${n} {\n${steps}  step install Part0\n  step install Part0\n}\n`;
    writeFileSync(join(folder, `${name}.sprag`), text);
  }
}
