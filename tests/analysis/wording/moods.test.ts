// Whether a sentence orders or states, is passive, asks for one action or more, leaves something open: our own sentences of the shop,
// good and bad side by side. The held-out set (`tests/wording/`) measures what these only develop.
import { describe, expect, test } from "vitest";
import { actionsIn } from "#analysis/wording/actions.ts";
import { moodOf } from "#analysis/wording/mood.ts";
import { passiveIn } from "#analysis/wording/passive.ts";
import { type Sentence, sentencesOf } from "#analysis/wording/sentences.ts";
import { vagueIn } from "#analysis/wording/vague.ts";

const NO_VERBS: ReadonlySet<string> = new Set();
const first = (text: string): Sentence => sentencesOf(text)[0] as Sentence;
const mood = (text: string, verbs = NO_VERBS): string => moodOf(first(text), verbs).mood;
const withMood = (sentence: Sentence) => ({ ...sentence, ...moodOf(sentence, NO_VERBS) });
const passive = (text: string): string | null => {
  const found = passiveIn(withMood(first(text)), false);
  return found === null ? null : text.slice(found.first.start, found.last.end);
};
const actions = (text: string): readonly string[] =>
  actionsIn(sentencesOf(text).map(withMood), NO_VERBS).map((word) => word.lower);
const vague = (text: string): readonly string[] =>
  sentencesOf(text)
    .flatMap((one) => vagueIn(text, one))
    .map((one) => one.text);

describe("orders", () => {
  test.each([
    "Torque the screws in a cross pattern.",
    "Heat the coupling to 110 °C.",
    "Shim the gearbox foot.",
    "Lock the switch.",
    "Oil all threads.",
    "Check valves are closed.",
    "Clean flange faces with a dry rag.",
    "Then slowly lower the rotor.",
    "If the seal weeps, replace it.",
    "When the pressure is released, open the vent.",
    "To free the ring, tap it with a soft hammer.",
    "Using the puller, draw the hub off the shaft.",
    "On the drive end, mark the shim pack.",
    "At 60 °C, fit the sleeve.",
    "After 10 min, wipe off the penetrant.",
    "Before removal, mark the position of the cover.",
    "One at a time, remove the plugs.",
    "Do not turn the shaft.",
    "Never hammer on the ring.",
    "Make sure that the valve is shut.",
    "Deglaze the bore.",
    "Working clockwise, tighten each nut by one flat.",
    "Ream the holes until the pins slide in by hand.",
    "Test-run the unit.",
    "Please sign the sheet.",
    "Carefully, lift the cover.",
    "With the rotor locked, loosen the nut.",
    "Press in the new bush.",
    "Drain off the oil.",
    "All plugs out, drain the oil.",
    "Only now open the vent.",
    "Focus the lamp on the seat.",
    "Tighten in this order: 1, 4, 2, 3.",
    "Torque the screws in two stages: 20 N·m, then 45 N·m.",
    "Set the gauge: 2 bar.",
  ])("%s", (text) => {
    expect(mood(text)).not.toBe("statement");
  });

  test("a verb of the shop's own", () => {
    expect(mood("Skive tape off the roll.")).toBe("unknown");
    expect(mood("Skive tape off the roll.", new Set(["skive"]))).toBe("command");
  });
});

describe("statements", () => {
  test.each([
    "The cover must be removed.",
    "The technician cleans the filter.",
    "Removal of the rotor.",
    "Installation of the new seal.",
    "Cleaning the shaft.",
    "All screws to 45 N·m.",
    "Torque is 45 N·m.",
    "Seal faces must be clean.",
    "Lock washers are to be replaced.",
    "Bearings are pressed on.",
    "You must wear gloves.",
    "Fitter removes the guard.",
    "If the seal weeps, it must be replaced.",
    "New gaskets should be used.",
    "It is necessary to bleed the line.",
    "There must be no gap.",
    "The cover is heavy, lift it by the eyes.",
    "Nuts to 45 N·m.",
    "Operator to clean the screen.",
    "New gaskets on both sides.",
    "Workshop checks the gap.",
    "Drain plug of the sump: 25 N·m.",
    "Seal rings dry and free of dust.",
    "Oil pressure at the gauge.",
    "After the run, the fitter opens the vent.",
    "If it leaks, gaskets must be new.",
  ])("%s", (text) => {
    expect(mood(text)).toBe("statement");
  });
});

