// What the formatter makes of small texts: the layout of the language guide, spellings, comments, and what it leaves alone.
// Sources: "contract" is section 2 of the language description; "SI" is the SI brochure, 9th edition, 5.4.3 (no space
// before °, ′ and ″, one before all other units, also %).
import { describe, expect, test } from "vitest";
import { formatEdits, formatText } from "#syntax/format.ts";
import { parseText } from "#syntax/parse.ts";

function formatted(text: string): string | null {
  const result = formatText(parseText(text, "any.sprag"));
  return result.ok ? result.text : null;
}

/** Both texts end in a new line; the second must also stay as it is. */
function expectFormat(text: string, canonical: string): void {
  expect(formatted(text)).toBe(canonical);
  expect(formatted(canonical)).toBe(canonical);
}

describe("one fact a line", () => {
  test("a block with one property stays on the line, with more it opens", () => {
    expectFormat(
      'part Cover"cover"{mass 3 kg}part Hub{needs Cover sharp} part Lid {} part Pin',
      'part Cover "cover" { mass 3 kg }\npart Hub {\n  needs Cover\n  sharp\n}\npart Lid {}\npart Pin\n',
    );
  });

  test("a source after a block stands behind its brace", () => {
    expectFormat(
      'fit A over B {diameter 60 mm\n\n\n slip clearance 1 µm\n} per\nManual "6.2"\n',
      'fit A over B {\n  diameter 60 mm\n\n  slip clearance 1 µm\n} per Manual "6.2"\n',
    );
  });

  test("choices with titles stand one a line, bare words together", () => {
    expectFormat(
      'option E "extent" { Full "full" Part "part" } option K {\n yes\n no }',
      'option E "extent" {\n  Full "full"\n  Part "part"\n}\noption K { yes no }\n',
    );
  });

  test("a crib and its items", () => {
    expectFormat(
      'crib C{item "T-1" for Wrench item "T-2" for Wrench{accuracy 3 % calibrated until 2027-01-31}}',
      'crib C {\n  item "T-1" for Wrench\n  item "T-2" for Wrench {\n    accuracy 3 %\n    calibrated until 2027-01-31\n  }\n}\n',
    );
  });

  test("procedures, tasks and their lines", () => {
    expectFormat(
      'part A procedure P "p" { document "W" revision "D" dated 2026-05-04 crew 2 task T { step install A step { } } }',
      `part A

procedure P "p" {
  document "W" revision "D" dated 2026-05-04
  crew 2
  task T {
    step install A
    step {}
  }
}
`,
    );
  });

  test("a repeat or a branch with one short step stays on its line, the ways of a branch do not", () => {
    expectFormat(
      `procedure P {
  repeat n in 1,5 {
    step install S[ n ] }
  when E is Full { go to X }
  when E is Full { stop "a" } otherwise when (E is Part or K is yes) and not F { stop "b" } otherwise { stop "c" }
  repeat n from 16 down to 4 { step { install S[n-1] } }
}`,
      `procedure P {
  repeat n in 1, 5 { step install S[n] }
  when E is Full { go to X }
  when E is Full {
    stop "a"
  } otherwise when (E is Part or K is yes) and not F {
    stop "b"
  } otherwise {
    stop "c"
  }
  repeat n from 16 down to 4 {
    step { install S[n - 1] }
  }
}
`,
    );
  });

  test("a check opens with its way back, a choice with its rows", () => {
    expectFormat(
      `procedure P {
  step { check "gap" with Feeler expect at most 0.03 mm record if it fails { remove B return to H } sign F }
  step choose Shim by Gap { 0.2..0.6 mm:0.5 mm 0.6 .. 1.2 mm : Thick }
}`,
      `procedure P {
  step {
    check "gap" with Feeler expect at most 0.03 mm record if it fails {
      remove B
      return to H
    }
    sign F
  }
  step choose Shim by Gap {
    0.2 .. 0.6 mm: 0.5 mm
    0.6 .. 1.2 mm: Thick
  }
}
`,
    );
  });
});

