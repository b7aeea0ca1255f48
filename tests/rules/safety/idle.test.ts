// safety.idle: nothing in scope raises it; silent where facts cannot tell, or something could not be read.
import { expect, test } from "vitest";
import { expectFindings, findingsIn } from "#harness/check.ts";

const idleIn = (text: string): number => findingsIn(text).filter(({ code }) => code === "safety.idle").length;
const statement = (hazard: string): string => `warning ${hazard} "It hurts." avoid "Keep clear." wear "gloves"`;
const text = (hazard: string, lines: string, things = ""): string => `part Cover "cover"
${things}
procedure Work "Work" {
  ${statement(hazard)}
  ${lines}
}
`;

test.each(["burn", "cold", "fire", "pressure", "electric", "cutting", "rotating", "spring"])(
  "found: %s over nothing that raises it",
  (hazard) => {
    expect(idleIn(text(hazard, "step inspect Cover"))).toBe(1);
  },
);

test("it stands at the statement, as a hint", () => {
  const burn = statement("burn");
  expectFindings(`part Cover "cover"
procedure Work "Work" {
  ${burn}
//${burn.replace(/./g, "^")} safety.idle hint
  step inspect Cover
}
`);
});

test.each(["eye", "skin", "fumes", "noise", "fall", "explosion", "burn, eye"])(
  "silent: %s, which facts cannot tell",
  (hazard) => {
    expect(idleIn(text(hazard, "step inspect Cover"))).toBe(0);
  },
);

test.each([
  ["lifting", "a lift with a hoist", "step lift Cover with Hoist", 'tool Hoist "hoist" { lifts 90 kg }'],
  ["lifting", "a part whose mass is not said", "step install Cover", ""],
  [
    "burn",
    "a part being heated",
    "step heat Cover to 60 .. 70 °C with Heater",
    'tool Heater "heater" { heats to 90 °C }',
  ],
  ["electric", "an energy isolated", "step isolate Supply", 'energy Supply "supply" { voltage 400 V AC }'],
  ["fire", "a liquid with a flash point", "step clean Cover with Oil", 'consumable Oil "oil" { flash point 200 °C }'],
  ["cutting", "the step's own word", "step {\n inspect Cover\n raises cutting\n }", ""],
  ["burn", "own words", 'step "Take the plate off."', ""],
  ["burn", "an action in own words", 'step { do "Take the plate off." }', ""],
  ["electric", "a line that cannot be read", "step isolate", ""],
  ["pressure", "an energy that cannot be read", "step isolate Air", 'energy Air "air" { presure 6 bar }'],
])("silent: %s with %s", (hazard, _what, lines, things) => {
  expect(idleIn(text(hazard, lines, things))).toBe(0);
});

test("what a performed procedure raises counts, one that raises nothing does not", () => {
  const inner = (part: string): string =>
    `part Blade "blade" { sharp }\nprocedure Inner "Inner" { step install ${part} }`;
  expect(idleIn(text("cutting", "perform Inner", inner("Blade")))).toBe(0);
  expect(idleIn(text("cutting", "perform Inner", inner("Cover")))).toBe(1);
});

test("what stands before it does not count", () => {
  const before = `part Blade "blade" { sharp }
procedure Work "Work" {
  ${statement("cutting")}
  step install Blade
  task Rest "Look" {
    ${statement("cutting")}
    step inspect Blade
  }
}
`;
  expect(idleIn(before)).toBe(1);
});

test("a block with no work in it is told as that alone", () => {
  const codes = findingsIn(
    `procedure Work "Work" {\n  task A "A" {\n    ${statement("burn")}\n  }\n  step "Sign it."\n}\n`,
  );
  expect(codes.map(({ code }) => code)).toEqual(["flow.empty"]);
});

test("silent: what holds back the pressure of a live line is undone, or done up again", () => {
  const line = `energy Line "air line" { pressure 6 bar }
part Flange "flange" { driven by Line }
part Nut "flange nut" { secures Flange }
`;
  const work = (step: string): string =>
    `${line}procedure Work "Work" {\n  begin with Flange is secured\n  ${statement("pressure")}\n  step ${step} Nut\n}\n`;
  expect(idleIn(work("loosen"))).toBe(0);
  expect(idleIn(work("tighten"))).toBe(0);
});
