// order.left-behind: aids that stay in, energies that stay off, and the step that takes them out or on again.
import { expect, test } from "vitest";
import { expectFindings, findingsIn, told, withFix } from "#harness/check.ts";

test("a guide pin that is never taken out, at the install", () => {
  const text = `part Cover "bearing cover"
temporary part GuidePin "guide pin"

procedure CloseUp "Close the housing" {
  step install GuidePin
  //   ^^^^^^^^^^^^^^^^ order.left-behind
  step install Cover
}`;
  expectFindings(text);
  expect(told(text, "order.left-behind")).toMatchInlineSnapshot(`
    "GuidePin is put in here and never taken out.
      GuidePin is a temporary part, and at the end it is still in.
    → Remove GuidePin before the end, or say “finish with GuidePin is installed”.
    + Put in “step remove GuidePin”"
  `);
});

test("closed over: found there, not at the end", () => {
  const text = `part Cover "bearing cover" { encloses Plug }
temporary part Plug "transport plug"

procedure CloseUp "Close the housing" {
  step install Plug
  //   ^^^^^^^^^^^^ order.left-behind
  step install Cover
}`;
  expectFindings(text);
  expect(told(text, "order.left-behind")).toMatchInlineSnapshot(`
    "Plug is still in when Cover closes over it.
      Plug is a temporary part. Behind Cover it cannot be reached any more.
    → Remove Plug before Cover is installed.
    &6 Cover closes over Plug here
    + Put in “step remove Plug”"
  `);
});

test("silent: closed over, and said to stay", () => {
  expectFindings(`part Cover "bearing cover" { encloses Plug }
temporary part Plug "transport plug"

procedure CloseUp "Close the housing for transport" {
  finish with Plug is installed
  step install Plug
  step install Cover
}`);
});

test("an energy isolated and not restored, at the isolate", () => {
  const text = `part Cover "bearing cover"
energy Supply "motor supply" { voltage 400 V AC }

procedure Look "Look into the housing" {
  step isolate Supply
  //   ^^^^^^^^^^^^^^ order.left-behind
  step inspect Cover
}`;
  expectFindings(text);
  expect(told(text, "order.left-behind")).toMatchInlineSnapshot(`
    "Supply is isolated here and never restored.
      At the end it is still off, and “finish with” does not say so.
    → Restore Supply before the end, or say “finish with Supply is isolated”.
    + Put in “step restore Supply”"
  `);
});

test("silent: taken out, restored, said to stay, or off from the start", () => {
  expectFindings(`part Cover "bearing cover"
temporary part GuidePin[1..2] "guide pin"
temporary part Cap "transport cap"
energy Supply "motor supply" { voltage 400 V AC }
energy Steam "steam" {
  pressure 6 bar
  off
}

procedure CloseUp "Close the housing" {
  finish with Cap is installed, Steam is isolated
  step isolate Supply
  step install GuidePin[all]
  step install Cover, Cap
  step remove GuidePin[all]
  step restore Supply
}`);
});

test("“no temporary parts” in the finish: the more telling code alone", () => {
  expectFindings(`temporary part GuidePin "guide pin"

procedure CloseUp "Close the housing" {
  finish with no temporary parts
  step install GuidePin
  //   ^^^^^^^^^^^^^^^^ order.left-behind
}`);
});

test("on one path only", () => {
  const text = `temporary part GuidePin "guide pin"
option Extent "extent of work" { Full Look }

procedure CloseUp "Close the housing" {
  step install GuidePin
  //   ^^^^^^^^^^^^^^^^ order.left-behind
  when Extent is Full { step remove GuidePin }
}`;
  expectFindings(text);
  expect(told(text, "order.left-behind")).toContain("This happens when Extent is Look.");
  expect(told(text, "order.left-behind")).not.toContain("+ ");
});

test("silent: a stop is no end", () => {
  expectFindings(`temporary part GuidePin "guide pin"

procedure CloseUp "Close the housing" {
  step install GuidePin
  step { check "The holes line up" if it fails { stop "Ask the engineer." } }
  step remove GuidePin
}`);
});

test("one of two pins is forgotten", () => {
  expectFindings(`temporary part GuidePin[1..2] "guide pin"

procedure CloseUp "Close the housing" {
  step install GuidePin[1]
  step install GuidePin[2]
  //   ^^^^^^^^^^^^^^^^^^^ order.left-behind
  step remove GuidePin[1]
}`);
});

test("allowed for a task, with its reason", () => {
  expectFindings(`temporary part Cap "transport cap"

procedure Ship "Make ready for the journey" {
  task "Cap it" {
    allow order.left-behind because "It stays on until the site crew takes it off."
    step install Cap
    //   ^^^^^^^^^^^ order.left-behind allowed
  }
}`);
});

test.each([
  ["a temporary part", "step install GuidePin", "step remove GuidePin"],
  ["an energy", "step isolate Supply", "step restore Supply"],
])("the fix puts in the step at the end: %s", (_title, step, added) => {
  const text = `part Cover "bearing cover"
temporary part GuidePin "guide pin"
energy Supply "motor supply" { voltage 400 V AC }

procedure CloseUp "Close the housing" {
  begin with GuidePin is removed, Supply is live
  ${step}
  step inspect Cover
}
`;
  const [found] = findingsIn(text);
  expect(found?.code).toBe("order.left-behind");
  const mended = found === undefined ? "" : withFix(text, found);
  expect(mended).toBe(text.replace("  step inspect Cover\n}", `  step inspect Cover\n  ${added}\n}`));
  expect(findingsIn(mended)).toEqual([]);
});

test("the fix for what is closed over comes before the step that closes it", () => {
  const text = `part Cover "bearing cover" { encloses Plug }
temporary part Plug "transport plug"

procedure CloseUp "Close the housing" {
  step install Plug
  step install Cover
}
`;
  const [found] = findingsIn(text);
  const mended = found === undefined ? "" : withFix(text, found);
  expect(mended).toContain("  step remove Plug\n  step install Cover\n");
  expect(findingsIn(mended)).toEqual([]);
});

test("silent: an energy that starts dead is left as it was found, but not where it is said to be live at the start", () => {
  const text = (begin: string, mark = ""): string => `energy TestSupply "test supply" { voltage 400 V AC  off }
part Motor "motor" { driven by TestSupply }

procedure Test "Run the motor" {
  begin with Motor is installed${begin}
  danger electric "The terminals are live." avoid "Keep the box shut."
  step restore TestSupply
  step isolate TestSupply
${mark}}`;
  expectFindings(text(""));
  expectFindings(text(", TestSupply is live", "  //   ^^^^^^^^^^^^^^^^^^ order.left-behind\n"));
});

// A fix “takes the finding away and adds none”: with one more removal the later one would come to what is out already.
test("closed over, and taken out later: the line has to be moved, and nothing is put in", () => {
  const text = `part Cover "bearing cover" { encloses GuidePin }
temporary part GuidePin "guide pin"

procedure CloseUp "Close the housing" {
  finish with Cover is installed
  step install GuidePin
  //   ^^^^^^^^^^^^^^^^ order.left-behind
  step install Cover
  step remove Cover
  step remove GuidePin
  step install Cover
}`;
  expectFindings(text);
  expect(told(text, "order.left-behind")).toMatchInlineSnapshot(`
    "GuidePin is still in when Cover closes over it.
      GuidePin is a temporary part. Behind Cover it cannot be reached any more.
    → Remove GuidePin before Cover is installed.
    &7 Cover closes over GuidePin here"
  `);
});
