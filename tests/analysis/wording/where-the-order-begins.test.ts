// Whether a sentence orders or states, and with which word its main clause begins (checks.md, wording.not-imperative: a leading condition
// is fine). Our own sentences of the shop; where the closed lists do not tell, it is not known, and no finding comes of it.
import { describe, expect, test } from "vitest";
import { moodOf } from "#analysis/wording/mood.ts";
import { sentencesOf } from "#analysis/wording/sentences.ts";

/** `command: drain`: the mood, and the word that the main clause begins with. */
function mood(text: string, verbs: readonly string[] = []): string {
  const [sentence] = sentencesOf(text);
  if (sentence === undefined) return "no sentence";
  const { mood: found, at } = moodOf(sentence, new Set(verbs));
  return `${found}: ${sentence.words[at]?.text ?? "nothing"}`;
}

describe("orders", () => {
  test.each([
    ["Do not turn the shaft.", "Do"],
    ["Don't turn the shaft.", "Don't"],
    ["Be careful with the edge.", "Be"],
    ["Never hammer on the ring.", "Never"],
    ["Avoid sparks near the tank.", "Avoid"],
    ["Remove.", "Remove"],
    ["Then remove.", "remove"],
    ["Then slowly lower the rotor.", "lower"],
    ["Now, carefully, turn it.", "turn"],
    ["Oil the rod.", "Oil"],
    ["Torque the plug: 25 N·m.", "Torque"],
    // Behind a condition, or what else leads up to it.
    ["If it leaks, do not start it.", "do"],
    ["If it leaks, don't start it.", "don't"],
    ["If it leaks, never start it.", "never"],
    ["If it leaks, then slowly drain it.", "drain"],
    ["If it leaks, oil the rod.", "oil"],
    ["When it is cold, dry and clean, remove the cap.", "remove"],
    ["After the test: drain it.", "drain"],
    ["On the left; turn it.", "turn"],
    ["3 turns back, lock the nut.", "lock"],
    ["Using the puller, draw the hub off.", "draw"],
    ["To free the ring – if it sticks – tap it.", "tap"],
    // What may be said of something follows these without “that”.
    ["Check valves are closed.", "Check"],
    ["Note leaks on the drawing.", "Note"],
  ])("%s", (text, verb) => {
    expect(mood(text)).toBe(`command: ${verb}`);
  });
  test("with a verb of the shop's own, and not without it", () => {
    expect(mood("Deglaze bores with the stone.", ["deglaze"])).toBe("command: Deglaze");
    expect(mood("If it sticks, deglaze it.", ["deglaze"])).toBe("command: deglaze");
    expect(mood("Deglaze.", ["deglaze"])).toBe("command: Deglaze");
    expect(mood("Deglaze.")).toBe("unknown: Deglaze");
  });
});

describe("statements", () => {
  test.each([
    ["The cover is heavy, lift it by the eyes.", "The"],
    ["Torque of the plug: 25 N·m.", "Torque"],
    ["Gap at the shoulder: 0.1 mm.", "Gap"],
    ["Oil level at the line.", "Oil"],
    ["Seal faces dry and clean.", "Seal"],
    ["Seal is dry.", "Seal"],
    ["Oil is thick when it is cold.", "Oil"],
    ["Draining takes a while.", "Draining"],
    ["Fitter and inspector sign.", "Fitter"],
    ["Workshop checks the gap.", "Workshop"],
    ["Fixture closes the gap.", "Fixture"],
    ["Workshop presses the bush.", "Workshop"],
    ["Gearbox to stand level.", "Gearbox"],
    // Behind a condition: where its main clause begins.
    ["If it leaks, the seal is worn.", "the"],
    ["When the pump runs, it must not shake.", "it"],
    ["If it is red, white and blue, it is ours.", "it"],
    ["If it is hot, black or dirty, the seal will leak.", "the"],
  ])("%s", (text, word) => {
    expect(mood(text)).toBe(`statement: ${word}`);
  });
});

describe("not known", () => {
  test.each([
    "Ready.",
    "Deglaze the bore.",
    "Level: low.",
    "Deglazed or not: see the drawing.",
    // Nobody knows where the main clause begins.
    "If it leaks the seal is worn.",
    "When cold.",
    // Leads up to an order that begins with a thing, not with a condition.
    "Bores deglazed, drain the oil.",
    "All plugs out, drain the oil.",
  ])("%s", (text) => {
    expect(mood(text)).toMatch(/^unknown: /);
  });
});
