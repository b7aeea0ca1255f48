// Of a text that changed, procedures that are the same keep their records: the models are those of a fresh lowering, after any edits.
import fc from "fast-check";
import { expect, test } from "vitest";
import { anyPlace, firstProcedure, typedInto } from "#harness/random-edit.ts";
import { isFaulty, tables } from "#harness/samples.ts";
import { isThorough } from "#harness/thorough.ts";
import { type Threefold, threefoldSamples } from "#harness/threefold.ts";
import { createComparison } from "#model/alike.ts";
import { type Lowered, lowerAgain } from "#model/lower.ts";
import type { FileModel, Procedure } from "#model/procedure.ts";
import { type ParsedFile, parseAgain, parseText } from "#syntax/parse.ts";
import { linkFiles } from "#syntax/scope.ts";
import { procedureText } from "../bench/procedure-text.ts";

type Texts = ReadonlyMap<string, string>;

/** @param before of another state of these texts */
function lowered(texts: Texts, before: Lowered | null): Lowered {
  return lowerAgain(parsedIn(texts, before), () => true, tableText, before);
}

/** The model of a text as if nothing were known of it. */
function freshly(texts: Texts, path: string, near: Lowered): FileModel | undefined {
  const parsed = new Map(parsedIn(texts, near)).set(path, parseText(texts.get(path) ?? "", path));
  linkFiles(parsed);
  return lowerAgain(parsed, () => true, tableText, null).models.get(path);
}

function parsedIn(texts: Texts, near: Lowered | null): ReadonlyMap<string, ParsedFile> {
  const parsed = new Map(
    [...texts].map(([path, text]) => {
      const known = near?.kept.get(path)?.parsed;
      return [
        path,
        known === undefined ? parseText(text, path) : known.text === text ? known : parseAgain(known, text),
      ];
    }),
  );
  linkFiles(parsed);
  return parsed;
}

function tableText(path: string): string | null {
  return tables.get(path) ?? null;
}

const shops: readonly Threefold[] = [
  { path: "made.sprag", texts: new Map([["made.sprag", procedureText({ stations: 6, options: 2, procedures: 3 })]]) },
  ...threefoldSamples((path) => !isFaulty(path)),
];

/** Records may share others, or not: in the one state as in the other. */
function expectSame(now: FileModel | undefined, fresh: FileModel | undefined, text: string): void {
  const { isAlike } = createComparison(() => (start, end) => ({ start, end }));
  const isSame = now !== undefined && fresh !== undefined && isAlike(now, fresh);
  // The long way tells what differs.
  if (!isSame) expect(now, text).toEqual(fresh);
  expect(isSame, text).toBe(true);
}

/** How many procedures kept their records, in place or moved. */
function takenOver(now: FileModel | undefined, lowering: Lowered, before: FileModel | undefined): number {
  const earlier = new Set<Procedure | undefined>(before?.procedures);
  const moves = lowering.moves.get(now?.path ?? "");
  return (now?.procedures ?? []).filter((one) => earlier.has(one) || earlier.has(moves?.before.get(one))).length;
}

const typed = fc.oneof(
  { weight: 2, arbitrary: fc.constantFrom("", " ", "\n", "\n\n", "x", "1", ",", "// ") },
  {
    weight: 1,
    arbitrary: fc.constantFrom(
      ...["}", "{", '"', '"""', "[", "/* ", "*/", "µ", "step ", 'step do "as shown"\n', "part Extra\n"],
      ...['use "shop/tools.sprag"\n', "when X is yes {", "temporary part T\n", 'procedure X { step do "x" }\n'],
      ...['allow order.not-met because "so"\n', 'source S "s"\n', 'term "a" instead of "b"\n'],
    ),
  },
);
const edit = fc.record({
  place: anyPlace,
  drop: fc.oneof({ weight: 3, arbitrary: fc.constant(0) }, { weight: 1, arbitrary: fc.nat({ max: 40 }) }),
  put: typed,
  /** Some edits are taken back, as a half-typed line is. */
  back: fc.boolean(),
});

