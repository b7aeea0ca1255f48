// order.too-late: times that a `within` cannot be kept with, and those of which it is not known.
import { expect, test } from "vitest";
import { expectFindings, findingsIn, told } from "#harness/check.ts";

const HEAD = `option Extent "extent of work" { Full Part Reseal }
option Kept "the shim is kept" { yes no }
consumable Sealant "joint sealant"
part Sump "oil sump"
tool Gauge "depth gauge"  source Manual "manual"

// Uses what not every test does.
procedure Other "Other" {
  step {
    apply Sealant to Sump
    when Extent is Full and Kept is yes { measure "gap" with Gauge }
  }
}

`;
const work = (lines: string): string => `${HEAD}procedure Work "Work" { per Manual "7.2"\n${lines}\n}`;
const found = (lines: string): readonly unknown[] =>
  findingsIn(work(lines)).map(({ code, severity, options = [] }) => [code, severity, ...options]);
const late = (lines: string): readonly unknown[] =>
  found(`  step Coat { apply Sealant to Sump  takes 2 min }\n${lines}`);
const LATE = ["order.too-late", "error"];
const UNKNOWN = ["order.too-late", "warning"];

test("longer than the limit, at the line that says it", () => {
  const text = work(`  step Coat { apply Sealant to Sump  takes 2 min }
  step Wipe "Wipe the flange." { takes 4 min .. 5 min }
  step Fit {
    install Sump
    within 5 min after Coat
  //^^^^^^^^^^^^^^^^^^^^^^^ order.too-late error
    takes 30 s
  }`);
  expectFindings(text);
  expect(told(text, "order.too-late")).toMatchInlineSnapshot(`
    "This can end later than 5 min after Coat.
      Wanted: at most 5 min
      Found: up to 5.5 min
    → Move what comes between to before Coat, or correct the times.
    &16 The time begins at the end of Coat"
  `);
});

test("exactly the limit is kept, a second more is not; ends of ranges and sums in any unit", () => {
  const until = (within: string, takes: string): readonly unknown[] =>
    late(
      `  step { takes 4.2 min }\n  step { takes 0.1 h }\n  step { install Sump  within ${within} after Coat  takes ${takes} }`,
    );
  expect(until("642 s", "30 s")).toEqual([]);
  expect(until("641 s", "30 s")).toEqual([LATE]);
  expect(until("600 .. 642 s", "20 .. 30 s")).toEqual([]);
  expect(until("642 .. 700 s", "20 .. 60 s")).toEqual([]);
  expect(until("at most 10.7 min", "at most 30 s")).toEqual([]);
  expect(until("at most 10.7 min", "30 ± 1 s")).toEqual([LATE]);
});

test("waits count, with takes the longer of the two", () => {
  expect(late("  step wait 5 min\n  step { install Sump  within 6 min after Coat  takes 1 min }")).toEqual([]);
  expect(late("  step wait 5 .. 6 min\n  step { install Sump  within 6 min after Coat  takes 1 min }")).toEqual([LATE]);
  const both = (takes: string): readonly unknown[] =>
    late(
      `  step { wait 3 min  wait 1 min  takes ${takes} }\n  step { install Sump  within 5 min after Coat  takes 1 min }`,
    );
  expect(both("3 min")).toEqual([]);
  expect(both("4 min")).toEqual([]);
  expect(both("5 min")).toEqual([LATE]);
  expect(late("  step { wait 2 min  install Sump  within 1 min after Coat }")).toEqual([LATE]);
});

test("a time on the way that is not said is a warning, and not where it is too late anyway", () => {
  const text = work(`  step Coat { apply Sealant to Sump  takes 2 min }
  step Wipe "Wipe the flange."
  step wait until Sump is at most 30 °C
  step Fit {
    install Sump
    within 5 min after Coat
  //^^^^^^^^^^^^^^^^^^^^^^^ order.too-late warning
    takes 30 s
  }`);
  expectFindings(text);
  expect(told(text, "order.too-late")).toMatchInlineSnapshot(`
    "Nothing shows that this comes within 5 min after Coat.
      Steps 2 and 3 do not say how long they take.
    → Say with “takes …” how long it takes at most.
    &16 The time begins at the end of Coat
    &17 Its longest time is not said
    &18 Its longest time is not said"
  `);
  expect(
    late("  step { inspect Sump }\n  step { takes 9 min }\n  step { install Sump  within 5 min after Coat }"),
  ).toEqual([LATE]);
  expect(late("  step { takes at least 1 min }\n  step { install Sump  within 5 min after Coat  takes 1 s }")).toEqual([
    UNKNOWN,
  ]);
  expect(late("  step { install Sump  within 5 min after Coat }")).toEqual([UNKNOWN]);
});