describe("lines longer than 100 columns", () => {
  test("the lines of a one-line step go below it", () => {
    const why = "The lock stays in for the journey, and the site crew takes it out.";
    expectFormat(
      `procedure P { step install Lock allow order.left-behind because "${why}" by Fitter step install Lock by Fitter }`,
      `procedure P {
  step install Lock
    allow order.left-behind because "${why}"
    by Fitter
  step install Lock by Fitter
}
`,
    );
  });

  test("how not to be hurt goes below what hurts", () => {
    expectFormat(
      `procedure P {
  warning burn, fire "The bearing is hot enough to burn skin." avoid "Do not touch it with bare hands." wear "gloves", "sleeves"
  warning burn "It is hot." avoid "Do not touch it." wear "gloves"
}`,
      `procedure P {
  warning burn, fire "The bearing is hot enough to burn skin."
    avoid "Do not touch it with bare hands."
    wear "gloves", "sleeves"
  warning burn "It is hot." avoid "Do not touch it." wear "gloves"
}
`,
    );
  });

  test("one condition a line", () => {
    expectFormat(
      "procedure P { finish with Impeller is secured, LockTab is installed, Cover is secured, CouplingHalf[1, 2] are aligned }",
      `procedure P {
  finish with Impeller is secured,
    LockTab is installed,
    Cover is secured,
    CouplingHalf[1, 2] are aligned
}
`,
    );
  });
});

describe("spellings", () => {
  test.each([
    ["40 N*m", "40 N·m", "contract"],
    ["40 N.m", "40 N·m", "contract"],
    ["40Nm", "40 N·m", "contract"],
    ["40 N⋅m", "40 N·m", "contract: both · are read"],
    ["40 N•m", "40 N·m", "the bullet of a word processor"],
    ["5 min⁻¹", "5 1/min", "what is written can be read"],
    ["5 1/min", "5 1/min", "what is written can be read"],
    ["20 °C−5 °C", "20 °C - 5 °C", "contract: − is read as -"],
    ['3/4"', '3/4"', "in doubt, stays, and close: behind a blank it would begin a text"],
    ["80 degC", "80 °C", "contract"],
    ["11 um", "11 µm", "contract"],
    ["11 \u03bcm", "11 \u00b5m", "contract: both µ are read"],
    ["40 N·m +/- 5 %", "40 N·m ± 5 %", "contract"],
    ["36 ft·lbf", "36 lbf·ft", "contract"],
    ["−200..−190 °C", "-200 .. -190 °C", "contract: − is read as -"],
    ["5 °", "5°", "SI"],
    ["30 ′", "30′", "SI"],
    ["12%", "12 %", "SI"],
    ["6 o’clock", "6 o'clock", "contract: ’ is read as '"],
    ["40 N·m(39..43 N·m)", "40 N·m (39 .. 43 N·m)", "contract"],
    ["30 %   of( A+2 * B )", "30 % of (A + 2 * B)", "contract"],
    ["1 1/2 in", "1 1/2 in", "contract"],
    ["1  1/2 in", "1 1/2 in", "a blank too many"],
    ["1_000 L", "1_000 L", "contract"],
    ["3 lb", "3 lb", "contract: a bare lb stays"],
    ["20 C", "20 C", "contract: in doubt, stays"],
    ["400 V  AC", "400 V AC", "contract"],
    ["11.7 µm/(m·K)", "11.7 µm/(m·K)", "contract"],
  ])("%s is written %s (%s)", (written, canonical) => {
    expectFormat(`value V = ${written}\n`, `value V = ${canonical}\n`);
  });

  // Contract: "`ft-lb` … in a torque place → lbf·ft"; in a mass moment place the pound is a mass.
  test.each([
    ["part S { torque 36 ft-lb dry }", "part S { torque 36 lbf·ft dry }"],
    ["part S { prevailing torque 36 lb-in }", "part S { prevailing torque 36 lbf·in }"],
    ["tool W { torque 10 .. 36 in-lb }", "tool W { torque 10 .. 36 lbf·in }"],
    [
      "procedure P { step tighten S to 10 lb-ft, 36 lb-ft then 90 deg }",
      "procedure P {\n  step tighten S to 10 lbf·ft, 36 lbf·ft then 90°\n}",
    ],
    ["arrangement A of S in R { unbalance at most 3 lb-in }", "arrangement A of S in R { unbalance at most 3 lb·in }"],
    ["part S { mass 3 lbs }", "part S { mass 3 lb }"],
    ["tool W { force 3 lb }", "tool W { force 3 lb }"],
    ["procedure P { step loosen S by 1/4 turns }", "procedure P {\n  step loosen S by 1/4 turn\n}"],
    ["part S { torque (30 ft-lb + 6 ft-lb) * 2 dry }", "part S { torque (30 lbf·ft + 6 lbf·ft) * 2 dry }"],
  ])("%s", (text, canonical) => {
    expectFormat(`${text}\n`, `${canonical}\n`);
  });

  test("ranges stand close in brackets, open where an end is a sum", () => {
    expectFormat(
      "part S [ 1 .. 16 ]\nprocedure P { step inspect S[1 .. 4],S[ 1,5 , 9 ],S[n+1..n+4] }\n",
      "part S[1..16]\n\nprocedure P {\n  step inspect S[1..4], S[1, 5, 9], S[n + 1 .. n + 4]\n}\n",
    );
  });

  test("names become NFC, line ends LF, the byte order mark goes", () => {
    expectFormat('\uFEFFpart Pru\u0308fer "A\u030A"\r\n\r\n\r\npart B\r', 'part Pr\u00fcfer "\u00c5"\n\npart B\n');
  });

  test("a text in three quotation marks keeps its lines", () => {
    expectFormat(
      'procedure P {\nnote """\r\n      one\n        two  \n   """ step "s" }',
      'procedure P {\n  note """\n      one\n        two  \n   """\n  step "s"\n}\n',
    );
  });
});

