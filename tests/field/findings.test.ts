// What is found in procedures whose author saw no rule: exactly what was judged right, so that neither a new false alarm nor the loss
// of a right finding goes unseen.
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { findingsIn } from "#harness/check.ts";
import type { ReportedFinding } from "#workspace/report.ts";
import { JUDGEMENTS, type Judgement } from "./judgements.ts";

const folder = join(import.meta.dirname, "procedures");
const procedures = readdirSync(folder).map((name) => name.replace(/\.sprag$/, ""));

/** Of a long place, as much as tells it from others. */
const SHOWN = 40;

test.each(procedures)("%s", (procedure) => {
  const text = readFileSync(join(folder, `${procedure}.sprag`), "utf8");
  const right = JUDGEMENTS.filter((one) => one.procedure === procedure && one.verdict === "right");
  expect(findingsIn(text).map((finding) => keyOf(asJudged(procedure, text, finding)))).toEqual(right.map(keyOf));
});

test("each judgement is of a procedure that is there, and says why in a sentence", () => {
  for (const { procedure, verdict, why } of JUDGEMENTS) {
    expect(["right", "wrong"]).toContain(verdict);
    expect(procedures).toContain(procedure);
    expect(why).toMatch(/^[A-Z0-9“].*\.$/);
  }
  const count = (verdict: string) => JUDGEMENTS.filter((one) => one.verdict === verdict).length;
  console.log(
    `findings judged over ${procedures.length} procedures: ${count("right")} right, ${count("wrong")} once wrong`,
  );
  expect(new Set(JUDGEMENTS.map(keyOf)).size).toBe(JUDGEMENTS.length);
});

function asJudged(procedure: string, text: string, { code, range: { start, end }, step }: ReportedFinding): Place {
  const line = text.split("\n")[start.line] ?? "";
  const at = line.slice(start.character, end.line === start.line ? end.character : undefined);
  return { procedure, code, step: step?.number ?? "", at };
}

type Place = Omit<Judgement, "verdict" | "why">;

/** A place is told by how it begins. */
function keyOf({ procedure, code, step, at }: Place): string {
  return [procedure, step, code, at.slice(0, SHOWN).trim()].join(" | ");
}