test("after any edits the model is that of a fresh lowering", { timeout: 1_200_000 }, () => {
  let compared = 0;
  let taken = 0;
  const starts = shops.map(({ texts }) => lowered(texts, null));
  fc.assert(
    fc.property(fc.nat(shops.length - 1), fc.array(edit, { minLength: 6, maxLength: 6 }), (shop, edits) => {
      const { path, texts: start } = shops[shop] as (typeof shops)[number];
      let texts = start;
      let lowering = starts[shop] as Lowered;
      const look = (next: Texts, what: string): void => {
        const now = lowered(next, lowering);
        taken += takenOver(now.models.get(path), now, lowering.models.get(path));
        expectSame(now.models.get(path), freshly(next, path, now), `${path}, ${what}`);
        lowering = now;
        compared++;
      };
      for (const { back, ...edit } of edits) {
        const text = texts.get(path) ?? "";
        // Where nothing but declarations stands, an edit leaves nothing to take over: most are made behind them.
        const from = edit.drop % 5 === 0 && edit.drop > 0 ? 0 : firstProcedure(text);
        const next = new Map(texts).set(path, typedInto(text, edit, from));
        look(next, JSON.stringify(edit));
        if (back) look(texts, "taken back");
        else texts = next;
      }
    }),
    { numRuns: isThorough ? 600 : 8 },
  );
  console.log(`${compared} states compared with a fresh lowering, ${taken} procedures taken over`);
  expect(taken).toBeGreaterThan(compared / 2);
});

test.each([
  ["in the first of three, all stay but this", "Put cover 1 on", "Lay cover 1 on", 2],
  ["half typed there", "install Cover1", "install Cover1\n      check ", 2],
  ["a line between two", "procedure CloseStations2", "\n// A word.\nprocedure CloseStations2", 3],
  ["a line in front of all", "procedure CloseStations1", "\nprocedure CloseStations1", 3],
  ["a line in front of what is declared", "role Fitter", "\nrole Fitter", 0],
  ["another procedure's name", "procedure CloseStations3", "procedure CloseStations4", 0],
  ["a mass", "mass 4 kg", "mass 5 kg", 0],
])("what is taken over: %s", (_, from, to, expected) => {
  const text = procedureText({ stations: 6, options: 2, procedures: 3 });
  expect(text).toContain(from);
  const before = lowered(new Map([["made.sprag", text]]), null);
  const changed = new Map([["made.sprag", text.replace(from, to)]]);
  const now = lowered(changed, before);
  const model = now.models.get("made.sprag");
  expect(takenOver(model, now, before.models.get("made.sprag"))).toBe(expected);
  expectSame(model, freshly(changed, "made.sprag", now), to);
});

test.each([
  ["an unknown name, which it may declare", "step remove Unknown", 2],
  [
    "an allow, which may silence what it would have brought",
    'step { remove Cover3  allow order.not-met because "so" }',
    2,
  ],
  ["nothing that it bears on", "step remove Cover3", 3],
])("a line that cannot be read, and elsewhere %s", (_, line, expected) => {
  const whole = `${procedureText({ stations: 6, procedures: 3 })}\nprocedure Other {\n  ${line}\n}\n`;
  const torn = whole.replace("install Cover1\n", "install Cover1\n      part\n");
  expect(torn).not.toBe(whole);
  let lowering = lowered(new Map([["made.sprag", whole]]), null);
  for (const text of [torn, whole, `\n${whole}`, whole]) {
    const texts = new Map([["made.sprag", text]]);
    const now = lowered(texts, lowering);
    const model = now.models.get("made.sprag");
    expectSame(model, freshly(texts, "made.sprag", now), line);
    if (text === torn) expect(takenOver(model, now, lowering.models.get("made.sprag"))).toBe(expected);
    lowering = now;
  }
});

test("nothing is taken over where a file that is used has changed", () => {
  const [declared = "", ...procedures] = procedureText({ stations: 6, procedures: 3 }).split(/^(?=procedure )/m);
  const main = `use "shop.sprag"\n\n${procedures.join("\n")}`;
  const before = lowered(
    new Map([
      ["main.sprag", main],
      ["shop.sprag", declared],
    ]),
    null,
  );
  const texts = new Map([
    ["main.sprag", main.replace("Put", "Lay")],
    ["shop.sprag", declared.replace("mass 4 kg", "mass 5 kg")],
  ]);
  const now = lowered(texts, before);
  expect(now.moves.size).toBe(0);
  expectSame(now.models.get("main.sprag"), freshly(texts, "main.sprag", now), "main.sprag");
  const again = lowered(new Map(texts).set("main.sprag", main), now);
  expect(takenOver(again.models.get("main.sprag"), again, now.models.get("main.sprag"))).toBe(2);
});