test("silent: steps before it and behind it need no time, nor does the one that it counts from", () => {
  expect(
    found(`  step "Look."\n  step Coat { apply Sealant to Sump }
  step { install Sump  within 1 min after Coat  takes 1 min }\n  step "Sign it." { takes 9 h }`),
  ).toEqual([]);
});

test("exactly the choices for which it is so", () => {
  const lines = `  when Extent is Full { step { takes 5 min } }
  otherwise when Extent is Part { step { takes 2 min } }
  when Kept is no { step { takes 3 min } }
  step { install Sump  within LIMIT after Coat  takes 1 min }`;
  const within = (limit: string): readonly unknown[] => late(lines.replace("LIMIT", limit));
  expect(within("9 min")).toEqual([]);
  expect(within("8 min")).toEqual([[...LATE, { Extent: "Full", Kept: "no" }]]);
  expect(within("5.5 min")).toEqual([[...LATE, { Extent: "Full" }, { Extent: "Part", Kept: "no" }]]);
  expect(within("59 s")).toEqual([LATE]);
});

test("a choice that cannot be both ways in turn", () => {
  expect(
    late(`  when Extent is Full { step { takes 5 min } }
  when Extent is Reseal { step { takes 5 min } }
  step { install Sump  within 6 min after Coat  takes 1 min }`),
  ).toEqual([]);
  const measured = (again: string): readonly unknown[] =>
    late(`  step Probe { measure Gap "gap" with Gauge  takes 1 min }
  when Gap at most 0.5 mm { step { takes 5 min } }
  ${again}
  when not Gap at most 0.5 mm { step { takes 5 min } }
  step { install Sump  within 7 min after Coat  takes 1 min }`);
  expect(measured("")).toEqual([]);
  // Then the reading may be another one, and any number of times.
  expect(measured('step { takes 1 s  check "It is sure" if it fails { return to Probe } }')).toEqual([LATE]);
});

test("too late for one choice, not known for another", () => {
  expect(
    late(`  when Extent is Full { step { takes 9 min } }
  when Extent is Part { step "Look." }
  step { install Sump  within 5 min after Coat  takes 1 min }`),
  ).toEqual(
    expect.arrayContaining([
      [...LATE, { Extent: "Full" }],
      [...UNKNOWN, { Extent: "Part" }],
    ]),
  );
});

test("rework on the way can be done any number of times", () => {
  const text = work(`  step Coat { apply Sealant to Sump  takes 1 s }
  step Look "Look." {
    check "It is dry" if it fails { return to Look }
    takes 1 s
  }
  step {
    install Sump
    within 5 min after Coat
  //^^^^^^^^^^^^^^^^^^^^^^^ order.too-late error
    takes 1 s
  }`);
  expectFindings(text);
  expect(told(text, "order.too-late")).toMatchInlineSnapshot(`
    "Rework on the way can make this later than 5 min after Coat.
      It can be done any number of times without coming to Coat again.
    → Let the rework lead back to Coat or before it, so that the time begins anew.
    &16 The time begins at the end of Coat"
  `);
  expect(
    late(
      '  step Look { check "Dry" if it fails { return to Look } }\n  step { install Sump  within 5 min after Coat  takes 1 s }',
    ),
  ).toEqual([UNKNOWN]);
});

test("silent: rework that comes to the step again begins the time anew", () => {
  const steps = (to: string): readonly unknown[] =>
    found(`  step Clean "Clean it." { takes 9 min }
  step Coat { apply Sealant to Sump  takes 9 min }
  step Fit {
    inspect Sump
    within 2 min after Coat
    takes 2 min
    check "It sits" if it fails { return to ${to} }
  }`);
  expect(steps("Coat")).toEqual([]);
  expect(steps("Clean")).toEqual([]);
  expect(steps("Fit")).toEqual([LATE]);
});

test("rework for one choice only", () => {
  expect(
    late(`  step Look "Look." {
    takes 1 s
    when Extent is Full { check "It is dry" if it fails { return to Look } }
  }
  step { install Sump  within 5 min after Coat  takes 1 s }`),
  ).toEqual([[...LATE, { Extent: "Full" }]]);
});

test("a way that leaves it out does not count; the step may come later too", () => {
  expect(
    late(`  step { takes 1 min  check "It is dry" if it fails { go to Fit } }
  step { takes 9 min }
  step Fit { install Sump  within 2 min after Coat  takes 1 min }`),
  ).toEqual([LATE]);
  expect(
    found(`  when Extent is Full { step Coat { apply Sealant to Sump } }
  step { install Sump  within 2 min after Coat  takes 1 min }`),
  ).toEqual([]);
  expect(
    found(`  step { inspect Sump  within 2 min after Coat  takes 9 min }
  step Coat { apply Sealant to Sump }`),
  ).toEqual([]);
});

