// An `allow` for each kind of finding, and work in any order with repeats, branches and other procedures in it.
import { expect, test } from "vitest";
import { compare } from "./compare.ts";

const SHOP = `option Extent "extent" { Full Part Look }
option Kept "kept" { yes no }
energy Supply "motor supply" { voltage 400 V AC }
part Motor "motor" { driven by Supply }
part Case "case"
part Cover "cover" { needs Case  encloses Motor }
part Screw[1..4] "screw" { needs Cover  secures Cover  thread "M8x1.25" }
part Plug[1..3] "plug" { needs Case }
ring Seat "seat" { count 8  numbered clockwise seen from "drive end"  position 1 at 6 o'clock }
part Tooth[1..8] "tooth" { seats in Seat by number }
fact Done "done"
tool Tester "tester"
tool Wrench "torque wrench" { torque 5 .. 120 N·m }
consumable Oil "oil"
`;

test.each([
  [
    "allowed: not-tightened",
    `${SHOP}
procedure Work "Work" {
  begin with Case is installed
  finish with Cover is installed, Screw[all] are loose
  step install Cover
  step install Screw[all]
  step loosen Screw[all]
//     ^^^^^^^^^^^^^^^^^ order.not-tightened error allowed
    allow order.not-tightened because "To be sure."
}`,
  ],
  [
    "allowed: position",
    `${SHOP}
procedure Work "Work" {
  finish with Tooth[2] is installed
  step {
    install Tooth[2] at 6 o'clock
//  ^^^^^^^^^^^^^^^^ order.position error allowed
    allow order.position because "The tooth is held with the hook."
  }
}`,
  ],
  [
    "allowed: unfinished, for the whole procedure",
    `${SHOP}
procedure Work "Work" {
  allow order.unfinished because "The night shift goes on."
  begin with Case is installed
  finish with Cover is installed
//            ^^^^^^^^^^^^^^^^^^ order.unfinished error allowed
  step clean Cover
}`,
  ],
  [
    "allowed: an endless loop, in its task",
    `${SHOP}
procedure Work "Work" {
  task Round "Round" {
    allow flow.endless because "The guard makes his rounds until he is relieved."
    step Begin { inspect Case }
    when Extent is Full { return to Begin }
//                        ^^^^^^^^^^^^^^^ flow.endless error allowed
  }
}`,
  ],
  [
    "allowed: an impossible condition",
    `${SHOP}
procedure Work "Work" {
  step {
    inspect Case
    when Extent is Full and Extent is Part { clean Case }
//       ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ flow.impossible-condition warning allowed
    allow flow.impossible-condition because "Kept for the next option."
  }
}`,
  ],
  [
    "allowed: what no path leads to",
    `${SHOP}
procedure Work "Work" {
  allow flow.unreachable because "Kept for the next revision."
  when Extent is Full {
    stop "Hand it over."
    step clean Case
//  ^^^^ flow.unreachable error allowed
  }
}`,
  ],
  [
    "an allow for another code does not silence this one",
    `${SHOP}
procedure Work "Work" {
  begin with Motor is installed
  step {
    clean Motor
//  ^^^^^^^^^^^ order.energised error
    allow order.not-proved because "The plug is pulled."
//  ^^^^^^^^^^^^^^^^^^^^^^ trace.unused-allow warning
  }
}`,
  ],
  [
    "any order, silent: a repeat is one of the things",
    `${SHOP}
procedure Work "Work" {
  begin with Case is installed
  finish with Plug[all] are installed, Cover is installed
  in any order {
    repeat n from 1 to 3 { step install Plug[n] }
    step install Cover
  }
}`,
  ],
  [
    "any order: a repeat that needs what is beside it",
    `${SHOP}
procedure Work "Work" {
  begin with Case is installed
  finish with Cover is installed, Screw[all] are loose
  in any order {
    repeat n from 1 to 4 { step install Screw[n] }
//                              ^^^^^^^^^^^^^^^^ order.missing-support error
    step install Cover
  }
}`,
  ],
  [
    "any order, silent: a branch beside a step",
    `${SHOP}
procedure Work "Work" {
  begin with Case is installed
  finish with Plug[1] is installed
  in any order {
    when Extent is Full { step install Cover }
    step install Plug[1]
  }
}`,
  ],
  [
    "any order: only where the cover goes on too",
    `${SHOP}
procedure Work "Work" {
  begin with Case is installed, Supply is isolated
  finish with Motor is installed, Supply is isolated
  in any order {
    when Extent is Full { step install Cover }
    step install Motor
//       ^^^^^^^^^^^^^ order.enclosed error
  }
}`,
  ],
  [
    "any order, silent: one in another",
    `${SHOP}
procedure Work "Work" {
  begin with Case is installed
  finish with Plug[all] are installed
  in any order {
    step install Plug[1]
    task Two "Two" {
      in any order {
        step install Plug[2]
        step install Plug[3]
      }
    }
  }
}`,
  ],
  [
    "any order: a procedure inside that needs what is beside it",
    `${SHOP}
procedure FitPlug "Fit plug 1" {
  begin with Case is installed, Cover is installed
  finish with Plug[1] is installed
  step install Plug[1]
}
procedure Work "Work" {
  begin with Case is installed
  finish with Plug[1] is installed, Cover is installed
  in any order {
    step install Cover
    perform FitPlug
//  ^^^^^^^^^^^^^^^ order.unmet-need error
  }
}`,
  ],
  [
    "any order: the same in two tasks, restored too early for the other",
    `${SHOP}
part Fan "fan" { driven by Supply }
procedure Work "Work" {
  begin with Motor is installed, Fan is installed
  step isolate Supply
  step prove Supply dead with Tester
  in any order {
    task A "A" {
      step clean Motor
      step restore Supply
    }
    task B "B" { step clean Fan }
//                    ^^^^^^^^^ order.energised error
  }
}`,
  ],
  [
    "restored-open: the guard is on and its screws are loose",
    `${SHOP}
procedure Work "Work" {
  begin with Case is installed, Motor is installed, Cover is secured
  finish with Cover is secured
  step isolate Supply
  step prove Supply dead with Tester
  step loosen Screw[all]
  step remove Screw[all]
  step remove Cover
  step clean Motor
  step install Cover
  step install Screw[all]
  step restore Supply
//     ^^^^^^^^^^^^^^ order.restored-open error
  step tighten Screw[all] to 20 N·m with Wrench
}`,
  ],
  [
    "restored-open: one screw of the guard was not put back",
    `${SHOP}
procedure Work "Work" {
  begin with Case is installed, Motor is installed, Cover is secured
  finish with Cover is installed, Screw[4] is removed
  step isolate Supply
  step prove Supply dead with Tester
  step loosen Screw[all]
  step remove Screw[all]
  step remove Cover
  step clean Motor
  step install Cover
  step install Screw[1..3]
  step tighten Screw[1..3] to 20 N·m with Wrench
  step restore Supply
//     ^^^^^^^^^^^^^^ order.restored-open error
}`,
  ],
  [
    "restored-open, silent: energised for the last adjustment with the cover of another case off",
    `${SHOP}
part Box "switch box"
part BoxLid "box lid" { encloses Box }
procedure Work "Work" {
  begin with Motor is installed, Box is installed, BoxLid is installed
  finish with BoxLid is installed
  step isolate Supply
  step prove Supply dead with Tester
  step remove BoxLid
  step clean Box, Motor
  step restore Supply
  step install BoxLid
}`,
  ],
  [
    "left-seated, silent: eased by a quarter turn",
    `${SHOP}
procedure Work "Work" {
  begin with Case is installed
  finish with Cover is installed, Screw[all] are tightened
  step install Cover
  step install Screw[all]
  step tighten Screw[all] to 10 N·m to seat with Wrench
  step loosen Screw[all] by 1/4 turn
}`,
  ],
  [
    "left-seated, silent: out again by a rework that stops",
    `${SHOP}
procedure Work "Work" {
  begin with Case is installed
  finish with Cover is secured
  step install Cover
  step install Screw[all]
  step Seat1 { tighten Screw[all] to 10 N·m to seat with Wrench }
  step {
    check "The gap is closed" if it fails {
      loosen Screw[all]
      return to Seat1
    }
  }
  step tighten Screw[all] to 20 N·m with Wrench
}`,
  ],
  [
    "too-late, warning: the step itself says no time",
    `${SHOP}
procedure Work "Work" {
  finish with Case is installed
  step Oiling { lubricate Case with Oil  takes 1 min }
  step {
    install Case
    within 5 min after Oiling
//  ^^^^^^^^^^^^^^^^^^^^^^^^^ order.too-late warning
  }
}`,
  ],
  [
    "too-late: work in any order on the way, all of it counts",
    `${SHOP}
procedure Work "Work" {
  finish with Case is installed
  step Oiling { lubricate Case with Oil  takes 1 min }
  in any order {
    step { clean Cover  takes 3 min }
    step { clean Plug[1]  takes 3 min }
  }
  step {
    install Case
    takes 1 min
    within 5 min after Oiling
//  ^^^^^^^^^^^^^^^^^^^^^^^^^ order.too-late error
  }
}`,
  ],
  [
    "too-late, silent: work in any order that fits",
    `${SHOP}
procedure Work "Work" {
  finish with Case is installed
  step Oiling { lubricate Case with Oil  takes 1 min }
  in any order {
    step { clean Cover  takes 1 min }
    step { clean Plug[1]  takes 1 min }
  }
  step {
    install Case
    takes 1 min
    within 5 min after Oiling
  }
}`,
  ],
  [
    "too-late, silent: a repeat on the way that fits",
    `${SHOP}
procedure Work "Work" {
  finish with Case is installed
  step Oiling { lubricate Case with Oil  takes 1 min }
  repeat n from 1 to 3 { step { clean Plug[n]  takes 1 min } }
  step {
    install Case
    takes 1 min
    within 4 min after Oiling
  }
}`,
  ],
  [
    "too-late: a repeat on the way, one pass too many",
    `${SHOP}
procedure Work "Work" {
  finish with Case is installed
  step Oiling { lubricate Case with Oil  takes 1 min }
  repeat n from 1 to 4 { step { clean Tooth[n]  takes 1 min } }
  step {
    install Case
    takes 1 min
    within 4 min after Oiling
//  ^^^^^^^^^^^^^^^^^^^^^^^^^ order.too-late error
  }
}`,
  ],
])("%s", (_title, text) => {
  const { found, wanted } = compare(text);
  expect(found).toBe(wanted);
});
