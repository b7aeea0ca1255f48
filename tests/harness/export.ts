// An output as text, by the façade; the single place where tests name typefaces to it.
import { type ExportRequest, exportAs, type Workspace } from "#workspace/index.ts";
import { fonts } from "./fonts.ts";

/** The text; in place of it why there is none, as `errors`. */
export function exportText(workspace: Workspace, request: Omit<ExportRequest, "fonts">): string {
  const result = exportAs(workspace, { ...request, fonts });
  if (result.kind !== "done") return result.kind;
  if (typeof result.content !== "string") throw new Error(`${request.format} is no text`);
  return result.content;
}