test("what is too late on a way that stops is not carried out, unless the step itself stops", () => {
  expect(
    late(`  step { takes 1 min  check "It is dry" if it fails { wait 9 min  stop "Ask." } }
  step { install Sump  within 2 min after Coat  takes 1 min }`),
  ).toEqual([]);
});

test("in a repeat: of the same pass from inside, of the last from outside", () => {
  const passes = (limit: string): readonly unknown[] =>
    found(`  repeat n from 1 to 3 {
    step Coat "Coat side {n}." { takes 4 min }
    step { inspect Sump  within ${limit} after Coat  takes 1 min }
  }
  step { inspect Sump  within 3 min after Coat  takes 2 min }`);
  expect(passes("1 min")).toEqual([]);
  expect(passes("59 s")).toEqual([LATE]);
  const [finding] = findingsIn(
    work(`  repeat n from 1 to 3 {
    step Coat "Coat side {n}." { takes 4 min }
    step { inspect Sump  within 59 s after Coat  takes 1 min }
  }`),
  );
  expect(finding?.why).toContain("for n = 1, and 2 more");
});

test("after a task, from its end", () => {
  expect(
    found(`  task Coating "Coat" {
    step { apply Sealant to Sump  takes 9 min }
    step { takes 9 min }
  }
  step { install Sump  within 2 min after Coating  takes 2 min }`),
  ).toEqual([]);
});

test("a performed procedure takes its own longest time", () => {
  const performing = (limit: string, inside: string): readonly unknown[] =>
    findingsIn(`${HEAD}procedure Wipe "Wipe it" {
${inside}
}

procedure Work "Work" {
  step Coat { apply Sealant to Sump  takes 9 min }
  perform Wipe
  step { install Sump  within ${limit} after Coat  takes 1 min  per Manual "7.2" }
}`).map(({ code, severity, options = [] }) => [code, severity, ...options]);
  const inside = "  step { takes 2 min }\n  when Extent is Full { step { takes 3 min } }";
  expect(performing("6 min", inside)).toEqual([]);
  expect(performing("5 min", inside)).toEqual([[...LATE, { Extent: "Full" }]]);
  expect(performing("2 min", inside)).toEqual([LATE]);
  expect(performing("6 min", `${inside}\n  when Extent is Part { step "Look." }`)).toEqual([
    [...UNKNOWN, { Extent: "Part" }],
  ]);
  expect(performing("6 min", '  step Dry { takes 1 s  check "Dry" if it fails { return to Dry } }')).toEqual([LATE]);
});

test("silent: a line on the way that cannot be read may be the one that says the time", () => {
  expect(
    late('  step "Wipe it." { tkes 1 min }\n  step { install Sump  within 5 min after Coat  takes 1 min }'),
  ).toEqual([["syntax.unexpected", "error"]]);
});

test("in any order, in whichever order takes longest", () => {
  const block = (lines: string, behind = ""): readonly unknown[] =>
    found(`  step First "Begin." { takes 1 s }\n  in any order {\n${lines}\n  }\n${behind}`);
  const coat = '    step Coat "Coat it." { takes 9 min }';
  const other = '    step "Wipe it." { takes 5 min }';
  const limited = (limit: string, after: string): string =>
    `    step { inspect Sump  within ${limit} after ${after}  takes 1 min }`;
  // The other one stands behind both in the text.
  expect(block([coat, limited("6 min", "Coat"), other].join("\n"))).toEqual([]);
  const text = [coat, limited("5 min", "Coat"), other].join("\n");
  expect(block(text)).toEqual([LATE]);
  expect(told(work(`  in any order {\n${text}\n  }`), "order.too-late")).toContain("in the order 1, 3, 2");
  expect(block([limited("5 min", "Coat"), other, coat].join("\n"))).toEqual([LATE]);
  expect(block([limited("14 min", "First"), other, coat].join("\n"))).toEqual([LATE]);
  expect(block([limited("15 min", "First"), other, coat].join("\n"))).toEqual([]);
  expect(block([other, coat].join("\n"), limited("6 min", "Coat"))).toEqual([]);
  expect(block([other, coat].join("\n"), limited("5 min", "Coat"))).toEqual([LATE]);
});

test("in any order, with more children than there are orders to try", () => {
  const block = (limit: string): readonly unknown[] => {
    const others = Array.from({ length: 12 }, (_, at) => `    step "Wipe side ${at + 1}." { takes 5 min }`).join("\n");
    return found(`  in any order {
    step { inspect Sump  within ${limit} after Coat  takes 1 min }
${others}
    step Coat "Coat it." { takes 9 min }
  }`);
  };
  expect(block("61 min")).toEqual([]);
  expect(block("60 min")).toEqual([LATE]);
});
