// A statement that was read long before the step that it is for is said again there.
import { expect, test } from "vitest";
import { exportText } from "#harness/export.ts";
import { openWorkspace } from "#workspace/workspace.ts";

const SHARP = 'warning cutting "The edges are sharp." avoid "Hold the blade by its flat sides." wear "gloves"';
/** Steps that raise nothing. */
const plain = (count: number): string => 'step { inspect Seat "for dirt" }\n'.repeat(count);

/** Each reminder with the number of its step. */
function remindersIn(procedure: string, language = "en"): readonly string[] {
  const text = `part Seat "seat"
part Blade[1..2] "blade" { sharp }
procedure Sharpen "Sharpen the blades" {
begin with Seat is installed
finish with Blade[all] are installed
${procedure}
}`;
  const workspace = openWorkspace({
    texts: new Map([["main.sprag", text]]),
    present: new Set(),
    absent: new Set(),
    today: "2026-05-04",
  });
  const ask = {
    path: "main.sprag",
    as: "checklist",
    format: "json",
    units: "si",
    repeats: "full",
    draft: false,
  } as const;
  const said = JSON.parse(exportText(workspace, { ...ask, language, procedure: "Sharpen" }));
  return stepsIn(said).flatMap(({ number, terms }) =>
    terms.filter((term) => /still holds|gilt weiterhin/.test(term)).map((term) => `${number}: ${term}`),
  );
}

interface Row {
  readonly number: string;
  readonly terms: readonly string[];
}

function stepsIn(value: unknown): readonly Row[] {
  if (Array.isArray(value)) return value.flatMap(stepsIn);
  if (typeof value !== "object" || value === null) return [];
  const own = "kind" in value && value.kind === "step" ? [value as unknown as Row] : [];
  return [...own, ...Object.values(value).flatMap(stepsIn)];
}

const SAID = "The WARNING of cuts still holds: The edges are sharp.";

test("after five steps, and not after four", () => {
  const near = `${SHARP}\n${plain(4)} step install Blade[1]\n step install Blade[2]`;
  expect(remindersIn(near)).toEqual([`6: ${SAID}`]);
  const far = `${SHARP}\n${plain(5)} step install Blade[1]\n step install Blade[2]`;
  expect(remindersIn(far)).toEqual([`6: ${SAID}`]);
});

test("once for all that follow close upon it, and again further on", () => {
  const work = `${SHARP}\n${plain(5)} step install Blade[1]\n${plain(3)} step install Blade[2]\n${plain(3)} step remove Blade[1]\n step install Blade[1]`;
  expect(remindersIn(work)).toEqual([`6: ${SAID}`, `14: ${SAID}`]);
});

test("where a nearer one warns of the same, only that one counts", () => {
  const inTask = `${SHARP}\n${plain(5)} task Fit "Fit" {\n${SHARP}\n step install Blade[1]\n step install Blade[2]\n}`;
  expect(remindersIn(inTask)).toEqual([]);
  const inStep = `${SHARP}\n${plain(5)} step {\n${SHARP}\n install Blade[1]\n}\n step install Blade[2]`;
  expect(remindersIn(inStep)).toEqual([`7: ${SAID}`]);
});

test("not where nothing raises it", () => {
  expect(remindersIn(`${SHARP}\nstep install Blade[1]\nstep install Blade[2]\n${plain(7)}`)).toEqual([]);
});

test("in German too", () => {
  expect(remindersIn(`${SHARP}\n${plain(5)} step install Blade[1]\n step install Blade[2]`, "de")).toEqual([
    "6: WARNUNG (Schneiden) gilt weiterhin: The edges are sharp.",
  ]);
});
