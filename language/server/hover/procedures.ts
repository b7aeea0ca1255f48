// A step, a task, a performed procedure, in a few lines.
import type { Procedure, Step, Task } from "#model/procedure.ts";
import { show } from "#quantity/display.ts";
import type { Reach } from "../reach.ts";
import type { FileView } from "../view.ts";
import { blocks, list, plain, strong } from "./markup.ts";

export function performedText(view: FileView, procedure: Procedure): string {
  const { steps } = view.workspace.expanded(procedure);
  const head = `${strong(procedure.title)} — procedure ${plain(procedure.name)}`;
  const { document } = procedure;
  const lines = [
    ...(document === null
      ? []
      : [plain([document.number, document.revision && `revision ${document.revision}`].filter(Boolean).join(", "))]),
    steps === 1 ? "1 step" : `${steps} steps`,
    ...conditionLines(view, "begin with", procedure.begin),
    ...conditionLines(view, "finish with", procedure.finish),
  ];
  return blocks([head, list(lines)]);
}

/** As they are written. */
function conditionLines({ workspace }: FileView, word: string, conditions: Procedure["begin"]): readonly string[] {
  if (conditions.length === 0) return [];
  const texts = conditions.map(
    ({ span }) => workspace.loaded.parsed.get(span.path)?.text.slice(span.start, span.end) ?? "",
  );
  return [plain(`${word} ${texts.join(", ")}`)];
}

export function stepText({ steps, procedure }: Reach, name: string): string | null {
  const found = steps.find((step) => step.name === name || step.name === name.normalize("NFC"));
  if (found === undefined || procedure === null) return null;
  const { number, title, isTask } = found;
  const head = `${strong(`${isTask ? "Task" : "Step"} ${number}`)}${title === "" ? "" : ` — ${plain(title)}`}`;
  const item = itemAt(procedure.items, found.span.start);
  const takes = item?.kind === "step" && item.takes !== null ? `Takes ${plain(show(item.takes.quantity))}.` : null;
  return blocks([head, takes]);
}

function itemAt(items: Procedure["items"], start: number): Step | Task | null {
  for (const item of items) {
    if ((item.kind === "step" || item.kind === "task") && item.span.start === start) return item;
    const inner =
      item.kind === "when"
        ? [...item.arms.flatMap((arm) => arm.items), ...(item.otherwise ?? [])]
        : "items" in item
          ? item.items
          : [];
    const found = itemAt(inner, start);
    if (found !== null) return found;
  }
  return null;
}
