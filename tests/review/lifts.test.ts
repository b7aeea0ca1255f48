// How hands are on a load, the legs of a sling, the air of the room, what backs up what: a change of each is told as what it is.
import { expect, test } from "vitest";
import { linesOf, reviewed } from "./compare-texts.ts";

const text = `tool Hoist "hoist" { lifts 250 kg }
tool Sling "sling" { each leg lifts 150 kg }
part Cover "cover" { mass 10 kg }
part Pump[1..2] "pump" { backs up Pump }
procedure Move "Move" {
  room 60 m³
  warning lifting "Heavy." avoid "Lift together."
  step lift Pump[1] with Hoist + Sling on 2 legs at 60°
  step lift Cover by hand reach 30 cm from height 60 cm to 100 cm turned 10°
}
`;

test.each([
  ["reach 30 cm", "reach 32 cm", "values reach-changed [2]"],
  ["reach 30 cm", "reach 300 mm", "values restated [2]"],
  ["reach 30 cm from", "from", "values reach-dropped [2]"],
  ["from height 60 cm", "from height 65 cm", "values height-changed [2]"],
  ["to 100 cm", "to 90 cm", "values height-changed [2]"],
  ["turned 10°", "turned 20°", "values twist-changed [2]"],
  ["2 legs", "4 legs", "values sling-legs-changed [1]"],
  ["at 60°", "at 45°", "values angle-changed [1]"],
  ["each leg lifts 150 kg", "each leg lifts 120 kg", "values leg-lifts-changed"],
  ["room 60 m³", "room 50 m³", "values room-changed"],
  [" { backs up Pump }", "", "order backs-up-dropped"],
])("“%s” → “%s”: %s", (from, to, wanted) => {
  expect(text.split(from)).toHaveLength(2);
  const told = linesOf(reviewed({ "a.sprag": text }, { "a.sprag": text.replace(from, to) }));
  expect(told).toHaveLength(1);
  expect(told[0]).toMatch(new RegExp(`^${wanted.replace(/[[\]]/g, "\\$&")} `));
});
