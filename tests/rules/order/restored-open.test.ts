// order.restored-open: what is open when the power comes back, as far as the procedure speaks of it.
import { expect, test } from "vitest";
import { expectFindings, told } from "#harness/check.ts";

const SHOP = `energy Supply "motor supply"
part Motor "drive motor" { driven by Supply }
part FanCover "fan cover" { encloses Motor }
part Screw[1..4] "cover screw" { secures FanCover }
temporary part Plug "transport plug"
`;
const run = (lines: string, begin = "Motor is installed, FanCover is secured"): string => `${SHOP}
procedure Run "Run the motor" {
  begin with ${begin}
  step isolate Supply
  step prove Supply dead
  step inspect Plug
  ${lines}
}`;
const FOUND = "step restore Supply\n  //   ^^^^^^^^^^^^^^ order.restored-open error";
const OPENED = "step loosen Screw[all]\n  step remove Screw[all]\n  step remove FanCover\n  step clean Motor";

test("the cover is off: one finding, none for the screws that are off with it", () => {
  const text = run(
    `${OPENED}\n  ${FOUND}\n  step install FanCover\n  step install Screw[all]\n  step tighten Screw[all]`,
  );
  expectFindings(text);
  expect(told(text, "order.restored-open")).toMatchInlineSnapshot(`
    "Supply is restored while FanCover is not in place.
      Supply drives Motor. FanCover is removed since step 6.
    → Install FanCover before this. What must be closed before it runs, the approved data and the site's rules say.
    @14 Step 6: FanCover is removed."
  `);
});

test("the cover is on, and its screws are loose or out: one finding for all of them", () => {
  const loose = run(`step loosen Screw[all]\n  ${FOUND}`);
  expectFindings(loose);
  expect(told(loose, "order.restored-open")).toMatchInlineSnapshot(`
    "Supply is restored while Screw[1] is loose.
      Supply drives Motor. Screw[1] is loose since step 4.
    → Tighten Screw[1] before this. What must be closed before it runs, the approved data and the site's rules say.
    @12 Step 4: Screw[1] is loose."
  `);
  expectFindings(
    run(`step loosen Screw[2]\n  step remove Screw[2]\n  ${FOUND}\n  step install Screw[2]\n  step tighten Screw[2]`),
  );
});

test("a temporary part is in", () => {
  const text = run(`step install Plug\n  ${FOUND}\n  step remove Plug`);
  expectFindings(text);
  expect(told(text, "order.restored-open")).toContain("Supply is restored while Plug is still in.");
});

test("two culprits are two findings", () => {
  expectFindings(
    run(
      `${OPENED}\n  step install Plug\n  ${FOUND}\n  //   ^^^^^^^^^^^^^^ order.restored-open error\n  step remove Plug\n  step install FanCover\n  step install Screw[all]\n  step tighten Screw[all]`,
    ),
  );
});

test("silent: closed again, screws of which nobody says how tight they are, or the motor is out", () => {
  expectFindings(
    run(
      `${OPENED}\n  step install FanCover\n  step install Screw[all]\n  step tighten Screw[all]\n  step restore Supply`,
    ),
  );
  expectFindings(run("step restore Supply", "Motor is installed, FanCover is installed, Screw[all] are installed"));
  expectFindings(
    run(`${OPENED}\n  step remove Motor\n  step restore Supply`, "Motor is installed, FanCover is secured").replace(
      "  step isolate",
      "  finish with Motor is removed, FanCover is removed, Screw[all] are removed\n  step isolate",
    ),
  );
});

test("silent: it was live all the time", () => {
  expectFindings(`energy Supply "motor supply"
part Motor "drive motor" { driven by Supply }
part FanCover "fan cover" { encloses Motor }

procedure Run "Run the motor" {
  begin with Motor is installed, FanCover is removed
  step restore Supply
}`);
});

test("silent: of a cover that the procedure does not speak of nobody knows", () => {
  expectFindings(`use "shop.sprag"

procedure Run "Run the motor" {
  begin with Motor is installed
  step isolate Supply
  step prove Supply dead
  step clean Motor
  step restore Supply
}
// file: shop.sprag
energy Supply "motor supply"
part Motor "drive motor" { driven by Supply }
part FanCover "fan cover" { encloses Motor }
part Screw[1..4] "cover screw" { secures FanCover }
`);
});

test("silent: what is open belongs to another energy", () => {
  expectFindings(`energy Supply "motor supply"
energy Air "compressed air"
part Motor "drive motor" { driven by Supply }
part Brake "brake" { driven by Air }
part BrakeCover "brake cover" { encloses Brake }

procedure Run "Run the motor" {
  begin with Motor is installed, Brake is installed, BrakeCover is installed, Air is isolated
  step isolate Supply
  step prove Supply dead
  step clean Motor
  step remove BrakeCover
  step restore Supply
  step install BrakeCover
}`);
});

test("on one option the cover stays off", () => {
  const text = `energy Supply "motor supply"
part Motor "drive motor" { driven by Supply }
part FanCover "fan cover" { encloses Motor }
option Trial "the motor is run for a trial" { yes no }

procedure Run "Run the motor" {
  begin with Motor is installed, FanCover is installed
  step isolate Supply
  step prove Supply dead
  step remove FanCover
  when Trial is no { step install FanCover }
  step restore Supply
  //   ^^^^^^^^^^^^^^ order.restored-open
  when Trial is yes { step install FanCover }
}`;
  expectFindings(text);
  expect(told(text, "order.restored-open")).toContain("This happens when Trial is yes.");
});
