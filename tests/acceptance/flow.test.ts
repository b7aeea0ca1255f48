// The ways through a procedure: jumps, loops, branches that nobody takes, and empty ones.
import { expect, test } from "vitest";
import { compare } from "./compare.ts";

const GAUGE = `option Extent "extent of work" { Full Part Look }
tool Depth "depth gauge" { measures 0 .. 25 mm  resolution 0.01 mm }
part Disc "disc"
part Seal "seal"
`;

test.each([
  [
    "unreachable: behind a stop in a branch",
    `${GAUGE}
procedure Work "Work" {
  when Extent is Look {
    step inspect Disc
    stop "Hand it over."
    step clean Disc
//  ^^^^ flow.unreachable error
    step clean Seal
  }
  step "Write the report."
}`,
  ],
  [
    "unreachable: behind both branches",
    `${GAUGE}
procedure Work "Work" {
  step Begin { inspect Disc }
  when Extent is Look { stop "Hand it over." } otherwise { go to Report }
  step clean Disc
//^^^^ flow.unreachable error
  step Report "Write the report."
}`,
  ],
  [
    "unreachable, silent: one of the branches goes on",
    `${GAUGE}
procedure Work "Work" {
  when Extent is Look { stop "Hand it over." }
  otherwise when Extent is Part { go to Report }
  step clean Disc
  step Report "Write the report."
}`,
  ],
  [
    "unreachable: behind a jump in a branch",
    `${GAUGE}
procedure Work "Work" {
  when Extent is Look {
    go to Report
    step clean Disc
//  ^^^^ flow.unreachable error
  }
  step clean Seal
  step Report "Write the report."
}`,
  ],
  [
    "unreachable, silent: skipped by a jump on one path",
    `${GAUGE}
procedure Work "Work" {
  when Extent is Look { go to Report }
  step clean Disc
  step Report "Write the report."
}`,
  ],
  [
    "impossible-condition: the third of three values is used up",
    `${GAUGE}
procedure Work "Work" {
  step {
    when Extent is Full { clean Disc }
    otherwise when Extent is Part { clean Seal }
    otherwise when Extent is Look { inspect Disc }
    otherwise { inspect Seal }
//  ^^^^^^^^^ flow.impossible-condition warning
  }
}`,
  ],
  [
    "impossible-condition: two values of one option at once",
    `${GAUGE}
procedure Work "Work" {
  step {
    inspect Disc
    when Extent is Full and Extent is Part { clean Disc }
//       ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ flow.impossible-condition warning
  }
}`,
  ],
  [
    "impossible-condition, silent: both values in turn",
    `${GAUGE}
procedure Work "Work" {
  step {
    inspect Disc
    when Extent is Full or Extent is Part { clean Disc }
    when Extent is not Full and Extent is not Part { clean Seal }
  }
}`,
  ],
  [
    "impossible-condition: behind a stop for that value",
    `${GAUGE}
procedure Work "Work" {
  when Extent is Look { stop "Hand it over." }
  step {
    clean Disc
    when Extent is Look { clean Seal }
//       ^^^^^^^^^^^^^^ flow.impossible-condition warning
  }
}`,
  ],
  [
    "endless: always back",
    `${GAUGE}
procedure Work "Work" {
  step Begin { clean Disc }
  when Extent is Full { return to Begin }
//                      ^^^^^^^^^^^^^^^ flow.endless error
  step "Write the report."
}`,
  ],
  [
    "endless, silent: a check leads back",
    `${GAUGE}
procedure Work "Work" {
  step Begin { clean Disc }
  step { check "It is clean" if it fails { return to Begin } }
}`,
  ],
  [
    "endless: a reading that is not taken again",
    `${GAUGE}
procedure Work "Work" {
  step measure Height "height of the disc" with Depth expect 4 .. 6 mm
  step Lap { do "Lap the disc." }
  when Height at least 5 mm { return to Lap }
//                            ^^^^^^^^^^^^^ flow.endless error
  step "Write the report."
}`,
  ],
  [
    "endless, silent: the reading is taken again on the way",
    `${GAUGE}
procedure Work "Work" {
  step Lap { do "Lap the disc." }
  step measure Height "height of the disc" with Depth expect 4 .. 6 mm
  when Height at least 5 mm { return to Lap }
  step "Write the report."
}`,
  ],
  [
    "endless, silent: a stop inside the loop is a way out",
    `${GAUGE}
procedure Work "Work" {
  step Begin { clean Disc }
  step { check "It can be saved" if it fails { stop "Scrap it." } }
  when Extent is Full { return to Begin }
  step "Write the report."
}`,
  ],
  [
    "bad-jump: back to what comes later",
    `${GAUGE}
procedure Work "Work" {
  step { check "It is clean" if it fails { return to Later } }
//                                         ^^^^^^^^^^^^^^^ flow.bad-jump error
  step Later { clean Disc }
}`,
  ],
  [
    "bad-jump: forward to what came before",
    `${GAUGE}
procedure Work "Work" {
  step Begin { clean Disc }
  step { check "It is clean" if it fails { go to Begin } }
//                                         ^^^^^^^^^^^ flow.bad-jump error
}`,
  ],
  [
    "bad-jump: into a repeat",
    `${GAUGE}
procedure Work "Work" {
  repeat n from 1 to 3 { step Pass { clean Disc } }
  step { check "It is clean" if it fails { return to Pass } }
//                                         ^^^^^^^^^^^^^^ flow.bad-jump error
}`,
  ],
  [
    "bad-jump, silent: inside the same pass",
    `${GAUGE}
procedure Work "Work" {
  repeat n from 1 to 3 {
    step Pass { clean Disc }
    step { check "It is clean" if it fails { return to Pass } }
  }
}`,
  ],
  [
    "bad-jump, silent: out of a repeat, back and forward",
    `${GAUGE}
procedure Work "Work" {
  step Begin { clean Disc }
  repeat n from 1 to 3 {
    step { check "It is clean" if it fails { return to Begin } }
    step { check "It is whole" if it fails { go to Report } }
  }
  step "Pack it."
  step Report "Write the report."
}`,
  ],
  [
    "bad-jump: into the other branch",
    `${GAUGE}
procedure Work "Work" {
  when Extent is Full { step Lap { clean Disc } }
  otherwise {
    step { check "It is clean" if it fails { return to Lap } }
//                                           ^^^^^^^^^^^^^ flow.bad-jump error
  }
}`,
  ],
  [
    "bad-jump: into a branch from outside",
    `${GAUGE}
procedure Work "Work" {
  when Extent is Full { step Lap { clean Disc } }
  step { check "It is clean" if it fails { return to Lap } }
//                                         ^^^^^^^^^^^^^ flow.bad-jump error
}`,
  ],
  [
    "bad-jump, silent: out of a branch, and inside one",
    `${GAUGE}
procedure Work "Work" {
  step Begin { clean Seal }
  when Extent is Full {
    step Lap { clean Disc }
    step { check "It is flat" if it fails { return to Lap } }
    step { check "It is clean" if it fails { return to Begin } }
  }
  step "Write the report."
}`,
  ],
  [
    "bad-jump, silent: from one task into an earlier one",
    `${GAUGE}
procedure Work "Work" {
  task Cleaning "Clean" {
    step Wash { clean Disc }
    step Dry "Dry it."
  }
  task Looking "Look" {
    step { check "It is clean" if it fails { return to Wash } }
  }
}`,
  ],
  [
    "bad-jump, silent: a step goes back to its own start",
    `${GAUGE}
procedure Work "Work" {
  step Wash {
    clean Disc
    check "It is clean" if it fails { return to Wash }
  }
}`,
  ],
  [
    "empty: a task",
    `${GAUGE}
procedure Work "Work" {
  task Later "Do it later" { }
//     ^^^^^ flow.empty warning
  step clean Disc
}`,
  ],
  [
    "empty: a repeat",
    `${GAUGE}
procedure Work "Work" {
  repeat n from 1 to 3 { }
//^^^^^^^^^^^^^^^^^^^^ flow.empty warning
  step clean Disc
}`,
  ],
  [
    "empty: a branch",
    `${GAUGE}
procedure Work "Work" {
  when Extent is Full { }
//^^^^^^^^^^^^^^^^^^^ flow.empty warning
  step clean Disc
}`,
  ],
  [
    "empty: an otherwise",
    `${GAUGE}
procedure Work "Work" {
  when Extent is Full { step clean Disc }
  otherwise { }
//^^^^^^^^^ flow.empty warning
}`,
  ],
  [
    "empty: a task with a note only",
    `${GAUGE}
procedure Work "Work" {
  task Reading "Read this first" {
//     ^^^^^^^ flow.empty warning
    note "The disc is brittle."
  }
  step clean Disc
}`,
  ],
  [
    "empty, silent: a task of tasks, a step of words",
    `${GAUGE}
procedure Work "Work" {
  task Outer "All" {
    task Inner "Part" { step "Clear the bench." }
  }
  when Extent is Full { step "Clear the shelf." }
  repeat n from 1 to 3 { task Pass "Pass" { step "Wipe side {n}." } }
}`,
  ],
  [
    "empty, allowed",
    `${GAUGE}
procedure Work "Work" {
  allow flow.empty because "The numbers of the tasks are those of the manual."
  task Later "Kept free" { }
//     ^^^^^ flow.empty warning allowed
  step clean Disc
}`,
  ],
  [
    "unused-allow: nothing is endless here",
    `${GAUGE}
procedure Work "Work" {
  step Begin { clean Disc }
  step {
    check "It is clean" if it fails { return to Begin }
    allow flow.endless because "It is over after two passes."
//  ^^^^^^^^^^^^^^^^^^ trace.unused-allow warning
  }
}`,
  ],
])("%s", (_title, text) => {
  const { found, wanted } = compare(text);
  expect(found).toBe(wanted);
});
