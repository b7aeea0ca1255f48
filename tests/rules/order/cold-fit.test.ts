// order.cold-fit: an interference fit joined at one temperature. 50 H7/s6 has 18 to 59 µm, read in a table of ISO 286 (see
// the oracle of fits); that an H/h fit has clearance is what the letters mean.
import { expect, test } from "vitest";
import { expectFindings, told } from "#harness/check.ts";

const shop = (fit: string): string => `tool Heater "induction heater" { heats to 150 °C }
part Shaft "pump shaft" { heat limit 200 °C }
part Bearing "drive-end bearing" { heat limit 120 °C }
fit Bearing over Shaft {
  diameter 50 mm
  ${fit}
}
`;
const SHOP = shop("interference 11 .. 36 µm");
const cold = (fit: string, mark: string): string => `${shop(fit)}
procedure FitBearing "Fit the bearing" {
  begin with Shaft is installed
  step inspect Shaft, Bearing with Heater
  step install Bearing over Shaft
${mark}}`;
const MARK = "  //   ^^^^^^^^^^^^^^^ order.cold-fit error\n";

test("put together cold", () => {
  const text = cold("interference 11 .. 36 µm", MARK);
  expectFindings(text);
  expect(told(text, "order.cold-fit")).toMatchInlineSnapshot(`
    "Bearing and Shaft do not go together cold.
      Their fit has interference at all its limits. Neither was heated or cooled before this, and nothing is pressed.
    → Heat the outer part or cool the inner one before this, or write “press” in place of “install”.
    &4 The fit of Bearing and Shaft is declared here"
  `);
});

test.each([["interference 20 µm"], ["interference 20 ± 5 µm"], ['tolerance "H7/s6"'], ['tolerance "H6/r5"']])(
  "interference in every case: %s",
  (fit) => {
    expectFindings(cold(fit, MARK));
  },
);

test.each([["interference 0 .. 30 µm"], ["interference at most 30 µm"], ['tolerance "H7/h6"'], ['tolerance "H7/k6"']])(
  "silent: it may go by hand, or that is not known: %s",
  (fit) => {
    expectFindings(cold(fit, ""));
  },
);

test.each([
  ["the outer is hot", "step heat Bearing to 100 .. 110 °C with Heater\n  step install Bearing over Shaft"],
  ["the inner is cold", "step cool Shaft to -30 .. -20 °C\n  step install Bearing over Shaft"],
  ["it is pressed", "step heat Shaft to 20 °C with Heater\n  step press Bearing over Shaft"],
  [
    "it was hot and may have cooled, which another rule judges",
    "step heat Bearing to 100 .. 110 °C with Heater\n  step wait 10 min\n  step install Bearing over Shaft",
  ],
])("silent: %s", (_title, lines) => {
  expectFindings(`${SHOP}
procedure FitBearing "Fit the bearing" {
  begin with Shaft is installed
  step inspect Shaft with Heater
  ${lines}
}`);
});

test("heated and then cooled down for certain is cold", () => {
  expectFindings(`${SHOP}
procedure FitBearing "Fit the bearing" {
  begin with Shaft is installed
  step heat Bearing to 100 .. 110 °C with Heater
  step measure "bore"
  step wait until Bearing is at most 20 °C
  step install Bearing over Shaft
  //   ^^^^^^^^^^^^^^^ order.cold-fit
}`);
});

test("the inner into the outer, and where nothing says what it goes on", () => {
  expectFindings(`part Hub "hub"
part Gear "gear"
fit Gear over Hub {
  diameter 50 mm
  tolerance "H7/s6"
}

procedure FitHub "Fit the hub" {
  begin with Gear is installed
  step install Hub in Gear
  //   ^^^^^^^^^^^ order.cold-fit
}`);
  expectFindings(`part Hub "hub"
part Gear "gear"
fit Gear over Hub {
  diameter 50 mm
  tolerance "H7/s6"
}

procedure FitGear "Fit the gear" {
  begin with Hub is installed
  step install Gear
  //   ^^^^^^^^^^^^ order.cold-fit
}`);
});

test("silent: the mate is not there, or it goes on another part", () => {
  expectFindings(`part Hub "hub"
part Gear "gear"
part Mandrel "mandrel"
fit Gear over Hub {
  diameter 50 mm
  tolerance "H7/s6"
}

procedure FitGear "Fit the gear on the mandrel" {
  begin with Mandrel is installed
  finish with Hub is removed
  step install Gear over Mandrel
}`);
});

test("on one option nobody heats it", () => {
  const text = `${SHOP}option Hot "it is fitted hot" { yes no }

procedure FitBearing "Fit the bearing" {
  begin with Shaft is installed
  when Hot is yes { step heat Bearing to 100 .. 110 °C with Heater }
  step install Bearing over Shaft
  //   ^^^^^^^^^^^^^^^ order.cold-fit
}`;
  expectFindings(text);
  expect(told(text, "order.cold-fit")).toContain("This happens when Hot is no.");
});
