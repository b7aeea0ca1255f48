// Which file a command is about: the one it is called for, else the one the reader is in. Knows no command.
import { Uri, window } from "vscode";
import type { ExportArguments } from "../../language/server/protocol.ts";
import { object, oneOf, record, type Shape, text } from "./shape.ts";

/** @param given of the palette nothing, of a menu a `Uri`, of a code lens or the preview `ExportArguments` */
export function chosenFile(given: unknown): ExportArguments | undefined {
  if (given instanceof Uri) return { uri: given.toString() };
  if (isArguments(given)) return given;
  // Where the reader is in the preview or a panel, what stands beside it is meant.
  const editors = [window.activeTextEditor, ...window.visibleTextEditors];
  const uri = editors.find((editor) => editor?.document.languageId === "sprag")?.document.uri;
  return uri === undefined ? undefined : { uri: uri.toString() };
}

const isArguments: Shape<ExportArguments> = object(
  { uri: text },
  {
    procedure: text,
    as: text,
    units: oneOf("both", "si", "us"),
    repeats: oneOf("compact", "full"),
    set: record(text),
  },
);
