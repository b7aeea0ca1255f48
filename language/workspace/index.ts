// All that callers of the core need, such as a browser. The command and the server take it from the files themselves, to load no more than
// they call.

export { explanationLines } from "#outputs/explanation.ts";
export { codeText, printable, UNSHOWABLE } from "#outputs/printable.ts";
export { convertText } from "#quantity/convert.ts";
export { allCodes, explain, pageMarkdown as explanationMarkdown } from "#rules/explain.ts";
export { formatText } from "#syntax/format.ts";
export { type Arrangements, type ArrangeResult, arrangeTable } from "./arrange.ts";
export type { CheckSettings } from "./checking.ts";
export { computedValues, explainedText, explainLine, type LineExplained } from "./explain-line.ts";
export { type ExportRequest, type ExportResult, exportAs, outputFormats } from "./export.ts";
export { figuresWanted, LARGEST_FIGURE, withFigures } from "./figures.ts";
export { isTable } from "./load.ts";
export { outlineOf } from "./outline.ts";
export { type PreviewResult, previewAs, previewOutputs } from "./preview.ts";
export type { CheckReport, FileReport, ReportedFinding, Summary } from "./report.ts";
export { reportText } from "./report.ts";
export { REVIEW_FORMATS, type ReviewReport, reviewAs, reviewOf, unreadIn } from "./review.ts";
export type { Snapshot, Wanted } from "./snapshot.ts";
export { starterFiles } from "./starter.ts";
export { TRACE_FORMATS, traceMatrix } from "./trace.ts";
export { type VerifyReport, type VerifyResult, verify } from "./verify.ts";
export { openWorkspace, type Workspace } from "./workspace.ts";
