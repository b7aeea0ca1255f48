// What a step asks for and when it comes: needs, after and before, work in any order.
import { expect, test } from "vitest";
import { compare } from "./compare.ts";

const PUMP = `part Shaft "shaft"
part Key "key" { needs Shaft }
part Wheel "wheel" { needs Shaft, Key }
part ORing "O-ring" { needs Shaft }
part Cover "cover" { encloses Key }
fact OilIn "the oil is in"
consumable Oil "oil"
`;

test.each([
  [
    "unmet-need: the fact comes later",
    `${PUMP}
procedure Start "Start the pump" {
  step "Start the pump." { needs OilIn }
//                               ^^^^^ order.unmet-need error
  step "Pour the oil in." { gives OilIn }
}`,
  ],
  [
    "unmet-need, silent: the fact comes before",
    `${PUMP}
procedure Start "Start the pump" {
  step "Pour the oil in." { gives OilIn }
  step "Start the pump." { needs OilIn }
}`,
  ],
  [
    "unmet-need: on one path, once for both steps that ask",
    `${PUMP}
option Dry "a dry run" { yes no }
procedure Start "Start the pump" {
  when Dry is no { step "Pour the oil in." { gives OilIn } }
  step "Start the pump." { needs OilIn }
//                               ^^^^^ order.unmet-need error
  step "Run it for ten minutes." { needs OilIn }
}`,
  ],
  [
    "unmet-need: the one of two conditions that does not hold",
    `${PUMP}
procedure Start "Start the pump" {
  begin with Shaft is installed
  step "Start the pump." { needs Shaft is installed, Key is installed }
//                                                   ^^^^^^^^^^^^^^^^ order.unmet-need error
}`,
  ],
  [
    "unmet-need, silent: a negated one",
    `${PUMP}
procedure Start "Start the pump" {
  begin with Shaft is installed
  step "Turn the shaft by hand." { needs Key is not installed, not OilIn }
  step "Pour the oil in." { gives OilIn }
}`,
  ],
  [
    "unmet-need: a temperature that was never reached",
    `${PUMP}
part Bearing "bearing" { heat limit 120 °C }
tool Heater "heater" { heats to 150 °C }
procedure Fit "Fit the bearing" {
  finish with Bearing is installed
  step heat Bearing to 60 .. 90 °C with Heater
  step {
    needs Bearing is at least 80 °C
//        ^^^^^^^^^^^^^^^^^^^^^^^^^ order.unmet-need error
    install Bearing
  }
}`,
  ],
  [
    "unmet-need, silent: a state of its own, given and asked for",
    `part Lever "lever" { states closed, open }
procedure Open "Open the lever" {
  begin with Lever is installed
  step "Pull the lever." { needs Lever is closed  gives Lever is open }
  step "Look into the chamber." { needs Lever is open }
}`,
  ],
  [
    "unmet-need: the state was given up again",
    `part Lever "lever" { states closed, open }
procedure Open "Open the lever" {
  begin with Lever is installed
  step "Pull the lever." { gives Lever is open }
  step "Push the lever." { gives Lever is closed }
  step "Look into the chamber." { needs Lever is open }
//                                      ^^^^^^^^^^^^^ order.unmet-need error
}`,
  ],
  [
    "unmet-need: clean no more after the oil",
    `${PUMP}
procedure Dress "Dress the shaft" {
  begin with Shaft is installed
  finish with Key is installed
  step clean Shaft
  step lubricate Shaft with Oil
  step { needs Shaft is clean  install Key }
//             ^^^^^^^^^^^^^^ order.unmet-need error
}`,
  ],
  [
    "unmet-need, allowed",
    `${PUMP}
procedure Start "Start the pump" {
  step {
    needs OilIn
//        ^^^^^ order.unmet-need error allowed
    do "Start the pump."
    allow order.unmet-need because "The operator pours it in."
  }
}`,
  ],
  [
    "declared: after a step that comes later",
    `${PUMP}
procedure Work "Work" {
  begin with Shaft is installed
  step Look {
    inspect Shaft
    after Wash
//  ^^^^^^^^^^ order.declared error
  }
  step Wash { clean Shaft }
}`,
  ],
  [
    "declared: before a step that came earlier",
    `${PUMP}
procedure Work "Work" {
  begin with Shaft is installed
  step Look { inspect Shaft }
  step Wash {
    clean Shaft
    before Look
//  ^^^^^^^^^^^ order.declared error
  }
}`,
  ],
  [
    "declared, silent: kept across tasks",
    `${PUMP}
procedure Work "Work" {
  begin with Shaft is installed
  task Washing "Wash" { step Wash { clean Shaft  before Look } }
  task Looking "Look" { step Look { inspect Shaft  after Wash } }
}`,
  ],
  [
    "declared: the work in any order may turn it round",
    `${PUMP}
procedure Work "Work" {
  begin with Shaft is installed
  in any order {
    step Wash { clean Shaft }
    step Look {
      inspect Shaft
      after Wash
//    ^^^^^^^^^^ order.declared error
    }
  }
}`,
  ],
  [
    "declared, silent: one task in any order holds both",
    `${PUMP}
procedure Work "Work" {
  begin with Shaft is installed
  in any order {
    task Both "Wash and look" {
      step Wash { clean Shaft }
      step Look { inspect Shaft  after Wash }
    }
    step "Clear the bench."
  }
}`,
  ],
  [
    "declared, allowed",
    `${PUMP}
procedure Work "Work" {
  begin with Shaft is installed
  step Look {
    inspect Shaft
    after Wash
//  ^^^^^^^^^^ order.declared error allowed
    allow order.declared because "Washed on the bench of the store."
  }
  step Wash { clean Shaft }
}`,
  ],
  [
    "any order, silent: two that do not touch each other",
    `${PUMP}
procedure Dress "Dress the shaft" {
  begin with Shaft is installed
  finish with Key is installed, ORing is installed
  in any order {
    step install Key
    step install ORing
  }
}`,
  ],
  [
    "any order: one needs the other",
    `${PUMP}
procedure Dress "Dress the shaft" {
  begin with Shaft is installed
  finish with Wheel is installed
  in any order {
    step install Key
    step install Wheel
//       ^^^^^^^^^^^^^ order.missing-support error
  }
}`,
  ],
  [
    "any order, silent: both in one task, in their order",
    `${PUMP}
procedure Dress "Dress the shaft" {
  begin with Shaft is installed
  finish with Wheel is installed, ORing is installed
  in any order {
    task Wheels "Key and wheel" {
      step install Key
      step install Wheel
    }
    step install ORing
  }
}`,
  ],
  [
    "any order: one closes over the other",
    `${PUMP}
procedure Dress "Dress the shaft" {
  begin with Shaft is installed
  finish with Key is installed, Cover is installed
  in any order {
    step install Key
//       ^^^^^^^^^^^ order.enclosed error
    step install Cover
  }
}`,
  ],
  [
    "any order: both put in the same",
    `${PUMP}
procedure Dress "Dress the shaft" {
  begin with Shaft is installed
  finish with Key is installed
  in any order {
    step install Key
//       ^^^^^^^^^^^ order.already-installed error
    step install Key
//       ^^^^^^^^^^^ order.already-installed error
  }
}`,
  ],
  [
    "any order: what one gives, the other needs",
    `${PUMP}
procedure Start "Start the pump" {
  in any order {
    step "Pour the oil in." { gives OilIn }
    step "Start the pump." { needs OilIn }
//                                 ^^^^^ order.unmet-need error
  }
}`,
  ],
  [
    "any order: of three, one wants to be last",
    `${PUMP}
procedure Dress "Dress the shaft" {
  finish with Wheel is installed
  begin with Shaft is installed
  in any order {
    step install Key
    step install ORing
    step install Wheel
//       ^^^^^^^^^^^^^ order.missing-support error
  }
}`,
  ],
  [
    "any order, silent: after it all is there",
    `${PUMP}
procedure Dress "Dress the shaft" {
  begin with Shaft is installed
  finish with Wheel is installed, ORing is installed
  in any order {
    step install Key
    step install ORing
  }
  step { needs ORing is installed  install Wheel }
}`,
  ],
  [
    "any order: an energy is off in one of them only",
    `energy Supply "supply" { voltage 400 V AC }
part Motor "motor" { driven by Supply }
tool Tester "tester"
procedure Wipe "Wipe the motor" {
  begin with Motor is installed
  in any order {
    task Off "Switch off" {
      step isolate Supply
      step prove Supply dead with Tester
    }
    step clean Motor
//       ^^^^^^^^^^^ order.energised error
  }
  step restore Supply
}`,
  ],
  [
    "any order, silent: inside a step",
    `${PUMP}
procedure Look "Look" {
  begin with Shaft is installed, Key is installed
  step {
    in any order {
      inspect Shaft
      inspect Key
    }
  }
}`,
  ],
  [
    "any order: eight screws and the cover they belong to",
    `ring Circle "circle" { count 8  numbered clockwise seen from "above"  position 1 at 12 o'clock }
part Lid "lid"
part Screw[1..8] "screw" { seats in Circle by number  needs Lid  secures Lid  thread "M6x1" }
procedure Close "Close" {
  finish with Lid is installed, Screw[all] are loose
  in any order {
    step install Lid
    step install Screw[all]
//       ^^^^^^^^^^^^^^^^^^ order.missing-support error
  }
}`,
  ],
])("%s", (_title, text) => {
  const { found, wanted } = compare(text);
  expect(found).toBe(wanted);
});
