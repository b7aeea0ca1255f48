// order.not-final: left loose or left out, with no word of it in `finish with`.
import { expect, test } from "vitest";
import { expectFindings, findingsIn, told } from "#harness/check.ts";

const SHOP = `part Cover "bearing cover"
part Screw[1..4] "cover screw" { secures Cover }
`;

test("run in and left loose: one finding for all of them", () => {
  const text = `${SHOP}
procedure Close "Close the housing" {
  step install Cover
  step install Screw[all]
  //   ^^^^^^^^^^^^^^^^^^ order.not-final warning
}`;
  expectFindings(text);
  expect(told(text, "order.not-final")).toMatchInlineSnapshot(`
    "Screw[1] is left loose at the end.
      Nothing after this tightens it, and “finish with” has no word of it.
      The same holds for Screw[2], Screw[3] and Screw[4].
    → Tighten Screw[1] before the end, or say “finish with Screw[1] is loose”."
  `);
});

test("taken out and left out, thrown away too", () => {
  const text = `part Seal "shaft seal"
part Gasket "cover gasket"

procedure Open "Open the housing" {
  begin with Seal is installed, Gasket is installed
  step remove Seal
  //   ^^^^^^^^^^^ order.not-final warning
  step discard Gasket
  //   ^^^^^^^^^^^^^^ order.not-final warning
}`;
  expectFindings(text);
  expect(told(text, "order.not-final")).toMatchInlineSnapshot(`
    "Seal is left out at the end.
      Nothing after this puts it back, and “finish with” has no word of it.
    → Install Seal before the end, or say “finish with Seal is removed”."
  `);
});

test("found at what left it loose: by hand, or loosened again", () => {
  expectFindings(`${SHOP}
procedure Close "Close the housing" {
  step install Cover, Screw[all]
  step tighten Screw[all] by hand
  //   ^^^^^^^^^^^^^^^^^^ order.not-final
}`);
  expectFindings(`${SHOP}
procedure Close "Close the housing" {
  step install Cover, Screw[all]
  step tighten Screw[all]
  step loosen Screw[2]
  //   ^^^^^^^^^^^^^^^ order.not-final
}`);
});

test("silent: “finish with” has a word of it", () => {
  expectFindings(`${SHOP}part Seal "shaft seal"

procedure Close "Close the housing" {
  begin with Seal is installed
  finish with Screw[all] are loose, Seal is removed
  step remove Seal
  step install Cover, Screw[all]
}`);
});

test("“finish with” wants it tight: told as unfinished alone", () => {
  expectFindings(`${SHOP}
procedure Close "Close the housing" {
  finish with Cover is secured
  //          ^^^^^^^^^^^^^^^^ order.unfinished
  step install Cover, Screw[all]
}`);
});

test("silent: tightened, put back, a temporary part, or loose without having been put in here", () => {
  expectFindings(`${SHOP}temporary part Pin "guide pin"
part Gasket "cover gasket"

procedure Close "Close the housing" {
  begin with Pin is installed, Gasket is installed
  step discard Gasket
  step install new Gasket
  step install Cover, Screw[all]
  step remove Pin
  step tighten Screw[all]
}`);
  expectFindings(`${SHOP}
procedure Slacken "Slacken the cover" {
  begin with Cover is secured
  step loosen Screw[all]
}`);
});

test("silent: what came along on a part that “finish with” speaks of", () => {
  expectFindings(`part Shaft "pump shaft"
part Sleeve "sleeve"

procedure TakeOut "Take the shaft out with its sleeve" {
  finish with Shaft is removed
  step install Shaft
  step install Sleeve on Shaft
  step remove Shaft
}`);
});

test("on one option they stay loose, and in a repeat with the first pass", () => {
  const text = `${SHOP}option Extent "extent of work" { Full Trial }

procedure Close "Close the housing" {
  step install Cover
  repeat n from 1 to 4 { step install Screw[n] }
  //                          ^^^^^^^^^^^^^^^^ order.not-final
  when Extent is Full { step tighten Screw[all] }
}`;
  expectFindings(text);
  expect(told(text, "order.not-final")).toContain("This happens for n = 1, and 3 more, when Extent is Trial.");
});

test("silent: a stop is no end", () => {
  expectFindings(`${SHOP}
procedure Close "Close the housing" {
  step install Cover, Screw[all]
  step { check "The cover lies flat" if it fails { stop "Ask the engineer." } }
  step tighten Screw[all]
}`);
});

test("what a performed procedure says it leaves is told where it is performed", () => {
  const text = `${SHOP}
procedure Place "Place the cover" {
  finish with Screw[all] are loose
  step install Cover, Screw[all]
}
procedure Close "Close the housing" {
  perform Place
//^^^^^^^^^^^^^ order.not-final
}`;
  expectFindings(text);
  expect(told(text, "order.not-final")).toMatchInlineSnapshot(`
    "Place leaves Screw[1] loose.
      At the end it is still loose, and “finish with” here has no word of it.
      The same holds for Screw[2], Screw[3] and Screw[4].
    → Tighten Screw[1] before the end, or say “finish with Screw[1] is loose”."
  `);
});

test("silent: the one that performs it tightens them, or what is performed is told itself", () => {
  expectFindings(`${SHOP}
procedure Place "Place the cover" {
  finish with Screw[all] are loose
  step install Cover, Screw[all]
}
procedure Close "Close the housing" {
  perform Place
  step tighten Screw[all]
}`);
  expectFindings(`${SHOP}
procedure Place "Place the cover" {
  step install Cover, Screw[all]
  //   ^^^^^^^^^^^^^^^^^^^^^^^^^ order.not-final
}
procedure Close "Close the housing" {
  perform Place
}`);
});

test("a loop back to the first step makes no beginning: what was out at the start may be left out", () => {
  expectFindings(`part Hub "hub"

procedure Try "Try the hub" {
  step Fit { inspect Hub }
  step install Hub
  step Look {
    check "It fits" if it fails {
      remove Hub
      return to Fit
    }
  }
  step remove Hub
}`);
});

// “Of two codes for one mistake the more telling one is given: left-behind before unfinished, unfinished before not-final.”
test.each([
  ["run in", "step install Jack"],
  ["run in by hand", "step install Jack\n  step tighten Jack by hand"],
  ["tightened to seat", "step install Jack\n  step tighten Jack to 20 N·m to seat with Wrench"],
])("an aid with a thread that is left in is left behind, and no more: %s", (_title, steps) => {
  const text = (more: string): string => `tool Wrench "torque wrench" { torque 8 .. 60 N·m }
part Cover "cover"
temporary part Jack "jack screw" { needs Cover  thread "M10x1.5"  nut factor 0.20 dry }

procedure Close "Close the housing" {
  begin with Cover is installed
  step inspect Cover with Wrench
  ${steps}
${more}}`;
  const found = (more: string): readonly string[] =>
    findingsIn(text(more)).flatMap(({ code }) => (code.startsWith("order.") ? [code] : []));
  expect(found("")).toEqual(["order.left-behind"]);
  expect(found("  step remove Jack\n")).toEqual([]);
});

test("an aid that is said to stay in, and was tightened to seat, is left so", () => {
  expectFindings(`tool Wrench "torque wrench" { torque 8 .. 60 N·m }
temporary part Jack "jack screw" { thread "M10x1.5"  nut factor 0.20 dry }

procedure Close "Close the housing" {
  finish with Jack is installed
  step install Jack
  step tighten Jack to 30 N·m to seat with Wrench
  //   ^^^^^^^^^^^^ order.left-seated
}`);
});
