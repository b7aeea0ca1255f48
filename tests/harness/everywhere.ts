// One question asked at every place of a text: for features that must answer wherever a writer is, in texts that are half
// typed or damaged. Knows no feature.

import type { Position } from "vscode-languageserver-protocol";
import { oneIn } from "#harness/thorough.ts";
import { linesOf } from "#syntax/lines.ts";
import type { Editor } from "./editor.ts";

export interface AnswerAt<Answer> {
  readonly position: Position;
  readonly answer: Answer;
}

/**
 * The answers to one request at places all over a text, ends of lines too, in a file that is opened for it; at every place in a
 * thorough run. Throws where one is answered with an error.
 */
export async function askEverywhere<Answer>(
  editor: Editor,
  method: string,
  text: string,
): Promise<readonly AnswerAt<Answer>[]> {
  const { uri } = await editor.open("everywhere.sprag", text);
  const lines = linesOf(text);
  const answers: AnswerAt<Answer>[] = [];
  const places = Array.from({ length: lines.count }, (_, line) =>
    Array.from({ length: lines.text(line).length + 1 }, (_, character) => ({ line, character })),
  );
  for (const position of oneIn(3, places.flat())) {
    const answer = await editor.connection.sendRequest<Answer>(method, { textDocument: { uri }, position });
    answers.push({ position, answer });
  }
  return answers;
}

/** Texts as they are in the middle of work on a shop's file, and worse, each with what it is. */
export function roughTexts(
  shop: string,
  procedure: (lines: string) => string,
): readonly (readonly [what: string, text: string])[] {
  return [
    ["empty", ""],
    ["half-typed", procedure("  step remove \n  step tighten Screw[ to 45 N with\n  when Extent is {\n  allow ord")],
    ["damaged", `${shop}procedure {{ "x\n step 𝒜 remove Cover }} part Screw[1.. "`],
    ["braces that do not match", "}}} { { step { } part { mass 3 } } choose A by B { 1 .. 2: option C { "],
    ["with CR LF", procedure('  step remove Cover per Manual "2"\r\n  step wait 3 min\r\n').replaceAll("\n", "\r\n")],
  ];
}
