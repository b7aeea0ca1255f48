// An output beside its text: what the export would write now, and which lines each row comes from. While the writer types, it says
// of the check what was found last. Knows no page.
import type { PreviewResult } from "#workspace/preview.ts";
import { choicesOf, namesInOne, refusalOf } from "./exporting.ts";
import type { Feature } from "./feature.ts";
import type { Folder } from "./folder.ts";
import { answerOwn } from "./own-requests.ts";
import type { PreviewAnswer, PreviewParams } from "./protocol.ts";
import { type FileView, locationOf } from "./view.ts";
import type { Say } from "./words.ts";

export const preview: Feature = {
  capabilities: () => ({}),
  start: (session, say) => {
    answerOwn(session.connection, "sprag/preview", (params, token) =>
      session.ask<PreviewAnswer>(params.uri, token, (view) => previewOf(view, params, say), {
        kind: "refused",
        ...refusalOf({ kind: "no file" }, params, say),
      }),
    );
  },
};

type Done = PreviewResult & { readonly kind: "done" };

/** What was found and shown last, by what was shown; of few, since only what is on a screen is asked for again. */
const last = new WeakMap<Folder, Map<string, Last>>();
type Last = Pick<Done, "checked" | "memory">;
const MOST_KNOWN = 8;

async function previewOf(view: FileView, params: PreviewParams, say: Say): Promise<PreviewAnswer> {
  const { previewAs, previewOutputs } = await import("#workspace/preview.ts");
  const choices = choicesOf(view);
  const outputs = previewOutputs();
  const as = outputs.includes(params.as) ? params.as : (outputs[0] ?? params.as);
  const asked = (params.procedure ?? "").normalize("NFC");
  const { name = "" } = choices.procedures.find((one) => one.name === asked) ?? choices.procedures[0] ?? {};
  const set = stillThere(namesInOne(params.set), choices.options);
  const { units, repeats } = params;
  const language = params.language ?? "en";
  const known = last.get(view.folder) ?? new Map<string, Last>();
  last.set(view.folder, known);
  const request = { path: view.path, procedure: name, as, units, repeats, language, set };
  const workspace = await view.folder.withFigures(view.path, params.checked);
  const key = JSON.stringify([view.path, name, set, workspace.snapshot.crib]);
  const before = known.get(key);
  const result = previewAs(workspace, request, params.checked ? null : (before?.checked ?? null), before?.memory);
  if (result.kind !== "done") return { kind: "refused", ...refusalOf(result, params, say) };
  known.delete(key);
  known.set(key, { checked: result.checked, memory: result.memory });
  for (const oldest of known.keys()) if (known.size > MOST_KNOWN) known.delete(oldest);
  const { content, form, whole, figures } = result;
  return {
    kind: "done",
    procedure: name,
    as,
    set,
    content,
    form,
    whole,
    figures: figures.map(({ src, path }) => ({ src, uri: view.folder.uriOf(path) })),
    rows: rowsOf(view, result),
    outputs,
    ...choices,
  };
}

/** Without options and choices that the text has no more. */
function stillThere(set: Readonly<Record<string, string>>, options: ReturnType<typeof choicesOf>["options"]) {
  const isThere = ([name, choice]: readonly [string, string]): boolean =>
    options.some((option) => option.name === name && option.choices.includes(choice));
  return Object.fromEntries(Object.entries(set).filter(isThere));
}

function rowsOf(view: FileView, { rows }: Done) {
  return rows.map(({ id, span }) => {
    const { uri, range } = locationOf(view, span);
    return { id, uri, first: range.start.line, last: range.end.line };
  });
}