describe("passive", () => {
  test.each([
    ["The cover must be removed.", "must be removed"],
    ["The bolts are tightened crosswise.", "are tightened"],
    ["The oil is to be drained.", "is to be drained"],
    ["If the seal is damaged, it must be replaced.", "must be replaced"],
    ["The parts should be thoroughly cleaned.", "should be thoroughly cleaned"],
    ["Lock washers are to be replaced.", "are to be replaced"],
    ["The shaft shall not be turned.", "shall not be turned"],
    ["The filter has to be cleaned.", "has to be cleaned"],
    ["The rotor is then lowered.", "is then lowered"],
  ])("%s", (text, words) => {
    expect(passive(text)).toBe(words);
  });

  test.each([
    "Check that the cover is seated.",
    "When the oil is drained, fit the plug.",
    "Clean the parts that must be reused.",
    "Make sure the bolts are tightened.",
    "Remove the parts to be cleaned.",
    "The shaft must be dry.",
    "Wait until the bearing has cooled.",
    "Tighten the nut while the shaft is held.",
    "Two people are needed.",
    "Mark each part before it is removed.",
  ])("silent: %s", (text) => {
    expect(passive(text)).toBeNull();
  });
});

describe("several actions", () => {
  test.each([
    ["Drain the sump and clean the strainer.", ["drain", "clean"]],
    ["Remove the cover, clean the flange and fit a new gasket.", ["remove", "clean", "fit"]],
    ["Loosen the nut, then pull off the hub.", ["loosen", "pull"]],
    ["Open the vent. Drain the oil.", ["open", "drain"]],
    ["Switch the supply off and lock the switch.", ["switch", "lock"]],
    ["Fit a new tab and bend it up.", ["fit", "bend"]],
    ["After draining, remove the plug and inspect the magnet.", ["remove", "inspect"]],
    ["Bend the tabs back and take the plates off.", ["bend", "take"]],
    ["Add oil if needed and close the cap.", ["add", "close"]],
    ["Set the dial to zero and turn the rotor.", ["set", "turn"]],
    ["Close the cock and switch on.", ["close", "switch"]],
  ])("%s", (text, verbs) => {
    expect(actions(text)).toEqual(verbs);
  });

  test.each([
    "Close and lock the stop valves on both sides.",
    "Hold the shaft and turn the nut.",
    "Turn the shaft and feel for play.",
    "Turn the shaft and check that it runs free.",
    "Remove the nut and lock washer.",
    "Clean the shaft and bearing seat.",
    "Wash with soap and water.",
    "Measure the gap and record it.",
    "Turn the rotor while you press the pin in.",
    "Use a puller to remove and lift the hub.",
    "Check that the parts move and turn freely.",
    "Leave the lock on the switch. The guard is fitted under WI-160-02.",
    "Remove the cover. Do not bend the gasket.",
    "Bring the line to 3 bar and hold it there.",
    "Put the tag on the cock, seal in the bag.",
    "Tighten the screws in order and in two rounds.",
    "Remove the key, washer and set screw.",
    "Install the seal with the lip in and the spring facing the oil.",
  ])("one: %s", (text) => {
    expect(actions(text).length).toBeLessThan(2);
  });
});

describe("vague", () => {
  test.each([
    ["Add shims as required.", ["as required"]],
    ["Tighten the clamp properly.", ["properly"]],
    ["If necessary, replace the seal.", ["If necessary"]],
    ["Apply sufficient grease.", ["sufficient"]],
    ["Use a suitable puller.", ["suitable"]],
    ["Tighten the nut securely.", ["securely"]],
    ["Lubricate with a little oil.", ["a little"]],
    ["Torque to the correct value.", ["correct"]],
    ["Check the belt is in good condition.", ["in good condition"]],
    ["Replace the pads if they are too worn.", ["too worn"]],
    ["Bring the marks as close as possible.", ["as close as possible"]],
  ])("%s", (text, words) => {
    expect(vague(text)).toEqual(words);
  });

  test.each([
    "Add shims until the gap is even.",
    "Heat it enough to slide over the shaft.",
    "The bearing is hot enough to burn skin.",
    "If necessary, add oil up to the line so that the level stands at the mark.",
    "Apply sufficient grease to fill the groove.",
    "Add 5 g of grease as required.",
    "Set the gap as required by table 3.",
    "Correct the gap.",
    "Tighten the nut.",
  ])("silent: %s", (text) => {
    expect(vague(text)).toEqual([]);
  });
});
