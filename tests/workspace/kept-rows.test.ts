// A preview that keeps what it showed before shows what one does that is made from nothing, after any edits.
import fc from "fast-check";
import { expect, test } from "vitest";
import { anyPlace, firstProcedure, typedInto } from "#harness/random-edit.ts";
import { openSamples } from "#harness/samples.ts";
import { isThorough } from "#harness/thorough.ts";
import { threefoldSamples } from "#harness/threefold.ts";
import { createRowMemory, type RowMemory } from "#outputs/kept-rows.ts";
import { type PreviewRequest, previewAs, previewOutputs } from "#workspace/preview.ts";
import type { Workspace } from "#workspace/workspace.ts";

const shops = threefoldSamples((path) => !path.startsWith("faulty/"));

const edit = fc.record({
  place: anyPlace,
  drop: fc.constantFrom(0, 0, 0, 1, 12),
  put: fc.constantFrom(
    "",
    "\n",
    "x",
    "1",
    "}",
    '"',
    "\ncritical\n",
    '\nnote "See above."\n',
    '\nstep do "as shown"\n',
    '\ntask "More" {\n',
    "\nafter ",
  ),
  back: fc.boolean(),
  isChecked: fc.constantFrom(false, false, false, true),
});

const wish = fc.record({
  as: fc.constantFrom(...previewOutputs()),
  units: fc.constantFrom("si", "us", "both"),
  repeats: fc.constantFrom("compact", "full"),
  language: fc.constantFrom("en", "de"),
});

test("after any edits the preview is that of a text that is opened anew", { timeout: 1_200_000 }, () => {
  let compared = 0;
  const rows = { asked: 0, made: 0 };
  fc.assert(
    fc.property(
      fc.nat(shops.length - 1),
      fc.array(wish, { minLength: 1, maxLength: 2 }),
      fc.array(edit, { minLength: 5, maxLength: 5 }),
      (shop, wishes, edits) => {
        const { path, texts } = shops[shop] as (typeof shops)[number];
        let text = texts.get(path) ?? "";
        let workspace: Workspace | undefined;
        // Now and then one is used for another output, of which nothing may be taken over.
        const memories = wishes.map(() => counted(createRowMemory(), rows));
        const known = new Map<string, Parameters<typeof previewAs>[2]>();
        const look = (next: string, isChecked: boolean): void => {
          const changed = new Map(texts).set(path, next);
          workspace = openSamples(changed, [], workspace);
          const anew = openSamples(changed, []);
          for (const { name: procedure } of workspace.loaded.models.get(path)?.procedures.slice(0, 1) ?? [])
            for (const [at, asked] of wishes.entries()) {
              const memory = memories[(at + Number(isChecked)) % wishes.length];
              const request: PreviewRequest = { path, procedure, ...asked } as PreviewRequest;
              const checked = isChecked ? null : (known.get(procedure) ?? null);
              const { memory: _, checked: found, ...shown } = done(previewAs(workspace, request, checked, memory));
              const { memory: __, checked: ___, ...fresh } = done(previewAs(anew, request, checked));
              expect(shown).toEqual(fresh);
              known.set(procedure, found);
              compared++;
            }
        };
        look(text, true);
        for (const { back, isChecked, ...edit } of edits) {
          const next = typedInto(text, edit, edit.place < 50 ? 0 : firstProcedure(text));
          look(next, isChecked);
          if (back) look(text, false);
          else text = next;
        }
      },
    ),
    { numRuns: isThorough ? 60 : 3 },
  );
  console.log(`${compared} previews compared; of ${rows.asked} rows ${rows.made} were made anew`);
  expect(rows.made).toBeLessThan(0.75 * rows.asked);
});

function done(result: ReturnType<typeof previewAs>) {
  if (result.kind !== "done") throw new Error(`There is no preview: ${result.kind}`);
  return result;
}

function counted({ begin }: RowMemory, rows: { asked: number; made: number }): RowMemory {
  return {
    begin: (surroundings) => {
      const rowOf = begin(surroundings);
      return (source, make) => {
        rows.asked++;
        return rowOf(source, () => {
          rows.made++;
          return make();
        });
      };
    },
  };
}
