// wording.long-sentence: the limits of ASD-STE100 (second hand), 20 words in an instruction and 25 in a description, each on both sides.
import { expect, test } from "vitest";
import { expectFindings, findingsIn } from "#harness/check.ts";

/** A sentence of so many words. */
const sentence = (words: number): string =>
  "Turn the jack screw and ".concat("the screw with the key ".repeat(words)).split(" ").slice(0, words).join(" ");
const wordsTold = (line: string): readonly string[] =>
  findingsIn(`procedure P "Turn" {\n  ${line}\n}\n`)
    .filter(({ code }) => code === "wording.long-sentence")
    .map(({ message }) => message);

test.each([
  ["step", (text: string) => `step "${text}."`, 20],
  ["do", (text: string) => `step { do "${text}." }`, 20],
  ["avoid", (text: string) => `warning burn "It is hot." avoid "${text}." wear "gloves"`, 20],
  ["stop", (text: string) => `step { check "It is dry" if not { stop "${text}." } }`, 20],
  ["note", (text: string) => `note "${text}."`, 25],
  ["why", (text: string) => `step "Turn it with the key." { why "${text}." }`, 25],
  ["statement", (text: string) => `warning burn "${text}." avoid "Do not touch the cover." wear "gloves"`, 25],
] as const)("%s: at most so many words", (_, line, most) => {
  expect(wordsTold(line(sentence(most)))).toEqual([]);
  expect(wordsTold(line(sentence(most + 1)))).toEqual([`This sentence has ${most + 1} words.`]);
});

test("a quantity is one word, so is a word with a hyphen; two sentences are counted apart", () => {
  const nineteen = sentence(19);
  expect(wordsTold(`step "${nineteen} 45 N·m."`)).toEqual([]);
  expect(wordsTold(`step "${nineteen} cross-wise."`)).toEqual([]);
  expect(wordsTold(`step "${nineteen}. ${nineteen}."`)).toEqual([]);
});

test("titles, labels and texts that are not English are left alone", () => {
  expect(wordsTold(`task "${sentence(30)}" { step "Turn it." }`)).toEqual([]);
  expect(wordsTold(`step "Turn it." { record "${sentence(30)}" }`)).toEqual([]);
  expect(wordsTold(`step "${"Schraube langsam drehen ".repeat(10)}."`)).toEqual([]);
});

test("the sentence is marked, also in a text of several lines", () => {
  expectFindings(`procedure P "Turn" {
  note """
    The belt is slack.
    The jack screw moves the motor on its rails and so takes the tension off the belt before the guard is off and the fan is free of load.
//  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ wording.long-sentence information
    """
}
`);
});