describe("comments", () => {
  test("each stays beside its fact", () => {
    expectFormat(
      `// head

// of A
part A {      // the cover
    mass 3 kg// net
  /* why sharp */
  sharp /* edges */ needs B

    // nothing more
} // end of A
//last`,
      `// head

// of A
part A {  // the cover
  mass 3 kg  // net
  /* why sharp */
  sharp  /* edges */
  needs B

  // nothing more
}  // end of A
//last
`,
    );
  });

  test("a block with a comment opens", () => {
    expectFormat(
      "part A { /* light */ mass 3 kg }\npart B { mass 3 kg /* net */ }\npart C { // none\n}\n",
      "part A {\n  /* light */ mass 3 kg\n}\npart B {\n  mass 3 kg  /* net */\n}\npart C {  // none\n}\n",
    );
  });

  test("a comment within a statement stays between its words", () => {
    expectFormat(
      "procedure P { step install /* the left */ A // not B\n  with T per // see\n M }\n",
      "procedure P {\n  step install /* the left */ A  // not B\n    with T\n    per  // see\n      M\n}\n",
    );
  });

  test("a comment of several lines keeps its shape", () => {
    expectFormat(
      "part A {\n      /* one\n         two\n\n    three */\n mass 3 kg }\n",
      "part A {\n  /* one\n     two\n\n  three */\n  mass 3 kg\n}\n",
    );
  });

  test("a comment between the ways of a branch", () => {
    expectFormat(
      'procedure P { when A { stop "a" } // or\n otherwise // else\n { stop "b" } }\n',
      'procedure P {\n  when A {\n    stop "a"\n  }  // or\n  otherwise  // else\n  {\n    stop "b"\n  }\n}\n',
    );
  });

  test("nothing but comments, or nothing at all", () => {
    expectFormat("\n\n  // a\n\n\n// b", "// a\n\n// b\n");
    expectFormat("/* a */ // b", "/* a */ // b\n");
    expectFormat("", "");
    expectFormat(" \n\r\n", "");
  });

  test("the empty line before a procedure goes above its comment", () => {
    expectFormat(
      "part A // a\n// about P\nprocedure P {}\npart B",
      "part A  // a\n\n// about P\nprocedure P {}\n\npart B\n",
    );
  });
});

describe("left alone", () => {
  test.each([
    ["an open block", "part A { mass 3 kg"],
    ["a misspelt word", "prat A"],
    ["a decimal comma", "value A = 2,5 mm"],
    ["a dash for a range", "value A = 380–440 N"],
    ["an open string", 'part A "a'],
    ["a stray sign", "part A;"],
    ["no text at all", "\u0000\u0001\uD800"],
    ["braces without end", "{".repeat(1000)],
  ])("%s", (_, text) => {
    expect(formatted(text)).toBeNull();
    expect(formatEdits(parseText(text, "any.sprag"))).toEqual([]);
  });
});

describe("edits", () => {
  test("each is as small as a blank or a unit", () => {
    const text = "part  A {\n  mass 3 kg\n  torque 4 Nm dry\n}";
    expect(formatEdits(parseText(text, "shop/a.sprag"))).toEqual([
      { span: { path: "shop/a.sprag", start: 4, end: 6 }, newText: " " },
      { span: { path: "shop/a.sprag", start: 33, end: 35 }, newText: "N·m" },
      { span: { path: "shop/a.sprag", start: 41, end: 41 }, newText: "\n" },
    ]);
  });
});
